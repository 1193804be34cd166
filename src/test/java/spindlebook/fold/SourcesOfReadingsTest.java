package spindlebook.fold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/** Which readings err together. Widths by hand: g/√12 for a scale, a/√3 for placing and class. */
class SourcesOfReadingsTest {
  private static final String CAR =
      """
      {"key":"car","kind":"car","body":{"details":{"name":"Dune"},"tools":[\
      {"tool":"tape","name":"tape","use":"tape","graduation":"1/16 in","placingHalfWidth":"1/32 in","classHalfWidth":"1/32 in"},\
      {"tool":"drills","name":"drills","use":"gaps","graduation":"1/64 in"}]}}\
      """;
  private static final String CORNER =
      """
      {"key":"lf","kind":"corner","body":{"car":"car","place":"left-front","layout":"steered-double-a-arm",\
      "watchPoints":[{"point":"tie","place":"tie-rod-upper-arm","keep":{"least":"1/4 in"}}],\
      "adjusters":[{"adjuster":"strap","kind":"limit-strap","unit":"holes","step":"1 in","moreShortens":true,"first":"hole 3"}]}}\
      """;
  private static final String ROUND = round("r1");

  private static final double SIXTEENTH = 25.4 / 16;
  private static final double SCALE = SIXTEENTH / Math.sqrt(12);
  private static final double PLACED = 25.4 / 32 / Math.sqrt(3);

  private static String round(String key) {
    return "{\"key\":\""
        + key
        + "\",\"kind\":\"round\",\"body\":{\"corner\":\"lf\",\"springIn\":false,"
        + "\"bumpStopIn\":true,\"wheelOn\":false,\"onTyres\":false,\"steeringLinked\":true,"
        + "\"tape\":\"tape\",\"gapTool\":\"drills\"}}";
  }

  private static String height(String key, String name, String spindle, String rest) {
    return "{\"key\":\""
        + key
        + "\",\"kind\":\"height\",\"body\":{\"round\":\"r1\",\"name\":\""
        + name
        + "\",\"spindle\":\""
        + spindle
        + "\","
        + rest
        + "}}";
  }

  private static String length(String key, String height, String quantity, String value) {
    return "{\"key\":\""
        + key
        + "\",\"kind\":\"reading\",\"body\":{\"height\":\""
        + height
        + "\",\"steering\":\"straight\",\"quantity\":\""
        + quantity
        + "\",\"point\":"
        + (quantity.equals("watch-point") ? "\"tie\"" : "null")
        + ",\"result\":\"number\",\"length\":\""
        + value
        + "\"}}";
  }

  private static final String MARK = "\"mark\":\"20 in\"";

  private static Card card(String... lines) {
    List<String> all = new ArrayList<>(List.of(CAR, CORNER, ROUND));
    all.addAll(List.of(lines));
    return HandBooks.of(all).card("lf");
  }

  private static Figure position(Card card, String height) {
    return card.height(height).orElseThrow().positionMm();
  }

  private static double root(double... us) {
    double sum = 0;
    for (double u : us) {
      sum += u * u;
    }
    return Math.sqrt(sum);
  }

  @Test
  void a_position_has_the_scale_and_the_hand_twice_and_the_tape_s_class_not_at_all() {
    Card card = card(height("h1", "on-the-strap", "10 in", MARK));
    assertEquals(root(SCALE, SCALE, PLACED, PLACED), position(card, "h1").u(), 1e-12);
  }

  @Test
  void repeats_of_a_named_height_share_the_scale_s_steps_and_narrow_the_hand() {
    Card card =
        card(
            height("h1", "on-the-strap", "10 in", MARK),
            height("h2", "on-the-strap", "10 in", MARK));
    Figure mean = Figure.mean(List.of(position(card, "h1"), position(card, "h2")));
    assertEquals(root(SCALE, SCALE, PLACED, PLACED / 1), position(card, "h2").u(), 1e-12);
    assertEquals(root(SCALE, SCALE, PLACED / Math.sqrt(2), PLACED / Math.sqrt(2)), mean.u(), 1e-12);
  }

  @Test
  void the_same_name_at_another_strap_hole_is_another_place_and_shares_no_steps() {
    Card card =
        card(
            height("h1", "on-the-strap", "10 in", MARK),
            """
            {"key":"a1","kind":"adjustment","body":{"corner":"lf","adjuster":"strap","from":"hole 3","to":"hole 2"}}\
            """,
            height("h2", "on-the-strap", "9 in", MARK));
    assertEquals(0, position(card, "h1").covariance(position(card, "h2")), 1e-15);
  }

