package spindlebook.corner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.card.TravelWords;
import spindlebook.drawing.TapeFace;
import spindlebook.drawing.TapeSheet;
import spindlebook.fold.Card;
import spindlebook.fold.HandBooks;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.TravelFindings;

/** What the corner's page says of a corner whose strap and spacer nobody ever set in the book. */
class CornerViewTest {
  private final List<String> lines =
      new ArrayList<>(
          List.of(
              "{\"key\":\"car\",\"kind\":\"car\",\"body\":{\"details\":{\"name\":\"Dune\",\"unit\":\"mm\"}}}",
              """
              {"key":"lf","kind":"corner","body":{"car":"car","place":"left-front","layout":"steered-double-a-arm",\
              "watchPoints":[{"point":"arm","place":"lower-arm-frame","name":"arm","keep":{"least":"6 mm"}}],\
              "adjusters":[{"adjuster":"strap","kind":"limit-strap","unit":"length","moreShortens":false},\
              {"adjuster":"preload","kind":"spring-preload","unit":"turns","moreShortens":false,"first":"2 turns"},\
              {"adjuster":"spacer","kind":"bump-stop-spacer","unit":"length","moreShortens":false}],\
              "given":[{"dimension":"new-strap-length","length":"500 mm"},{"dimension":"stop-crush","length":"30 mm"}],\
              "heldBack":[{"allowance":"impact-reserve","length":"6 mm"},{"allowance":"strap-stretch","percent":2}]}}\
              """,
              "{\"key\":\"r\",\"kind\":\"round\",\"body\":{\"corner\":\"lf\",\"springIn\":false,\"bumpStopIn\":false,\"wheelOn\":true,\"onTyres\":false,\"steeringLinked\":true}}",
              height("strap-on", "on-the-strap", 254),
              height("mid", "in-between", 300),
              height("high", "in-between", 400),
              height("touch", "stop-touch", 450),
              height("solid", "full-bump", 490),
              read("strap-on", "watch-point", "\"point\":\"arm\",\"result\":\"touches\""),
              read("mid", "watch-point", "\"point\":\"arm\",\"result\":\"well-clear\""),
              read("touch", "watch-point", length("20 mm") + ",\"point\":\"arm\""),
              read("solid", "watch-point", length("2 mm") + ",\"point\":\"arm\""),
              read("strap-on", "strap-length", length("508 mm")),
              read("mid", "strap-length", length("485 mm")),
              read("high", "stop-gap", length("60 mm"))));

  private static String height(String key, String name, int positionMm) {
    return "{\"key\":\"%s\",\"kind\":\"height\",\"body\":{\"round\":\"r\",\"name\":\"%s\",\"spindle\":\"%d mm\",\"mark\":\"1000 mm\"}}"
        .formatted(key, name, 1000 + positionMm);
  }

  private static String read(String height, String quantity, String rest) {
    return "{\"key\":\"%s\",\"kind\":\"reading\",\"body\":{\"height\":\"%s\",\"steering\":\"straight\",\"quantity\":\"%s\",%s}}"
        .formatted(height + "-" + quantity, height, quantity, rest);
  }

  private static String length(String length) {
    return "\"result\":\"number\",\"length\":\"" + length + "\"";
  }

  private Card card() {
    return HandBooks.of(lines).card("lf");
  }

  private CornerView view() {
    Card card = card();
    return CornerView.of(card, CornerTravel.of(card), null);
  }

  private static List<String> positions(CornerView view) {
    return view.heights().stream()
        .map(h -> h.positionMm() == null ? "" : "" + view.words().position(h.positionMm()))
        .toList();
  }

  private EndView end(int which) {
    return view().ends().get(which);
  }

  private static List<String> words(EndView end) {
    return end.lines().stream().map(EndView.Line::words).toList();
  }

  @Test
  void every_term_of_the_sum_has_a_word_and_none_is_a_letter() {
    List<String> droop = words(end(0));
    assertEquals("strap stops the wheel at", droop.get(0));
    assertTrue(droop.get(1).startsWith("stretch still to come, at the wheel, "), droop.get(1));
    List<String> bump = words(end(1));
    assertTrue(bump.get(0).startsWith("bump stop solid at, as read"), bump.get(0));
    assertEquals("impact held back, at the wheel", bump.get(1));
    for (String line : droop) {
      assertFalse(line.matches(".*\\b[SBLUer]\\b.*"), line);
    }
    for (String line : bump) {
      assertFalse(line.matches(".*\\b[SBLUer]\\b.*"), line);
    }
  }

  /** Stop, held back, where that lets the wheel go, what it meets, what is left: from one zero. */
  @Test
  void an_end_s_sum_is_told_in_the_order_in_which_it_adds_up() {
    List<String> droop = words(end(0));
    assertEquals("wheel goes to", droop.get(2));
    assertTrue(droop.get(3).startsWith("arm, stops first"), droop.toString());
    assertEquals("margin", droop.get(droop.size() - 2));
    assertTrue(droop.get(droop.size() - 1).startsWith("strap must stop"), droop.toString());
    String held = end(0).lines().get(1).figure().plain();
    assertTrue(held.matches("[-\u2212].*"), held);
  }

  @Test
  void a_drive_says_that_all_of_the_stretch_is_held_back_until_the_strap_is_read_again() {
    lines.add(
        "{\"key\":\"d\",\"kind\":\"happening\",\"body\":{\"corner\":\"lf\",\"what\":\"driven\"}}");
    String held = words(end(0)).get(1);
    assertTrue(held.endsWith("; all of it, until the strap is read on it again (driven)"), held);
  }

