package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Requests as our pages send them, each spoilt in one to four ways: whatever comes, no answer is a
 * 5xx, nothing speaks of its insides, the book still reads and memory stays flat. {@code
 * -Drequests=100000} for the long run; docs/benchmarks.md has its figures.
 */
class MutatedRequestsTest {
  private static final int REQUESTS = Integer.getInteger("requests", 1000);

  /** A book of its own after so many, so that none grows without end. */
  private static final int A_BOOK = 2500;

  private static final List<String> ODD_TEXTS =
      List.of(
          "",
          " ",
          "-1",
          "0",
          "NaN",
          "Infinity",
          "1e308",
          "-1e308",
          "1e-320",
          "9".repeat(400),
          "81/4",
          "8 1/3",
          "-8 1/4",
          "1/0",
          "0/0",
          "8,25",
          "٣",
          "½",
          "8 1/4 in 3 mm",
          "99999 ft",
          "\u0000",
          "\r\nX-Odd: 1",
          "\ud800",
          "\u202e8",
          "𝟠",
          "%00",
          "<b>\"'",
          "${7*7}",
          "../../etc/passwd",
          "null",
          "true",
          "[]",
          "{}",
          "car",
          "-0",
          "0.0000000000001",
          "9223372036854775808",
          "-9223372036854775809",
          "a".repeat(3000),
          "2031-13-45",
          "so",
          "keep",
          "look",
          "360",
          "-360",
          "89.999999",
          "100 m",
          "254000 mm",
          "0 mm",
          "e1",
          "tape");
  private static final List<String> ODD_PLACES =
      List.of(
          "%u002e",
          "%",
          "%zz",
          "%00",
          "%0a",
          "%2e%2e",
          "..",
          ".",
          ";x=1",
          "%2f",
          "%5c",
          "\\",
          "~",
          "%ff%fe",
          "%c0%ae",
          "%F0%9F%94%A7",
          "{corner}",
          "*",
          "'",
          "%22",
          "a".repeat(300),
          "-1",
          "null",
          "none",
          "new",
          "take-back",
          "%ed%a0%80",
          "static",
          "pair");
  private static final List<String> METHODS =
      List.of(
          "GET", "POST", "HEAD", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "CONNECT", "FOO");
  private static final List<String> ODD_LINES =
      List.of(
          "X-HTTP-Method-Override: POST",
          "X-HTTP-Method-Override: DELETE",
          "Expect: 100-continue",
          "Cookie: device=x",
          "Cookie: who=%zz; device=\"",
          "Accept-Encoding: gzip;q=x",
          "If-None-Match: *",
          "If-Modified-Since: yesterday",
          "Range: bytes=0-",
          "Range: bytes=9-1",
          "Content-Encoding: gzip",
          "X-Forwarded-Proto: https",
          "Upgrade: websocket",
          "Upgrade: h2c",
          "Sec-Fetch-Site: cross-site",
          "Accept-Language: x-pirate",
          "Content-Language: \u00e9",
          "Authorization: Basic x",
          "Forwarded: for=_x",
          "Content-Disposition: form-data",
          "User-Agent: ",
          "Date: never");
  private static final List<String> TYPES =
      List.of(
          Browser.FORM,
          Browser.FORM,
          Browser.FORM,
          Browser.FORM + "; charset=utf-7",
          Browser.FORM + "; charset=",
          Browser.FORM + ";charset=utf-8;charset=x",
          "multipart/form-data; boundary=x",
          "multipart/form-data; boundary=",
          "multipart/form-data; boundary=\"",
          "multipart/form-data",
          "application/json",
          "text/plain; charset=utf-16",
          "x",
          "/",
          ";",
          "text/html;;;");

  private record Sent(String method, String path, Map<String, String> fields) {}

  private final Random random = new Random(Long.getLong("seed", 1));
  private final List<String> wrong = new ArrayList<>();

  @Test
  void whatever_comes_no_answer_is_our_own_failure(@TempDir Path folder) throws Exception {
    long first = 0;
    long last = 0;
    int sent = 0;
    try (Stacks stacks = new Stacks()) {
      for (int book = 0; sent < REQUESTS; book++) {
        try (Shop shop = new Shop(Files.createDirectory(folder.resolve("book-" + book)))) {
          List<Sent> asOurs = asOurPagesSend(shop);
          for (int i = 0; i < A_BOOK && sent < REQUESTS; i++, sent++) {
            send(shop, asOurs.get(random.nextInt(asOurs.size())));
          }
          assertEquals(List.of(), wrong);
          shop.get("/cars").is(200);
          assertEquals(List.of(), shop.told);
          shop.reopen();
          shop.get("/cars").is(200);
        }
        last = usedBytes();
        first = first == 0 ? last : first;
      }
      assertEquals(List.of(), stacks.seen());
    }
    assertTrue(last < 1.3 * first + (32 << 20), "used " + first + " bytes, then " + last);
  }

