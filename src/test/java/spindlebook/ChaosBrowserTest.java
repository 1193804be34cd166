package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.WindowType;
import spindlebook.entry.Content;
import spindlebook.entry.GapResult;
import spindlebook.log.Bodies;
import spindlebook.log.BookFile;
import spindlebook.log.Entry;
import spindlebook.page.Posted;
import spindlebook.web.Listening;

/** Two phones, a bad network and a book that is killed: what was typed is there, once, in order. */
class ChaosBrowserTest {
  private static final long SEED = 20251125;
  private static final int EACH = 250;
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  @TempDir Path folder;

  private Path data() {
    return folder.resolve("data");
  }

  private Path log() {
    return data().resolve("book.jsonl");
  }

  /** Heights and readings of one phone, in the book's order. */
  private List<Entry> from(String phone) {
    return read(all(phone));
  }

  private List<Entry> all(String phone) {
    return BookFile.read(log()).entries().stream()
        .filter(e -> e.device() != null && e.device().name().equals(phone))
        .toList();
  }

  /** Of those, heights and readings; the others answer a doubt that stood in the way. */
  private static List<Entry> read(List<Entry> entries) {
    return entries.stream()
        .filter(e -> e.kind().equals("height") || e.kind().equals("reading"))
        .toList();
  }

  /** As {@link Phone} notes what it pressed. */
  static String said(Entry entry) {
    Content content = Bodies.read(entry);
    if (content instanceof Content.Height height) {
      return Posted.word(height.name())
          + ": "
          + height.spindle().typed()
          + ", "
          + (height.mark() == null ? "as at" : height.mark().typed());
    }
    if (content instanceof Content.Reading reading) {
      assertTrue(reading.result() != GapResult.UNREAD, reading::toString);
      String row =
          reading.point() == null ? "q-" + Posted.word(reading.quantity()) : "p-" + reading.point();
      return Posted.word(reading.steering()) + "/" + row + ": " + reading.typed();
    }
    return content.toString();
  }

  private long lines() throws IOException {
    try (var lines = Files.lines(log())) {
      return lines.count();
    }
  }

  private void untilInBook(long lines) throws IOException {
    for (int i = 0; i < 3000 && lines() < lines; i++) {
      LockSupport.parkNanos(Duration.ofMillis(20).toNanos());
    }
    assertTrue(lines() >= lines, "the book came to a halt at " + lines());
  }

  private static void walk(Phone phone, List<String> rounds, boolean tabDies) {
    for (String round : rounds) {
      phone.guide(round);
      int disturbedAt = phone.pressed.size() + 50;
      boolean disturbed = false;
      int typed = 1;
      while (typed > 0 && phone.pressed.size() < EACH) {
        typed = phone.type(Math.min(20, EACH - phone.pressed.size()));
        if (!disturbed && phone.pressed.size() >= disturbedAt && round.equals(rounds.get(0))) {
          disturbed = true;
          assertTrue(phone.waiting("sb:o:") > 0, "something waits to be sent");
          if (tabDies) {
            phone.killTab(round);
          } else {
            phone.guide(round);
          }
        }
      }
    }
  }

