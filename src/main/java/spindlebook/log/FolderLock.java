package spindlebook.log;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** Keeps every other process from writing in the same folder. */
public final class FolderLock implements AutoCloseable {
  /**
   * Folders held by this process: on some systems, just opening and closing a lock file again frees
   * the lock for everybody.
   */
  private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

  private final Path held;
  private final FileChannel channel;

  private FolderLock(Path held, FileChannel channel) {
    this.held = held;
    this.channel = channel;
  }

  /** Makes the folder if it is missing and takes its lock, or refuses. */
  public static FolderLock take(Path folder) {
    try {
      WholeFile.folder(folder);
      Path held = folder.toRealPath();
      if (HELD.add(held)) {
        FolderLock lock = take(folder, held);
        if (lock != null) {
          return lock;
        }
      }
    } catch (IOException trouble) {
      throw BookRefused.book(
          trouble, "The folder %s cannot be written: %s.", folder, LogFile.said(trouble));
    }
    throw BookRefused.book(
        "The book in %s is in use: another Spindlebook has this book open, stop that one first.",
        folder);
  }

  private static FolderLock take(Path folder, Path held) throws IOException {
    FileChannel channel = null;
    FolderLock lock = null;
    try {
      channel =
          FileChannel.open(
              folder.resolve("book.lock"),
              Set.of(StandardOpenOption.CREATE, StandardOpenOption.WRITE),
              WholeFile.owners(folder, "rw-------"));
      FileLock got = channel.tryLock();
      lock = got == null ? null : new FolderLock(held, channel);
      return lock;
    } finally {
      if (lock == null) {
        HELD.remove(held);
        if (channel != null) {
          channel.close();
        }
      }
    }
  }

  @Override
  public void close() throws IOException {
    channel.close();
    HELD.remove(held);
  }
}
