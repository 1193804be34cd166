package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.NoPrivilege;

class OtherProcessTest {
  @TempDir Path folder;
  @TempDir Path beside;

  @Test
  void a_book_that_another_process_has_open_is_refused_in_words() throws Exception {
    Process other = OtherJvm.start(beside.resolve("errors"), "hold", folder.toString());
    try {
      assertEquals("open", output(other).readLine());
      byte[] before = new Bench(folder).bytes();
      BookRefused refused = assertThrows(BookRefused.class, new Bench(folder)::open);
      assertTrue(
          refused.getMessage().contains("another Spindlebook has this book open"),
          refused.getMessage());
      assertArrayEquals(before, new Bench(folder).bytes());
    } finally {
      other.getOutputStream().close();
      other.waitFor();
    }
    new Bench(folder).open().close();
  }

  @Test
  void a_second_opening_in_the_same_process_is_refused_and_does_not_free_the_lock()
      throws Exception {
    try (Book book = new Bench(folder).open()) {
      assertThrows(BookRefused.class, new Bench(folder)::open);
      Process other = OtherJvm.start(beside.resolve("errors"), "hold", folder.toString());
      String said = output(other).readLine();
      other.getOutputStream().close();
      assertEquals(3, other.waitFor());
      assertTrue(said.contains("another Spindlebook has this book open"), said);
      book.append(Bench.note("still-mine"));
    }
    new Bench(folder).open().close();
  }

  /** {@code -Dkills=200} kills so many; every fourth time a new book is begun. */
  @Test
  void everything_acknowledged_is_in_the_book_after_the_process_was_killed() throws Exception {
    int rounds = Integer.getInteger("kills", 3);
    Random random = new Random(Long.getLong("seed", 9));
    Set<String> acknowledged = new HashSet<>();
    long inAll = 0;
    Bench bench = null;
    byte[] before = new byte[0];
    for (int round = 0; round < rounds; round++) {
      if (round % 4 == 0) {
        bench = new Bench(folder.resolve("book-" + round));
        acknowledged.clear();
        before = new byte[0];
      }
      long known = acknowledged.size();
      Process other =
          OtherJvm.start(
              beside.resolve("errors"), "write", bench.folder.toString(), "round" + round);
      BufferedReader output = output(other);
      assertEquals("open", output.readLine());
      int enough = 300 + random.nextInt(700);
      for (int i = 0; i < enough; i++) {
        acknowledged.add(output.readLine());
      }
      Thread.sleep(random.nextInt(80));
      other.destroyForcibly();
      readRest(output, acknowledged);
      other.waitFor();

      try (Book book = bench.open()) {
        for (String key : acknowledged) {
          Entry entry = book.byKey(key).orElseThrow(() -> new AssertionError(key + " is lost"));
          int length = entry.body().get("length").intValue();
          assertEquals(OtherJvm.draft(key, length).body(), entry.body());
        }
        long rows =
            book.index()
                .withHandle(
                    handle ->
                        handle.createQuery("select count(*) from entry").mapTo(Long.class).one());
        assertEquals(book.lastN(), rows);
      }
      byte[] now = bench.bytes();
      assertArrayEquals(before, Arrays.copyOf(now, before.length));
      before = now;
      // The whole chain, every key once.
      assertTrue(BookFile.read(bench.log()).entries().size() >= acknowledged.size());
      assertNull(IndexCheck.wrong(bench.folder), "another index than one built anew");
      inAll += acknowledged.size() - known;
    }
    assertTrue(inAll > 300L * rounds);
    System.out.printf("kills: %d, %d acknowledged, lost 0, corrupt 0%n", rounds, inAll);
  }

  @Test
  void a_read_only_folder_is_refused_in_words() throws Exception {
    Path shut = Files.createDirectory(folder.resolve("shut"));
    assertTrue(shut.toFile().setWritable(false));
    Process other =
        OtherJvm.start(NoPrivilege.over(shut), beside.resolve("errors"), "hold", shut.toString());
    String said = output(other).readLine();
    assertEquals(3, other.waitFor(), said);
    assertEquals("refused The folder " + shut + " cannot be written: no permission.", said);
  }

  /** Reads what the killed process still got out; a line without its end does not count. */
  private static void readRest(BufferedReader output, Set<String> acknowledged) throws IOException {
    StringBuilder line = new StringBuilder();
    try {
      for (int c = output.read(); c >= 0; c = output.read()) {
        if (c == '\n') {
          acknowledged.add(line.toString().strip());
          line.setLength(0);
        } else {
          line.append((char) c);
        }
      }
    } catch (IOException closed) {
      // Java closes the pipe of a killed process; nothing more was said then.
      return;
    }
  }

  private static BufferedReader output(Process process) {
    return new BufferedReader(
        new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }
}
