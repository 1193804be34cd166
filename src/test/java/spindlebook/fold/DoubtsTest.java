package spindlebook.fold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.fold.CarLines.CAR;
import static spindlebook.fold.CarLines.LF;
import static spindlebook.fold.CarLines.R1;
import static spindlebook.fold.CarLines.gap;
import static spindlebook.fold.CarLines.height;
import static spindlebook.fold.CarLines.line;
import static spindlebook.fold.CarLines.upper;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.units.TapeFormat;

/** What is asked about before it counts. The thresholds are common practice, no source. */
class DoubtsTest {
  private static final String DROOP = height("h1", "on-the-strap", "8 1/4 in");

  @Test
  void bump_below_droop_is_asked_about() {
    assertEquals(
        Optional.of("'bump stop touches' came out below 'on the strap (full droop)'."),
        asked("h2", DROOP, height("h2", "stop-touch", "8 in")));
    assertEquals(
        Optional.of("'on the strap (full droop)' came out above 'bump stop touches'."),
        asked("h2", height("h1", "stop-touch", "8 in"), height("h2", "on-the-strap", "8 1/4 in")));
    assertEquals(Optional.empty(), asked("h2", DROOP, height("h2", "stop-touch", "18 in")));
  }

  @Test
  void in_between_may_lie_anywhere() {
    assertEquals(Optional.empty(), asked("h2", DROOP, height("h2", "in-between", "2 in")));
  }

  @Test
  void on_the_floor_and_out_of_all_reach_is_asked_about() {
    assertEquals(
        Optional.of("A spindle does not lie on the floor."),
        asked("h2", DROOP, height("h2", "in-between", "0 in")));
    assertTrue(
        asked("h2", DROOP, height("h2", "in-between", "99 in"))
            .orElse("")
            .endsWith("no wheel travels so far."));
  }

  @Test
  void a_place_more_than_half_an_inch_from_where_it_was_is_asked_about() {
    assertEquals(Optional.empty(), asked("h2", DROOP, height("h2", "on-the-strap", "8 5/8 in")));
    assertEquals(
        Optional.of(
            "It lies 3/4 in (19 mm) from where 'on the strap (full droop)' was read before, and"
                + " nothing was changed since."),
        asked("h2", DROOP, height("h2", "on-the-strap", "9 in")));
  }

  /**
   * The strap at −12 1/4 in, the touch at +1/2 in; 4 1/4 in past either nothing stops the wheel.
   */
  @Test
  void past_a_stop_the_name_to_give_it_is_said() {
    assertEquals(
        Optional.of(
            "It lies 4 1/4 in (108 mm) from where 'bump stop touches' was read before, and nothing"
                + " was changed since. Past the stop it is 'stop out, past solid': correct its"
                + " name."),
        asked("h3", height("h2", "stop-touch", "21 in"), height("h3", "stop-touch", "25 1/4 in")));
    assertEquals(
        Optional.of(
            "It lies 4 1/4 in (108 mm) from where 'on the strap (full droop)' was read before, and"
                + " nothing was changed since. Past the stop it is 'strap off, hanging': correct"
                + " its name."),
        asked("h2", DROOP, height("h2", "on-the-strap", "4 in")));
    String touch = height("h2", "stop-touch", "21 in");
    assertEquals(Optional.empty(), asked("h3", touch, height("h3", "stop-out", "25 1/4 in")));
    assertEquals(
        Optional.of("'stop out, past solid' came out below 'bump stop touches'."),
        asked("h3", touch, height("h3", "stop-out", "19 in")));
  }

  /**
   * The touch at +1/2 in, then by the same name at +4 3/4 in: answered 'it is so', the stop is
   * there and not at their mean of 2 5/8 in; taken back, it is where it was.
   */
  @Test
  void it_is_so_never_costs_a_corner_its_touch() {
    String doubted =
        height("h3", "stop-touch", "25 1/4 in").replace("\"mark\"", "\"doubt\":\"far\",\"mark\"");
    String[] waiting = {height("h2", "stop-touch", "21 in"), doubted};
    assertEquals(List.of("h2 1/2"), touches(waiting));
    String[] so = and(waiting, "{'key':'s','kind':'answer','body':{'target':'h3','itIsSo':true}}");
    assertEquals(List.of("h3 4 3/4"), touches(so));
    String[] back = and(so, "{'key':'b','kind':'correction','body':{'target':'h3','reason':'no'}}");
    assertEquals(List.of("h2 1/2"), touches(back));
    String[] other =
        and(so, "{'key':'b','kind':'correction','body':{'target':'h2','reason':'no'}}");
    assertEquals(List.of("h3 4 3/4"), touches(other));
  }

