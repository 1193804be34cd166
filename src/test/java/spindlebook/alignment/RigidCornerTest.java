package spindlebook.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import spindlebook.definition.RackSide;

/** bump_steer.json against the tests' own rigid corner: tables, ranges, exact cures. */
class RigidCornerTest {
  private static final double TOE_DEG = 1e-7;
  private static final double FIX_MM = 1e-5;
  private static final JsonNode FILE = Reference.bumpSteer();
  private static final List<JsonNode> CASES = Reference.rows(FILE.get("cases"));

  @Test
  void its_toe_is_that_of_both_tables() {
    int checked = 0;
    for (JsonNode fault : CASES) {
      RigidCorner corner = BumpSteerReferenceTest.corner(fault);
      assertEquals(fault.get("tie_rod_length").doubleValue(), corner.rodMm(), 1e-9);
      for (String table : List.of("table", "table_wide")) {
        double[] z = Reference.numbers(fault.get(table).get("z"));
        double[] toe = Reference.numbers(fault.get(table).get("toe_in_deg"));
        for (int i = 0; i < z.length; i++) {
          assertEquals(toe[i], Math.toDegrees(corner.toe(z[i])), TOE_DEG);
          checked++;
        }
      }
    }
    assertEquals(6 * (25 + 29), checked);
  }

  @Test
  void its_slope_and_bend_at_ride_are_the_exact_ones() {
    for (JsonNode fault : CASES) {
      RigidCorner corner = BumpSteerReferenceTest.corner(fault);
      double slope = fault.get("slope_at_ride_exact_deg_per_mm").doubleValue();
      assertEquals(slope, Math.toDegrees(corner.slope(0)), 1e-10);
      assertBend(fault.get("curvature_at_ride_deg_per_mm2").doubleValue(), corner);
      double perMm =
          Math.toDegrees(corner.outerUp(0.1).slope(0) - corner.outerUp(-0.1).slope(0)) / 0.2;
      assertEquals(fault.get("d_slope_d_outer_up_deg_per_mm_per_mm").doubleValue(), perMm, 1e-9);
    }
  }

  @Test
  void its_range_is_that_between_the_turning_points() {
    int checked = 0;
    for (JsonNode fault : CASES) {
      RigidCorner corner = BumpSteerReferenceTest.corner(fault);
      for (JsonNode wanted : fault.get("p2p_continuous")) {
        double to = Reference.numbers(wanted.get("window"))[1];
        assertEquals(wanted.get("p2p_deg").doubleValue(), rangeDegrees(corner, to), TOE_DEG);
        assertEquals(
            wanted.get("max_deg").doubleValue(),
            Math.toDegrees(corner.toe(wanted.get("z_at_max").doubleValue())),
            TOE_DEG);
        assertEquals(
            wanted.get("min_deg").doubleValue(),
            Math.toDegrees(corner.toe(wanted.get("z_at_min").doubleValue())),
            TOE_DEG);
        for (double turning : Reference.numbers(wanted.get("turning_points"))) {
          assertEquals(0, Math.toDegrees(corner.slope(turning)), 1e-8);
        }
        checked++;
      }
    }
    assertEquals(12, checked);
  }

  @Test
  void its_cures_of_the_outer_end_are_the_exact_ones() {
    for (JsonNode fault : CASES) {
      RigidCorner corner = BumpSteerReferenceTest.corner(fault);
      JsonNode fix = fault.get("exact_fix_outer_vertical");
      double up = fix.get("outer_up_mm").doubleValue();
      assertEquals(up, zero(mm -> corner.outerUp(mm).slope(0)), FIX_MM);
      RigidCorner cured = corner.outerUp(up);
      assertEquals(fix.get("new_tie_rod_length").doubleValue(), cured.rodMm(), 1e-6);
      assertEquals(fix.get("p2p_120_after_deg").doubleValue(), rangeDegrees(cured, 120), TOE_DEG);
      assertBend(fix.get("curvature_after_deg_per_mm2").doubleValue(), cured);
    }
  }

  @Test
  void its_cures_of_the_inner_end_are_the_exact_ones() {
    for (JsonNode fault : CASES) {
      RigidCorner corner = BumpSteerReferenceTest.corner(fault);
      assertEquals(
          fault.get("exact_fix_inner_vertical_mm").doubleValue(),
          zero(mm -> innerMoved(corner, 0, mm).slope(0)),
          FIX_MM);
    }
  }

