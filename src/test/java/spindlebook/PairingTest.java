package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;
import spindlebook.device.Code;
import spindlebook.web.Listening;

/** Who gets in and how, through the real server; the clock stands unless a test moves it. */
class PairingTest {
  @TempDir Path folder;
  private final MovedClock clock = new MovedClock();
  private App app;
  private Browser guesser;

  @BeforeEach
  void open() {
    app = App.start(folder, 0, clock, t -> {});
  }

  @AfterEach
  void close() {
    app.close();
  }

  private Browser stranger() {
    return new Browser(app.port(), "Sam");
  }

  private Browser paired() {
    return Browser.paired(app, "Sam");
  }

  private static Page press(Browser browser, Code code) {
    return browser.post(code.path(), Map.of("name", "phone"));
  }

  private static boolean isIn(Browser browser) {
    return browser.get("/cars").status() == 200;
  }

  @Test
  void without_pairing_there_is_a_page_that_says_how_and_this_machine_is_no_exception() {
    Page page = stranger().get("/cars").is(401);
    assertTrue(page.text().contains("not paired"), page.text());
    assertTrue(page.text().contains("Pair another device"), page.text());
    assertTrue(page.text().contains("start it again"), page.text());
    assertTrue(page.html().contains("href=\"/pair\""), page.html());
  }

  @Test
  void the_link_asks_for_a_name_and_the_button_lets_in() {
    Browser browser = stranger();
    Code code = app.code();
    Page page = browser.get(code.path()).is(200);
    assertTrue(page.text().contains("It will keep the book"), page.text());
    browser.pair(code.path(), "Sam's phone");
    assertTrue(isIn(browser));
    assertTrue(browser.get("/devices").text().contains("Sam's phone this device"));
  }

  @Test
  void looking_at_the_link_uses_nothing_up() {
    Code code = app.code();
    for (int i = 0; i < 20; i++) {
      stranger().get(code.path()).is(200);
      stranger().ask("HEAD", code.path(), null, java.net.http.HttpRequest.BodyPublishers.noBody());
    }
    press(stranger(), code).is(303);
  }

  @Test
  void a_name_is_asked_for_before_the_code_is_used_up() {
    Code code = app.code();
    Page again = stranger().post(code.path(), Map.of("name", " ")).is(422);
    assertTrue(again.text().contains("needs a name"), again.text());
    stranger().post(code.path(), Map.of("name", "a".repeat(41))).is(422);
    press(stranger(), code).is(303);
  }

  @Test
  void a_code_pairs_one_device_and_no_second_one() {
    Code code = app.code();
    press(stranger(), code).is(303);
    Page used = press(stranger(), code).is(410);
    assertTrue(used.text().contains("used by another device"), used.text());
    assertEquals(List.of(), used.headers().allValues("Set-Cookie"));
    stranger().get(code.path()).is(410);
    stranger().post("/pair", Map.of("code", code.spoken())).is(422);
  }

