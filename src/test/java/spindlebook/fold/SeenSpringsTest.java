package spindlebook.fold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.fold.CarLines.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import spindlebook.definition.BumpStop;
import spindlebook.entry.UseUnit;
import spindlebook.log.BookRefused;

/** Springs, stops, straps and parts, folded from small books written by hand. */
class SeenSpringsTest {
  private static final String LF =
      line(
          "{'kind':'corner','key':'lf','body':{'car':'car','place':'left-front','layout':"
              + "'steered-double-a-arm','adjusters':["
              + "{'adjuster':'strap','kind':'limit-strap','unit':'holes','step':'1 in',"
              + "'moreShortens':true,'first':'hole 3'},"
              + "{'adjuster':'spacer','kind':'bump-stop-spacer','unit':'length',"
              + "'moreShortens':true},"
              + "{'adjuster':'collar','kind':'spring-preload','unit':'turns','step':'2 mm',"
              + "'moreShortens':false,'first':'4 turns'},"
              + "{'adjuster':'spring','kind':'spring','unit':'words','moreShortens':false}]}}");

  private static final String SPRING = define("'spring':{'rate':'250 lb/in','preload':'10 mm'}");

  private static String define(String what) {
    return line("{'kind':'definition','body':{'corner':'lf'," + what + "}}");
  }

  private static String adjust(String adjuster, String to) {
    return line(
        "{'kind':'adjustment','body':{'corner':'lf','adjuster':'"
            + adjuster
            + "','to':'"
            + to
            + "'}}");
  }

  private static String part(String rest) {
    return line(
        "{'kind':'part','body':{'car':'car','corner':'lf','part':'strap','what':'limit strap',"
            + rest
            + "}}");
  }

  private static String hours(double much) {
    return line("{'kind':'use','body':{'car':'car','unit':'hours','amount':" + much + "}}");
  }

  private static String read(String mm, String pull) {
    return line(
        "{'kind':'telltale','body':{'corner':'lf','what':'strap-length','length':'"
            + mm
            + " mm'"
            + (pull == null ? "" : ",'pull':'" + pull + "'")
            + "}}");
  }

  private static CarBook book(String... later) {
    List<String> lines = new ArrayList<>(List.of(CarLines.CAR, LF));
    lines.addAll(List.of(later));
    return HandBooks.of(lines);
  }

  private static SeenSprings seen(String... later) {
    return book(later).card("lf").springs();
  }

  @Test
  void a_book_that_says_nothing_of_them_knows_nothing() {
    assertFalse(seen().any());
    assertFalse(seen(hours(3), read("508", null)).any());
  }

  @Test
  void a_turned_collar_is_counted_and_another_spring_is_to_be_said_anew() {
    assertEquals(Standing.LIVE, seen(SPRING).spring().orElseThrow().stands());
    SeenSprings turned = seen(SPRING, adjust("collar", "6.5 turns"));
    assertEquals(Standing.WORKED_OUT, turned.spring().orElseThrow().stands());
    assertEquals(5, turned.pressedMm(), 1e-12);
    assertEquals(0, seen(adjust("collar", "6 turns"), SPRING).pressedMm());
    assertEquals(
        Standing.STALE,
        seen(SPRING, adjust("spring", "the red one")).spring().orElseThrow().stands());
  }

  @Test
  void a_strap_is_told_by_its_use_under_one_pull() {
    SeenSprings.Strap strap =
        seen(
                hours(2),
                part("'done':'fitted','adjuster':'strap','usedBefore':1.5"),
                read("508", "200 lb"),
                hours(4),
                read("511", null),
                read("510", "100 lb"),
                read("512", "200 lb"),
                hours(2.5),
                read("513", "889.644 N"))
            .strap();
    assertEquals(
        List.of(1.5, 5.5, 8.0), strap.read().stream().map(SeenSprings.StrapRead::use).toList());
    assertEquals(
        List.of(508.0, 512.0, 513.0),
        strap.read().stream().map(r -> r.lengthMm().value()).toList());
    assertEquals(UseUnit.HOURS, strap.unit());
    assertTrue(strap.counted());
  }

  @Test
  void miles_are_not_added_to_hours() {
    String miles = line("{'kind':'use','body':{'car':'car','unit':'miles','amount':100}}");
    SeenSprings.Strap strap = seen(hours(2), miles, hours(3), read("508", "200 lb")).strap();
    assertEquals(List.of(5.0), strap.read().stream().map(SeenSprings.StrapRead::use).toList());
    assertEquals(UseUnit.HOURS, strap.unit());
    assertFalse(strap.counted());
  }

