package spindlebook.log;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** A disk that does what a test tells it; the file below is a real one. */
final class FailingDisk extends AppendFile {
  volatile int roomLeft = Integer.MAX_VALUE;
  volatile long free = Long.MAX_VALUE / 8;
  volatile boolean forceFails;
  volatile boolean cutFails;
  volatile CountDownLatch forceWaitsFor;
  final CountDownLatch forcing = new CountDownLatch(1);

  FailingDisk(Path file) throws IOException {
    super(file);
  }

  @Override
  void write(byte[] bytes) throws IOException {
    if (bytes.length > roomLeft) {
      super.write(Arrays.copyOf(bytes, roomLeft));
      throw new IOException("No space left on device");
    }
    super.write(bytes);
  }

  @Override
  void force() throws IOException {
    forcing.countDown();
    CountDownLatch latch = forceWaitsFor;
    try {
      if (latch != null && !latch.await(20, TimeUnit.SECONDS)) {
        throw new IOException("the test forgot its latch");
      }
    } catch (InterruptedException nobodyDoes) {
      throw new IOException(nobodyDoes);
    }
    if (forceFails) {
      throw new IOException("Input/output error");
    }
    super.force();
  }

  @Override
  long free() {
    return free;
  }

  @Override
  void cutTo(long length) throws IOException {
    if (cutFails) {
      throw new IOException("Read-only file system");
    }
    super.cutTo(length);
  }
}
