package spindlebook.fold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import spindlebook.entry.Content;
import spindlebook.travel.CornerTravel;

/**
 * How much is done for a card. The work is counted, in folds and in bytes asked for, and not timed,
 * so that it says the same on any machine.
 */
class WorkOfAFoldTest {
  private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  @Test
  void a_height_or_a_reading_more_folds_no_corner_again() {
    CarBook book = HandBooks.of(rounds(3));
    book.card("lf");
    long folds = CardFold.folds();
    CarBook tried = book.with(reading(book, "tried", "r2h3"));
    tried.card("lf");
    CarBook saved = book.with(reading(book, "kept", "r2h3"));
    Card card = saved.card("lf");
    assertTrue(card.reading("kept").isPresent());
    assertTrue(card.reading("tried").isEmpty());
    assertEquals(folds, CardFold.folds());

    CarBook fromScratch = CarBook.of(saved.entries());
    assertEquals(fromScratch.card("lf"), card);
    assertEquals(folds + 1, CardFold.folds());
  }

  @Test
  void a_round_begun_folds_no_corner_again_and_leaves_its_findings() {
    CarBook book = HandBooks.of(rounds(3));
    Card card = book.card("lf");
    Noted first =
        book.entries().stream().filter(e -> e.key().equals("r1")).findFirst().orElseThrow();
    long folds = CardFold.folds();
    CarBook begun =
        book.with(new Noted(book.n() + 1, "r9", first.at(), "Sam", book.n(), first.content()));
    assertTrue(begun.card("lf").round("r9").isPresent());
    assertSame(CornerTravel.of(card), CornerTravel.of(begun.card("lf")));
    CarBook read = begun.with(reading(begun, "kept", "r2h3"));
    Card later = read.card("lf");
    assertEquals(folds, CardFold.folds());
    assertEquals(CarBook.of(read.entries()).card("lf"), later);
  }

  @Test
  void a_card_and_its_findings_are_worked_out_once_and_a_to_do_leaves_them() {
    CarBook book = HandBooks.of(rounds(3));
    Card card = book.card("lf");
    assertSame(card, book.card("lf"));
    assertSame(CornerTravel.of(card), CornerTravel.of(card));
    Noted last = book.entries().get(book.entries().size() - 1);
    Content toDo = new Content.ToDo("car", null, null, "order a strap", null, null);
    CarBook later = book.with(new Noted(last.n() + 1, "todo", last.at(), "Sam", last.n(), toDo));
    assertEquals(last.n() + 1, later.card("lf").n());
    assertSame(CornerTravel.of(card), CornerTravel.of(later.card("lf")));
    Card read = later.with(reading(later, "kept", "r2h3")).card("lf");
    assertNotSame(CornerTravel.of(card), CornerTravel.of(read));
  }

  @Test
  void eight_times_the_rounds_with_a_change_after_each_are_eight_times_the_work() {
    grows(WorkOfAFoldTest::rounds, 30);
  }

  @Test
  void eight_times_the_repeats_in_one_round_are_eight_times_the_work() {
    grows(WorkOfAFoldTest::repeats, 100);
  }

  @Test
  void eight_times_the_repeats_before_what_was_put_back_are_eight_times_the_work() {
    grows(
        many -> {
          List<String> lines = repeats(many);
          lines.add(CarLines.upper("out", "1 turn"));
          lines.add(CarLines.upper("back", "0 turns"));
          return lines;
        },
        100);
  }

  @Test
  void eight_times_the_marks_taken_as_at_the_one_before_are_eight_times_the_work() {
    grows(WorkOfAFoldTest::marksAsBefore, 150);
  }

  @Test
  void eight_times_the_corrections_of_corrections_are_eight_times_the_work() {
    grows(WorkOfAFoldTest::corrections, 150);
  }

  private static void grows(IntFunction<List<String>> lines, int n) {
    List<Noted> small = HandBooks.of(lines.apply(n)).entries();
    List<Noted> large = HandBooks.of(lines.apply(8 * n)).entries();
    bytes(small);
    double times = (double) bytes(large) / bytes(small);
    assertTrue(times < 10, times + " times the bytes");
  }

  /** Asked for to fold a book and say what is to be read again and what is found. */
  private static long bytes(List<Noted> entries) {
    long before = THREADS.getCurrentThreadAllocatedBytes();
    Card card = CarBook.of(entries).card("lf");
    card.readAgain();
    CornerTravel.of(card);
    return THREADS.getCurrentThreadAllocatedBytes() - before;
  }

  private static Noted reading(CarBook book, String key, String height) {
    Content like = book.standing("r2h3g").orElseThrow();
    Content.Reading reading = (Content.Reading) like;
    assertEquals(height, reading.height());
    long n = book.n() + 1;
    return new Noted(n, key, book.entries().get(0).at(), "Sam", n - 1, reading);
  }

  private static List<String> begun() {
    return new ArrayList<>(List.of(CarLines.CAR, CarLines.LF, CarLines.R1));
  }

  /** Rounds of five heights and their gaps, the upper ends turned after each. */
  static List<String> rounds(int many) {
    List<String> lines = begun();
    for (int r = 0; r < many; r++) {
      for (int h = 0; h < 5; h++) {
        String height = "r" + r + "h" + h;
        String name = h == 0 ? "on-the-strap" : h == 4 ? "stop-touch" : "in-between";
        lines.add(CarLines.height(height, name, (15 + 2 * h) + " 1/4 in"));
        lines.add(CarLines.gap(height + "g", height, "5/8 in"));
      }
      lines.add(CarLines.upper("turn" + r, r + " turns"));
    }
    return lines;
  }

  static List<String> repeats(int many) {
    List<String> lines = begun();
    for (int i = 0; i < many; i++) {
      lines.add(CarLines.height("h" + i, "on-the-strap", "15 1/4 in"));
      lines.add(CarLines.gap("g" + i, "h" + i, "5/8 in"));
    }
    return lines;
  }

  static List<String> marksAsBefore(int many) {
    List<String> lines = begun();
    lines.add(CarLines.height("h0", "in-between", "15 1/4 in"));
    for (int i = 1; i < many; i++) {
      lines.add(
          CarLines.line(
              "{'key':'h"
                  + i
                  + "','kind':'height','body':{'round':'r1','name':'in-between',"
                  + "'spindle':'15 1/4 in','markAsAt':'h"
                  + (i - 1)
                  + "'}}"));
    }
    return lines;
  }

  static List<String> corrections(int many) {
    List<String> lines = begun();
    lines.add(CarLines.height("c0", "in-between", "15 1/4 in"));
    for (int i = 1; i < many; i++) {
      lines.add(
          CarLines.line(
              "{'key':'c"
                  + i
                  + "','kind':'correction','body':{'target':'c"
                  + (i - 1)
                  + "','reason':'a slip'}}"));
    }
    return lines;
  }
}
