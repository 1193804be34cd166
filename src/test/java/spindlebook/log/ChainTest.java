package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ChainTest {
  @TempDir Path folder;

  @Test
  void every_line_carries_the_hash_of_the_line_before_it() throws Exception {
    Bench bench = new Bench(folder);
    try (Book book = bench.open()) {
      book.append(Bench.car("mule"));
      book.append(List.of(Bench.corner("lf", "mule"), Bench.corner("rf", "mule")));
      book.append(Bench.note("last"));
    }
    List<String> lines = bench.lines();
    assertEquals(5, lines.size());
    for (int n = 1; n < lines.size(); n++) {
      // The JDK's own digest over the text between two line ends, nothing of ours.
      byte[] before = lines.get(n - 1).getBytes(StandardCharsets.UTF_8);
      String hash = HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(before));
      JsonNode line = new ObjectMapper().readTree(lines.get(n));
      assertEquals(hash, line.get("prev").textValue());
      assertEquals(n, line.get("n").longValue());
    }
  }

  @Test
  void the_hash_is_the_one_of_the_standard() {
    // FIPS 180-4's published example for SHA-256 of "abc" (from memory).
    assertEquals(
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
        Sha256.hex("abc".getBytes(StandardCharsets.US_ASCII)));
  }

  @Test
  void a_line_holds_its_fields_in_the_order_of_the_format_and_leaves_out_what_is_not_there()
      throws IOException {
    Bench bench = new Bench(folder);
    try (Book book = bench.open()) {
      book.append(
          new Draft(
              "g-1",
              "reading",
              2,
              0,
              "Sam",
              new Device("p1", "Sam's phone"),
              Instant.parse("2031-05-04T11:58:30Z"),
              Bench.body().put("gap", 0.1).put("text", "8 ¼")));
      book.append(Bench.note("plain"));
    }
    List<String> lines = bench.lines();
    assertEquals(
        "{\"n\":1,\"at\":\"2031-05-04T12:00:00Z\",\"claimed\":\"2031-05-04T11:58:30Z\","
            + "\"who\":\"Sam\",\"device\":{\"id\":\"p1\",\"name\":\"Sam's phone\"},"
            + "\"key\":\"g-1\",\"kind\":\"reading\",\"v\":2,\"after\":0,\"forced\":0,\"prev\":\""
            + Sha256.hex(lines.get(0).getBytes(StandardCharsets.UTF_8))
            + "\",\"body\":{\"gap\":0.1,\"text\":\"8 ¼\"}}",
        lines.get(1));
    assertTrue(!lines.get(2).contains("claimed") && !lines.get(2).contains("device"));
  }

  @Test
  void forced_is_the_last_entry_before_the_write_for_all_lines_of_one_write() {
    Bench bench = new Bench(folder);
    try (Book book = bench.open()) {
      book.append(Bench.note("a"));
      book.append(List.of(Bench.note("b"), Bench.note("c"), Bench.note("d")));
      book.append(Bench.note("e"));
      assertEquals(
          List.of(0L, 1L, 1L, 1L, 4L), book.entries(1).stream().map(Entry::forced).toList());
    }
  }

  @Test
  void the_hash_at_a_position_is_the_one_the_next_line_carries() {
    Bench bench = new Bench(folder);
    try (Book book = bench.open()) {
      String header = book.lastHash();
      book.append(Bench.note("a"));
      String first = book.lastHash();
      book.append(Bench.note("b"));
      assertEquals(header, book.hashAt(0));
      assertEquals(header, book.entries(1).get(0).prev());
      assertEquals(first, book.hashAt(1));
      assertEquals(first, book.entries(2).get(0).prev());
      assertEquals(book.lastHash(), book.hashAt(2));
    }
  }

  @Test
  void the_file_read_without_opening_it_holds_what_was_appended() {
    Bench bench = new Bench(folder);
    List<Entry> entries;
    String id;
    try (Book book = bench.open()) {
      book.append(List.of(Bench.car("mule"), Bench.corner("lf", "mule")));
      entries = book.entries(1);
      id = book.id();
    }
    BookFile.Contents contents = BookFile.read(bench.log());
    assertEquals(entries, contents.entries());
    assertEquals(id, contents.header().id());
    assertTrue(contents.sealed());
    assertEquals(entries.get(1).prev(), contents.hashes().get(0));
    assertEquals(contents.lastHash(), contents.hashes().get(1));
  }
}