  @Test
  void of_two_phones_that_press_at_once_one_is_paired_and_one_is_told() throws Exception {
    ExecutorService phones = Executors.newFixedThreadPool(4);
    try {
      for (int round = 0; round < 10; round++) {
        Code code = app.code();
        CyclicBarrier together = new CyclicBarrier(4);
        List<Callable<Integer>> presses = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
          Browser phone = stranger();
          presses.add(
              () -> {
                together.await();
                return press(phone, code).status();
              });
        }
        List<Integer> statuses = new ArrayList<>();
        for (Future<Integer> press : phones.invokeAll(presses)) {
          statuses.add(press.get());
        }
        statuses.sort(null);
        assertEquals(List.of(303, 410, 410, 410), statuses);
      }
    } finally {
      phones.shutdownNow();
    }
    assertEquals(10, listed().size());
  }

  private List<String> listed() {
    Browser looker = paired();
    List<String> names = looker.get("/devices").is(200).each("li");
    return names.subList(0, names.size() - 1);
  }

  @Test
  void a_code_is_over_after_five_minutes_of_the_servers_clock() {
    Code code = app.code();
    clock.move(Duration.ofMinutes(5).minusSeconds(1));
    stranger().get(code.path()).is(200);
    clock.move(Duration.ofSeconds(1));
    Page late = stranger().get(code.path()).is(410);
    assertTrue(late.text().contains("five minutes"), late.text());
    assertTrue(late.text().contains("start it again"), late.text());
    press(stranger(), code).is(410);
    stranger().post("/pair", Map.of("code", code.spoken())).is(422);
  }

  @Test
  void a_restart_ends_all_codes_and_keeps_all_devices() {
    Browser before = paired();
    Code code = app.code();
    app.close();
    open();
    press(stranger(), code).is(410);
    assertTrue(isIn(before.at(app.port())));
    assertTrue(isIn(paired()), "and a fresh code lets the next one in");
  }

  @Test
  void the_short_code_may_be_typed_small_and_with_or_without_its_dash() {
    for (String how : List.of("as is", "small", "no dash", "spaces", "long dash")) {
      Code code = app.code();
      String spoken = code.spoken();
      String typed =
          switch (how) {
            case "small" -> spoken.toLowerCase(Locale.ROOT);
            case "no dash" -> spoken.replace("-", "");
            case "spaces" -> " " + spoken.replace("-", "  ") + " ";
            case "long dash" -> spoken.replace("-", "–");
            default -> spoken;
          };
      clock.move(Duration.ofSeconds(60));
      Browser browser = stranger();
      Page sent = browser.get("/pair").is(200).form("/pair").with("code", typed).send().is(303);
      browser.pair(sent.location(), how);
      assertTrue(isIn(browser), how);
    }
  }

  @Test
  void a_short_code_has_no_letters_that_are_taken_for_one_another() {
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < 500; i++) {
      String spoken = app.code().spoken();
      assertTrue(spoken.matches("[A-HJKMNP-Z2-9]{4}-[A-HJKMNP-Z2-9]{4}"), spoken);
      assertTrue(seen.add(spoken), spoken);
    }
  }

  @Test
  void who_guesses_short_codes_is_soon_told_to_wait_and_the_right_one_waits_with_him() {
    Code code = app.code();
    int guesses = 0;
    while (guesses < 100 && guess("AAAA-AA" + (20 + guesses)).status() == 422) {
      guesses++;
    }
    assertTrue(guesses <= 10, "guessed " + guesses + " times");
    Page wait = guess(code.spoken()).is(429);
    assertTrue(wait.text().contains("Wait a minute"), wait.text());
    stranger().get(code.path()).is(200);
    clock.move(Duration.ofSeconds(60));
    guess(code.spoken()).is(303);
  }

  @Test
  void in_the_life_of_a_code_no_more_than_a_few_dozen_guesses_are_let_through() {
    int let = 0;
    for (int second = 0; second < 300; second++) {
      for (int i = 0; i < 3; i++) {
        let += guess("BBBB-BBBB").status() == 422 ? 1 : 0;
      }
      clock.move(Duration.ofSeconds(1));
    }
    assertTrue(let > 0 && let < 50, let + " guesses");
  }

  private Page guess(String code) {
    if (guesser == null) {
      guesser = stranger();
    }
    return guesser.post("/pair", Map.of("code", code));
  }

  @Test
  void the_cookie_cannot_be_read_by_a_page_nor_sent_from_one_and_lasts_by_seconds() {
    List<String> cookies = press(stranger(), app.code()).is(303).headers().allValues("Set-Cookie");
    assertEquals(1, cookies.size());
    assertTrue(
        cookies
            .get(0)
            .matches(
                "device=[A-Za-z0-9_-]{43}; Path=/; Max-Age=31536000; HttpOnly; SameSite=Strict"),
        cookies.get(0));
  }

  @Test
  void behind_a_proxy_that_was_declared_the_cookie_stays_on_https() throws IOException {
    Listening listening = Listening.of("here", 0, List.of(), "https://book.example.org");
    try (App proxied = App.start(folder.resolve("other"), listening, clock, t -> {})) {
      assertEquals("https://book.example.org", proxied.addresses().get(0));
      String secure = posted(proxied, "book.example.org", "https://book.example.org");
      assertEquals(303, Raw.status(secure), secure);
      assertTrue(secure.contains("SameSite=Strict; Secure"), secure);
      String plainOrigin = posted(proxied, "book.example.org", "http://book.example.org");
      assertEquals(403, Raw.status(plainOrigin));
      String here = "127.0.0.1:" + proxied.port();
      String direct = posted(proxied, here, "http://" + here);
      assertEquals(303, Raw.status(direct), direct);
      assertFalse(direct.contains("Secure"), direct);
    }
  }

  private static String posted(App app, String host, String origin) {
    return Raw.send(
        app.port(),
        String.join(
            Raw.NL,
            "POST " + app.code().path() + " HTTP/1.1",
            "Host: " + host,
            "Origin: " + origin,
            "X-Forwarded-Proto: https",
            "Content-Type: " + Browser.FORM,
            "Content-Length: 10",
            "Connection: close",
            "",
            "name=phone"));
  }

  @Test
  void a_revoked_device_is_out_at_once_and_stays_out() {
    Browser owner = paired();
    Browser lost = Browser.paired(app, "Ann");
    assertTrue(isIn(lost));
    Page page = owner.get(deviceOf(owner, "Ann's phone")).is(200);
    assertFalse(page.text().contains("in your hand"), page.text());
    page.form(page.path() + "/revoke").keep();
    lost.get("/cars").is(401);
    lost.post("/cars", Map.of("name", "Mole")).is(401);
    app.close();
    open();
    lost.at(app.port()).get("/cars").is(401);
    assertTrue(isIn(owner.at(app.port())));
  }

  private static String deviceOf(Browser browser, String name) {
    java.util.regex.Matcher link =
        java.util.regex.Pattern.compile("href=\"(/devices/d-[^\"]*)\">" + name + "<")
            .matcher(browser.get("/devices").is(200).html().replace("&#39;", "'"));
    assertTrue(link.find(), name);
    return link.group(1);
  }

  @Test
  void ones_own_device_is_revoked_after_a_warning_and_a_restart_lets_in_again() {
    Browser only = paired();
    Page page = only.get(deviceOf(only, "Sam's phone")).is(200);
    assertTrue(page.text().contains("the device in your hand"), page.text());
    assertTrue(page.text().contains("No other device keeps the book"), page.text());
    Page sent = page.form(page.path() + "/revoke").keep();
    only.get(sent.location()).is(401);
    app.close();
    open();
    assertTrue(isIn(paired()));
  }

  @Test
  void a_device_is_renamed_and_the_list_says_when_it_was_here() {
    Browser browser = paired();
    Page page = browser.get(deviceOf(browser, "Sam's phone")).is(200);
    page.form(page.path()).with("name", "Sam's old phone").keep();
    clock.move(Duration.ofHours(30));
    String list = browser.get("/devices").is(200).text();
    assertTrue(list.contains("Sam's old phone this device"), list);
    assertTrue(list.contains("paired 4 May 2031 · last here 5 May 2031"), list);
    app.close();
    open();
    list = paired().get("/devices").is(200).text();
    assertTrue(list.contains("Sam's old phone keeps the book"), list);
    assertTrue(list.contains("last here 5 May 2031"), list);
  }

  @Test
  void a_device_that_keeps_the_book_shows_the_next_one_a_square_a_link_and_a_short_code() {
    Browser owner = paired();
    Form form = owner.get("/devices/new-link").is(200).form("/devices/new-link");
    Page page = form.with("may", "keep").send().is(200);
    assertTrue(page.html().contains("<svg class=\"qr\""), page.html());
    assertTrue(page.text().contains("http://127.0.0.1:" + app.port() + "/pair/"), page.text());
    Browser next = stranger();
    next.pair(page.linkIn(), "Bo's phone");
    next.post("/cars", Map.of("name", "Mole")).is(303);
  }

  @Test
  void what_is_not_said_or_odd_gives_a_link_that_only_looks() {
    Browser owner = paired();
    Form form = owner.get("/devices/new-link").is(200).form("/devices/new-link");
    for (Page made :
        List.of(
            form.send(),
            owner.post("/devices/new-link", Map.of()),
            owner.post("/devices/new-link", Map.of("may", "KEEP")),
            owner.post("/devices/new-link", "may=keep&may=look"))) {
      assertTrue(made.is(200).text().contains("It may only look"), made.text());
      Browser next = stranger();
      next.pair(made.linkIn(), "wall screen");
      next.post("/cars", Map.of("name", "Mole")).is(403);
    }
  }

  @Test
  void a_device_that_keeps_the_book_is_warned_before_it_may_only_look() {
    Browser owner = paired();
    String look = owner.post("/devices/new-link", Map.of("may", "look")).is(200).linkIn();
    String alone = owner.get(look).is(200).text();
    assertTrue(alone.contains("This device keeps the book now"), alone);
    assertTrue(alone.contains("No other device keeps the book"), alone);
    Browser second = Browser.paired(app, "Ann");
    String oneOfTwo = owner.get(look).is(200).text();
    assertTrue(oneOfTwo.contains("This device keeps the book now"), oneOfTwo);
    assertFalse(oneOfTwo.contains("No other device keeps the book"), oneOfTwo);
    Page again = owner.post(look, Map.of("name", " ")).is(422);
    assertTrue(again.text().contains("This device keeps the book now"), again.text());
    for (Page unwarned :
        List.of(
            stranger().get(look), second.get(app.code().path()), stranger().get("/pair").is(200))) {
      assertFalse(unwarned.is(200).text().contains("keeps the book now"), unwarned.text());
    }
  }

  @Test
  void revoking_a_device_ends_the_codes_it_may_have_made() {
    Browser owner = paired();
    Browser lost = Browser.paired(app, "Ann");
    String made = lost.post("/devices/new-link", Map.of("may", "keep")).is(200).linkIn();
    String page = deviceOf(owner, "Ann's phone");
    owner.get(page).form(page + "/revoke").keep();
    stranger().post(made, Map.of("name", "phone")).is(410);
  }

  @Test
  void a_device_that_may_only_look_reads_and_neither_writes_nor_pairs() {
    Browser owner = paired();
    Page made = owner.post("/devices/new-link", Map.of("may", "look")).is(200);
    Browser looker = stranger();
    Page offered = looker.get(made.linkIn()).is(200);
    assertTrue(offered.text().contains("may only look"), offered.text());
    looker.pair(made.linkIn(), "wall screen");
    assertTrue(isIn(looker));
    Page refused = looker.post("/cars", Map.of("name", "Mole")).is(403);
    assertTrue(refused.text().contains("Nothing was written"), refused.text());
    looker.get("/devices/new-link").is(403);
    looker.get(deviceOf(owner, "wall screen")).is(403);
    String list = looker.get("/devices").is(200).text();
    assertTrue(list.contains("wall screen this device · may only look"), list);
    assertFalse(list.contains("Pair another device"), list);
  }

  @Test
  void a_browser_that_is_paired_anew_takes_its_old_place() {
    Browser browser = paired();
    browser.pair(app.code().path(), "the same");
    List<String> devices = listed();
    assertEquals(1, devices.size(), devices.toString());
    assertTrue(devices.get(0).startsWith("the same"), devices.toString());
  }

  @Test
  void an_entry_names_the_device_it_was_sent_from() throws IOException {
    Browser ann = Browser.paired(app, "Ann");
    Browser bo = Browser.paired(app, "Bo");
    ann.post("/cars", Map.of("name", "Mole", "key", "mole", "after", "0")).is(303);
    bo.post("/cars/mole/details", Map.of("name", "Vole", "key", "vole", "after", "1")).is(303);
    List<String> lines = Files.readAllLines(folder.resolve("book.jsonl"));
    for (String line : lines.subList(1, lines.size())) {
      String device = line.contains("\"key\":\"vole\"") ? "Bo's phone" : "Ann's phone";
      assertTrue(
          line.matches(".*\"device\":\\{\"id\":\"d-[a-z0-9]{8}\",\"name\":\"" + device + "\"\\}.*"),
          line);
    }
  }

  @Test
  void neither_token_nor_code_is_on_the_disk_or_in_the_programs_log() {
    Logger root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
    ListAppender<ILoggingEvent> log = new ListAppender<>();
    log.start();
    root.addAppender(log);
    Code used = app.code();
    Code open = app.code();
    Browser browser = stranger();
    try {
      browser.pair(used.path(), "phone");
      browser.post("/cars", Map.of("name", "Mole")).is(303);
      browser.get(open.path()).is(200);
      browser.get("/nowhere/" + open.link()).is(404);
      browser.ask("PUT", open.path(), null, java.net.http.HttpRequest.BodyPublishers.ofString("x"));
      app.close();
    } finally {
      root.detachAppender(log);
    }
    String token = browser.cookie().replace("device=", "");
    assertEquals(43, token.length());
    List<String> secrets =
        List.of(token, used.link(), open.link(), used.typed(), open.typed(), open.spoken());
    for (ILoggingEvent event : log.list) {
      for (String secret : secrets) {
        assertFalse(event.getFormattedMessage().contains(secret), event::toString);
      }
    }
    assertTrue(root.isEnabledFor(Level.INFO));
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        String content =
            new String(Files.readAllBytes(file), java.nio.charset.StandardCharsets.ISO_8859_1);
        secrets.forEach(secret -> assertFalse(content.contains(secret), file.toString()));
      }
    } catch (IOException trouble) {
      throw new UncheckedIOException(trouble);
    }
  }

  @Test
  void a_cookie_that_is_nearly_right_opens_nothing() throws Exception {
    Browser browser = paired();
    String right = browser.cookie();
    String hash =
        new com.fasterxml.jackson.databind.ObjectMapper()
            .readTree(folder.resolve("devices.json").toFile())
            .get("devices")
            .get(0)
            .get("token-sha256")
            .asText();
    for (String wrong :
        List.of(
            "device=",
            "device=x",
            "device=" + hash,
            right.substring(0, right.length() - 1),
            right + "a",
            right.replace("device=", "device=\"\u00e9"),
            right.toUpperCase(Locale.ROOT).replace("DEVICE", "device"))) {
      assertNotEquals(right, wrong);
      String answer =
          Raw.ask(
              app.port(),
              "GET /cars HTTP/1.1",
              "Host: 127.0.0.1:" + app.port(),
              "Cookie: " + wrong);
      assertEquals(401, Raw.status(answer), wrong);
    }
  }
}
