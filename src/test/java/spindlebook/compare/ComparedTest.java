package spindlebook.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import spindlebook.definition.Place;
import spindlebook.finding.Beside.Found;
import spindlebook.fold.CarBook;
import spindlebook.fold.HandBooks;
import spindlebook.fold.RandomBook;
import spindlebook.sheet.Cell;
import spindlebook.sheet.Heads;
import spindlebook.sheet.Rows.Row;
import spindlebook.units.LengthUnit;

/**
 * A corner whose sums are done by hand, from design.md §4, in mm of wheel position from the frame
 * mark; tape and shanks have no steps, so that all that differs, differs.
 *
 * <pre>
 *   on the strap S = 254, stop solid B = 500, ride 400, arm's gap meets its rule at L = 203.2
 *   strap 508 as new, no stretch held back
 *   droop margin S − L = 50.8; as set B − S = 246; ride down to the strap 146
 * </pre>
 */
class ComparedTest {
  private final List<String> lines = new ArrayList<>();
  private int next;

  private void line(String key, String kind, String body) {
    lines.add(
        "{\"key\":\"%s\",\"kind\":\"%s\",\"body\":%s}"
            .formatted(key, kind, body.replace('\'', '"')));
  }

  private void car(String key, String name, String placing) {
    String tool =
        "{'tool':'%s','name':'%s','use':'%s','graduation':'0 mm','placingHalfWidth':'"
            + placing
            + "','classHalfWidth':'1 mm'}";
    line(
        key,
        "car",
        "{'details':{'name':'"
            + name
            + "','unit':'mm'},'tools':["
            + tool.formatted("tape", "tape", "tape")
            + ","
            + tool.formatted("drills", "shanks", "gaps")
            + "]}");
  }

  private void corner(String key, String car, String place, String layout) {
    line(
        key,
        "corner",
        "{'car':'"
            + car
            + "','place':'"
            + place
            + "','layout':'"
            + layout
            + "','adjusters':["
            + "{'adjuster':'strap','kind':'limit-strap','unit':'holes','moreShortens':true,"
            + "'step':'5 mm','first':'hole 3'},"
            + "{'adjuster':'hose','kind':'hose','unit':'words','moreShortens':false}],"
            + "'watchPoints':[{'point':'arm','place':'lower-arm-frame','keep':{'least':'6 mm'}}]}");
    for (String given :
        List.of(
            "'dimension':'new-strap-length','length':'508 mm'",
            "'dimension':'shock-open','length':'700 mm'",
            "'dimension':'shock-closed','length':'300 mm'",
            "'dimension':'tyre-squashed-radius','length':'1000 mm'",
            "'dimension':'mark-to-lowest-frame','length':'100 mm'")) {
      line("d" + next++, "definition", "{'corner':'" + key + "','given':{" + given + "}}");
    }
    for (String held :
        List.of(
            "'allowance':'strap-stretch','percent':0",
            "'allowance':'shock-open-reserve','length':'12.7 mm'",
            "'allowance':'shock-closed-reserve','length':'12.7 mm'",
            "'allowance':'ground-clearance','length':'50 mm'",
            "'allowance':'impact-reserve','length':'6 mm'")) {
      line("d" + next++, "definition", "{'corner':'" + key + "','heldBack':{" + held + "}}");
    }
  }

  private void height(String round, String key, String name, double mm) {
    line(
        key,
        "height",
        "{'round':'%s','name':'%s','spindle':'%s mm','mark':'1000 mm'}"
            .formatted(round, name, 1000 + mm));
  }

  private void read(String height, String quantity, double mm) {
    String of = quantity.equals("arm") ? "'watch-point','point':'arm'" : "'" + quantity + "'";
    line(
        "g" + next++,
        "reading",
        "{'height':'%s','steering':'straight','quantity':%s,'result':'number','length':'%s mm'}"
            .formatted(height, of, mm));
  }

  /** The corner above, measured once. */
  private void measured(String corner) {
    measured(corner, 254, 500);
  }