  private static String[] and(String[] lines, String single) {
    String[] more = java.util.Arrays.copyOf(lines, lines.length + 1);
    more[lines.length] = line(single);
    return more;
  }

  private static List<String> touches(String... lines) {
    return card(lines).heights().stream()
        .filter(h -> h.name() == HeightName.STOP_TOUCH && h.stopCounts())
        .map(h -> h.key() + " " + TapeFormat.inches(h.positionMm().value(), 8))
        .toList();
  }

  @Test
  void after_a_drive_the_strap_may_have_stretched_and_is_not_asked_about() {
    String driven = line("{'key':'x','kind':'happening','body':{'car':'car','what':'driven'}}");
    assertEquals(
        Optional.empty(), asked("h2", DROOP, driven, height("h2", "on-the-strap", "9 in")));
  }

  @Test
  void a_reading_far_off_the_last_of_its_place_is_asked_about() {
    assertEquals(
        Optional.empty(),
        readingAsked("g2", DROOP, gap("g1", "h1", "3/8 in"), gap("g2", "h1", "3/4 in")));
    assertEquals(
        Optional.of(
            "It is 3 5/8 in (92 mm) off the last reading of this place, and nothing was changed"
                + " since. The one before says 3/8 in."),
        readingAsked("g2", DROOP, gap("g1", "h1", "3/8 in"), gap("g2", "h1", "4 in")));
  }

  @Test
  void a_gap_where_it_binds_too_is_asked_about_whichever_came_last() {
    String number = "\"number\",\"length\":\"3/8 in\"";
    String binds = gap("g2", "h1", "3/8 in").replace(number, "\"binds\"");
    assertEquals(
        Optional.of(
            "It keeps a gap here as read before, and nothing was changed since. The one before says"
                + " 3/8 in."),
        readingAsked("g2", DROOP, gap("g1", "h1", "3/8 in"), binds));
    assertEquals(
        Optional.of("It binds here as read before, and nothing was changed since."),
        readingAsked("g3", DROOP, binds, gap("g3", "h1", "1/4 in")));
    assertEquals(Optional.empty(), readingAsked("g2", DROOP, binds), "alone it is no doubt");
  }

  @Test
  void what_was_put_back_is_not_said_to_be_unchanged() {
    String again = gap("g2", "h1", "4 in").replace("\"result\"", "\"again\":true,\"result\"");
    assertEquals(
        Optional.of(
            "It is 3 5/8 in (92 mm) off the last reading of this place, and what was changed since"
                + " was put back. The one before says 3/8 in."),
        readingAsked(
            "g2",
            DROOP,
            gap("g1", "h1", "3/8 in"),
            upper("a1", "1 turn"),
            upper("a2", "0 turns"),
            again));
  }

  @Test
  void what_was_moved_since_is_no_measure_of_a_new_reading() {
    assertEquals(
        Optional.empty(),
        readingAsked(
            "g2",
            DROOP,
            gap("g1", "h1", "3/8 in"),
            upper("a1", "1 turn"),
            gap("g2", "h1", "4 in")));
  }

  /** From 3/8 in to 4 in while the wheel moved 1 in: more than 2 x 1 in + 1/2 in. */
  @Test
  void a_gap_that_runs_faster_than_the_wheel_is_asked_about() {
    String higher = height("h2", "in-between", "9 1/4 in");
    assertEquals(
        Optional.of(
            "It changed 3 5/8 in (92 mm) while the wheel moved 1 in (25 mm): more than the travel"
                + " allows. The one before says 3/8 in."),
        readingAsked("g2", DROOP, higher, gap("g1", "h1", "3/8 in"), gap("g2", "h2", "4 in")));
    assertEquals(
        Optional.empty(),
        readingAsked("g2", DROOP, higher, gap("g1", "h1", "3/8 in"), gap("g2", "h2", "2 1/4 in")));
  }

