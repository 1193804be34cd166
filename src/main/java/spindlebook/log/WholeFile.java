package spindlebook.log;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Locale;

/** A file that is written whole or not at all. */
public final class WholeFile {
  private WholeFile() {}

  /** Puts a whole new file on the disk: either all of it is there afterwards, or none. */
  public static void put(Path file, byte[] content) throws IOException {
    Path half = file.resolveSibling(file.getFileName() + ".new");
    Files.write(half, content);
    try (FileChannel channel = FileChannel.open(half, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
    Files.move(half, file, StandardCopyOption.ATOMIC_MOVE);
    forceFolder(file.toAbsolutePath().getParent());
  }

  /** Makes the names in a folder last; a new file may else be gone after a power cut. */
  public static void forceFolder(Path folder) throws IOException {
    if (System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("windows")) {
      return; // Windows opens no folder as a file, and keeps names by itself.
    }
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    }
  }
}
