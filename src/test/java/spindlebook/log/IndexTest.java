package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** When the index is used as it is, and when it is built anew from the book. */
class IndexTest {
  private static final String[] WITH_SHELF = {"classpath:db/migration", "classpath:db/later"};

  @TempDir Path folder;
  private Bench bench;
  private Path index;
  private Map<String, List<String>> rows;

  @BeforeEach
  void a_closed_book() {
    bench = new Bench(folder);
    index = folder.resolve(Index.FILE);
    try (Book book = bench.open()) {
      book.append(Bench.car("mule"));
      book.append(List.of(Bench.corner("lf", "mule"), Bench.round("r1", "lf")));
      for (int i = 0; i < 300; i++) {
        book.append(Bench.note("n" + i));
      }
      rows = Bench.dump(book.index());
    }
  }

  @Test
  void after_an_orderly_close_it_is_used_as_it_is() {
    try (Book book = bench.open()) {
      assertEquals(List.of(), bench.told);
      assertEquals(rows, Bench.dump(book.index()));
    }
  }

  @Test
  void after_anything_else_it_is_built_anew_and_the_reason_is_told() throws IOException {
    Files.delete(index);
    assertBuiltAnew("there is none");
    Files.delete(folder.resolve("index.clean"));
    assertBuiltAnew("it was not closed in order");
    Files.writeString(folder.resolve("index.clean"), "{\"n\":");
    assertBuiltAnew("it was not closed in order");
  }

  @Test
  void a_garbled_or_shortened_file_is_found_out() throws IOException {
    byte[] good = Files.readAllBytes(index);
    Random random = new Random(5);
    for (int i = 0; i < 6; i++) {
      byte[] bad = good.clone();
      bad[random.nextInt(bad.length)] ^= 0x10;
      Files.write(index, bad);
      assertBuiltAnew("its file was changed or damaged");
      good = Files.readAllBytes(index);
    }
    for (int length : new int[] {0, 100, good.length / 2, good.length - 1}) {
      Files.write(index, Arrays.copyOf(good, length));
      assertBuiltAnew("its file was changed or damaged");
      good = Files.readAllBytes(index);
    }
    Files.writeString(index, "not a database");
    assertBuiltAnew("its file was changed or damaged");
  }

  @Test
  void an_index_that_is_behind_the_book_is_not_used() throws IOException {
    keepIndex();
    try (Book book = bench.open()) {
      book.append(Bench.note("later"));
      rows = Bench.dump(book.index());
    }
    putIndexBack();
    assertBuiltAnew("it ends at entry 303 and the book at 304");
  }

  @Test
  void an_index_that_is_ahead_of_the_book_is_not_used() throws IOException {
    byte[] older = bench.bytes();
    try (Book book = bench.open()) {
      book.append(Bench.note("later"));
    }
    bench.write(older);
    assertBuiltAnew(bench.openRestored(303), "it ends at entry 304 and the book at 303");
  }

  @Test
  void an_index_of_another_book_of_the_same_length_is_not_used() throws IOException {
    byte[] before = bench.bytes();
    try (Book book = bench.open()) {
      book.append(Bench.note("one-way"));
    }
    keepIndex();
    bench.write(before);
    try (Book book = bench.openRestored(303)) {
      book.append(Bench.note("the-other-way"));
      rows = Bench.dump(book.index());
    }
    putIndexBack();
    assertBuiltAnew(
        bench.openRestored(304), "the book's last line is another than when it was closed");
  }

  @Test
  void a_new_migration_alone_is_enough() {
    List<String> told = new ArrayList<>();
    for (String expected : Arrays.asList("this version keeps it differently", null)) {
      told.clear();
      try (Book book = Book.open(folder, Bench.NOON, told::add, WITH_SHELF)) {
        assertTrue(Bench.dump(book.index()).containsKey("SHELF"));
        assertEquals(expected == null ? 0 : 1, told.size());
        assertTrue(expected == null || told.get(0).contains(expected), told.toString());
      }
    }
    // Back to the older version: its index is not this one either.
    assertBuiltAnew("this version keeps it differently");
  }

  @Test
  void built_anew_it_holds_the_same_as_built_entry_by_entry() throws IOException {
    Random random = new Random(42);
    Map<String, List<String>> grown;
    List<String> told = new ArrayList<>();
    try (Book book = bench.open()) {
      for (int i = 0; i < 400; i++) {
        book.append(anything(random, i));
      }
      grown = Bench.dump(book.index());
    }
    assertEquals(703, grown.get("ENTRY").size());
    Files.delete(index);
    try (Book book = bench.open()) {
      assertEquals(grown, Bench.dump(book.index()));
    }
  }

