package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AppendTest {
  @TempDir Path folder;
  private Bench bench;
  private Book book;

  @BeforeEach
  void open() {
    bench = new Bench(folder);
    book = bench.open();
  }

  @AfterEach
  void close() {
    book.close();
  }

  @Test
  void who_may_only_look_is_refused_where_entries_are_written() {
    book.sentFrom(() -> new Sender(new Device("d-1", "wall screen"), false));
    BookRefused refused = assertThrows(BookRefused.class, () -> book.append(Bench.car("mule")));
    assertEquals(BookRefused.Why.LOOKS, refused.why());
    assertTrue(refused.getMessage().contains("may only look"), refused.getMessage());
    assertEquals(0, book.lastN());
    book.sentFrom(() -> new Sender(new Device("d-2", "phone"), true));
    Entry kept = book.append(Bench.car("mule")).get(0);
    assertEquals(new Device("d-2", "phone"), kept.device());
  }

  @Test
  void what_was_appended_is_found_by_key_by_position_and_after_a_restart() {
    Entry first = book.append(Bench.car("mule")).get(0);
    Entry second = book.append(Bench.note("n-1")).get(0);
    assertEquals(1, first.n());
    assertEquals(Optional.of(second), book.byKey("n-1"));
    assertEquals(Optional.empty(), book.byKey("n-2"));
    assertEquals(List.of(first, second), book.entries(0));
    assertEquals(List.of(second), book.entries(2));
    assertEquals(List.of(), book.entries(3));
    book.close();
    book = bench.open();
    assertEquals(List.of(first, second), book.entries(1));
    assertEquals(List.of(first), book.ofCar("mule"));
  }

  @Test
  void the_same_key_again_gets_the_first_answer_and_adds_nothing() {
    Entry first = book.append(Bench.note("a")).get(0);
    byte[] before = bench.bytes();
    assertEquals(List.of(first), book.append(Bench.note("a")));
    assertEquals(1, book.lastN());
    assertArrayEquals(before, bench.bytes());
    assertEquals(1, book.forces() - forcesOfOpening());
  }

  @Test
  void the_same_key_with_another_body_is_kept_under_one_of_its_own_and_once() {
    Entry first = book.append(Bench.note("a")).get(0);
    Draft other = Bench.draft("a", "note", Bench.body().put("text", "another text"));
    Entry second = book.append(other).get(0);
    assertEquals(2, second.n());
    assertEquals("another text", second.body().get("text").asText());
    assertEquals("a", Draft.first(second.key()));
    assertEquals(List.of(second), book.append(other));
    assertEquals(List.of(first, second), book.entries(1));
  }

  @Test
  void of_a_submission_that_is_there_in_part_only_the_missing_are_added() {
    Entry b = book.append(Bench.note("b")).get(0);
    List<Entry> mixed = book.append(List.of(Bench.note("a"), Bench.note("b"), Bench.note("c")));
    assertEquals(List.of(2L, 1L, 3L), mixed.stream().map(Entry::n).toList());
    assertEquals(b, mixed.get(1));
    assertEquals(
        List.of(mixed.get(2), mixed.get(0)),
        book.append(List.of(Bench.note("c"), Bench.note("a"))));
    assertEquals(3, book.lastN());
  }

  @Test
  void a_key_twice_in_one_submission_is_stored_once() {
    List<Entry> twice = book.append(List.of(Bench.note("a"), Bench.note("a")));
    assertEquals(1, book.lastN());
    assertEquals(twice.get(0), twice.get(1));
    assertEquals(1, twice.get(0).n());
  }

  @Test
  void an_empty_submission_changes_nothing() {
    assertEquals(List.of(), book.append(List.of()));
    assertEquals(0, book.lastN());
  }

  @Test
  void many_who_send_the_same_keys_at_once_all_get_the_entry_that_was_first() throws Exception {
    int threads = 8;
    int keys = 60;
    List<List<Entry>> answers =
        together(
            threads,
            thread -> {
              List<List<Entry>> mine = new ArrayList<>();
              for (int i = 0; i < keys; i++) {
                ObjectNode body = Bench.body().put("by", i);
                mine.add(book.append(Bench.draft("k" + i, "note", body)));
              }
              return mine;
            });
    assertEquals(keys, book.lastN());
    for (int i = 0; i < keys; i++) {
      String key = "k" + i;
      Set<Entry> seen =
          answers.stream()
              .map(answer -> answer.get(0))
              .filter(entry -> entry.key().equals(key))
              .collect(Collectors.toSet());
      assertEquals(Set.of(book.byKey(key).orElseThrow()), seen);
    }
    assertEquals(keys, BookFile.read(bench.log()).entries().size());
  }

  @Test
  void submissions_of_many_threads_stand_in_the_book_without_a_gap_in_each() throws Exception {
    List<List<Entry>> answers =
        together(
            6,
            thread ->
                IntStream.range(0, 30)
                    .mapToObj(
                        i ->
                            book.append(
                                IntStream.range(0, 5)
                                    .mapToObj(j -> Bench.note(thread + "." + i + "." + j))
                                    .toList()))
                    .toList());
    for (List<Entry> answer : answers) {
      long first = answer.get(0).n();
      assertEquals(
          IntStream.range(0, 5).mapToObj(j -> first + j).toList(),
          answer.stream().map(Entry::n).toList());
    }
    assertEquals(6 * 30 * 5, BookFile.read(bench.log()).entries().size());
  }

  @Test
  void after_may_name_what_is_in_the_book_and_nothing_later() {
    book.append(Bench.note("a"));
    book.append(note("b", 1));
    BookRefused refused = assertThrows(BookRefused.class, () -> book.append(note("c", 3)));
    assertEquals(BookRefused.Why.ENTRY, refused.why());
    assertEquals("Entry c claims to follow entry 3, but the book ends at 2.", refused.getMessage());
    // Within one submission a later entry may follow an earlier one.
    book.append(List.of(note("c", 2), note("d", 3)));
    assertEquals(4, book.lastN());
  }

  @Test
  void a_submission_with_one_bad_entry_is_refused_as_a_whole_and_harms_nobody_else() {
    assertThrows(BookRefused.class, () -> book.append(List.of(Bench.note("a"), note("b", 99))));
    assertEquals(0, book.lastN());
    assertEquals(1, book.append(Bench.note("b")).get(0).n());
  }

  @Test
  void drafts_that_can_never_be_lines_are_refused_in_words() {
    assertSaid("The key 'a b' cannot be used", () -> Bench.note("a b"));
    assertSaid("The key '' cannot be used", () -> Bench.note(""));
    assertSaid("cannot be used", () -> Bench.note("k".repeat(81)));
    assertSaid("cannot be used", () -> Bench.note("../book"));
    assertSaid("is no kind of entry", () -> Bench.draft("a", "No", Bench.body()));
    assertSaid("versions start at 1", () -> new Draft("a", "note", 0, 0, "S", null, null, null));
    assertSaid("follow entry -1", () -> note("a", -1));
    assertSaid("who made it", () -> new Draft("a", "note", 1, 0, " ", null, null, null));
    assertSaid(
        "not a JSON object",
        () -> new Draft("a", "note", 1, 0, "S", null, null, Json.MAPPER.createArrayNode()));
  }

  @Test
  void bodies_that_could_not_be_read_back_are_refused_in_words() {
    for (double number : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
      assertSaid(
          "a number in it is not finite",
          () -> book.append(Bench.draft("a", "note", Bench.body().put("x", number))));
    }
    assertSaid(
        "Entry a is too long",
        () -> book.append(Bench.draft("a", "note", Bench.body().put("x", "y".repeat(1 << 20)))));
    assertSaid("nested deeper", () -> book.append(Bench.draft("a", "note", deep(100_000))));
    assertEquals(0, book.lastN());
    book.append(Bench.note("a"));
  }

  @Test
  void the_deepest_and_the_longest_that_is_taken_can_be_read_again() {
    book.append(Bench.draft("deep", "note", deep(Json.DEPTH - 1)));
    int room = RawLines.LONGEST - 400;
    book.append(Bench.draft("long", "note", Bench.body().put("x", "y".repeat(room))));
    book.close();
    book = bench.open();
    assertEquals(room, book.byKey("long").orElseThrow().body().get("x").textValue().length());
  }

  @Test
  void text_and_numbers_come_back_as_they_were_sent() {
    ObjectNode body =
        Bench.body()
            .put("text", "8 & ¼ \u2028 \"quoted\" \\ \n\t\u0000 🔧")
            .put("half a letter", "\ud800")
            .put("tenth", 0.1)
            .put("tiny", Double.MIN_VALUE)
            .put("huge", Double.MAX_VALUE)
            .put("long", Long.MAX_VALUE)
            .putNull("nothing")
            .put("yes", true);
    body.putArray("list").add(1).add(2.5).add("three");
    book.append(Bench.draft("all", "note", body));
    book.close();
    book = bench.open();
    assertEquals(body, book.byKey("all").orElseThrow().body());
    assertEquals(2, bench.lines().size());
  }

  @Test
  void a_draft_changed_after_it_was_handed_in_changes_no_entry() {
    ObjectNode body = Bench.body().put("gap", 1);
    Entry entry = book.append(Bench.draft("a", "note", body)).get(0);
    body.put("gap", 2);
    assertEquals(1, entry.body().get("gap").intValue());
  }

  @Test
  void whoever_watches_is_told_of_every_entry_in_order_and_may_fail() throws Exception {
    List<Long> seen = new ArrayList<>();
    CountDownLatch four = new CountDownLatch(4);
    book.onAppended(
        entries -> {
          throw new IllegalStateException("no paper");
        });
    book.onAppended(
        entries ->
            entries.forEach(
                entry -> {
                  seen.add(entry.n());
                  four.countDown();
                }));
    book.append(List.of(Bench.note("a"), Bench.note("b")));
    book.append(Bench.note("b"));
    book.append(Bench.note("c"));
    book.append(Bench.note("d"));
    assertTrue(four.await(10, TimeUnit.SECONDS));
    assertEquals(List.of(1L, 2L, 3L, 4L), seen);
  }

  @Test
  void a_closed_book_takes_nothing_and_closing_twice_is_harmless() {
    book.close();
    book.close();
    BookRefused refused = assertThrows(BookRefused.class, () -> book.append(Bench.note("late")));
    assertEquals(BookRefused.Why.DISK, refused.why());
  }

  @Test
  void an_interrupted_sender_harms_neither_the_book_nor_the_index() {
    Thread.currentThread().interrupt();
    book.append(Bench.car("mule"));
    assertEquals(1, book.entries(1).size());
    assertTrue(Thread.interrupted());
    book.append(Bench.note("after"));
    assertEquals(1, book.ofCar("mule").size());
  }

  private static long forcesOfOpening() {
    return 1;
  }

  private static Draft note(String key, long after) {
    return new Draft(key, "note", 1, after, "Sam", null, null, Bench.body());
  }

  private static ObjectNode deep(int levels) {
    ObjectNode body = Bench.body();
    ObjectNode deepest = body;
    for (int i = 1; i < levels; i++) {
      deepest = deepest.putObject("in");
    }
    return body;
  }

  private static void assertSaid(String words, Runnable action) {
    BookRefused refused = assertThrows(BookRefused.class, action::run);
    assertEquals(BookRefused.Why.ENTRY, refused.why());
    assertTrue(refused.getMessage().contains(words), refused.getMessage());
  }

  private interface Work {
    List<List<Entry>> by(int thread);
  }

  private static List<List<Entry>> together(int threads, Work work) throws Exception {
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Callable<List<List<Entry>>>> tasks = new ArrayList<>();
      for (int i = 0; i < threads; i++) {
        int thread = i;
        tasks.add(() -> work.by(thread));
      }
      List<List<Entry>> all = new ArrayList<>();
      for (Future<List<List<Entry>>> done : pool.invokeAll(tasks)) {
        all.addAll(done.get());
      }
      return all;
    } finally {
      pool.shutdown();
    }
  }
}