  /** A shock of 21 1/4 in to 33 1/2 in ± 1/8 in; common practice, no source. */
  @Test
  void a_shock_read_longer_than_open_or_shorter_than_closed_is_asked_about_at_once() {
    String[] specs = {DROOP, given("shock-open", "33 1/2 in"), given("shock-closed", "21 1/4 in")};
    assertEquals(
        Optional.of("It is shorter than the shock fully closed, 21 1/4 in."),
        ofLength("shock-length", "3 in", specs));
    assertEquals(
        Optional.of("It is longer than the shock fully open, 33 1/2 in."),
        ofLength("shock-length", "34 in", specs));
    assertEquals(Optional.empty(), ofLength("shock-length", "33 1/2 in", specs));
    assertEquals(Optional.empty(), ofLength("shock-length", "3 in", DROOP));
    String unsure = given("shock-open", "33 1/2 in").replace("}}}", ",\"halfWidth\":\"1 in\"}}}");
    assertEquals(Optional.empty(), ofLength("shock-length", "34 in", DROOP, unsure));
  }

  /** Common practice, no source. */
  @Test
  void a_strap_far_from_the_new_one_is_asked_about_at_once() {
    String[] specs = {DROOP, given("new-strap-length", "24 in")};
    assertEquals(
        Optional.of("It is less than a fifth of the new strap, 24 in."),
        ofLength("strap-length", "5/8 in", specs));
    assertEquals(
        Optional.of("It is less than half of the new strap, 24 in."),
        ofLength("strap-length", "11 in", specs));
    assertEquals(
        Optional.of("It is more than 1.3 times the new strap, 24 in."),
        ofLength("strap-length", "32 in", specs));
    assertEquals(Optional.empty(), ofLength("strap-length", "25 1/2 in", specs));
    String bump = height("h1", "stop-touch", "20 in");
    assertEquals(Optional.empty(), ofLength("strap-length", "11 in", bump, specs[1]));
  }

  /** Common practice, no source. */
  @Test
  void a_gap_wider_than_a_foot_is_asked_about_at_once() {
    assertEquals(
        Optional.of("It is wider than gaps are: most are under 12 in."),
        readingAsked("g1", DROOP, gap("g1", "h1", "23 in")));
    assertEquals(Optional.empty(), readingAsked("g1", DROOP, gap("g1", "h1", "11 in")));
  }

  private static String given(String dimension, String length) {
    return line(
        "{'key':'"
            + dimension
            + "','kind':'definition','body':{'corner':'lf','given':{'dimension':'"
            + dimension
            + "','length':'"
            + length
            + "'}}}");
  }

  private static Optional<String> ofLength(String quantity, String length, String... lines) {
    String read =
        gap("g1", "h1", length).replace("\"watch-point\",\"point\":\"tie\"", '"' + quantity + '"');
    return readingAsked("g1", and(lines, read));
  }

  @Test
  void nothing_is_asked_about_what_is_not_there() {
    Card card = HandBooks.of(CAR, LF, R1).card("lf");
    assertEquals(Optional.empty(), Doubts.of(card, "gone"));
    assertEquals(Optional.empty(), Doubts.of(card, "gone"));
  }

  @Test
  void it_is_doubted_before_it_is_written_as_once_it_is() {
    int doubted = 0;
    for (long seed = 1; seed <= 12; seed++) {
      CarBook book = CarBook.empty();
      for (Noted entry : new RandomBook(seed).entries(160)) {
        Content content = undoubted(entry.content());
        for (String corner : content == null ? List.<String>of() : book.corners()) {
          Optional<String> before = book.doubt(corner, entry.key(), entry.after(), content);
          List<Noted> all = new ArrayList<>(book.entries());
          all.add(
              new Noted(
                  book.n() + 1, entry.key(), entry.at(), entry.who(), entry.after(), content));
          assertEquals(Doubts.of(CarBook.of(all).card(corner), entry.key()), before, entry.key());
          doubted += before.isPresent() ? 1 : 0;
        }
        book = book.with(entry);
      }
    }
    assertTrue(doubted > 50, "only " + doubted);
  }

  /** A height or reading as it is typed; null for everything else. */
  private static Content undoubted(Content content) {
    if (content instanceof Content.Height height) {
      return height.withDoubt(null);
    }
    return content instanceof Content.Reading reading ? reading.withDoubt(null) : null;
  }

  private static Optional<String> asked(String key, String... lines) {
    return Doubts.of(card(lines), key);
  }

  private static Optional<String> readingAsked(String key, String... lines) {
    return Doubts.of(card(lines), key);
  }

  private static Card card(String... lines) {
    java.util.List<String> all = new java.util.ArrayList<>(java.util.List.of(CAR, LF, R1));
    all.addAll(java.util.List.of(lines));
    return HandBooks.of(all).card("lf");
  }
}
