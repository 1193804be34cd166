package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.web.StaticFiles;

/** Requests no page of ours makes: each gets a page in the house's style, and nothing is kept. */
class ProblemPagesTest {
  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;
  private int entries;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop);
    entries = shop.entries();
  }

  @AfterEach
  void close() {
    assertEquals(entries, shop.entries());
    shop.close();
  }

  @Test
  void what_is_not_in_the_book_is_not_here() {
    for (String path :
        List.of(
            "/nowhere",
            "/cars/none",
            "/cars/none/book",
            "/cars/none/settings",
            "/cars/none/tools",
            "/cars/none/details",
            "/cars/none/happenings/new",
            "/cars/" + marmot.left,
            "/cars/" + marmot.car + "/tools/none",
            "/corners/none",
            "/corners/" + marmot.car,
            "/corners/none/given",
            "/corners/none/rounds",
            "/corners/none/rounds/new",
            "/corners/none/watch-points",
            "/corners/" + marmot.left + "/watch-points/none",
            "/corners/" + marmot.left + "/adjustments/none",
            "/corners/" + marmot.left + "/adjusters/none",
            "/rounds/none",
            "/rounds/" + marmot.left,
            "/rounds/" + marmot.car,
            "/rounds/none/sheet",
            "/rounds/none/heights/new",
            "/heights/none",
            "/heights/" + marmot.left,
            "/heights/none/correct",
            "/readings/none/correct",
            "/readings/" + marmot.right + "/correct",
            "/entries/none",
            "/static/none.css",
            "/entries/%3Cscript%3E",
            "/cars/%F0%9F%94%A7")) {
      house(shop.get(path), 404);
    }
    for (String path :
        List.of(
            "/corners/none/given",
            "/rounds/none/heights",
            "/rounds/none/other-side",
            "/heights/none/readings",
            "/entries/none/answer",
            "/entries/none/take-back",
            "/entries/" + marmot.car + "/counts",
            "/cars/none/happenings",
            "/corners/" + marmot.left + "/adjustments/none")) {
      house(shop.browser.post(path, Map.of("key", "k1")), 404);
    }
  }

  @Test
  void a_method_no_page_uses_is_not_that_way() {
    for (String method : List.of("PUT", "DELETE", "PATCH")) {
      house(shop.browser.ask(method, "/cars", null, BodyPublishers.noBody()), 405);
    }
    house(shop.browser.post("/", Map.of()), 405);
    house(shop.browser.post("/corners/" + marmot.left, Map.of()), 405);
    house(shop.get("/corners/" + marmot.left + "/watch-points/tyre-frame/retire"), 405);
  }

  @Test
  void an_address_that_no_reader_can_read_is_said_to_be_none() {
    for (String path :
        List.of(
            "/%u002e",
            "/cars/%u002e",
            "/cars/%u002E%u002e",
            "/static/%ud800",
            "/pair/%udfff%ud800",
            "/corners/%u0041/given",
            "/cars/%",
            "/cars/%4",
            "/cars/%zz",
            "/%%30%30")) {
      for (String method : List.of("GET", "POST", "HEAD")) {
        String answer =
            Raw.ask(
                shop.port(),
                method + " " + path + " HTTP/1.1",
                "Host: 127.0.0.1:" + shop.port(),
                "Origin: http://127.0.0.1:" + shop.port(),
                "Content-Type: " + Browser.FORM,
                "Content-Length: 0",
                "Cookie: " + shop.browser.cookie());
        assertEquals(400, Raw.status(answer), method + " " + path);
      }
    }
  }

  @Test
  void letters_of_an_alphabet_no_page_sends_are_not_read() {
    String photos = "/corners/" + marmot.left + "/photos";
    for (String charset :
        List.of("utf-7", "utf-16", "cp037", "nonsense", "x-user-defined", "", "'", "utf-8x")) {
      String type = Browser.FORM + "; charset=" + charset;
      house(shop.browser.ask("POST", "/cars", type, BodyPublishers.ofString("name=Mole")), 415);
      house(
          shop.browser.ask(
              "POST",
              photos,
              "multipart/form-data; boundary=x; charset=" + charset,
              BodyPublishers.ofString("--x--")),
          415);
    }
    for (String type : List.of(Browser.FORM + ";charset=UTF-8", Browser.FORM + "; charset=utf-8")) {
      shop.browser.ask("POST", "/cars", type, BodyPublishers.ofString("name=")).is(422);
    }
  }

  @Test
  void what_is_no_form_is_not_read() {
    for (String type :
        List.of("application/json", "text/plain", "multipart/form-data; boundary=x")) {
      house(shop.browser.ask("POST", "/cars", type, BodyPublishers.ofString("name=Mole")), 415);
    }
    house(shop.browser.ask("POST", "/cars", null, BodyPublishers.ofString("name=Mole")), 415);
  }

  @Test
  void more_than_a_form_sends_is_too_much() {
    String much = "name=" + "a".repeat(300 * 1024);
    house(shop.browser.ask("POST", "/cars", Browser.FORM, BodyPublishers.ofString(much)), 413);
    byte[] bytes = much.getBytes(StandardCharsets.UTF_8);
    house(
        shop.browser.ask(
            "POST",
            "/cars",
            Browser.FORM,
            BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(bytes))),
        413);
  }

  @Test
  void a_form_that_ends_half_way_is_no_failure_of_ours() throws IOException {
    assertEquals(400, halfSent("500"));
    assertEquals(413, halfSent("99999999999"));
    shop.get("/cars").is(200);
  }

  private int halfSent(String length) throws IOException {
    String here = "127.0.0.1:" + shop.port();
    try (Socket socket = new Socket("127.0.0.1", shop.port())) {
      socket.setSoTimeout(10_000);
      String half =
          String.join(
              Raw.NL,
              "POST /cars HTTP/1.1",
              "Host: " + here,
              "Origin: http://" + here,
              "Cookie: " + shop.browser.cookie(),
              "Content-Type: " + Browser.FORM,
              "Content-Length: " + length,
              "",
              "name=Mar");
      socket.getOutputStream().write(half.getBytes(StandardCharsets.UTF_8));
      socket.shutdownOutput();
      return Raw.status(new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
    }
  }

  /** A browser sends its whole form before it reads: cut off while it sends, it shows no page. */
  @Test
  void who_is_still_sending_too_much_gets_the_page_and_not_a_broken_connection()
      throws IOException {
    byte[] much = ("name=" + "a".repeat(300 * 1024)).getBytes(StandardCharsets.UTF_8);
    int half = much.length / 2;
    try (Socket socket = new Socket("127.0.0.1", shop.port())) {
      socket.setSoTimeout(10_000);
      OutputStream out = socket.getOutputStream();
      String head =
          "POST /cars HTTP/1.1\r\nHost: 127.0.0.1:"
              + shop.port()
              + "\r\nOrigin: http://127.0.0.1:"
              + shop.port()
              + "\r\nCookie: "
              + shop.browser.cookie()
              + "\r\nContent-Type: "
              + Browser.FORM
              + "\r\nContent-Length: "
              + much.length
              + "\r\nConnection: close\r\n\r\n";
      out.write(head.getBytes(StandardCharsets.UTF_8));
      out.write(much, 0, half);
      out.flush();
      // Long enough for a server that answers at once to have hung up.
      LockSupport.parkNanos(Duration.ofMillis(400).toNanos());
      for (int from = half; from < much.length; from += 8192) {
        out.write(much, from, Math.min(8192, much.length - from));
        out.flush();
      }
      String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertTrue(
          answer.startsWith("HTTP/1.1 413"), answer.substring(0, Math.min(80, answer.length())));
      assertTrue(answer.contains("That is more than a form of this book sends"), answer);
    }
  }

  @Test
  void a_body_that_is_no_form_after_all_is_asked_again() {
    for (String body : List.of("name=%zz", "%", "=&=&&", "name")) {
      Page page = shop.browser.post("/cars", body);
      assertTrue(page.status() >= 400 && page.status() < 500, body + " got " + page.status());
      house(page, page.status());
    }
  }

  @Test
  void questions_no_link_asks_do_no_harm() {
    for (String path :
        List.of(
            "/cars/" + marmot.car + "/book?before=x&corner=none&kind=%27&adjuster=%00",
            "/cars/" + marmot.car + "/book?before=-9223372036854775808",
            "/corners/" + marmot.left + "/rounds/new?again=2&after=none",
            "/corners/" + marmot.left + "/adjustments/limit-strap?to=%3Cb%3E")) {
      shop.get(path).is(200);
    }
  }

  private static void house(Page page, int status) {
    assertEquals(status, page.status(), () -> page.path() + ": " + page.html());
    assertEquals("text/html; charset=utf-8", type(page), page.path());
    assertEquals(1, page.each("h1").size(), () -> page.path() + ": " + page.html());
    assertTrue(page.html().contains(StaticFiles.href("spindlebook.css")), page.html());
    for (String inner : List.of("Exception", "\tat ", "java.", "io.javalin", "Jetty")) {
      assertFalse(page.html().contains(inner), page.html());
    }
  }

  private static String type(Page page) {
    return page.headers()
        .firstValue("Content-Type")
        .orElse("")
        .toLowerCase(java.util.Locale.ROOT)
        .replaceAll("; *charset", "; charset");
  }
}
