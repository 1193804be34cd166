package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.concurrent.FutureTask;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.fold.CarBook;
import spindlebook.fold.CarLines;
import spindlebook.fold.Noted;

/** A car's book that grew with the log is the one that a start would fold. */
class HistoriesTest {
  @TempDir Path folder;
  private Book book;
  private Histories histories;

  @BeforeEach
  void open() {
    book = new Bench(folder).open();
    histories = new Histories(book);
    take(
        CarLines.CAR,
        CarLines.LF,
        CarLines.R1,
        CarLines.CAR.replace("\"key\":\"car\"", "\"key\":\"goat\""),
        CarLines.LF
            .replace("\"lf\"", "\"goat-lf\"")
            .replace("\"car\":\"car\"", "\"car\":\"goat\""));
  }

  @AfterEach
  void close() {
    book.close();
  }

  @Test
  void a_reading_that_came_before_its_height_is_there_once_the_height_came() {
    take(CarLines.gap("early", "late", "5/8 in"));
    take(CarLines.R1.replace("\"r1\"", "\"r2\""));
    assertTrue(histories.of("car").original("early").isEmpty());
    take(CarLines.height("late", "in-between", "15 1/4 in"));
    assertTrue(histories.of("car").original("early").isPresent());
    assertAsAfterAStart();
  }

  @Test
  void what_is_corrected_to_hang_on_another_car_leaves_the_one_and_comes_to_the_other() {
    take(CarLines.height("h", "in-between", "15 1/4 in"));
    assertEquals(4, histories.of("car").entries().size());
    assertEquals(2, histories.of("goat").entries().size());
    String there = CarLines.R1.substring(CarLines.R1.indexOf("\"body\""), CarLines.R1.length() - 1);
    take(
        "{\"key\":\"c\",\"kind\":\"correction\",\"body\":{\"target\":\"r1\",\"kind\":\"round\","
            + there.replace("\"lf\"", "\"goat-lf\"")
            + "}}");
    assertEquals(2, histories.of("car").entries().size());
    assertEquals(5, histories.of("goat").entries().size());
    assertAsAfterAStart();
  }

  @Test
  void however_many_entries_come_before_a_car_is_asked_for_again_all_are_there() {
    assertEquals(3, histories.of("car").entries().size());
    for (int i = 0; i < 120; i++) {
      take(CarLines.R1.replace("\"r1\"", "\"more" + i + "\""));
    }
    assertEquals(123, histories.of("car").entries().size());
    assertAsAfterAStart();
  }

  @Test
  void an_entry_the_index_could_not_follow_is_there_once_it_does() {
    book.index().useHandle(handle -> handle.execute("alter table meta rename to away"));
    take(CarLines.height("h", "in-between", "15 1/4 in"));
    assertTrue(histories.of("car").original("h").isEmpty(), "first asked for behind the book");
    book.index().useHandle(handle -> handle.execute("alter table away rename to meta"));
    take(CarLines.height("h2", "in-between", "15 1/2 in"));
    assertTrue(histories.of("car").original("h").isPresent());
    assertAsAfterAStart();
  }

  @Test
  void a_save_does_not_wait_while_a_page_folds_its_car_for_the_first_time() throws Exception {
    String[] rounds = new String[20_000];
    Arrays.setAll(rounds, i -> CarLines.R1.replace("\"r1\"", "\"more" + i + "\""));
    take(String.join("\n", rounds));
    // On a busy machine the page may be done before the save began; behind it, it never waits.
    boolean overtook = false;
    for (int i = 0; i < 5 && !overtook; i++) {
      histories = new Histories(book);
      FutureTask<CarBook> first = new FutureTask<>(() -> histories.of("car"));
      Thread page = new Thread(first);
      page.start();
      while (page.isAlive() && !folds(page)) {
        Thread.onSpinWait();
      }
      take(CarLines.R1.replace("\"r1\"", "\"meanwhile" + i + "\""));
      overtook = folds(page);
      assertTrue(first.get().original("more19999").isPresent());
      assertTrue(histories.of("car").original("meanwhile" + i).isPresent());
      assertAsAfterAStart();
    }
    assertTrue(overtook, "every save had to wait for the page");
  }

  private static boolean folds(Thread page) {
    return Arrays.stream(page.getStackTrace())
        .map(StackTraceElement::getClassName)
        .anyMatch(Set.of(Bodies.class.getName(), CarBook.class.getName())::contains);
  }

  /** Each in a submission of its own. */
  private void take(String... lines) {
    for (String line : lines) {
      Path file = folder.resolve("more.jsonl");
      try {
        Files.writeString(file, line + "\n");
      } catch (IOException trouble) {
        throw new UncheckedIOException(trouble);
      }
      book.bringIn(BookFile.readByHand(file));
    }
  }

  private void assertAsAfterAStart() {
    Histories anew = new Histories(book);
    for (String car : List.of("car", "goat")) {
      assertEquals(keys(anew.of(car)), keys(histories.of(car)));
    }
    var ofFile = CarsOfFile.of(BookFile.read(folder.resolve("book.jsonl")));
    for (String car : List.of("car", "goat")) {
      assertEquals(keys(ofFile.get(car)), keys(histories.of(car)));
    }
  }

  private static List<String> keys(CarBook car) {
    return car.entries().stream().map(Noted::key).toList();
  }
}
