package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.web.Listening;
import spindlebook.web.StaticFiles;

/** What a foreign page, name or sender may not do, asked with a paired device's own cookie. */
class GuardTest {
  private static final String BODY = "name=Mole";

  @TempDir Path folder;
  private Shop shop;
  private String here;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    here = "127.0.0.1:" + shop.port();
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private String cookie() {
    return "Cookie: " + shop.browser.cookie();
  }

  private int look(String host) {
    return Raw.status(Raw.ask(shop.port(), "GET /cars HTTP/1.1", "Host: " + host, cookie()));
  }

  private int write(String... lines) {
    String head = String.join(Raw.NL, lines) + Raw.NL + cookie() + Raw.NL;
    return Raw.status(
        Raw.send(
            shop.port(),
            "POST /cars HTTP/1.1"
                + Raw.NL
                + head
                + "Content-Type: application/x-www-form-urlencoded"
                + Raw.NL
                + "Content-Length: "
                + BODY.length()
                + Raw.NL
                + "Connection: close"
                + Raw.NL
                + Raw.NL
                + BODY));
  }

  @Test
  void what_a_page_of_ours_sends_is_written() {
    assertEquals(303, write("Host: " + here, "Origin: http://" + here));
    assertEquals(1, shop.entries() - entriesOfCorners());
  }

  private int entriesOfCorners() {
    return (int) shop.lines().stream().filter(l -> l.contains("\"kind\":\"corner\"")).count();
  }

  @Test
  void what_a_foreign_page_sends_is_refused_and_nothing_is_written() {
    int port = shop.port();
    for (String origin :
        List.of(
            "http://evil.example",
            "http://evil.example:" + port,
            "http://127.0.0.1:" + (port + 1),
            "http://127.0.0.1",
            "https://" + here,
            "http://localhost:" + port,
            "http://" + here + ".evil.example",
            "http://" + here + "/",
            "null",
            "")) {
      assertEquals(403, write("Host: " + here, "Origin: " + origin), origin);
    }
    assertEquals(403, write("Host: " + here), "without an Origin");
    assertEquals(
        403,
        write("Host: " + here, "Origin: http://" + here, "Origin: http://evil.example"),
        "with two");
    assertEquals(
        403,
        write("Host: " + here, "Origin: http://" + here, "Sec-Fetch-Site: cross-site"),
        "with a browser that says so itself");
    assertEquals(0, shop.entries());
  }

  @Test
  void every_method_that_is_not_looking_needs_our_origin() {
    for (String method : List.of("PUT", "DELETE", "PATCH", "OPTIONS", "POST")) {
      String answer = Raw.ask(shop.port(), method + " /cars HTTP/1.1", "Host: " + here, cookie());
      assertEquals(403, Raw.status(answer), method);
    }
  }

  @Test
  void the_book_answers_to_its_own_names_with_its_own_port_only() throws IOException {
    int port = shop.port();
    for (String host :
        List.of(
            here,
            "localhost:" + port,
            "LOCALHOST:" + port,
            "[::1]:" + port,
            "[0:0:0:0:0:0:0:1]:" + port,
            InetAddress.getLocalHost().getHostName().replaceFirst("\\..*", "")
                + ".local:"
                + port)) {
      assertEquals(200, look(host), host);
    }
    for (String host :
        List.of(
            "evil.example:" + port,
            "garage.lan:" + port,
            "127.0.0.1.evil.example:" + port,
            "evil.local.example:" + port,
            "garage.local:" + port,
            "garage.garage.local:" + port,
            ".local:" + port,
            "203.0.113.7:" + port,
            "[2001:db8::1]:" + port,
            "127.0.0.1",
            "127.0.0.1:" + (port + 1),
            "[::1]",
            "[::1]:1",
            "2130706433:" + port,
            "0x7f.1:" + port,
            "127.1:" + port)) {
      assertEquals(421, look(host), host);
    }
  }

  @Test
  void the_book_answers_to_every_address_this_machine_has() throws IOException {
    for (var one : NetworkInterface.networkInterfaces().filter(GuardTest::up).toList()) {
      for (var address : one.inetAddresses().toList()) {
        String host = address.getHostAddress().replaceFirst("%.*", "");
        String written = host.contains(":") ? "[" + host + "]" : host;
        assertEquals(200, look(written + ":" + shop.port()), written);
        assertEquals(421, look(written + ":1"), written);
      }
    }
  }

  private static boolean up(NetworkInterface one) {
    try {
      return one.isUp();
    } catch (SocketException gone) {
      return false;
    }
  }