  @Test
  void five_hundred_entries_over_a_bad_link_are_in_the_book_once_and_in_order() throws Exception {
    List<List<String>> rounds = List.of(new ArrayList<>(), new ArrayList<>());
    Browser sam;
    try (Shop shop = new Shop(data())) {
      Marmot marmot = new Marmot(shop);
      for (int i = 0; i < 3; i++) {
        rounds.get(0).add(marmot.everything(marmot.left, Map.of("who", "Sam")));
        rounds.get(1).add(marmot.everything(marmot.right, Map.of("who", "Kim")));
      }
      sam = shop.browser;
    }
    long before = lines();
    long began = System.nanoTime();
    try (ServedBook book = new ServedBook(data(), folder.resolve("terminal.txt"));
        BadLink left = new BadLink(SEED, book.port());
        BadLink right = new BadLink(SEED + 1, book.port());
        Phone one = new Phone(left.port(), SEED + 2);
        Phone two = new Phone(right.port(), SEED + 3)) {
      one.pair(book.pairing(), "phone one");
      two.pair(
          sam.at(book.port()).post("/devices/new-link", Map.of("may", "keep")).is(200).linkIn(),
          "phone two");
      left.bad(true);
      right.bad(true);

      CompletableFuture<Void> first =
          CompletableFuture.runAsync(() -> walk(one, rounds.get(0), false));
      CompletableFuture<Void> second =
          CompletableFuture.runAsync(() -> walk(two, rounds.get(1), true));
      int kills = 0;
      for (int at : new int[] {90, 300}) {
        untilInBook(before + at);
        book.kill();
        kills++;
        book.start();
        left.leadsTo(book.port());
        right.leadsTo(book.port());
      }
      CompletableFuture.allOf(first, second).get(180, TimeUnit.SECONDS);
      one.untilAllSent(Duration.ofSeconds(120));
      two.untilAllSent(Duration.ofSeconds(120));
      left.releaseAll();
      right.releaseAll();
      List<List<String>> keys = List.of(one.keysOf("sb:s:"), two.keysOf("sb:s:"));
      book.stop();

      System.out.printf(
          "chaos, seed %d: %d entries; %d dropped, %d delayed, %d doubled, %d reordered, %d answers"
              + " lost, %d kills, %d s%n",
          SEED,
          lines() - before,
          left.dropped.get() + right.dropped.get(),
          left.delayed.get() + right.delayed.get(),
          left.doubled.get() + right.doubled.get(),
          left.reordered.get() + right.reordered.get(),
          left.lost.get() + right.lost.get(),
          kills,
          (System.nanoTime() - began) / 1_000_000_000);
      for (Phone phone : List.of(one, two)) {
        assertEquals(List.of(), phone.pressed.stream().filter(p -> p.startsWith("!")).toList());
      }
      for (Phone phone : List.of(one, two)) {
        List<Entry> there = all(phone == one ? "phone one" : "phone two");
        assertEquals(EACH, phone.pressed.size());
        assertEquals(phone.pressed, read(there).stream().map(ChaosBrowserTest::said).toList());
        List<String> inBook = there.stream().map(Entry::key).toList();
        assertEquals(keys.get(phone == one ? 0 : 1), inBook);
        assertEquals(inBook.size(), new HashSet<>(inBook).size());
        assertEquals(EACH, read(there).size());
      }
    }
  }

  private App serve() {
    return App.start(data(), 0, Clock.systemUTC(), line -> {});
  }

  /** As somebody does who puts an older copy back, and says so. */
  private App putBack(byte[] backup) throws IOException {
    Files.write(log(), backup);
    int entries = Files.readAllLines(log()).size() - 1;
    return App.start(data(), Listening.here(0), Clock.systemUTC(), entries, null, line -> {});
  }

  /** Of everything: what is pressed is then what is in the book, one for one. */
  private static String startRound(Browser sam, String corner) {
    return Marmot.everything(sam, corner, Map.of("who", "Sam"));
  }

  private void untilFrom(String phone, int entries) {
    for (int i = 0; i < 600 && from(phone).size() < entries; i++) {
      LockSupport.parkNanos(Duration.ofMillis(100).toNanos());
    }
  }

  private static void inBook(Phone phone, List<Entry> there) {
    assertEquals(phone.pressed, there.stream().map(ChaosBrowserTest::said).toList());
    assertEquals(there.size(), there.stream().map(Entry::key).distinct().count());
  }

  @Test
  void what_an_older_copy_of_the_book_lacks_comes_back_from_the_phone() throws Exception {
    String lost;
    String left;
    try (Shop shop = new Shop(data())) {
      left = new Marmot(shop).left;
    }
    App app = serve();
    try (BadLink link = new BadLink(SEED, app.port());
        Phone phone = new Phone(link.port(), SEED)) {
      Browser sam = Browser.paired(app, "Sam");
      phone.pair(app.code().path(), "phone one");
      phone.guide(startRound(sam, left));
      phone.type(12);
      phone.untilAllSent(PATIENCE);
      byte[] backup = Files.readAllBytes(log());
      phone.type(13);
      lost = startRound(sam, left);
      phone.guide(lost);
      phone.type(9);
      phone.untilAllSent(PATIENCE);
      inBook(phone, from("phone one"));

      app.close();
      app = putBack(backup);
      link.leadsTo(app.port());
      // Nobody touches the phone: the open page of the lost round sees it by itself.
      untilFrom("phone one", phone.pressed.size());
      inBook(phone, from("phone one"));
      sam.at(app.port()).get("/rounds/" + lost).is(200);

      app.close();
      phone.type(5);
      app = putBack(backup);
      link.leadsTo(app.port());
      phone.untilAllSent(PATIENCE);
      inBook(phone, from("phone one"));
    } finally {
      app.close();
    }
  }

