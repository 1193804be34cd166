package spindlebook.log;

import java.io.File;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * A file that only grows, but for taking back what nobody was told is in it. Only one thread may
 * use it. Tests put a disk that fails in its place.
 */
class AppendFile implements AutoCloseable {
  private final File folder;
  private final FileChannel channel;
  private long forces;

  AppendFile(Path file) throws IOException {
    folder = file.toAbsolutePath().getParent().toFile();
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

  /** Bytes that are left on its disk. */
  long free() {
    return folder.getUsableSpace();
  }

  /** How often the disk was waited for. */
  long forces() {
    return forces;
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
