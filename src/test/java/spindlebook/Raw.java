package spindlebook;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;

/** Requests written letter by letter, for those no browser and no HTTP client would send. */
final class Raw {
  static final String NL = "\r\n";

  private Raw() {}

  /** A request's first line and lines before its body, sent with no more than is said. */
  static String ask(int port, String... lines) {
    return send(port, String.join(NL, lines) + NL + "Connection: close" + NL + NL);
  }

  static String send(int port, String all) {
    try (Socket socket = new Socket("127.0.0.1", port)) {
      socket.setSoTimeout(20_000);
      OutputStream out = socket.getOutputStream();
      out.write(all.getBytes(StandardCharsets.ISO_8859_1));
      out.flush();
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException trouble) {
      throw new UncheckedIOException(trouble);
    }
  }

  static int status(String answer) {
    return Integer.parseInt(answer.split(" ", 3)[1]);
  }
}