  @Test
  void a_rod_that_was_not_set_again_leaves_the_toe_of_the_file() {
    RigidCorner base = RigidCorner.of(ReferenceCorner.G1);
    int checked = 0;
    for (JsonNode fault : CASES) {
      JsonNode wanted = fault.get("static_toe_if_rod_length_not_reset_deg");
      if (!wanted.isNull()) {
        RigidCorner corner = BumpSteerReferenceTest.corner(fault);
        RigidCorner notSet = corner.withRod(corner.tieInner(), corner.tieOuter(), base.rodMm());
        assertEquals(wanted.doubleValue(), Math.toDegrees(notSet.toe(0)), TOE_DEG);
        checked++;
      }
    }
    assertEquals(2, checked);
  }

  @Test
  void slope_and_bend_vanish_together_where_the_file_says() {
    JsonNode fix = FILE.get("two_parameter_fix").get(0);
    RigidCorner cured =
        innerMoved(
            RigidCorner.of(ReferenceCorner.G1).outerUp(fix.get("outer_up_mm").doubleValue()),
            fix.get("inner_outboard_mm").doubleValue(),
            0);
    assertTrue(Math.abs(Math.toDegrees(cured.slope(0))) < 1e-9);
    assertTrue(Math.abs(Math.toDegrees(cured.curvature(0))) < 1e-10);
    assertEquals(fix.get("p2p_120").doubleValue(), rangeDegrees(cured, 120), TOE_DEG);
    assertEquals(fix.get("p2p_280").doubleValue(), rangeDegrees(cured, 280), TOE_DEG);
  }

  private static RigidCorner innerMoved(RigidCorner corner, double outboardMm, double upMm) {
    return corner.withRod(
        corner.tieInner().add(new Vector3D(0, outboardMm, upMm)), corner.tieOuter());
  }

  /** 24 invented corners, rods 20 to 100 mm off: toe read without error at five places. */
  @Test
  void a_cubic_over_120_mm_costs_a_few_hundredths_of_the_bend_not_one() {
    Random random = new Random(16);
    double least = 1;
    double most = 0;
    for (int i = 0; i < 24; i++) {
      RackSide rack = i % 2 == 0 ? RackSide.BEHIND_AXLE : RackSide.AHEAD_OF_AXLE;
      double longer = (random.nextBoolean() ? 1 : -1) * (20 + 80 * random.nextDouble());
      RigidCorner corner = RandomCorner.neutral(random, rack).rodLonger(longer);
      double[] x = {-120, -60, 0, 60, 120};
      double[] toe = DoubleStream.of(x).map(corner::toe).toArray();
      double off = Math.abs(new PolynomialFit(x, toe, 3).curvature(0) / corner.curvature(0) - 1);
      least = Math.min(least, off);
      most = Math.max(most, off);
    }
    assertTrue(least > 0.015 && most > 0.05 && most <= 0.10, least + " to " + most);
  }

  private static void assertBend(double wanted, RigidCorner corner) {
    assertEquals(wanted, Math.toDegrees(corner.curvature(0)), 1e-5 * Math.abs(wanted));
  }

  private static double zero(DoubleUnaryOperator f) {
    return new BrentSolver(1e-12, 1e-9).solve(100, f::applyAsDouble, -15, 15);
  }

  private static double rangeDegrees(RigidCorner corner, double toMm) {
    double high = Double.NEGATIVE_INFINITY;
    double low = Double.POSITIVE_INFINITY;
    double before = corner.slope(-toMm);
    for (double z = -toMm; z <= toMm; z += 10) {
      double slope = corner.slope(z);
      double at = before * slope < 0 ? turning(corner, z) : z;
      for (double place : new double[] {z, at}) {
        high = Math.max(high, corner.toe(place));
        low = Math.min(low, corner.toe(place));
      }
      before = slope;
    }
    return Math.toDegrees(high - low);
  }

  private static double turning(RigidCorner corner, double beforeMm) {
    return new BrentSolver(1e-9, 1e-9).solve(100, corner::slope, beforeMm - 10, beforeMm);
  }
}
