package spindlebook.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * Scrub and trail, steered and straight. The steered numbers are two rows of the reference corner
 * (linkage.json, "G1", wheel at ride, rack 60 mm to either side; computed outside this program).
 */
class ScrubTrailTest {
  private static final Figure RADIUS = Figure.exact(405);

  @Test
  void straight_ahead_it_is_the_worked_example() {
    ScrubTrail found = straight(Figure.exact(380));
    assertEquals(82.147, found.scrubMm().value(), 5e-4);
    assertEquals(26.531, found.trailMm().value(), 5e-4);
    assertEquals(-0.1051, ScrubTrail.scrubPerRadius(0, Math.toRadians(6)), 5e-5);
  }

  @Test
  void steered_the_tyres_axes_are_not_the_bodys() {
    ScrubTrail left =
        ScrubTrail.of(
            place(-50.952647583575086, 890.9024086753478, 8, 790.4887447744804, 296.2310639709552),
            axis(5.712813291433456, 8.678921232748023),
            degrees(2.3648725739360437),
            degrees(-23.415253300984432),
            RADIUS);
    assertAll(left, 69.1770302323555, 59.305241475336814, 39.9127827600538, 81.9117998249641);
    ScrubTrail right =
        ScrubTrail.of(
            place(50.13733418409253, 888.0262354471432, 8, 789.7248300511513, 286.8887017892405),
            axis(5.709514424567105, 8.45780891455283),
            degrees(-1.988841166351574),
            degrees(23.488693947974294),
            RADIUS);
    assertAll(right, 70.49178819955559, 9.829925754558822, 68.5686446955383, -19.080372337251994);
    assertTrue(
        right.trailMm().value() > 0 && right.bodyTrailMm().value() < 0,
        "even the sign depends on whose axes");
  }

  @Test
  void doubt_of_the_radius_enters_by_the_formula() {
    Source squash = new Source("squash", SourceKind.ALLOWANCE);
    ScrubTrail found = straight(Figure.of(380, squash, 10));
    double perMm = ScrubTrail.scrubPerRadius(0, Math.toRadians(6));
    assertEquals(10 * Math.abs(perMm), found.scrubMm().u(), 1e-9);
    assertTrue(perMm < 0, "a taller tyre takes scrub away");
  }

  @Test
  void a_radius_of_nothing_is_refused() {
    assertThrows(IllegalArgumentException.class, () -> straight(Figure.exact(0)));
  }

  private static ScrubTrail straight(Figure radius) {
    return ScrubTrail.of(
        new AxisPlace(Figure.exact(8), Figure.exact(110), Figure.exact(115)),
        axis(4, 6),
        Figure.exact(0),
        Figure.exact(0),
        radius);
  }

  private static AxisPlace place(double wx, double wy, double lx, double ly, double lz) {
    return new AxisPlace(Figure.exact(lx - wx), Figure.exact(wy - ly), Figure.exact(405 - lz));
  }

  private static SteeringAxis axis(double casterDegrees, double kpiDegrees) {
    return new SteeringAxis(degrees(casterDegrees), degrees(kpiDegrees));
  }

  private static Figure degrees(double value) {
    return Figure.exact(Math.toRadians(value));
  }

  private static void assertAll(
      ScrubTrail found, double scrub, double trail, double bodyScrub, double bodyTrail) {
    assertEquals(scrub, found.scrubMm().value(), 1e-6);
    assertEquals(trail, found.trailMm().value(), 1e-6);
    assertEquals(bodyScrub, found.bodyScrubMm().value(), 1e-6);
    assertEquals(bodyTrail, found.bodyTrailMm().value(), 1e-6);
  }
}