  private void measured(String corner, double strapMm, double bumpMm) {
    String r = corner + "-r";
    line(
        r,
        "round",
        "{'corner':'"
            + corner
            + "','springIn':false,'bumpStopIn':false,'wheelOn':false,'onTyres':false,"
            + "'steeringLinked':true,'unit':'mm','tape':'tape','gapTool':'drills'}");
    height(r, corner + "-off", "strap-off", 150);
    height(r, corner + "-limit", "in-between", 203.2);
    height(r, corner + "-strap", "on-the-strap", strapMm);
    height(r, corner + "-ride", "ride", 400);
    height(r, corner + "-bump", "full-bump", bumpMm);
    height(r, corner + "-beyond", "in-between", 600);
    read(corner + "-strap", "strap-length", 508);
    read(corner + "-ride", "strap-length", 435);
    read(corner + "-bump", "strap-length", 385);
    read(corner + "-off", "shock-length", 625);
    read(corner + "-strap", "shock-length", 573);
    read(corner + "-bump", "shock-length", 450);
    read(corner + "-beyond", "shock-length", 400);
    read(corner + "-off", "arm", 2);
    read(corner + "-limit", "arm", 6);
    read(corner + "-beyond", "arm", 40);
  }

  private CarBook dune(String placing) {
    car("car", "Dune", placing);
    corner("lf", "car", "left-front", "unsteered-double-a-arm");
    measured("lf");
    return HandBooks.of(lines);
  }

  /** The strap a hole shorter and read again, 10 mm higher; a stricter rule; the hose named. */
  private CarBook changed() {
    line("a1", "adjustment", "{'corner':'lf','adjuster':'strap','from':'hole 3','to':'hole 4'}");
    height("lf-r", "lf-strap2", "on-the-strap", 264);
    read("lf-strap2", "strap-length", 503);
    line("a2", "adjustment", "{'corner':'lf','adjuster':'hose','to':'braided'}");
    return HandBooks.of(lines);
  }

  private static Asked asked(CarBook book, long one, long other) {
    return new Asked(book, at(book, one), at(book, other), "", book, Optional.empty());
  }

  private static Point at(CarBook book, long n) {
    return new Point(Long.toString(n), n, "entry " + n, "");
  }

  private static Compared compared(CarBook book, long one, long other) {
    return Compared.of(
        asked(book, one, other), book.asOf(one), book.asOf(other), Place.LEFT_FRONT, LengthUnit.MM);
  }

  private static List<Row> rows(Compared compared) {
    return compared.groups().stream().flatMap(g -> g.rows().stream()).toList();
  }

  private static String row(Compared compared, String what) {
    return rows(compared).stream()
        .filter(r -> r.what().equals(what))
        .map(r -> cell(r.left()) + " | " + cell(r.right()) + " | " + verdict(r))
        .collect(Collectors.joining("\n"));
  }

  private static String cell(Cell cell) {
    return cell.figure() == null
        ? cell.word()
        : (cell.word() + " " + cell.figure().words()).strip();
  }

  private static String verdict(Row row) {
    String apart = row.apart() == null ? "" : row.apart().words() + " ";
    return apart + row.found().sign() + " " + row.verdict();
  }

  @Test
  void a_strap_a_hole_shorter_changes_what_the_sums_by_hand_say_it_does() {
    long before = dune("0 mm").n();
    CarBook now = changed();
    Compared c = compared(now, before, now.n());
    assertEquals("hole 3 | hole 4 | ≠ differs", row(c, "Limit strap"));
    assertEquals(
        "not said | braided | – not compared: never said, entry " + before, row(c, "Hose"));
    // 500 − 264 = 236, ten less; the tape's own error of 1 mm is in both and gone from it.
    assertTrue(row(c, "Travel as set").contains("| −10.0 mm ≠ differs"), row(c, "Travel as set"));
    assertTrue(row(c, "Travel as set").startsWith("246.0 mm"), row(c, "Travel as set"));
    // The arm is where it was: 264 − 203.2 = 60.8, shown to half a millimetre.
    assertTrue(
        row(c, "Margin in droop")
            .matches("\\+51.0 mm.* \\| \\+61.0 mm.* \\| \\+10.0 mm.* ≠ differs"),
        row(c, "Margin in droop"));
    assertTrue(
        row(c, "Droop: lower arm to frame")
            .matches("\\+51.0 mm.* \\| \\+61.0 mm.* \\| \\+10.0 mm.* ≠ differs"),
        row(c, "Droop: lower arm to frame"));
    // From limit to limit nothing moved; bump is kept to the last height, 600.
    assertTrue(row(c, "Travel as it could be").endsWith("= the same, as far as was read"));
    assertTrue(row(c, "Margin in bump").endsWith("= the same, as far as was read"));
    assertTrue(row(c, "What rules droop").endsWith("= the same"));
  }

