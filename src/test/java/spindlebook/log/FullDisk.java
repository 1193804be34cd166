package spindlebook.log;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Path;
import org.h2.store.fs.FileBaseDefault;
import org.h2.store.fs.FilePath;
import org.h2.store.fs.FilePathWrapper;
import org.h2.store.fs.async.FilePathAsync;

/** A disk that is full for the index, as long as a test says so; the files below are real ones. */
public final class FullDisk extends FilePathWrapper implements AutoCloseable {
  private static volatile boolean full;

  /** For H2, which makes one for each name. */
  public FullDisk() {}

  /** Takes the place of the index's own way to its file, until it is closed. */
  public static FullDisk below() {
    full = false;
    FullDisk disk = new FullDisk();
    FilePath.register(disk);
    return disk;
  }

  /** What a book's own file is told of the disk. */
  public static void leaves(Book book, Path folder, long bytes) throws IOException {
    FailingDisk disk = new FailingDisk(folder.resolve(LogFile.NAME));
    disk.free = bytes;
    disk.roomLeft = (int) Math.min(bytes, Integer.MAX_VALUE);
    book.replaceDisk(disk);
  }

  public void full(boolean now) {
    full = now;
  }

  @Override
  public String getScheme() {
    return "async";
  }

  @Override
  public FileChannel open(String mode) throws IOException {
    return new Channel(super.open(mode));
  }

  @Override
  public void close() {
    FilePath.register(new FilePathAsync());
  }

  private static final class Channel extends FileBaseDefault {
    private final FileChannel real;

    Channel(FileChannel real) {
      this.real = real;
    }

    @Override
    public int write(ByteBuffer bytes, long position) throws IOException {
      if (full) {
        throw new IOException("No space left on device");
      }
      return real.write(bytes, position);
    }

    @Override
    public int read(ByteBuffer bytes, long position) throws IOException {
      return real.read(bytes, position);
    }

    @Override
    public long size() throws IOException {
      return real.size();
    }

    @Override
    protected void implTruncate(long size) throws IOException {
      real.truncate(size);
    }

    @Override
    public void force(boolean metaData) throws IOException {
      real.force(metaData);
    }

    @Override
    public FileLock tryLock(long position, long size, boolean shared) throws IOException {
      return real.tryLock(position, size, shared);
    }

    @Override
    protected void implCloseChannel() throws IOException {
      real.close();
    }
  }
}