  @Test
  void a_limit_between_two_heights_gives_both_and_says_which_is_planned_from() {
    assertTrue(
        words(end(0)).contains("arm, stops first, between +300.0 mm and +254.0 mm, planned from"),
        "" + words(end(0)));
    assertTrue(
        words(end(1)).contains("arm, stops first, between +450.0 mm and +490.0 mm, planned from"),
        "" + words(end(1)));
  }

  @Test
  void the_zero_is_named_and_no_strap_reading_that_went_stale_moves_it() {
    CornerView before = view();
    assertEquals(
        "Positions are from level with the frame mark, + towards bump.",
        before.words().positions());
    lines.add(
        "{\"key\":\"a\",\"kind\":\"adjustment\",\"body\":{\"corner\":\"lf\",\"adjuster\":\"strap\",\"to\":\"490"
            + " mm\"}}");
    assertEquals(before.words().positions(), view().words().positions());
    assertEquals(positions(before), positions(view()));
  }

  @Test
  void a_ride_height_that_went_stale_moves_no_position() {
    lines.add(height("ride", "ride", 370));
    CornerView before = view();
    assertEquals("Positions are from ride, + towards bump.", before.words().positions());
    lines.add(
        "{\"key\":\"a\",\"kind\":\"adjustment\",\"body\":{\"corner\":\"lf\",\"adjuster\":\"preload\",\"to\":\"4"
            + " turns\"}}");
    assertEquals(
        "Positions are from ride as last read, + towards bump.", view().words().positions());
    assertEquals(positions(before), positions(view()));
  }

  @Test
  void a_spacer_never_said_is_cured_by_so_much_thicker_and_can_be_prepared() {
    EndView bump = end(1);
    assertTrue(bump.cure().contains(" thicker than it is now, "), bump.cure());
    assertEquals("/corners/lf/adjustments/spacer", bump.cureHref());
  }

  @Test
  void a_strap_never_said_is_prepared_from_the_new_ones_length() {
    EndView droop = end(0);
    assertTrue(droop.cureHref().contains("&from=500.0+mm"), droop.cureHref());
    assertTrue(droop.cure().contains(" shorter, to "), droop.cure());
  }

  @Test
  void two_ways_to_the_solid_stop_that_disagree_are_told_with_both_numbers() {
    Card card = card();
    TravelFindings travel = CornerTravel.of(card);
    String words = new TravelWords(card, travel).stopsDiffer(travel.bump());
    assertTrue(
        words.startsWith(
            "Full bump was read at +490.0 mm, but touch and crush put the solid stop at +475.0 mm,"
                + " from level with the frame mark: further apart than their ± of "),
        words);
  }

  /** Two lines where it is as wide as its column: what stood below was drawn over the second. */
  @Test
  void a_verdict_of_two_lines_is_given_the_room_of_two() {
    lines.removeIf(l -> l.contains("\"mid-watch-point\"") || l.contains("\"touch-watch-point\""));
    Card card = card();
    TravelFindings travel = CornerTravel.of(card);
    TapeSheet sheet =
        CornerTape.of(card, travel, new TravelWords(card, travel), false).orElseThrow();
    List<TapeSheet.Note> verdicts =
        sheet.notes().stream().filter(n -> n.words().equals("at every height read")).toList();
    assertEquals(2, verdicts.size(), () -> sheet.notes().toString());
    for (TapeSheet.Note verdict : verdicts) {
      double rest = 34 + TapeSheet.SMALL;
      assertTrue(verdict.height() >= rest + 2 * TapeSheet.WORDS, verdict.toString());
    }
  }

  /** With the strap off the wheel hangs on something, and nobody reads lower than that. */
  @Test
  void an_end_that_wants_to_be_read_lower_than_the_wheel_hangs_says_what_helps() {
    lines.removeIf(l -> l.contains("\"strap-on-watch-point\""));
    lines.add(height("off", "strap-off", 251));
    lines.add(read("off", "watch-point", "\"point\":\"arm\",\"result\":\"well-clear\""));
    String hangs =
        "It hung free at +251.0 mm from level with the frame mark: no lower? Shorten the strap.";
    assertTrue(droop().endsWith(hangs), droop());
    // Once it hung lower than is wanted, it can be read there.
    lines.add(height("lower", "strap-off", 100));
    assertFalse(droop().contains("hung free"), droop());
    lines.remove(lines.size() - 1);
    lines.add(
        "{\"key\":\"short\",\"kind\":\"adjustment\",\"body\":{\"corner\":\"lf\",\"adjuster\":\"strap\",\"to\":\"450"
            + " mm\"}}");
    lines.add(height("shorter", "on-the-strap", 290));
    lines.add(read("shorter", "strap-length", length("490 mm")));
    assertFalse(droop().contains("hung free"), droop());
  }

  private String droop() {
    Card card = card();
    TravelFindings travel = CornerTravel.of(card);
    return new TravelWords(card, travel).finding(travel.droop());
  }

  @Test
  void a_tape_whose_ends_are_both_to_be_read_again_shows_nothing_as_usable() {
    assertTrue(fills(card()).contains(TapeFace.Band.Kind.USABLE));
    lines.add(
        "{\"key\":\"hit\",\"kind\":\"happening\",\"body\":{\"car\":\"car\",\"corner\":\"lf\",\"what\":\"hit-or-bent\"}}");
    assertEquals(List.of(), fills(card()));
  }

  private static List<TapeFace.Band.Kind> fills(Card card) {
    TravelFindings travel = CornerTravel.of(card);
    return CornerFace.of(card, travel, new TravelWords(card, travel), true, 400, 92)
        .orElseThrow()
        .bands()
        .stream()
        .map(TapeFace.Band::kind)
        .toList();
  }
}