  @Test
  void what_the_tape_cannot_tell_apart_is_within_its_doubt() {
    long before = dune("8 mm").n();
    CarBook now = changed();
    // Two heights, each a spindle and a mark placed by ± 8 mm: U = 2 · √4 · 8/√3 = 18.5 mm.
    assertTrue(
        row(compared(now, before, now.n()), "Travel as set").endsWith("mm ± 18.5 = within ±"));
  }

  @Test
  void a_missing_term_is_told_with_what_it_needs() {
    dune("0 mm");
    line("a1", "adjustment", "{'corner':'lf','adjuster':'strap','from':'hole 3','to':'hole 4'}");
    CarBook now = HandBooks.of(lines);
    Compared c = compared(now, now.n() - 1, now.n());
    assertTrue(
        row(c, "Travel as set")
            .endsWith("| not known | – not compared: not known, entry " + now.n()));
    assertEquals(1, c.lacking().size());
    String lacks = c.lacking().get(0);
    assertTrue(
        lacks.startsWith(
            "Entry " + now.n() + ": needs the height 'on the strap (full droop)' again"),
        lacks);
  }

  @Test
  void a_retired_adjuster_and_a_retired_watch_point_differ_as_not_there() {
    dune("0 mm");
    line("x1", "definition", "{'corner':'lf','retired':{'adjuster':'strap'}}");
    line("x2", "definition", "{'corner':'lf','retired':{'watchPoint':'arm'}}");
    CarBook now = HandBooks.of(lines);
    Compared c = compared(now, now.n() - 2, now.n());
    assertEquals("hole 3 | not there | ≠ differs", row(c, "Limit strap"));
    assertEquals("at least 6 mm | not there | ≠ differs", row(c, "Lower arm to frame"));
    assertTrue(row(c, "Droop: lower arm to frame").endsWith("| not there | ≠ differs"));
  }

  @Test
  void a_setting_counted_another_way_says_so() {
    long before = dune("0 mm").n();
    line(
        "x1",
        "definition",
        "{'corner':'lf','adjuster':{'adjuster':'strap','kind':'limit-strap','unit':'turns',"
            + "'moreShortens':true}}");
    line("a1", "adjustment", "{'corner':'lf','adjuster':'strap','to':'3 turns'}");
    CarBook turns = HandBooks.of(lines);
    assertEquals(
        "hole 3 | 3 turns | ≠ differs, counted another way",
        row(compared(turns, before, turns.n()), "Limit strap"));
  }

  @Test
  void what_rules_an_end_says_that_another_one_does() {
    long before = dune("0 mm").n();
    // Open at 600 less 12.7 it ends at about 225, before the arm's 203.2.
    line("d", "definition", "{'corner':'lf','given':{'dimension':'shock-open','length':'600 mm'}}");
    CarBook shorter = HandBooks.of(lines);
    assertEquals(
        "lower arm to frame | shock's reserve at its open end | ≠ another one rules",
        row(compared(shorter, before, shorter.n()), "What rules droop"));
  }

  @Test
  void shanks_of_one_name_are_one_error_in_one_car_and_two_in_two() {
    CarBook dune = dune("0 mm");
    CarBook later = changed();
    // The shanks' own error moves the arm's limit on both points alike, and is gone from it.
    String own = row(compared(later, dune.n(), later.n()), "Margin in droop");
    assertTrue(own.contains("+10.0 mm ") && own.endsWith("≠ differs"), own);
    lines.clear();
    car("other", "Mole", "0 mm");
    corner("lf2", "other", "left-front", "unsteered-double-a-arm");
    measured("lf2", 264, 500);
    CarBook mole = HandBooks.of(lines);
    Asked asked =
        new Asked(dune, Point.now(dune), Point.now(mole), "other", mole, Optional.empty());
    Compared c = Compared.of(asked, dune, mole, Place.LEFT_FRONT, LengthUnit.MM);
    assertEquals(new Heads("Dune", "Mole"), c.heads());
    String cars = row(c, "Margin in droop");
    assertTrue(cars.contains("+10.0 mm ± ") && cars.endsWith("= within ±"), cars);
  }

