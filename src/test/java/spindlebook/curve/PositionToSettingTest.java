package spindlebook.curve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.travel.Readings.exact;
import static spindlebook.travel.Readings.read;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import spindlebook.curve.PositionToSetting.By;
import spindlebook.curve.PositionToSetting.Converted;
import spindlebook.curve.PositionToSetting.Rounding;
import spindlebook.curve.PositionToSetting.Steps;
import spindlebook.travel.Readings;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.TravelReference;

/**
 * Source: reference/travel.json and reference/strap_lengths.json, computed outside this program.
 */
class PositionToSettingTest {
  private static final double GRID_MM = 20;

  static Stream<JsonNode> raisingDroop() {
    return rows("raise_droop_by_mm");
  }

  static Stream<JsonNode> shorterStraps() {
    return rows("strap_shortened_by_mm");
  }

  @ParameterizedTest
  @MethodSource("raisingDroop")
  void the_strap_curve_agrees_with_the_exact_shortening(JsonNode row) {
    double droop = row.get("droop_dz").doubleValue();
    double up = droop + row.get("raise_droop_by_mm").doubleValue();
    Converted change = PositionToSetting.lengthChange(strap(), droop, up);
    double shortening = -change.changeMm().value();
    assertEquals(row.get("strap_shortening_exact").doubleValue(), shortening, interpolationError());
    assertEquals(By.CURVE, change.by());
  }

  @ParameterizedTest
  @MethodSource("raisingDroop")
  void one_ratio_for_the_whole_change_is_wrong_by_what_the_reference_says(JsonNode row) {
    double droop = row.get("droop_dz").doubleValue();
    double raise = row.get("raise_droop_by_mm").doubleValue();
    Node atDroop = exact(droop, row.get("strap_length_at_droop").doubleValue());
    double ratio = -row.get("strap_ratio_at_droop").doubleValue();
    List<Node> tangent =
        List.of(atDroop, exact(droop + 100, atDroop.value().value() + 100 * ratio));
    Converted linear = PositionToSetting.lengthChange(tangent, droop, droop + raise);
    double shortening = -linear.changeMm().value();
    assertEquals(row.get("strap_shortening_linear").doubleValue(), shortening, 1e-6);
    assertEquals(
        row.get("error_linear").doubleValue(),
        shortening - row.get("strap_shortening_exact").doubleValue(),
        1e-6);
    assertEquals(By.RATIO, linear.by());
  }

  @ParameterizedTest
  @MethodSource("raisingDroop")
  void the_ratio_half_way_is_nearly_as_good_as_the_curve(JsonNode row) {
    double droop = row.get("droop_dz").doubleValue();
    double raise = row.get("raise_droop_by_mm").doubleValue();
    double shortening = -Ratio.at(strap(), droop + raise / 2).value() * raise;
    double perMm = slopeErrorBetweenReadings();
    assertEquals(
        row.get("strap_shortening_midpoint_ratio").doubleValue(), shortening, perMm * raise);
  }

  @ParameterizedTest
  @MethodSource("shorterStraps")
  void a_shorter_strap_raises_the_wheel_by_what_the_reference_says(JsonNode row) {
    double droop = row.get("droop_dz").doubleValue();
    double shorter = row.get("strap_shortened_by_mm").doubleValue();
    Converted rises = PositionToSetting.wheelChange(strap(), droop, -shorter);
    double exact = row.get("droop_rises_exact_mm").doubleValue();
    assertEquals(exact, rises.changeMm().value(), interpolationError() / 0.48);
    assertEquals(By.CURVE, rises.by());
    assertTrue(rises.changeMm().value() > shorter, "the strap sits inboard of the wheel");

    double start = lengthAt(droop);
    double ratio = ratioAt(droop);
    List<Node> tangent = List.of(exact(droop, start), exact(droop + 100, start - 100 * ratio));
    assertEquals(
        row.get("droop_rises_linear_mm").doubleValue(),
        PositionToSetting.wheelChange(tangent, droop, -shorter).changeMm().value(),
        1e-6);
  }