  @Test
  void a_strap_set_anew_is_read_anew_and_a_new_one_starts_at_nothing() {
    String[] first = {hours(2), read("508", "200 lb"), hours(3), read("509", "200 lb")};
    assertEquals(2, seen(first).strap().read().size());
    Map<String, List<Double>> use =
        Map.of(
            adjust("strap", "hole 4"), List.of(5.0, 6.0),
            part("'done':'fitted','adjuster':'strap'"), List.of(0.0, 1.0));
    use.forEach(
        (change, wanted) -> {
          SeenSprings.Strap strap =
              seen(
                      first[0],
                      first[1],
                      first[2],
                      first[3],
                      change,
                      read("500", "200 lb"),
                      hours(1),
                      read("501", "200 lb"))
                  .strap();
          assertEquals(wanted, strap.read().stream().map(SeenSprings.StrapRead::use).toList());
        });
  }

  /** A phone that did not know of the new strap read the old one, however late it comes. */
  @Test
  void what_was_read_before_a_strap_was_fitted_is_not_of_the_new_one() {
    String late = read("545", "200 lb").replace("{\"kind\"", "{\"after\":2,\"kind\"");
    SeenSprings.Strap strap =
        seen(hours(2), part("'done':'fitted','adjuster':'strap'"), late, read("500", "200 lb"))
            .strap();
    assertEquals(List.of(500.0), strap.read().stream().map(r -> r.lengthMm().value()).toList());
  }

  /** Another stop has another chart; a spacer moves only where it is first touched. */
  @Test
  void a_spacer_leaves_a_stops_chart_and_another_stop_ends_it() {
    String stop =
        define(
            "'bumpStop':{'stop':'air','kind':'air','touch':'40 mm','chart':[{'crush':'0 mm',"
                + "'force':'0 N'},{'crush':'50 mm','force':'4000 N'}]}");
    SeenSprings.Said<BumpStop> spaced = seen(stop, adjust("spacer", "10 mm")).stops().get(0);
    assertEquals(Standing.LIVE, spaced.stands());
    assertNull(spaced.what().touch());
    String another =
        part("'done':'fitted','adjuster':'spacer'").replace("\"strap\",\"what", "\"stop\",\"what");
    SeenSprings.Said<BumpStop> fitted = seen(stop, another).stops().get(0);
    assertEquals(Standing.STALE, fitted.stands());
  }

  @Test
  void a_drive_that_is_not_counted_so_is_known() {
    String driven = line("{'kind':'happening','body':{'car':'car','what':'driven'}}");
    assertFalse(seen(hours(2), driven, read("508", "200 lb")).strap().counted());
  }

  /** Fitted in the same hole it is another strap all the same: where it stops is not known. */
  @Test
  void another_strap_moves_what_a_strap_moves() {
    String[] round = {
      CarLines.R1,
      CarLines.height("h", "on-the-strap", "10 in"),
      part("'done':'fitted','adjuster':'strap'")
    };
    assertEquals(Standing.STALE, book(round).card("lf").height("h").orElseThrow().stop());
    assertEquals(
        "limit strap fitted",
        book(round).card("lf").height("h").orElseThrow().because().get(0).words());
    assertEquals(
        Standing.LIVE,
        book(round[0], round[1], part("'done':'fitted'"))
            .card("lf")
            .height("h")
            .orElseThrow()
            .stop());
  }

  @Test
  void a_part_is_due_after_its_use_until_it_was_looked_at() {
    String fitted = part("'done':'fitted','lookAfter':10,'usedBefore':4");
    SeenPart early = book(fitted, hours(5)).parts().get(0);
    assertEquals(1, early.left().orElseThrow(), 1e-12);
    assertFalse(early.due());
    SeenPart due = book(fitted, hours(5), hours(1)).parts().get(0);
    assertTrue(due.due());
    assertEquals(10, due.used());
    String looked = part("'done':'looked-at'");
    SeenPart after = book(fitted, hours(6), looked, hours(3)).parts().get(0);
    assertEquals(7, after.left().orElseThrow(), 1e-12);
    assertEquals(13, after.used());
    assertTrue(after.counted());
    assertFalse(
        book(fitted, line("{'kind':'use','body':{'car':'car','unit':'miles','amount':9}}"))
            .parts()
            .get(0)
            .counted());
    assertEquals(List.of(), book(fitted, part("'done':'taken-off'")).parts());
  }

  @Test
  void what_cannot_be_is_refused_in_a_sentence() {
    for (String wrong :
        List.of(
            "'spring':{'rate':'250 lb'}",
            "'spring':{'rate':'250 lb/in','tender':'100 lb/in'}",
            "'spring':{'rate':'250 lb/in','free':'5 in','solid':'6 in'}",
            "'bumpStop':{'stop':'a','kind':'air','chart':[{'crush':'1 in','force':'0 lb'}]}",
            "'cornerWeight':{'by':'lever','weight':'900 lb'}",
            "'cornerWeight':{'by':'scales'}")) {
      assertThrows(BookRefused.class, () -> book(define(wrong)), wrong);
    }
    assertThrows(BookRefused.class, () -> book(part("'done':'lost'")));
  }
}
