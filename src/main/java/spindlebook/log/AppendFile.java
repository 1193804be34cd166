package spindlebook.log;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Locale;

/**
 * A file that only grows, but for taking back what nobody was told is in it. Only one thread may
 * use it. Tests put a disk that fails in its place.
 */
class AppendFile implements AutoCloseable {
  private final FileChannel channel;
  private long forces;

  AppendFile(Path file) throws IOException {
    channel = FileChannel.open(file, StandardOpenOption.WRITE);
    channel.position(channel.size());
  }

  void write(byte[] bytes) throws IOException {
    ByteBuffer rest = ByteBuffer.wrap(bytes);
    while (rest.hasRemaining()) {
      channel.write(rest);
    }
  }

  void force() throws IOException {
    channel.force(false);
    forces++;
  }

  void cutTo(long length) throws IOException {
    channel.truncate(length);
    channel.position(length);
  }

  /** How often the disk was waited for. */
  long forces() {
    return forces;
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }

  /** Puts a whole new file on the disk: either all of it is there afterwards, or none. */
  static void begin(Path file, byte[] content) throws IOException {
    Path half = file.resolveSibling(file.getFileName() + ".new");
    Files.write(half, content);
    try (FileChannel channel = FileChannel.open(half, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
    Files.move(half, file, StandardCopyOption.ATOMIC_MOVE);
    forceFolder(file.getParent());
  }

  /** Makes the names in a folder last; a new file may else be gone after a power cut. */
  static void forceFolder(Path folder) throws IOException {
    if (System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("windows")) {
      return; // Windows opens no folder as a file, and keeps names by itself.
    }
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    }
  }
}
