package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.definition.Dimension;
import spindlebook.fold.HandBooks;
import spindlebook.fold.SeenHeight;

/** What was given of a part counts as long as that part is on the car. */
class GivenLengthsTest {
  private static final String TYRE =
      "{\"adjuster\":\"tyre\",\"kind\":\"tyre\",\"unit\":\"words\",\"moreShortens\":false,\"first\":\"37\"}";

  /** Ground by hand: 400 − 250 − 50 = 100. */
  private static CornerBench grounded() {
    return CornerBench.exact()
        .adjuster(TYRE)
        .height("strap", "on-the-strap", -100)
        .height("bump", "full-bump", 40)
        .held("impact-reserve", 0)
        .held("ground-clearance", 50)
        .given("mark-to-lowest-frame", 250)
        .given("tyre-squashed-radius", 400);
  }

  @Test
  void another_tyre_has_another_radius_until_somebody_measures_it() {
    CornerBench bench = grounded();
    assertEquals(60, bench.travel().bump().marginMm().orElseThrow().value(), 1e-9);
    EndFindings changed = bench.adjust("tyre", "33").travel().bump();
    assertTrue(changed.marginMm().isEmpty());
    Need need =
        changed.needs().stream()
            .filter(n -> n.dimension() == Dimension.TYRE_SQUASHED_RADIUS)
            .findFirst()
            .orElseThrow();
    assertEquals(List.of("tyre to 33"), need.because());
    // By hand: 350 − 250 − 50 − 40 = 10.
    EndFindings measured = bench.given("tyre-squashed-radius", 350).travel().bump();
    assertEquals(10, measured.marginMm().orElseThrow().value(), 1e-9);
    // The same number said again of the new tyre counts as well as another one.
    assertEquals(
        60,
        grounded()
            .adjust("tyre", "33")
            .given("tyre-squashed-radius", 400)
            .travel()
            .bump()
            .marginMm()
            .orElseThrow()
            .value(),
        1e-9);
  }

  @Test
  void the_first_tyre_put_back_brings_its_radius_back() {
    CornerBench back = grounded().adjust("tyre", "33").adjust("tyre", "37");
    assertEquals(60, back.travel().bump().marginMm().orElseThrow().value(), 1e-9);
  }

  private static CornerBench strapped(String unit, String first, String step) {
    return CornerBench.exact()
        .adjuster(
            "{\"adjuster\":\"strap\",\"kind\":\"limit-strap\",\"unit\":\"%s\",\"moreShortens\":true,\"first\":\"%s\"%s}"
                .formatted(unit, first, step))
        .height("strap", "on-the-strap", -100)
        .height("ride", "ride", 0)
        .length("strap-length", "strap", 500)
        .length("strap-length", "ride", 450)
        .stretch(10)
        .given("new-strap-length", 500);
  }

  private static List<Dimension> needed(CornerBench bench) {
    return bench.travel().droop().needs().stream()
        .map(Need::dimension)
        .filter(d -> d == Dimension.NEW_STRAP_LENGTH)
        .toList();
  }

  @Test
  void a_strap_let_out_by_holes_of_known_length_is_the_same_strap() {
    String inch = ",\"step\":\"25.4 mm\"";
    assertEquals(List.of(), needed(strapped("holes", "hole 3", inch).adjust("strap", "hole 2")));
    assertEquals(
        List.of(Dimension.NEW_STRAP_LENGTH),
        needed(strapped("holes", "hole 3", "").adjust("strap", "hole 2")));
    assertEquals(
        List.of(Dimension.NEW_STRAP_LENGTH),
        needed(strapped("words", "nylon, 20", "").adjust("strap", "nylon, 22")));
  }

  @Test
  void a_crush_stays_under_a_spacer_and_goes_with_a_stop_in_words() {
    String stop =
        "{\"adjuster\":\"stop\",\"kind\":\"bump-stop-spacer\",\"unit\":\"%s\",\"moreShortens\":false}";
    CornerBench spacer = CornerBench.exact().adjuster(stop.formatted("length"));
    assertTrue(
        spacer
            .given("stop-crush", 40)
            .adjust("stop", "6 mm")
            .card()
            .given(Dimension.STOP_CRUSH)
            .isPresent());
    CornerBench words = CornerBench.exact().adjuster(stop.formatted("words"));
    assertTrue(
        words
            .given("stop-crush", 40)
            .adjust("stop", "a harder one")
            .card()
            .given(Dimension.STOP_CRUSH)
            .isEmpty());
  }

  @Test
  void each_height_is_read_beside_the_mark_of_its_own_day() {
    // Left wheel, left side up 0.1 rad: z cos 0.1 = spindle − mark − inboard · sin 0.1
    // (WheelPosition).
    List<String> lines =
        List.of(
            "{\"key\":\"car\",\"kind\":\"car\",\"body\":{\"details\":{\"name\":\"Dune\"}}}",
            "{\"key\":\"lf\",\"kind\":\"corner\",\"body\":{\"car\":\"car\",\"place\":\"left-front\",\"layout\":\"steered-double-a-arm\","
                + "\"adjusters\":[{\"adjuster\":\"arm\",\"kind\":\"arm\",\"unit\":\"words\",\"moreShortens\":false,\"first\":\"old\"}],\"given\":[{\"dimension\":\"mark-inboard\",\"length\":\"100"
                + " mm\"}]}}",
            round("r1"),
            height("before", "r1"),
            "{\"key\":\"a\",\"kind\":\"adjustment\",\"body\":{\"corner\":\"lf\",\"adjuster\":\"arm\",\"to\":\"longer\"}}",
            round("r2"),
            height("after", "r2"),
            "{\"key\":\"g\",\"kind\":\"definition\",\"body\":{\"corner\":\"lf\",\"given\":{\"dimension\":\"mark-inboard\",\"length\":\"150"
                + " mm\"}}}");
    // Until the new one is given, the old one stands in and is asked for.
    List<String> until = lines.subList(0, lines.size() - 1);
    assertEquals(100, inboardMm(until, "after"), 0.5);
    assertTrue(
        CornerTravel.of(HandBooks.of(until).card("lf")).droop().needs().stream()
            .anyMatch(n -> n.dimension() == Dimension.MARK_INBOARD));
    assertEquals(100, inboardMm(lines, "before"), 0.5);
    assertEquals(150, inboardMm(lines, "after"), 0.5);
  }

  private static double inboardMm(List<String> lines, String height) {
    SeenHeight seen = HandBooks.of(lines).card("lf").height(height).orElseThrow();
    return Math.abs(seen.positionMm().value() * Math.cos(0.1) + 100) / Math.sin(0.1);
  }

  private static String round(String key) {
    return "{\"key\":\"%s\",\"kind\":\"round\",\"body\":{\"corner\":\"lf\",\"springIn\":false,\"bumpStopIn\":true,\"wheelOn\":false,\"onTyres\":false,\"steeringLinked\":true,\"roll\":\"5.729578 deg\",\"unit\":\"mm\"}}"
        .formatted(key);
  }

  private static String height(String key, String round) {
    return "{\"key\":\"%s\",\"kind\":\"height\",\"body\":{\"round\":\"%s\",\"name\":\"in-between\",\"spindle\":\"900 mm\",\"mark\":\"1000 mm\"}}"
        .formatted(key, round);
  }
}