  @Test
  void who_holds_many_connections_open_keeps_nobody_out_for_long() throws IOException {
    List<Socket> crowd = new ArrayList<>();
    try {
      for (int i = 0; i < 240; i++) {
        crowd.add(new Socket("127.0.0.1", shop.port()));
      }
      shop.stranger().get("/pair").is(200);
    } finally {
      for (Socket socket : crowd) {
        socket.close();
      }
    }
  }

  @Test
  void a_request_names_one_host_and_its_first_line_the_same_one() {
    int port = shop.port();
    String own = "Host: " + here;
    assertEquals(200, first("GET http://" + here + "/cars HTTP/1.1", own));
    List<Integer> refused = List.of(400, 421);
    for (String[] lines :
        new String[][] {
          {"GET http://evil.example:" + port + "/cars HTTP/1.1", own},
          {"GET http://evil.example/cars HTTP/1.1", "Host: evil.example"},
          {"GET /cars HTTP/1.1", own, "Host: evil.example"},
          {"GET /cars HTTP/1.1", own, own},
          {"GET /cars HTTP/1.1"},
          {"GET /cars HTTP/1.0"},
          {"GET /cars HTTP/1.1", "Host:"},
          {"GET /cars HTTP/1.1", "Host: " + here + "@evil.example"},
          {"GET /cars HTTP/1.1", "Host: [::1:" + port}
        }) {
      int status = first(lines);
      assertTrue(refused.contains(status), String.join(" | ", lines) + " got " + status);
    }
  }

  private int first(String... lines) {
    String[] all = java.util.Arrays.copyOf(lines, lines.length + 1);
    all[lines.length] = cookie();
    return Raw.status(Raw.ask(shop.port(), all));
  }

  @Test
  void a_name_said_at_the_start_is_let_in_and_no_other() {
    Listening listening = Listening.of("here", 0, List.of("Garage.lan"), null);
    try (App app = start(listening)) {
      assertEquals(401, Raw.status(hosted(app, "garage.lan:" + app.port())));
      assertEquals(421, Raw.status(hosted(app, "barn.lan:" + app.port())));
    }
  }

  private App start(Listening listening) {
    return App.start(folder.resolve("other"), listening, Clock.systemUTC(), t -> {});
  }

  private static String hosted(App app, String host) {
    return Raw.ask(app.port(), "GET /cars HTTP/1.1", "Host: " + host);
  }

  @Test
  void headers_that_say_who_forwarded_it_change_nothing() {
    String[] spoofed = {
      "X-Forwarded-Host: " + here,
      "X-Forwarded-Proto: https",
      "X-Forwarded-For: 127.0.0.1",
      "Forwarded: host=" + here + ";proto=https;for=127.0.0.1",
      "X-Real-IP: 127.0.0.1"
    };
    String lines = String.join(Raw.NL, spoofed);
    assertEquals(421, look("evil.example" + Raw.NL + lines));
    assertEquals(403, write("Host: " + here, lines));
    assertEquals(403, write("Host: " + here, "Origin: https://" + here, lines));
    assertEquals(
        401, Raw.status(Raw.ask(shop.port(), "GET /cars HTTP/1.1", "Host: " + here, lines)));
    assertEquals(0, shop.entries());
  }

  @Test
  void every_answer_says_what_a_page_may_load_and_who_may_show_it() {
    String css = StaticFiles.href("spindlebook.css");
    for (String answer :
        List.of(
            Raw.ask(shop.port(), "GET /cars HTTP/1.1", "Host: " + here, cookie()),
            Raw.ask(shop.port(), "GET /cars HTTP/1.1", "Host: " + here),
            Raw.ask(shop.port(), "GET /nowhere HTTP/1.1", "Host: " + here, cookie()),
            Raw.ask(shop.port(), "GET " + css + " HTTP/1.1", "Host: " + here),
            Raw.ask(shop.port(), "GET / HTTP/1.1", "Host: evil.example"),
            Raw.ask(shop.port(), "POST /cars HTTP/1.1", "Host: " + here),
            Raw.ask(shop.port(), "GET / HTTP/1.1"),
            Raw.ask(shop.port(), "GET /%zz HTTP/1.1", "Host: " + here, cookie()),
            Raw.ask(shop.port(), "GET /x/..;/cars HTTP/1.1", "Host: " + here, cookie()),
            Raw.ask(shop.port(), "GET / HTTP/1.1", "Host: " + here, "Much: " + "a".repeat(20_000)),
            Raw.send(shop.port(), "no request at all\r\n\r\n"))) {
      String head = answer.substring(0, answer.indexOf("\r\n\r\n"));
      for (String header :
          List.of(
              "Content-Security-Policy: default-src 'none'; script-src 'self'; style-src 'self';"
                  + " img-src 'self' data: blob:; connect-src 'self'; form-action 'self';"
                  + " frame-ancestors 'none'; base-uri 'none'",
              "X-Content-Type-Options: nosniff",
              "Referrer-Policy: same-origin",
              "Cross-Origin-Opener-Policy: same-origin",
              "Cross-Origin-Resource-Policy: same-origin",
              "Cache-Control: ")) {
        assertTrue(head.contains(header), () -> header + " is not in " + head);
      }
      assertFalse(head.contains("Server:"), head);
      assertFalse(answer.contains("Jetty") || answer.contains("Exception"), answer);
    }
  }