  @Test
  void heights_in_between_are_places_of_their_own() {
    Card card =
        card(height("h1", "in-between", "10 in", MARK), height("h2", "in-between", "10 in", MARK));
    assertEquals(0, position(card, "h1").covariance(position(card, "h2")), 1e-15);
  }

  @Test
  void a_mark_taken_as_at_an_earlier_height_cancels_and_repeating_does_not_narrow_it() {
    Card card =
        card(
            height("h1", "on-the-strap", "10 in", MARK),
            height("h2", "in-between", "12 in", "\"markAsAt\":\"h1\""),
            height("h3", "in-between", "14 in", "\"markAsAt\":\"h2\""));
    Source mark = new Source("h1:mark", SourceKind.MARK);
    for (String height : List.of("h1", "h2", "h3")) {
      assertEquals(-PLACED, position(card, height).parts().get(mark), 1e-12, height);
    }
    Figure travel = position(card, "h3").minus(position(card, "h1"));
    assertEquals(4 * 25.4, travel.value(), 1e-9);
    assertEquals(root(SCALE, SCALE, PLACED, PLACED), travel.u(), 1e-12);
  }

  @Test
  void a_mark_read_for_one_height_alone_is_a_placing_that_repeats_narrow() {
    Card card = card(height("h1", "on-the-strap", "10 in", MARK));
    assertTrue(position(card, "h1").parts().containsKey(new Source("h1:mark", SourceKind.PLACING)));
  }

  @Test
  void two_strap_lengths_share_the_tape_s_class() {
    Card card =
        card(
            height("h1", "on-the-strap", "10 in", MARK),
            height("h2", "in-between", "12 in", MARK),
            length("s1", "h1", "strap-length", "20 in"),
            length("s2", "h2", "strap-length", "18 in"));
    Figure one = card.reading("s1").orElseThrow().value();
    Figure two = card.reading("s2").orElseThrow().value();
    assertEquals(root(SCALE, PLACED, PLACED), one.u(), 1e-12);
    assertEquals(PLACED * PLACED, one.covariance(two), 1e-12);
    assertEquals(root(SCALE, SCALE, PLACED, PLACED), one.minus(two).u(), 1e-12);
  }

  @Test
  void a_gap_is_read_with_the_gap_tool_and_go_no_go_with_the_step_between_the_shanks() {
    Card card =
        card(
            height("h1", "on-the-strap", "10 in", MARK),
            length("g1", "h1", "watch-point", "3/8 in"),
            """
            {"key":"g2","kind":"reading","body":{"height":"h1","steering":"full-left","quantity":"watch-point","point":"tie",\
            "result":"go-no-go","go":"1/8 in","noGo":"3/16 in"}}\
            """);
    assertEquals(25.4 / 64 / Math.sqrt(12), card.reading("g1").orElseThrow().value().u(), 1e-12);
    Figure between = card.reading("g2").orElseThrow().value();
    assertEquals(25.4 * 5 / 32, between.value(), 1e-12);
    assertEquals(25.4 / 32 / Math.sqrt(3), between.u(), 1e-12);
  }

  @Test
  void what_a_set_of_shanks_is_off_is_one_error_of_all_that_go_or_do_not() {
    String drills =
        """
        {"key":"d1","kind":"definition","body":{"car":"car","tool":{"tool":"drills","name":"drills","use":"gaps","graduation":"1/64 in","classHalfWidth":"1/64 in"}}}\
        """;
    String steered =
        """
        {"key":"%s","kind":"reading","body":{"height":"h1","steering":"%s","quantity":"watch-point","point":"tie",\
        "result":"go-no-go","go":"1/8 in","noGo":"3/16 in"}}\
        """;
    Card card =
        card(
            drills,
            round("r2"),
            height("h1", "on-the-strap", "10 in", MARK).replace("r1", "r2"),
            steered.formatted("g1", "full-left"),
            steered.formatted("g2", "full-right"));
    Figure left = card.reading("g1").orElseThrow().value();
    Figure right = card.reading("g2").orElseThrow().value();
    double set = 25.4 / 64 / Math.sqrt(3);
    double step = 25.4 / 32 / Math.sqrt(3);
    assertEquals(root(step, set), left.u(), 1e-12);
    assertEquals(set * set, left.covariance(right), 1e-12);
  }

