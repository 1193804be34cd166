package spindlebook;

import com.sun.management.OperatingSystemMXBean;
import io.javalin.Javalin;
import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import spindlebook.page.Html;
import spindlebook.page.ProblemPage;

/**
 * How many pages a second the demo's book gives while nothing is written, and after each save,
 * beside a template of the same size that is filled with one text. Not a test: how to run it stands
 * in docs/benchmarks.md.
 */
final class PageLoad {
  private static final String CAR = "/cars/marmot";
  private static final String CORNER = "/corners/marmot-lf";
  private static final List<String> PAGES =
      List.of(
          CAR,
          CORNER,
          CORNER + "/limits",
          CAR + "/drive-check",
          CORNER + "/curves",
          CAR + "/book",
          CORNER + "/curves?of=toe",
          CORNER + "/print",
          "/rounds/lf-1",
          "/rounds/lf-1/guide");

  private static final OperatingSystemMXBean MACHINE =
      (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

  private PageLoad() {}

  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createTempDirectory(Path.of(arguments[0]), "pages");
    DemoBook.copyTo(folder);
    try (Shop shop = new Shop(folder)) {
      run(shop);
    } finally {
      // The servers' threads would keep it.
      System.exit(0);
    }
  }

  private static void run(Shop shop) throws IOException {
    Javalin plain = plain();
    Asking other = new Asking(plain.port(), "who=Sam");
    Asking own = new Asking(shop.port(), "who=Sam; " + shop.browser.cookie());
    for (String page : PAGES) {
      own.measured(page, 2);
    }
    other.measured("/20000", 4);
    System.out.println("| page | bytes | a second | CPU ms each | beside the template |");
    System.out.println("|---|---|---|---|---|");
    for (String page : PAGES) {
      int bytes = shop.get(page).is(200).html().getBytes(StandardCharsets.UTF_8).length;
      double[] template = other.measured("/" + bytes, 2);
      double[] ours = own.measured(page, 2);
      System.out.printf(
          Locale.ROOT,
          "| %s | %d | %.0f of %.0f | %.2f of %.2f | %.2f |%n",
          page,
          bytes,
          ours[0],
          template[0],
          ours[1],
          template[1],
          ours[0] / template[0]);
    }
    plain.stop();
    afterASave(shop);
  }

  /** One template of the program, filled with a text so long that the page has the bytes asked. */
  private static Javalin plain() {
    return Javalin.create(
            config -> {
              config.startup.showJavalinBanner = false;
              config.jetty.host = "127.0.0.1";
              config.jetty.port = 0;
              config.routes.get(
                  "/{bytes}",
                  ctx -> {
                    int bytes = Integer.parseInt(ctx.pathParam("bytes"));
                    String words = "One line of a page like another. ";
                    Html.problem(
                        ctx,
                        new ProblemPage(
                            200, "A page", words.repeat(Math.max(1, bytes / words.length() - 60))));
                  });
            })
        .start();
  }

  /** One connection, as plain as can be, so that it is the answering that is measured. */
  private record Asking(int port, String cookie) {
    /** Answers a second, and milliseconds of processor for each, of the asking as well. */
    double[] measured(String page, int seconds) throws IOException {
      byte[] request =
          ("GET "
                  + page
                  + " HTTP/1.1\r\nHost: 127.0.0.1:"
                  + port
                  + "\r\nCookie: "
                  + cookie
                  + "\r\n\r\n")
              .getBytes(StandardCharsets.US_ASCII);
      try (Socket socket = new Socket("127.0.0.1", port)) {
        socket.setTcpNoDelay(true);
        DataInputStream in =
            new DataInputStream(new BufferedInputStream(socket.getInputStream(), 1 << 16));
        long before = MACHINE.getProcessCpuTime();
        long from = System.nanoTime();
        int n = 0;
        while (System.nanoTime() - from < TimeUnit.SECONDS.toNanos(seconds)) {
          socket.getOutputStream().write(request);
          answered(in);
          n++;
        }
        return new double[] {
          n / ((System.nanoTime() - from) / 1e9), (MACHINE.getProcessCpuTime() - before) / 1e6 / n
        };
      }
    }

    private static void answered(DataInputStream in) throws IOException {
      String line = in.readLine();
      if (!line.contains(" 200 ")) {
        throw new IOException(line);
      }
      int length = -1;
      for (; !line.isEmpty(); line = in.readLine()) {
        if (line.startsWith("Content-Length: ")) {
          length = Integer.parseInt(line.substring(16));
        }
      }
      while (length < 0) {
        int chunk = Integer.parseInt(in.readLine(), 16);
        in.skipNBytes(chunk + 2);
        length = chunk == 0 ? 0 : -1;
      }
      in.skipNBytes(length);
    }
  }

  private static void afterASave(Shop shop) {
    String start = CORNER + "/rounds";
    String round =
        Marmot.send(shop.get(start + "/new"), start, Map.of("who", "Sam"))
            .location()
            .replaceAll("^/rounds/|/guide$", "");
    List<Double> millis = new ArrayList<>();
    for (int i = 0; i < 100; i++) {
      Map<String, String> height =
          Map.of(
              "key",
              round + "-" + i,
              "after",
              "0",
              "what",
              "height",
              "name",
              "in-between",
              "label",
              "jack " + i,
              "spindle",
              15 + i / 8 + " " + (1 + i % 8) + "/16",
              "mark",
              "30 1/4");
      shop.browser.post("/rounds/" + round + "/sent", height).is(200);
      long before = MACHINE.getProcessCpuTime();
      shop.get(CAR).is(200);
      millis.add((MACHINE.getProcessCpuTime() - before) / 1e6);
    }
    millis.sort(null);
    System.out.printf(
        Locale.ROOT,
        "the car's page after a save: CPU ms p50 %.0f, p95 %.0f%n",
        millis.get(50),
        millis.get(95));
  }
}