  @Test
  void ratios_at_the_readings_are_those_of_the_linkage() {
    for (JsonNode row : TravelReference.strapLengths()) {
      double at = row.get("wheel_position_mm").doubleValue();
      Figure ratio = Ratio.at(strap(), at);
      assertTrue(
          Math.abs(ratio.value() + row.get("strap_ratio").doubleValue()) <= ratio.U() + 1e-9);
    }
  }

  @Test
  void there_and_back_is_nothing() {
    for (double change : new double[] {-60, -12.7, -1, 0, 3, 9}) {
      Converted wheel = PositionToSetting.wheelChange(strap(), -240, change);
      Converted back =
          PositionToSetting.lengthChange(strap(), -240, -240 + wheel.changeMm().value());
      assertEquals(change, back.changeMm().value(), 1e-9);
    }
  }

  @Test
  void beyond_the_readings_the_end_ratio_is_used_and_said_with_a_growing_doubt() {
    List<Node> strap = strap().stream().filter(n -> n.positionMm().value() >= -200).toList();
    Converted near = PositionToSetting.lengthChange(strap, -200, -210);
    Converted far = PositionToSetting.lengthChange(strap, -200, -260);
    assertEquals(By.RATIO, far.by());
    double ratio = Ratio.at(strap, -200).value();
    assertEquals(-60 * ratio, far.changeMm().value(), 1e-9);
    assertTrue(far.changeMm().U() > near.changeMm().U());
    double exact = lengthAt(-260) - lengthAt(-200);
    assertEquals(exact, far.changeMm().value(), far.changeMm().U());
    Converted back = PositionToSetting.wheelChange(strap, -200, far.changeMm().value());
    assertEquals(-60, back.changeMm().value(), 1e-9);
    assertEquals(By.RATIO, back.by());
  }

  @Test
  void a_length_that_no_position_has_is_refused() {
    List<Node> flat = List.of(exact(0, 500), exact(50, 500));
    assertThrows(IllegalArgumentException.class, () -> PositionToSetting.wheelChange(flat, 0, -10));
  }

  @Test
  void two_lengths_give_the_ratio_of_the_worked_example_with_its_uncertainty() {
    Figure ratio = Ratio.at(List.of(read(-260, 0, 548.8, 0.5), read(-200, 0, 519.5, 0.5)), -230);
    assertEquals(-0.4883, ratio.value(), 5e-5);
    assertEquals(0.0118, ratio.u(), 5e-5);
    assertThrows(
        IllegalArgumentException.class,
        () -> Ratio.at(List.of(exact(-260, 548.8), exact(-200, 519.5)), -261));
    assertThrows(IllegalArgumentException.class, () -> Ratio.at(List.of(exact(0, 500)), 0));
  }

  @Test
  void what_both_lengths_share_does_not_touch_the_ratio() {
    List<Node> lengths = new ArrayList<>();
    double[] at = {-200, -100, 0, 80};
    double[] length = {520, 472, 425, 388};
    for (int i = 0; i < at.length; i++) {
      lengths.add(
          Readings.node(
              Figure.of(at[i], Readings.MARK, 0.4),
              Figure.of(length[i], Readings.CALIPER, 0.3),
              Bound.EXACT));
    }
    Figure change = PositionToSetting.lengthChange(lengths, -200, 0).changeMm();
    assertEquals(0, change.parts().getOrDefault(Readings.CALIPER, 0.0), 1e-7);
    Figure ratio = Ratio.at(lengths, -100);
    assertEquals(0, ratio.parts().getOrDefault(Readings.CALIPER, 0.0), 1e-9);
  }

  @Test
  void a_strap_is_never_set_longer_than_asked() {
    assertEquals(new Steps(-1, 25.4, -25.4), steps(-12.283, Rounding.DOWN));
    assertEquals(new Steps(1, 25.4, 25.4), steps(30, Rounding.DOWN));
    assertEquals(new Steps(0, 25.4, 0), steps(12, Rounding.DOWN));
    assertEquals(-2, steps(-25.400001, Rounding.DOWN).count());
  }

