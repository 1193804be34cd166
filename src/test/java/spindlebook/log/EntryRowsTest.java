package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** To which car and corner each entry's row belongs. */
class EntryRowsTest {
  @TempDir Path folder;
  private Book book;

  @BeforeEach
  void two_cars() {
    book = new Bench(folder).open();
    book.append(
        List.of(
            Bench.car("mule"),
            Bench.corner("lf", "mule"),
            Bench.corner("rf", "mule"),
            Bench.car("goat"),
            Bench.corner("goat-lf", "goat")));
  }

  @AfterEach
  void close() {
    book.close();
  }

  @Test
  void a_car_is_its_own_car_and_a_corner_its_own_corner() {
    assertEquals("mule -", place("mule"));
    assertEquals("mule lf", place("lf"));
    assertEquals("goat goat-lf", place("goat-lf"));
  }

  @Test
  void everything_below_belongs_where_its_parent_belongs() {
    book.append(
        List.of(
            Bench.round("r", "lf"),
            Bench.height("h", "r"),
            Bench.reading("g", "h"),
            Bench.correction("c", "g", Bench.body().put("height", "h")),
            Bench.draft("answer", "answer", Bench.body().put("target", "c")),
            Bench.draft("use", "use", Bench.body().put("car", "goat"))));
    for (String key : List.of("r", "h", "g", "c", "answer")) {
      assertEquals("mule lf", place(key), key);
    }
    assertEquals("goat -", place("use"));
  }

  @Test
  void the_nearest_parent_named_counts() {
    book.append(
        List.of(
            Bench.round("r", "lf"),
            Bench.height("h", "r"),
            Bench.draft(
                "all",
                "reading",
                Bench.body()
                    .put("target", "goat")
                    .put("car", "goat")
                    .put("corner", "rf")
                    .put("height", "h")),
            Bench.draft("odd", "reading", Bench.body().put("height", 3).put("corner", "rf"))));
    assertEquals("mule lf", place("all"));
    assertEquals("mule rf", place("odd"));
  }

  @Test
  void an_entry_whose_parent_is_not_known_is_stored_without_a_place() {
    book.append(List.of(Bench.round("r", "nowhere"), Bench.note("loose")));
    assertEquals("- -", place("r"));
    assertEquals("- -", place("loose"));
  }

  @Test
  void what_came_before_its_parent_gets_its_place_when_the_parent_comes() {
    book.append(List.of(Bench.reading("g", "h"), Bench.height("h", "r")));
    assertEquals("- -", place("g"));
    book.append(Bench.round("r", "lf"));
    for (String key : List.of("r", "h", "g")) {
      assertEquals("mule lf", place(key), key);
    }
  }

  @Test
  void a_correction_of_a_round_that_names_another_corner_moves_all_below_it() {
    book.append(
        List.of(
            Bench.round("r", "lf"),
            Bench.height("h", "r"),
            Bench.reading("g", "h"),
            Bench.correction("c1", "g", Bench.body().put("height", "h").put("value", 9)),
            Bench.round("other", "lf"),
            Bench.correction("c2", "r", Bench.body().put("corner", "rf"))));
    for (String key : List.of("r", "h", "g", "c1", "c2")) {
      assertEquals("mule rf", place(key), key);
    }
    assertEquals("mule lf", place("other"));
    book.append(Bench.reading("later", "h"));
    assertEquals("mule rf", place("later"));
    // The last correction wins, and may name another car's corner.
    book.append(Bench.correction("c3", "r", Bench.body().put("corner", "goat-lf")));
    for (String key : List.of("r", "h", "g", "c1", "c2", "c3", "later")) {
      assertEquals("goat goat-lf", place(key), key);
    }
    assertEquals(List.of("goat", "goat-lf", "r", "h", "g", "c1", "c2", "later", "c3"), goat());
  }

  @Test
  void a_corrected_height_moves_to_its_new_round_and_a_corrected_value_stays() {
    book.append(
        List.of(
            Bench.round("r", "lf"),
            Bench.round("s", "rf"),
            Bench.height("h", "r"),
            Bench.reading("g", "h"),
            Bench.correction("c1", "h", Bench.body().put("mark", 30))));
    assertEquals("mule lf", place("g"));
    book.append(Bench.correction("c2", "h", Bench.body().put("round", "s")));
    assertEquals("mule rf", place("g"));
    assertEquals("mule lf", place("r"));
  }

  @Test
  void a_correction_that_came_before_what_it_corrects_still_counts() {
    book.append(
        List.of(
            Bench.correction("c", "r", Bench.body().put("corner", "rf")), Bench.round("r", "lf")));
    assertEquals("mule rf", place("r"));
    assertEquals("mule rf", place("c"));
  }

