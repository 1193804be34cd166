package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What whoever starts it is told of a wrong clock and of entries of a newer program. */
class FirstLookTest {
  @TempDir Path folder;
  private Bench bench;

  @BeforeEach
  void a_book_of_one_entry() {
    bench = new Bench(folder);
    try (Book book = bench.open()) {
      book.append(Bench.car("mule"));
    }
  }

  private Book at(String now) {
    bench.told.clear();
    return Book.open(folder, Clock.fixed(Instant.parse(now), ZoneOffset.UTC), bench.told::add);
  }

  private String told(String now) {
    at(now).close();
    return String.join("|", bench.told);
  }

  @Test
  void a_clock_before_the_last_entry_is_told_and_does_no_harm() {
    byte[] before = bench.bytes();
    assertEquals(
        "This machine's clock says 1970-01-01T00:00:05Z, but the book has an entry of"
            + " 2031-05-04T12:00:00Z: set the clock; entries keep their order whatever it says.",
        told("1970-01-01T00:00:05Z"));
    assertEquals("", told("2031-05-03T12:00:00Z"), "within a day");
    assertArrayEquals(before, bench.bytes());
    try (Book book = at("1970-01-01T00:00:05Z")) {
      assertEquals(2, book.append(Bench.corner("lf", "mule")).get(0).n());
      assertEquals(2, book.ofCar("mule").size());
    }
    assertEquals("", told("2031-05-05T12:00:00Z"));
    assertEquals(List.of("mule", "lf"), keys());
  }

  @Test
  void a_clock_far_ahead_is_told_once_it_is_right_again() {
    for (String far : List.of("2099-01-01T00:00:00Z", "+12031-01-01T00:00:00Z")) {
      try (Book book = at(far)) {
        book.append(Bench.note("at-" + far.length()));
      }
      assertEquals(
          "This machine's clock says 2031-05-05T12:00:00Z, but the book has an entry of "
              + far
              + ": set the clock; entries keep their order whatever it says.",
          told("2031-05-05T12:00:00Z"));
    }
    assertEquals(List.of("mule", "at-20", "at-22"), keys());
  }

  @Test
  void entries_of_a_newer_version_of_their_kind_are_kept_and_told() throws Exception {
    String book = new String(bench.bytes(), StandardCharsets.UTF_8);
    Files.writeString(bench.log(), book.replace("\"v\":1", "\"v\":2"));
    Files.delete(folder.resolve("generation.json"));
    Files.delete(folder.resolve("index.clean"));
    byte[] newer = bench.bytes();
    assertEquals(
        "Entries that only a newer Spindlebook reads: 1. They are kept and do not count here;"
            + " start the newer version.",
        told("2031-05-04T12:00:00Z").split("\\|")[0]);
    assertArrayEquals(newer, bench.bytes());
  }

  private List<String> keys() {
    return BookFile.read(bench.log()).entries().stream().map(Entry::key).toList();
  }
}