  private static long usedBytes() {
    System.gc();
    Runtime machine = Runtime.getRuntime();
    return machine.totalMemory() - machine.freeMemory();
  }

  /** Every page that can be reached, and every form on it. */
  private static List<Sent> asOurPagesSend(Shop shop) {
    Marmot marmot = new Marmot(shop);
    marmot.adjust(marmot.left, "limit-strap", "18 3/8");
    String round = marmot.startRound(marmot.left, Map.of());
    String height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    marmot.read(height, "straight", Marmot.STRAP, "18 11/16");
    marmot.heightAsAt(round, "stop-touch", "12", height);
    List<Sent> all = new ArrayList<>();
    all.add(new Sent("POST", "/rounds/" + round + "/sent", Map.of("what", "height", "key", "k")));
    all.add(
        new Sent(
            "POST",
            "/rounds/" + round + "/sent",
            Map.of("what", "reading", "key", "l", "height", height, "row", Marmot.STRAP)));
    for (Page page : Crawl.from(shop.browser, "/", "/cars")) {
      if (page.path().isEmpty()) {
        continue; // The same page again.
      }
      all.add(new Sent("GET", page.path(), Map.of()));
      // Revoked, it would only knock at the door from then on.
      for (Form form : page.path().startsWith("/devices/") ? List.<Form>of() : page.forms()) {
        String to = form.action() == null || form.action().isEmpty() ? page.path() : form.action();
        all.add(new Sent("POST", to, form.values()));
      }
    }
    return all;
  }

  private void send(Shop shop, Sent asOurs) {
    String method = asOurs.method();
    String path = asOurs.path();
    String type = Browser.FORM;
    Map<String, String> fields = new LinkedHashMap<>(asOurs.fields());
    fields.computeIfPresent("key", (k, v) -> "k" + random.nextInt(1_000_000));
    List<String> odd = new ArrayList<>();
    for (int ways = 1 + random.nextInt(4); ways > 0; ways--) {
      switch (random.nextInt(8)) {
        case 0 -> method = any(METHODS);
        case 1 -> path = spoilt(path);
        case 2 -> path += (path.contains("?") ? "&" : "?") + any(ODD_PLACES) + "=" + asked();
        case 3 -> odd.add(any(ODD_LINES));
        case 4 -> type = any(TYPES);
        default -> spoil(fields);
      }
    }
    String body = method.equals("GET") ? "" : body(fields);
    String request =
        String.join(
            Raw.NL,
            method + " " + path + " HTTP/1.1",
            "Host: 127.0.0.1:" + shop.port(),
            "Origin: http://127.0.0.1:" + shop.port(),
            "Cookie: who=Sam; " + shop.browser.cookie(),
            "Content-Type: " + type,
            "Content-Length: " + body.length(),
            "Connection: close");
    String lines = odd.isEmpty() ? "" : Raw.NL + String.join(Raw.NL, odd);
    String answer = Raw.send(shop.port(), request + lines + Raw.NL + Raw.NL + body);
    // 501 is what a method nobody knows is answered with, by the letter of the standard.
    boolean ours = answer.startsWith("HTTP/1.1 5") && !answer.startsWith("HTTP/1.1 501");
    if (ours || !answer.startsWith("HTTP/1.1 ") || answer.contains("\tat ")) {
      wrong.add(answer.lines().findFirst().orElse("nothing") + " to " + request + lines + body);
    }
  }

  private String spoilt(String path) {
    String[] parts = path.split("/", -1);
    parts[random.nextInt(parts.length)] = any(ODD_PLACES);
    String whole = String.join("/", parts);
    return whole.startsWith("/") ? whole : "/" + whole;
  }

  private String asked() {
    return random.nextBoolean() ? any(ODD_PLACES) : encoded(any(ODD_TEXTS));
  }

  private void spoil(Map<String, String> fields) {
    if (fields.isEmpty() || random.nextInt(8) == 0) {
      fields.put(any(ODD_TEXTS), any(ODD_TEXTS));
      return;
    }
    String name = any(List.copyOf(fields.keySet()));
    switch (random.nextInt(5)) {
      case 0 -> fields.remove(name);
      case 1 -> fields.put(name, any(List.copyOf(fields.values())));
      default -> fields.put(name, any(ODD_TEXTS));
    }
  }

  private String body(Map<String, String> fields) {
    StringBuilder body = new StringBuilder();
    fields.forEach(
        (name, value) -> {
          int times = random.nextInt(20) == 0 ? 2 : 1;
          for (int i = 0; i < times; i++) {
            body.append(body.isEmpty() ? "" : "&").append(encoded(name)).append('=');
            body.append(random.nextInt(40) == 0 ? any(ODD_PLACES) : encoded(value));
          }
        });
    return body.toString();
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private <T> T any(List<T> things) {
    return things.get(random.nextInt(things.size()));
  }
}