  @Test
  void what_was_given_is_one_error_at_two_points_of_a_corner_and_two_on_two_sides() {
    dune("0 mm");
    corner("rf", "car", "right-front", "unsteered-double-a-arm");
    for (String corner : List.of("lf", "rf")) {
      line(
          "half-" + corner,
          "definition",
          "{'corner':'"
              + corner
              + "','given':{'dimension':'tyre-squashed-radius','length':'1000 mm',"
              + "'halfWidth':'10 mm'}}");
    }
    measured("rf", 254, 510);
    CarBook book = HandBooks.of(lines);
    long before = book.n();
    Point now = Point.now(book);
    Asked asked = new Asked(book, now, now, Asked.OTHER_SIDE, book, Optional.empty());
    Compared sides = Compared.of(asked, book, book, Place.LEFT_FRONT, LengthUnit.MM);
    // U = 2 · √2 · 10/√3 = 16.3 mm, of ten millimetres less room.
    String two = row(sides, "Bump: frame to ground");
    assertTrue(two.endsWith("| −10.0 mm ± 16.5 = within ±"), two);
    line("b2", "happening", "{'car':'car','corner':'lf','what':'driven'}");
    height("lf-r", "lf-bump2", "full-bump", 510);
    line("no", "correction", "{'target':'lf-bump','reason':'slip'}");
    CarBook later = HandBooks.of(lines);
    String one = row(compared(later, before, later.n()), "Bump: frame to ground");
    assertTrue(one.endsWith("| −10.0 mm ≠ differs"), one);
  }

  @Test
  void another_layout_and_a_corner_that_is_not_there_say_so() {
    CarBook dune = dune("0 mm");
    lines.clear();
    car("other", "Mole", "0 mm");
    corner("lf2", "other", "left-front", "trailing-arm");
    CarBook mole = HandBooks.of(lines);
    Asked asked =
        new Asked(dune, Point.now(dune), Point.now(mole), "other", mole, Optional.empty());
    assertEquals(
        "Not compared, two layouts: Dune, unsteered double A-arm; Mole, trailing arm.",
        Compared.of(asked, dune, mole, Place.LEFT_FRONT, LengthUnit.MM).said());
    assertEquals(
        "Not compared: there is no right rear in the book, Dune.",
        Compared.of(asked, dune, mole, Place.RIGHT_REAR, LengthUnit.MM).said());
  }

  // --- any book

  @Test
  void a_point_beside_itself_shows_no_difference_in_any_book() {
    int same = 0;
    for (long seed = 1; seed <= 30; seed++) {
      CarBook book = CarBook.of(new RandomBook(seed).entries(140));
      for (long n : new long[] {3, 60, 100, 140}) {
        Compared c = compared(book, n, n);
        assertEquals(0, c.differing(), () -> "seed " + rows(c));
        same += rows(c).stream().filter(r -> r.found() == Found.SAME).count();
      }
    }
    assertTrue(same > 1000, "same " + same);
  }

  @Test
  void either_way_round_the_same_things_differ_with_the_sign_turned() {
    long before = dune("0 mm").n();
    assertTrue(mirrors(changed(), before, lines.size()) >= 4);
    for (long seed = 1; seed <= 30; seed++) {
      mirrors(CarBook.of(new RandomBook(seed).entries(140)), 70, 140);
    }
  }

  /** How many numbers turned their sign. */
  private static int mirrors(CarBook book, long one, long other) {
    Compared there = compared(book, one, other);
    Compared back = compared(book, other, one);
    assertEquals(there.differing(), back.differing());
    Map<String, Row> mirrored =
        rows(back).stream().collect(Collectors.toMap(Row::what, r -> r, (a, b) -> a));
    int turned = 0;
    for (Row row : rows(there)) {
      Row mirror = mirrored.get(row.what());
      if (mirror == null) {
        continue; // Renamed in between: each way tells the later name.
      }
      assertEquals(cell(row.left()), cell(mirror.right()));
      assertEquals(cell(row.right()), cell(mirror.left()));
      assertEquals(row.found(), mirror.found(), row.what());
      if (row.apart() != null) {
        assertEquals(turned(row.apart().words()), mirror.apart().words(), row.what());
        turned++;
      }
    }
    return turned;
  }

  private static String turned(String words) {
    return words.startsWith("+")
        ? "−" + words.substring(1)
        : words.startsWith("−") ? "+" + words.substring(1) : words;
  }
}