  @Test
  void corrections_to_an_unknown_corner_or_round_in_circles_change_nothing_and_end() {
    book.append(
        List.of(
            Bench.round("r", "lf"),
            Bench.height("h", "r"),
            Bench.correction("c1", "r", Bench.body().put("corner", "nowhere")),
            Bench.correction("c2", "mule", Bench.body().put("car", "goat")),
            Bench.correction("c3", "nothing", Bench.body().put("corner", "rf"))));
    assertEquals("mule lf", place("h"));
    assertEquals("mule -", place("mule"));
    book.append(List.of(Bench.height("x", "y"), Bench.height("y", "x")));
    assertEquals("- -", place("x"));
    book.append(Bench.correction("c4", "r", Bench.body().put("round", "h")));
    assertEquals("mule lf", place("h"));
  }

  @Test
  void the_entries_of_a_car_come_in_order() {
    book.append(List.of(Bench.round("r", "lf"), Bench.note("loose"), Bench.round("s", "rf")));
    assertEquals(
        List.of("mule", "lf", "rf", "r", "s"),
        book.ofCar("mule").stream().map(Entry::key).toList());
    assertEquals(book.byKey("r").orElseThrow(), book.ofCar("mule").get(3));
    assertEquals(List.of(), book.ofCar("nobody"));
  }

  @Test
  void a_move_that_is_taken_back_moves_all_of_it_back() {
    book.append(
        List.of(Bench.round("ro", "lf"), Bench.height("he", "ro"), Bench.reading("re", "he")));
    book.append(Bench.correction("over", "ro", Bench.body().put("corner", "rf")));
    assertEquals("mule rf", place("re"));
    book.append(takenBack("not-so", "over"));
    assertEquals(
        List.of("mule lf", "mule lf", "mule lf"), List.of(place("ro"), place("he"), place("re")));
    book.append(takenBack("yet-so", "not-so"));
    assertEquals("mule rf", place("re"));
    // A correction that was itself corrected says what it says now.
    book.append(
        Bench.correction(
            "rather",
            "over",
            Bench.body()
                .put("target", "ro")
                .<com.fasterxml.jackson.databind.node.ObjectNode>set(
                    "body", Bench.body().put("corner", "lf"))));
    assertEquals("mule lf", place("re"));
    book.append(takenBack("gone", "ro"));
    assertEquals("mule lf", place("re"), "what is withdrawn stays where it stood");
  }

  private static Draft takenBack(String key, String target) {
    Draft correction = Bench.correction(key, target, Bench.body());
    ((com.fasterxml.jackson.databind.node.ObjectNode) correction.body()).putNull("body");
    return correction;
  }

  @Test
  void the_last_entries_of_a_car_are_found_without_walking_over_all_of_them() {
    for (int i = 0; i < 40; i++) {
      int part = i;
      book.append(
          java.util.stream.IntStream.range(0, 25)
              .mapToObj(
                  j ->
                      Bench.draft(
                          "n" + part + "." + j,
                          j % 2 == 0 ? "use" : "to-do",
                          Bench.body().put("corner", j % 3 == 0 ? "lf" : "rf")))
              .toList());
    }
    assertReadsFew("where car = 'mule' order by car desc, n desc limit 11");
    assertReadsFew("where corner = 'lf' order by corner desc, n desc limit 11");
    assertReadsFew(
        "where car = 'mule' and kind = 'use' order by car desc, kind desc, n desc limit 11");
    assertReadsFew("where car = 'mule' and n > 995 order by car, n");
    assertReadsFew("where key = 'n3.3'");
  }

  private void assertReadsFew(String query) {
    String plan =
        book.index()
            .withHandle(
                handle ->
                    handle
                        .createQuery("explain analyze select n, who from entry " + query)
                        .mapTo(String.class)
                        .one());
    var scans = java.util.regex.Pattern.compile("scanCount: (\\d+)").matcher(plan);
    assertTrue(scans.find(), plan);
    assertTrue(Integer.parseInt(scans.group(1)) <= 13, plan);
  }

  private String place(String key) {
    return book.index()
        .withHandle(
            handle ->
                handle
                    .createQuery("select car, corner from entry where key = :key")
                    .bind("key", key)
                    .map(
                        (row, context) ->
                            dash(row.getString("car")) + " " + dash(row.getString("corner")))
                    .one());
  }

  private static String dash(String text) {
    return text == null ? "-" : text;
  }

  private List<String> goat() {
    return book.ofCar("goat").stream().map(Entry::key).toList();
  }
}
