package spindlebook.web;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.locks.LockSupport;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.util.Callback;
import org.junit.jupiter.api.Test;

class SlowSenderTest {

  @Test
  void the_servers_own_work_is_not_taken_for_slow_sending() throws Exception {
    CountDownLatch atWork = new CountDownLatch(1);
    Server server = new Server();
    ServerConnector here = new ServerConnector(server);
    here.setHost("127.0.0.1");
    server.addConnector(here);
    SlowSender slow = new SlowSender();
    slow.setHandler(
        new Handler.Abstract() {
          @Override
          public boolean handle(Request request, Response response, Callback done)
              throws IOException {
            atWork.countDown();
            LockSupport.parkNanos(Duration.ofSeconds(5).toNanos());
            ByteBuffer body = Content.Source.asByteBuffer(request);
            response.write(true, body, done);
            return true;
          }
        });
    server.setHandler(slow);
    server.start();
    try (Socket socket = new Socket("127.0.0.1", here.getLocalPort())) {
      OutputStream out = socket.getOutputStream();
      out.write(
          ("POST / HTTP/1.1\r\nHost: here\r\nConnection: close\r\nContent-Length: 10\r\n\r\nhalf,")
              .getBytes(StandardCharsets.US_ASCII));
      out.flush();
      atWork.await();
      out.write("whole".getBytes(StandardCharsets.US_ASCII));
      out.flush();
      String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
      assertTrue(answer.startsWith("HTTP/1.1 200") && answer.endsWith("half,whole"), answer);
    } finally {
      server.stop();
    }
  }
}
