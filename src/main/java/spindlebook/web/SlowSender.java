package spindlebook.web;

import java.time.Duration;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/** Lets nobody hold a thread by sending a body drop by drop. */
public final class SlowSender extends Handler.Wrapper {
  private static final double GRACE_SECONDS = 4;
  private static final double LEAST_BYTES_A_SECOND = 2048;

  @Override
  public boolean handle(Request request, Response response, Callback done) throws Exception {
    return super.handle(new Timed(request), response, done);
  }

  private static final class Timed extends Request.Wrapper {
    private long bytes;
    private long waitedNanos;

    /** Since when there is nothing to read; 0 while nobody waits for the sender. */
    private long emptySinceNanos;

    Timed(Request request) {
      super(request);
    }

    @Override
    public Content.Chunk read() {
      Content.Chunk chunk = super.read();
      if (chunk == null) {
        emptySinceNanos = emptySinceNanos == 0 ? System.nanoTime() : emptySinceNanos;
        return null;
      }
      if (emptySinceNanos != 0) {
        waitedNanos += System.nanoTime() - emptySinceNanos;
        emptySinceNanos = 0;
      }
      if (Content.Chunk.isFailure(chunk)) {
        return chunk;
      }
      bytes += chunk.remaining();
      if (chunk.isLast() || bytes >= due()) {
        return chunk;
      }
      chunk.release();
      return Content.Chunk.from(new TimeoutException("sent too slowly"), true);
    }

    /** By now, counting only the time in which the sender was waited for. */
    private double due() {
      double seconds = Duration.ofNanos(waitedNanos).toMillis() / 1000.0;
      return (seconds - GRACE_SECONDS) * LEAST_BYTES_A_SECOND;
    }
  }
}
