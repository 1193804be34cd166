package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a power cut in the middle of a write leaves behind. */
class TornTailTest {
  @TempDir Path folder;
  private Bench bench;
  private byte[] whole;
  private int lastStart;

  @BeforeEach
  void a_book_of_three_entries() {
    bench = new Bench(folder);
    try (Book book = bench.open()) {
      book.append(Bench.note("a"));
      book.append(Bench.note("b"));
      book.append(Bench.note("c"));
    }
    whole = bench.bytes();
    lastStart = new String(whole, StandardCharsets.UTF_8).indexOf("{\"n\":3");
  }

  @Test
  void a_last_line_cut_at_any_byte_is_set_aside_and_the_rest_stays() throws IOException {
    for (int cut = lastStart + 1; cut < whole.length - 1; cut++) {
      bench.write(Arrays.copyOf(whole, cut));
      try (LogFile log = bench.openLog()) {
        assertEquals(2, log.lastN());
      }
      assertArrayEquals(Arrays.copyOf(whole, lastStart), bench.bytes());
      Path torn = bench.tornFiles().get(0);
      assertEquals("book.torn-3.jsonl", torn.getFileName().toString());
      assertArrayEquals(Arrays.copyOfRange(whole, lastStart, cut), Bench.bytes(torn));
      assertEquals(1, bench.told.size());
      assertTrue(bench.told.get(0).contains("set aside in book.torn-3.jsonl"));
      Files.delete(torn);
    }
  }

  @Test
  void a_cut_between_two_lines_leaves_nothing_to_set_aside() throws IOException {
    bench.write(Arrays.copyOf(whole, lastStart));
    try (LogFile log = bench.openLog()) {
      assertEquals(2, log.lastN());
    }
    assertEquals(List.of(), bench.tornFiles());
    assertEquals(List.of(), bench.told);
  }

  @Test
  void a_last_line_that_lacks_only_its_line_end_is_kept() throws IOException {
    bench.write(Arrays.copyOf(whole, whole.length - 1));
    try (LogFile log = bench.openLog()) {
      assertEquals(3, log.lastN());
      assertEquals("c", log.entry(3).key());
    }
    assertArrayEquals(whole, bench.bytes());
    assertEquals(
        List.of("The last line of book.jsonl was whole but for its line end, and is kept."),
        bench.told);
  }

  @Test
  void zeros_and_garbage_behind_the_last_line_are_set_aside() throws IOException {
    Random random = new Random(7);
    byte[] noise = new byte[3 << 20];
    random.nextBytes(noise);
    List<byte[]> tails =
        List.of(
            new byte[1],
            new byte[4096],
            new byte[2 << 20],
            noise,
            "\n".getBytes(StandardCharsets.UTF_8),
            "{\"n\":4}\n".getBytes(StandardCharsets.UTF_8),
            "{\"n\":4,\"forced\":4}\n".getBytes(StandardCharsets.UTF_8),
            Arrays.copyOfRange(whole, lastStart, whole.length));
    for (byte[] tail : tails) {
      byte[] longer = Arrays.copyOf(whole, whole.length + tail.length);
      System.arraycopy(tail, 0, longer, whole.length, tail.length);
      bench.write(longer);
      try (LogFile log = bench.openLog()) {
        assertEquals(3, log.lastN());
      }
      assertArrayEquals(whole, bench.bytes());
      Path torn = bench.tornFiles().get(0);
      assertArrayEquals(tail, Bench.bytes(torn));
      Files.delete(torn);
    }
  }

  @Test
  void zeros_in_place_of_the_middle_line_of_one_write_take_the_lines_behind_it_along()
      throws IOException {
    try (Book book = bench.open()) {
      book.append(List.of(Bench.note("d"), Bench.note("e"), Bench.note("f")));
    }
    byte[] torn = bench.bytes();
    String text = new String(torn, StandardCharsets.UTF_8);
    int from = text.indexOf("{\"n\":5");
    Arrays.fill(torn, from, text.indexOf("{\"n\":6") - 1, (byte) 0);
    bench.write(torn);
    try (LogFile log = bench.openLog()) {
      assertEquals(4, log.lastN());
      assertEquals(null, log.find("f"));
    }
    assertArrayEquals(Arrays.copyOfRange(torn, from, torn.length), tail("book.torn-5.jsonl"));
  }

  @Test
  void a_torn_tail_never_overwrites_an_earlier_one() throws IOException {
    for (String noise : List.of("first", "second", "third")) {
      byte[] bytes =
          (new String(whole, StandardCharsets.UTF_8) + noise).getBytes(StandardCharsets.UTF_8);
      bench.write(bytes);
      bench.openLog().close();
    }
    assertEquals("first", new String(tail("book.torn-4.jsonl"), StandardCharsets.UTF_8));
    assertEquals("second", new String(tail("book.torn-4-2.jsonl"), StandardCharsets.UTF_8));
    assertEquals("third", new String(tail("book.torn-4-3.jsonl"), StandardCharsets.UTF_8));
  }

  @Test
  void the_book_goes_on_behind_a_torn_tail_and_takes_the_same_key_again() throws IOException {
    try (Book book = bench.open()) {
      book.append(Bench.note("d"));
    }
    byte[] longer = bench.bytes();
    bench.write(whole);
    bench.openRestored(3).close();
    // A fourth line that never came whole, as a power cut in the middle of its writing leaves it.
    bench.write(Arrays.copyOf(longer, longer.length - 20));
    try (Book book = bench.open()) {
      assertEquals(3, book.lastN());
      assertEquals(4, book.append(Bench.note("d")).get(0).n());
    }
    assertEquals(4, BookFile.read(bench.log()).entries().size());
  }

  @Test
  void a_readable_line_behind_the_damage_that_knows_it_was_forced_makes_it_damage()
      throws IOException {
    String text = new String(whole, StandardCharsets.UTF_8);
    // Line 3 says that 2 was on the disk, so a broken line 2 is no torn tail.
    byte[] broken = text.replace("\"key\":\"b\"", "\"key\":b\"").getBytes(StandardCharsets.UTF_8);
    bench.write(broken);
    assertThrows(BookRefused.class, bench::openLog);
    assertArrayEquals(broken, bench.bytes());
    assertEquals(List.of(), bench.tornFiles());
  }

  private byte[] tail(String name) {
    return Bench.bytes(folder.resolve(name));
  }
}
