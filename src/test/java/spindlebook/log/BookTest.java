package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BookTest {
  @Test
  void a_first_try(@TempDir Path folder) {
    Bench bench = new Bench(folder);
    for (int i = 0; i < 6; i++) {
      long t = System.nanoTime();
      try (Book book = bench.open()) {
        System.out.println("open " + (System.nanoTime() - t) / 1000000 + " " + bench.told);
        book.append(Bench.note("a" + i));
        assertEquals(i + 1, book.lastN());
        t = System.nanoTime();
      }
      System.out.println("close " + (System.nanoTime() - t) / 1000000);
    }
  }
}