  @Test
  void two_phones_on_one_corner_see_each_other_within_two_seconds() throws Exception {
    String left;
    try (Shop shop = new Shop(data())) {
      left = new Marmot(shop).left;
    }
    try (App app = serve();
        Phone one = new Phone(app.port(), SEED);
        Phone two = new Phone(app.port(), SEED + 1)) {
      one.pair(app.code().path(), "phone one");
      two.pair(app.code().path(), "phone two");
      String round = startRound(Browser.paired(app, "Sam"), left);
      one.guide(round);
      two.guide(round);
      one.type(1);
      two.until("document.getElementById('guide').dataset.kind !== 'spindle'");
      List<Long> millis = new ArrayList<>();
      for (int i = 0; i < 6; i++) {
        Phone reads = i % 2 == 0 ? one : two;
        Phone sees = i % 2 == 0 ? two : one;
        String step = sees.step();
        assertEquals(step, reads.step());
        long began = System.nanoTime();
        reads.type(1);
        sees.until("document.getElementById('guide').dataset.step !== '" + step + "'");
        millis.add((System.nanoTime() - began) / 1_000_000);
        reads.until("document.getElementById('guide').dataset.step === '" + sees.step() + "'");
      }
      System.out.println("seen on the other phone after " + millis + " ms");
      assertTrue(millis.stream().allMatch(m -> m < 2000), millis::toString);
    }
  }

  @Test
  void the_network_may_go_at_every_step_of_a_height() throws Exception {
    String left;
    try (Shop shop = new Shop(data())) {
      left = new Marmot(shop).left;
    }
    try (App app = serve();
        Phone phone = new Phone(app.port(), SEED)) {
      phone.pair(app.code().path(), "phone one");
      phone.guide(startRound(Browser.paired(app, "Sam"), left));
      int steps = 0;
      while (steps == 0 || !phone.step().endsWith("/height")) {
        phone.offline(steps % 2 == 0);
        assertEquals(1, phone.type(1));
        steps++;
      }
      phone.offline(true);
      assertEquals(2, phone.type(2));
      assertTrue(phone.waiting("sb:o:") >= 2, "they wait");
      phone.until("document.getElementById('outbox').textContent.includes('on this phone')");
      phone.offline(false);
      phone.untilAllSent(PATIENCE);
      assertEquals(phone.pressed.size(), steps + 2);
      inBook(phone, from("phone one"));
    }
  }

  @Test
  void another_tab_sends_what_a_tab_that_is_gone_had_left_and_a_lost_answer_is_asked_again()
      throws Exception {
    String left;
    try (Shop shop = new Shop(data())) {
      left = new Marmot(shop).left;
    }
    App app = serve();
    try (BadLink link = new BadLink(SEED, app.port());
        Phone phone = new Phone(link.port(), SEED)) {
      Browser sam = Browser.paired(app, "Sam");
      phone.pair(app.code().path(), "phone one");
      String round = startRound(sam, left);
      phone.guide(round);
      // The book has it and the phone does not know; then the program is started again.
      link.loseAnswers(true);
      phone.type(3);
      untilFrom("phone one", 1);
      app.close();
      app = serve();
      link.leadsTo(app.port());
      link.loseAnswers(false);
      phone.untilAllSent(PATIENCE);
      inBook(phone, from("phone one"));

      // A second window types while the book is away, and is gone with the book still away; the
      // first hears of it by the storage event alone.
      String first = phone.browser.getWindowHandle();
      phone.browser.switchTo().newWindow(WindowType.WINDOW);
      phone.guide(round);
      link.leadsTo(1);
      phone.type(4);
      phone.browser.close();
      phone.browser.switchTo().window(first);
      assertTrue(phone.waiting("sb:o:") > 0, "something waits");
      link.leadsTo(app.port());
      phone.untilAllSent(PATIENCE);
      inBook(phone, from("phone one"));
    } finally {
      app.close();
    }
  }
}
