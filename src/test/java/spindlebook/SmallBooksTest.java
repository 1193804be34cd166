package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.card.TravelWords;
import spindlebook.corner.CornerTape;
import spindlebook.drawing.TapeSheet;
import spindlebook.figures.Figures;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.log.BookFile;
import spindlebook.log.CarsOfFile;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.TravelFindings;

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
    Map<Long, String> failed = new TreeMap<>();
    int limits = 0;
    for (int first = 0; first < BOOKS; first += A_FILE) {
      limits += curves(folder, seeds(first), failed);
    }
    assertEquals(Map.of(), failed, failed.size() + " of " + BOOKS + ", seed " + SEED);
    assertTrue(limits > BOOKS / 20, "too few curves: " + limits);
  }

  /** A stop gap that does not close at touch, a place merged twice, a slope of next to nothing. */
  @Test
  void books_that_once_failed_are_worked_out(@TempDir Path folder) throws Exception {
    Map<Long, String> failed = new TreeMap<>();
    List<Long> seeds =
        LongStream.of(155, 439, 4915, 10599, 11333, 11791, 13443, 14406, 16873, 17301, 19375)
            .mapToObj(i -> 77 + i)
            .toList();
    curves(folder, seeds, failed);
    assertEquals(Map.of(), failed);
  }

  /** Works out a book of each seed; how many limits were found on curves. */
  private static int curves(Path folder, List<Long> seeds, Map<Long, String> failed)
      throws Exception {
    List<String> lines = new ArrayList<>();
    seeds.forEach(seed -> lines.addAll(new SmallBook("s" + seed, new Random(seed)).lines()));
    Path file = Files.write(folder.resolve("small.jsonl"), lines);
    int limits = 0;
    for (CarBook book : CarsOfFile.of(BookFile.readByHand(file)).values()) {
      long seed = Long.parseLong(book.car().orElseThrow().substring(1));
      try {
        String figures = Figures.car(book).toString();
        limits += figures.contains("\"found\":\"curve\"") ? 1 : 0;
        for (String corner : book.corners()) {
          String collides = collision(book.card(corner));
          if (!collides.isEmpty()) {
            failed.put(seed, collides);
          }
        }
        int wrong = figures.indexOf("could not be worked out");
        if (wrong >= 0) {
          failed.put(seed, figures.substring(wrong, Math.min(figures.length(), wrong + 120)));
        }
      } catch (RuntimeException e) {
        failed.put(seed, e + " " + e.getStackTrace()[0]);
      }
    }
    return limits;
  }

  /** Two labels of one side of the corner's drawing that lie over each other, or outside it. */
  private static String collision(Card card) {
    TravelFindings travel = CornerTravel.of(card);
    TravelWords words = new TravelWords(card, travel);
    Optional<TapeSheet> sheet = CornerTape.of(card, travel, words, false);
    for (boolean left : new boolean[] {true, false}) {
      double lower = -1;
      for (TapeSheet.Note note :
          sheet.map(TapeSheet::notes).orElse(List.of()).stream()
              .filter(n -> n.mark().contains("note-left") == left)
              .sorted(Comparator.comparingDouble(TapeSheet.Note::y))
              .toList()) {
        if (note.y() < lower - 1 || note.y() + note.height() > sheet.get().height() + 1) {
          return "label '" + note.words() + note.figure() + "' collides, " + sheet.get().title();
        }
        lower = note.y() + note.height();
      }
    }
    return "";
  }

  private static List<Long> seeds(int first) {
    return LongStream.range(first, Math.min(BOOKS, first + A_FILE))
        .mapToObj(i -> SEED + i)
        .toList();
  }
}
