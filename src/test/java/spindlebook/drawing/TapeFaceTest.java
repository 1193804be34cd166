package spindlebook.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.drawing.TapeFace.Area;
import spindlebook.drawing.TapeFace.Band;
import spindlebook.drawing.TapeFace.Numeral;

/** The tape's places, worked out by hand: 17 in of tape, from 9 in below ride to 8 in above. */
class TapeFaceTest {
  private static final double IN = 25.4;

  private static TapeFace face(boolean standing) {
    return new TapeFace(
        "t",
        standing,
        -9 * IN,
        8 * IN,
        340,
        40,
        LengthScale.INCH,
        List.of(
            new Band(-7 * IN, 6 * IN, Band.Kind.USABLE),
            new Band(-8 * IN, -7 * IN, Band.Kind.HELD_BACK),
            new Band(-8.5 * IN, -8 * IN, Band.Kind.PAST_A_LIMIT),
            new Band(6 * IN, 6 * IN, Band.Kind.HELD_BACK)));
  }

  @Test
  void bump_is_up_and_right_droop_is_down_and_left() {
    assertEquals(0, face(true).at(8 * IN), 1e-9);
    assertEquals(160, face(true).at(0), 1e-9);
    assertEquals(340, face(true).at(-9 * IN), 1e-9);
    assertEquals(0, face(false).at(-9 * IN), 1e-9);
    assertEquals(180, face(false).at(0), 1e-9);
    assertEquals(340, face(false).at(100 * IN), 1e-9, "held at the tape's end");
  }

  @Test
  void bars_stand_out_at_both_sides_and_an_empty_stretch_is_not_drawn() {
    List<Area> areas = face(true).areas();
    assertEquals(3, areas.size());
    assertEquals(new Area("f-usable", null, 0, 40, 40, 260), areas.get(0));
    assertEquals(new Area("f-held-back", "url(#t-h)", 0, 300, 40, 20), areas.get(1));
    assertEquals(new Area("f-past-a-limit", "url(#t-b)", -5, 320, 50, 10), areas.get(2));
    assertEquals(new Area("f-usable", null, 40, 0, 260, 40), face(false).areas().get(0));
  }

  @Test
  void numerals_stand_on_the_usable_stretch_far_enough_apart_and_never_at_ride() {
    List<Numeral> numerals = face(false).numerals();
    assertEquals(List.of("6", "4", "2", "2", "4"), numerals.stream().map(Numeral::text).toList());
    assertEquals(60, numerals.get(0).at(), 1e-9);
    assertFalse(numerals.stream().anyMatch(n -> n.at() == 180));
  }

  @Test
  void every_tick_lies_on_the_usable_stretch_at_both_edges_of_a_standing_tape() {
    String standing = face(true).graduations();
    // Quarter inches from −7 to +6: 53 of them, 5 units apart, at either edge.
    assertEquals(2 * 53, standing.split("M").length - 1);
    assertTrue(standing.startsWith("M0 300h"), standing);
    assertTrue(standing.endsWith("M40 40h-10"), standing);
    assertEquals(53, face(false).graduations().split("M").length - 1);
  }

  @Test
  void a_tape_that_does_not_run_upward_is_refused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new TapeFace("t", true, 1, 1, 10, 10, LengthScale.MM, List.of()));
  }
}
