package spindlebook.log;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Locale;
import java.util.Set;

/**
 * Files that are written whole or not at all, and folders that last; what is made here is for its
 * owner's eyes only.
 */
public final class WholeFile {
  private static final Set<StandardOpenOption> ANEW =
      Set.of(
          StandardOpenOption.CREATE,
          StandardOpenOption.TRUNCATE_EXISTING,
          StandardOpenOption.WRITE);

  static final Set<StandardOpenOption> NEW =
      Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);

  private static final Set<PosixFilePermission> OWNER =
      PosixFilePermissions.fromString("rwx------");

  private WholeFile() {}

  /** Puts a whole new file on the disk: either all of it is there afterwards, or none. */
  public static void put(Path file, byte[] content) throws IOException {
    Path half = file.resolveSibling(file.getFileName() + ".new");
    try (FileChannel channel = FileChannel.open(half, ANEW, owners(half, "rw-------"))) {
      for (ByteBuffer rest = ByteBuffer.wrap(content); rest.hasRemaining(); ) {
        channel.write(rest);
      }
      channel.force(true);
    }
    Files.move(half, file, StandardCopyOption.ATOMIC_MOVE);
    forceFolder(file.toAbsolutePath().getParent());
  }

  /**
   * Makes a folder, and those it lies in, where they are missing, and makes its name last: one that
   * a killed program made may not be on the disk yet.
   */
  public static void folder(Path folder) throws IOException {
    Path parent = folder.toAbsolutePath().getParent();
    if (!Files.isDirectory(folder)) {
      folder(parent);
      Files.createDirectory(folder, owners(folder, "rwx------"));
    }
    if (parent != null && Files.isReadable(parent)) {
      forceFolder(parent);
    }
  }

  /** What a new file or folder is made with where the system knows owners. */
  static FileAttribute<?>[] owners(Path path, String may) {
    return path.getFileSystem().supportedFileAttributeViews().contains("posix")
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(may))
        }
        : new FileAttribute<?>[0];
  }

  /** Takes away what others than its owner may do, where the system knows owners. */
  static void ownersOnly(Path path) {
    PosixFileAttributeView view = Files.getFileAttributeView(path, PosixFileAttributeView.class);
    try {
      if (view != null) {
        Set<PosixFilePermission> may = view.readAttributes().permissions();
        if (may.retainAll(OWNER)) {
          view.setPermissions(may);
        }
      }
    } catch (IOException anothers) {
      // It belongs to somebody else, or lies on a disk that knows no owners.
    }
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