  @Test
  void a_spacer_is_never_set_thinner_than_asked() {
    assertEquals(2, PositionToSetting.steps(3.2, 3.175, Rounding.UP).count());
    assertEquals(-1, PositionToSetting.steps(-6.2, 3.175, Rounding.UP).count());
  }

  @Test
  void a_whole_number_of_steps_is_that_number_whatever_the_last_digits_say() {
    double sixth = 25.4 / 18 / 6;
    for (int n = -40; n <= 40; n++) {
      double change = n * sixth * (1 + 1e-15);
      assertEquals(n, PositionToSetting.steps(change, sixth, Rounding.UP).count());
      assertEquals(n, PositionToSetting.steps(change, sixth, Rounding.DOWN).count());
    }
    assertThrows(IllegalArgumentException.class, () -> PositionToSetting.steps(1, 0, Rounding.UP));
  }

  @Test
  void one_hole_for_the_worked_example_gives_more_than_was_asked_at_the_wheel() {
    double asked = PositionToSetting.lengthChange(strap(), -260, -235).changeMm().value();
    assertEquals(-12.283, asked, 1e-3);
    Converted gives = PositionToSetting.atWheel(strap(), -260, steps(asked, Rounding.DOWN));
    assertTrue(gives.changeMm().value() > 25);
    assertEquals(
        -25.4,
        PositionToSetting.lengthChange(strap(), -260, -260 + gives.changeMm().value())
            .changeMm()
            .value(),
        1e-9);
  }

  /**
   * Between two exact readings a cubic with end slopes wrong by no more than e is wrong by no more
   * than h e / 4, for t (1−t)² + t² (1−t) = t (1−t) ≤ 1/4; the fourth-derivative term is under 1e-6
   * mm here. e is read off at the readings, where the linkage's ratio is known.
   */
  private static double interpolationError() {
    double worst = worstSlopeErrorAtReadings() * GRID_MM / 4;
    assertTrue(worst > 1e-4 && worst < 0.003, "a bound worth having: " + worst);
    return worst + 1e-6;
  }

  /** The two end slopes weigh at most 1 each; 1e-4 for what the third derivative does. */
  private static double slopeErrorBetweenReadings() {
    return 2 * worstSlopeErrorAtReadings() + 1e-4;
  }

  private static double worstSlopeErrorAtReadings() {
    double worst = 0;
    for (JsonNode row : TravelReference.strapLengths()) {
      double at = row.get("wheel_position_mm").doubleValue();
      if (at >= -260 && at <= -140) {
        double error = Ratio.at(strap(), at).value() + row.get("strap_ratio").doubleValue();
        worst = Math.max(worst, Math.abs(error));
      }
    }
    return worst;
  }

  private static Steps steps(double changeMm, Rounding cautious) {
    return PositionToSetting.steps(changeMm, 25.4, cautious);
  }

  private static List<Node> strap() {
    return TravelReference.each(TravelReference.strapLengths())
        .map(
            row ->
                exact(
                    row.get("wheel_position_mm").doubleValue(),
                    row.get("strap_length_mm").doubleValue()))
        .toList();
  }

  private static double lengthAt(double positionMm) {
    return at(positionMm).get("strap_length_mm").doubleValue();
  }

  private static double ratioAt(double positionMm) {
    return at(positionMm).get("strap_ratio").doubleValue();
  }

  private static JsonNode at(double positionMm) {
    return TravelReference.each(TravelReference.strapLengths())
        .filter(row -> row.get("wheel_position_mm").doubleValue() == positionMm)
        .findFirst()
        .orElseThrow();
  }

  private static Stream<JsonNode> rows(String with) {
    return TravelReference.each(TravelReference.travel().at("/strap_from_height/rows"))
        .filter(row -> row.has(with));
  }
}
