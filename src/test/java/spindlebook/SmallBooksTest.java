package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.corner.CarBook;
import spindlebook.figures.Figures;
import spindlebook.log.BookFile;
import spindlebook.log.CarsOfFile;

/**
 * Small books of everyday sixteenths break nothing, whatever was read and however often. A few in
 * the suite; as many as you like with {@code -Dspindlebook.books=20000}, other ones with {@code
 * -Dspindlebook.seed=…}.
 */
class SmallBooksTest {
  private static final int BOOKS = Integer.getInteger("spindlebook.books", 400);
  private static final long SEED = Long.getLong("spindlebook.seed", 20261128L);
  private static final int A_FILE = 200;

  @Test
  void every_finding_of_every_small_book_is_worked_out(@TempDir Path folder) throws Exception {
    Map<String, String> failed = new TreeMap<>();
    int limits = 0;
    for (int first = 0; first < BOOKS; first += A_FILE) {
      Path file = Files.write(folder.resolve("small.jsonl"), books(first));
      for (CarBook book : CarsOfFile.of(BookFile.readByHand(file)).values()) {
        try {
          String figures = Figures.car(book).toString();
          limits += figures.contains("\"found\":\"curve\"") ? 1 : 0;
          if (figures.contains("could not be worked out")) {
            failed.put(book.car().orElseThrow(), "a finding could not be worked out");
          }
        } catch (RuntimeException e) {
          failed.put(book.car().orElseThrow(), e + " " + e.getStackTrace()[0]);
        }
      }
    }
    assertEquals(Map.of(), failed, failed.size() + " of " + BOOKS + ", seed " + SEED);
    assertTrue(limits > BOOKS / 20, "too few curves: " + limits);
  }

  private static List<String> books(int first) {
    List<String> lines = new ArrayList<>();
    for (int i = first; i < Math.min(BOOKS, first + A_FILE); i++) {
      lines.addAll(new SmallBook("s" + i, new Random(SEED + i)).lines());
    }
    return lines;
  }
}
