package spindlebook.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.travel.StandardCorner.INCH;
import static spindlebook.travel.StandardCorner.bench;
import static spindlebook.travel.StandardCorner.limit;
import static spindlebook.travel.StandardCorner.stops;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.TelltaleKind;
import spindlebook.fold.Card;
import spindlebook.fold.Noted;
import spindlebook.fold.Written;
import spindlebook.travel.CornerBench;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.Limit;
import spindlebook.travel.StandardCorner;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedLength;

/** By hand from {@link StandardCorner}: its shock is 700 − z/2 mm long at a wheel at z. */
class DeepestBumpTest {
  private static final double TAPE_U =
      Math.sqrt(Math.pow(INCH / 16, 2) / 12 + Math.pow(INCH / 32, 2) / 3);

  private static TypedLength mm(double mm) {
    return new TypedLength(mm + " mm", mm, LengthUnit.MM, "tape-1");
  }

  private static Written<Content.Telltale> ring(Double ringMm, Double shockMm, HeightName at) {
    Content.Telltale telltale =
        new Content.Telltale(
            "lf",
            TelltaleKind.SHOCK_RING,
            null,
            "as typed",
            ringMm == null ? null : mm(ringMm),
            shockMm == null ? null : mm(shockMm),
            at,
            null,
            null);
    return new Written<>(new Noted(1000, "t", Instant.EPOCH, "Ada", 0, telltale), telltale);
  }

  private static DeepestBump of(CornerBench bench, Written<Content.Telltale> ring) {
    Card card = bench.card();
    return DeepestBump.of(card, CornerTravel.of(card), ring);
  }

  private static CornerBench whole() {
    return limit(bench(CornerBench.exact()), 8 * INCH);
  }

  @Test
  void ring_148_from_the_body_of_a_shock_573_long_was_50_past_the_stop_solid_at_500() {
    DeepestBump.At at =
        assertInstanceOf(
            DeepestBump.At.class, of(whole(), ring(148.0, null, HeightName.ON_THE_STRAP)));
    assertEquals(550, at.positionMm().value(), 1e-6);
    assertEquals(-50, at.toSolidMm().orElseThrow().value(), 1e-6);
    // The ground's limit: 850 mm.
    assertEquals(Limit.Kind.GROUND, at.limit().orElseThrow().kind());
    assertEquals(300, at.toLimitMm().orElseThrow().value(), 1e-6);
    // The ring's own tape, at half a millimetre of shock for one of wheel.
    assertEquals(2 * TAPE_U / 0.5, at.positionMm().U(), 1e-6);
  }

  @Test
  void a_shock_length_typed_beside_the_ring_counts_and_brings_its_own_tape() {
    DeepestBump.At at =
        assertInstanceOf(DeepestBump.At.class, of(whole(), ring(20.0, 480.0, null)));
    assertEquals(480, at.positionMm().value(), 1e-6);
    assertEquals(20, at.toSolidMm().orElseThrow().value(), 1e-6);
    assertEquals(2 * Math.sqrt(2) * TAPE_U / 0.5, at.positionMm().U(), 1e-6);
  }

  @Test
  void beyond_the_highest_height_read_it_is_counted_from_there_and_never_extrapolated() {
    DeepestBump.At beyond =
        assertInstanceOf(
            DeepestBump.At.class, of(whole(), ring(180.0, null, HeightName.ON_THE_STRAP)));
    assertTrue(beyond.beyond());
    assertEquals(600, beyond.positionMm().value(), 1e-6);
    assertEquals(-100, beyond.toSolidMm().orElseThrow().value(), 1e-6);
    DeepestBump.At end =
        assertInstanceOf(
            DeepestBump.At.class, of(whole(), ring(173.5, null, HeightName.ON_THE_STRAP)));
    assertFalse(end.beyond());
    assertEquals(600, end.positionMm().value(), 1e-6);
  }

  @Test
  void what_is_missing_is_named() {
    assertEquals(
        new DeepestBump.Needs(DeepestBump.Missing.RING), of(whole(), ring(null, 500.0, null)));
    assertEquals(
        new DeepestBump.Needs(DeepestBump.Missing.SHOCK_THEN), of(whole(), ring(9.0, null, null)));
    assertEquals(
        new DeepestBump.Needs(DeepestBump.Missing.SHOCK_THEN),
        of(whole(), ring(9.0, null, HeightName.RIDE)),
        "no shock length was read at ride");
    assertEquals(
        new DeepestBump.Needs(DeepestBump.Missing.SHOCK_LENGTHS),
        of(CornerBench.exact(), ring(9.0, 500.0, null)));
    assertEquals(
        new DeepestBump.Needs(DeepestBump.Missing.SHOCK_LENGTHS),
        of(whole(), ring(1.0, 690.0, null)),
        "longer than at the lowest height read: that is no bump");
  }

  @Test
  void without_a_solid_stop_the_wheel_is_placed_all_the_same() {
    CornerBench noStop =
        StandardCorner.chosen(CornerBench.exact())
            .height("off", "strap-off", 150)
            .height("beyond", "in-between", 600)
            .length("shock-length", "off", 625)
            .length("shock-length", "beyond", 400);
    DeepestBump.At at = assertInstanceOf(DeepestBump.At.class, of(noStop, ring(75.0, 500.0, null)));
    assertEquals(550, at.positionMm().value(), 1e-6);
    assertTrue(at.toSolidMm().isEmpty());
  }

  @Test
  void two_readings_bear_a_straight_line() {
    DeepestBump.At at =
        assertInstanceOf(
            DeepestBump.At.class,
            of(stops(CornerBench.exact()), ring(113.0, null, HeightName.ON_THE_STRAP)));
    assertEquals(480, at.positionMm().value(), 1e-6);
  }
}