  @Test
  void no_path_leads_out_of_what_is_served() {
    for (String path :
        List.of(
            "/static/../devices.json",
            "/static/../../book.jsonl",
            "/static/..%2f..%2fbook.jsonl",
            "/static/%2e%2e/%2e%2e/devices.json",
            "/static/..\\devices.json",
            "/static/..%5cdevices.json",
            "/static//etc/passwd",
            "/static/%2fetc%2fpasswd",
            "/static/%00",
            "/static/.",
            "/static/",
            "/static/..;/..;/devices.json",
            "/cars/..%2f..%2fdevices.json",
            "/entries/../../devices.json",
            "/pair/..%2fcars",
            "/devices/..%2f..%2fdevices.json",
            "//etc/passwd",
            "/%2e%2e/devices.json")) {
      for (String cookie : List.of(cookie(), "Cookie: none=1")) {
        String answer = Raw.ask(shop.port(), "GET " + path + " HTTP/1.1", "Host: " + here, cookie);
        int status = Raw.status(answer);
        assertTrue(List.of(400, 401, 404, 410).contains(status), path + " got " + status);
        assertFalse(answer.contains("token-sha256") || answer.contains("root:"), path);
      }
    }
  }

  @Test
  void no_path_gets_round_the_door_by_way_of_what_is_open() {
    for (String path :
        List.of(
            "/static/../cars",
            "/static/..%2fcars",
            "/static/%2e%2e/cars",
            "/pair/../cars",
            "/pair/..;/cars",
            "/pair;x/../cars",
            "/PAIR/../cars",
            "/./cars",
            "//cars",
            "/cars;pair",
            "/cars/",
            "/cars?x=/pair/",
            "/cars#/pair/")) {
      String answer = Raw.ask(shop.port(), "GET " + path + " HTTP/1.1", "Host: " + here);
      assertTrue(Raw.status(answer) >= 400, path + " got " + Raw.status(answer));
      assertFalse(answer.contains("A new car"), path);
    }
  }

  /** Takes some seconds: that is what it is about. */
  @Test
  void a_body_that_comes_drop_by_drop_is_cut_off() throws IOException {
    int drops = 0;
    try (Socket socket = new Socket("127.0.0.1", shop.port())) {
      socket.setSoTimeout(100);
      OutputStream out = socket.getOutputStream();
      String head =
          String.join(
              Raw.NL,
              "POST /cars HTTP/1.1",
              "Host: " + here,
              "Origin: http://" + here,
              cookie(),
              "Content-Type: application/x-www-form-urlencoded",
              "Content-Length: 200000",
              "",
              "name=");
      out.write(head.getBytes(StandardCharsets.UTF_8));
      String answer = "";
      while (answer.isEmpty() && drops < 400) {
        out.write('a');
        out.flush();
        drops++;
        answer = some(socket);
        LockSupport.parkNanos(Duration.ofMillis(20).toNanos());
      }
      assertTrue(answer.startsWith("HTTP/1.1 408"), answer);
    } catch (SocketException hungUp) {
      assertTrue(drops > 1, "cut off at once");
    }
    assertTrue(drops < 400, "still listening after " + drops + " drops");
    assertEquals(0, shop.entries());
    shop.get("/cars").is(200);
  }

  private static String some(Socket socket) throws IOException {
    byte[] buffer = new byte[200];
    try {
      int read = socket.getInputStream().read(buffer);
      return read < 0 ? "hung up" : new String(buffer, 0, read, StandardCharsets.UTF_8);
    } catch (java.net.SocketTimeoutException nothingYet) {
      return "";
    }
  }

  @Test
  void who_asks_faster_than_a_phone_ever_does_is_told_to_wait() {
    try (App app = App.start(folder.resolve("other"), 0, new MovedClock(), t -> {})) {
      Browser browser = new Browser(app.port(), "Sam");
      int let = 0;
      while (let < 2000 && browser.get("/cars").status() == 401) {
        let++;
      }
      assertTrue(let >= 100 && let < 2000, "let in " + let);
      Page wait = browser.get("/cars").is(429);
      assertTrue(wait.text().contains("wait a little"), wait.text());
    }
  }
}