  @Test
  void a_new_version_of_a_tool_counts_from_then_on() {
    String finer =
        """
        {"key":"d1","kind":"definition","body":{"car":"car","tool":{"tool":"tape","name":"tape","use":"tape","graduation":"1/32 in","placingHalfWidth":"1/32 in"}}}\
        """;
    Card card =
        card(
            height("h1", "on-the-strap", "10 in", MARK),
            finer,
            round("r2"),
            height("h2", "on-the-strap", "10 in", MARK).replace("r1", "r2"));
    assertEquals(root(SCALE, SCALE, PLACED, PLACED), position(card, "h1").u(), 1e-12);
    assertEquals(root(SCALE / 2, SCALE / 2, PLACED, PLACED), position(card, "h2").u(), 1e-12);
  }

  @Test
  void a_correction_of_a_tool_counts_backwards() {
    String corrected =
        """
        {"key":"x1","kind":"correction","body":{"target":"car","reason":"it has 32nds","kind":"car","body":\
        {"details":{"name":"Dune"},"tools":[{"tool":"tape","name":"tape","use":"tape","graduation":"1/32 in","placingHalfWidth":"1/32 in"}]}}}\
        """;
    Card card = card(height("h1", "on-the-strap", "10 in", MARK), corrected);
    assertEquals(root(SCALE / 2, SCALE / 2, PLACED, PLACED), position(card, "h1").u(), 1e-12);
  }

  @Test
  void a_read_point_outboard_asks_for_the_camber_and_doubts_it_where_nobody_read_it() {
    String outboard =
        """
        {"key":"d1","kind":"definition","body":{"corner":"lf","given":{"dimension":"read-point-outboard","length":"6 in"}}}\
        """;
    String camber =
        """
        {"key":"c1","kind":"reading","body":{"height":"h1","steering":"straight","quantity":"camber","result":"number","angle":"-6°"}}\
        """;
    Card unread = card(height("h1", "on-the-strap", "10 in", MARK), outboard);
    assertEquals(-254.0, position(unread, "h1").value(), 1e-9);
    assertEquals(
        root(SCALE, SCALE, PLACED, PLACED, 152.4 * Math.toRadians(5) / Math.sqrt(3)),
        position(unread, "h1").u(),
        1e-9);
    Card read = card(height("h1", "on-the-strap", "10 in", MARK), outboard, camber);
    assertEquals(-254.0 - 152.4 * Math.sin(Math.toRadians(6)), position(read, "h1").value(), 1e-9);
    // The camber's own error is one, in the reading and in the position.
    assertTrue(position(read, "h1").covariance(read.reading("c1").orElseThrow().value()) > 1e-6);
  }

  @Test
  void a_read_point_given_anew_counts_from_then_on_and_the_first_for_what_came_before() {
    String six =
        """
        {"key":"d1","kind":"definition","body":{"corner":"lf","given":{"dimension":"mark-inboard","length":"6 in"}}}\
        """;
    String eight = six.replace("d1", "d2").replace("6 in", "8 in");
    double tilt = Math.toRadians(0.25) / Math.sqrt(3);
    Card card =
        card(
            height("h1", "in-between", "10 in", MARK),
            six,
            height("h2", "in-between", "10 in", MARK),
            eight,
            height("h3", "in-between", "10 in", MARK));
    Source roll = new Source("r1:roll", SourceKind.TILT);
    assertEquals(-6 * 25.4 * tilt, position(card, "h1").parts().get(roll), 1e-9);
    assertEquals(-6 * 25.4 * tilt, position(card, "h2").parts().get(roll), 1e-9);
    assertEquals(-8 * 25.4 * tilt, position(card, "h3").parts().get(roll), 1e-9);
  }

  @Test
  void a_mark_taken_from_another_corner_s_height_keeps_that_round_s_tape() {
    String right = CORNER.replace("\"lf\"", "\"rf\"").replace("left-front", "right-front");
    String coarse =
        """
        {"key":"d1","kind":"definition","body":{"car":"car","tool":{"tool":"stick","name":"stick","use":"tape","graduation":"1 in"}}}\
        """;
    Card card =
        card(
            right,
            coarse,
            round("r2")
                .replace("\"lf\"", "\"rf\"")
                .replace("\"tape\":\"tape\"", "\"tape\":\"stick\""),
            height("k1", "in-between", "10 in", MARK).replace("r1", "r2"),
            height("h1", "in-between", "10 in", "\"markAsAt\":\"k1\""));
    // The tape's class of 1/32 in is in the spindle alone now: nothing of the stick's cancels it.
    assertEquals(
        root(SCALE, PLACED, PLACED, 25.4 / Math.sqrt(12)), position(card, "h1").u(), 1e-12);
  }
}
