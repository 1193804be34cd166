package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GrowsOnlyTest {
  @Test
  void nothing_that_is_ever_done_changes_a_byte_of_an_earlier_line(@TempDir Path folder)
      throws IOException {
    Random random = new Random(2031);
    Bench bench = new Bench(folder);
    byte[] before = new byte[0];
    int made = 0;
    Book book = bench.open();
    for (int step = 0; step < 600; step++) {
      switch (random.nextInt(10)) {
        case 0 -> {
          book.close();
          if (random.nextInt(3) == 0) {
            tear(bench, random);
          }
          book = bench.open();
        }
        case 1 -> {
          Book open = book;
          FailingDisk disk = new FailingDisk(bench.log());
          book.replaceDisk(disk);
          disk.roomLeft = random.nextInt(150);
          assertThrows(BookRefused.class, () -> open.append(Bench.note("never")));
          disk.roomLeft = Integer.MAX_VALUE;
        }
        case 2 -> book.append(Bench.note("n" + random.nextInt(made + 1)));
        case 3 -> {
          Book open = book;
          assertThrows(
              BookRefused.class,
              () ->
                  open.append(
                      new Draft("x", "note", 1, 1L << 40, "Sam", null, null, Bench.body())));
        }
        default -> {
          List<Draft> drafts = new ArrayList<>();
          for (int i = random.nextInt(4); i >= 0; i--) {
            drafts.add(Bench.note("n" + made++));
          }
          book.append(drafts);
        }
      }
      byte[] now = bench.bytes();
      assertEquals(
          -1,
          Arrays.mismatch(before, Arrays.copyOf(now, before.length)),
          "an earlier byte changed in step " + step);
      before = now;
    }
    long last = book.lastN();
    book.close();
    assertEquals(last, BookFile.read(bench.log()).entries().size());
  }

  private static void tear(Bench bench, Random random) throws IOException {
    byte[] whole = bench.bytes();
    byte[] torn = Arrays.copyOf(whole, whole.length + 1 + random.nextInt(200));
    bench.write(torn);
  }
}