  @Test
  void an_index_that_cannot_follow_loses_no_entry_and_catches_up_when_it_can() {
    try (Book book = bench.open()) {
      book.index().useHandle(handle -> handle.execute("alter table meta rename to away"));
      Entry entry = book.append(Bench.corner("rf", "mule")).get(0);
      assertEquals(entry, book.byKey("rf").orElseThrow());
      assertTrue(bench.told.get(0).contains("the index could not follow"), bench.told.toString());
      book.append(Bench.corner("lr", "mule"));
      assertEquals(1, bench.told.size());
      book.index().useHandle(handle -> handle.execute("alter table away rename to meta"));
      book.append(Bench.corner("rr", "mule"));
      assertEquals(6, book.ofCar("mule").size());
      rows = Bench.dump(book.index());
    }
    assertBuiltAnew("it was not closed in order");
  }

  @Test
  void a_book_just_begun_tells_nothing(@TempDir Path empty) {
    Bench fresh = new Bench(empty.resolve("a").resolve("b"));
    fresh.open().close();
    assertEquals(List.of(), fresh.told);
    fresh.open().close();
    assertEquals(List.of(), fresh.told);
  }

  @Test
  void building_it_anew_leaves_the_book_alone() throws IOException {
    byte[] before = bench.bytes();
    Files.delete(index);
    bench.open().close();
    assertArrayEquals(before, bench.bytes());
  }

  @Test
  void times_are_kept_as_instants_whatever_the_zone_of_the_machine() {
    java.util.TimeZone zone = java.util.TimeZone.getDefault();
    java.util.TimeZone.setDefault(java.util.TimeZone.getTimeZone("Asia/Kathmandu"));
    try (Book book = bench.open()) {
      Entry entry = book.append(Bench.note("here")).get(0);
      assertEquals(
          entry.at(),
          book.index()
              .withHandle(
                  handle ->
                      handle
                          .createQuery("select at from entry where key = 'here'")
                          .mapTo(java.time.Instant.class)
                          .one()));
    } finally {
      java.util.TimeZone.setDefault(zone);
    }
  }

  private void assertBuiltAnew(String why) {
    assertBuiltAnew(bench.open(), why);
  }

  private void assertBuiltAnew(Book opened, String why) {
    try (Book book = opened) {
      assertTrue(
          bench.told.get(0).startsWith("Building the index of the book anew (" + why + "):"),
          bench.told.toString());
      assertEquals(rows, Bench.dump(book.index()));
    }
    try (Book book = bench.open()) {
      assertEquals(List.of(), bench.told);
      assertEquals(rows, Bench.dump(book.index()));
    }
  }

  private void keepIndex() throws IOException {
    for (String name : List.of(Index.FILE, "index.clean")) {
      Files.copy(folder.resolve(name), folder.resolve("kept-" + name));
    }
  }

  private void putIndexBack() throws IOException {
    for (String name : List.of(Index.FILE, "index.clean")) {
      Files.write(folder.resolve(name), Bench.bytes(folder.resolve("kept-" + name)));
    }
  }

  static Draft anything(Random random, int i) {
    String key = "k" + i;
    // Keys up to 60 ahead, so that some parents come after what hangs on them.
    String other = "k" + random.nextInt(i + 60);
    return switch (random.nextInt(8)) {
      case 0 -> Bench.car(key);
      case 1 -> Bench.corner(key, random.nextBoolean() ? "mule" : other);
      case 2 -> Bench.round(key, other);
      case 3 -> Bench.height(key, other);
      case 4 -> Bench.reading(key, other);
      case 5 -> Bench.correction(key, other, Bench.body().put("corner", "lf"));
      case 6 ->
          Bench.correction(key, other, Bench.body().put("round", "k" + random.nextInt(i + 1)));
      default -> Bench.note(key);
    };
  }

  @Test
  void the_line_of_an_entry_is_that_of_the_file() {
    try (Book book = bench.open()) {
      assertEquals(
          new String(bench.bytes(), StandardCharsets.UTF_8).lines().toList().get(2),
          book.line(book.entries(2).get(0).key()).orElseThrow());
      assertEquals(Optional.empty(), book.line("nobody"));
    }
  }
}
