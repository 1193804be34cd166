package spindlebook.linkage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import spindlebook.entry.Joint;
import spindlebook.linkage.Change.Longer;
import spindlebook.linkage.Change.Moved;
import spindlebook.linkage.Change.Rod;
import spindlebook.linkage.Coordinate.Along;
import spindlebook.linkage.Coordinate.Axis;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/** bump_steer.json's exact corrections and ranges, and turns there and back. */
class WorkBackTest {
  private static final Joints G1 = ReferenceLinkage.g1();
  private static final Coordinate OUTER = new Along(Joint.TO, Axis.Z);
  private static final Coordinate INNER = new Along(Joint.TI, Axis.Z);

  private static List<JsonNode> cases() {
    List<JsonNode> cases = ReferenceLinkage.rows("bump_steer.json", "cases");
    assertEquals(6, cases.size());
    return cases;
  }

  /** Toe is set again in each. */
  private static Joints faulty(JsonNode row) {
    return G1.with(Joint.TO, ReferenceLinkage.point(row.get("TO")))
        .with(Joint.TI, ReferenceLinkage.point(row.get("TI")));
  }

  @Test
  void the_shim_that_zeroes_bump_steer_is_the_references() {
    for (JsonNode row : cases()) {
      Joints joints = faulty(row);
      assertEquals(
          row.get("slope_at_ride_exact_deg_per_mm").doubleValue(),
          Math.toDegrees(new Linkage(joints).design(0).orElseThrow().toePerMm()),
          1e-12);
      JsonNode fix = row.get("exact_fix_outer_vertical");
      double up = WorkBack.noBumpSteer(joints, OUTER, 25).orElseThrow();
      assertEquals(fix.get("outer_up_mm").doubleValue(), up, 1e-5);
      Joints shimmed = OUTER.moved(joints, up);
      assertEquals(
          fix.get("new_tie_rod_length").doubleValue(), Rod.TIE_ROD.lengthMm(shimmed), 1e-5);
      assertEquals(
          fix.get("p2p_120_after_deg").doubleValue(),
          Math.toDegrees(WorkBack.bumpSteerRad(shimmed, -120, 120)),
          1e-7);
      assertEquals(
          row.get("exact_fix_inner_vertical_mm").doubleValue(),
          WorkBack.noBumpSteer(joints, INNER, 25).orElseThrow(),
          1e-5);
    }
  }

  @Test
  void none_is_found_where_it_is_farther_than_asked() {
    Joints joints = OUTER.moved(G1, 12);
    assertEquals(OptionalDouble.empty(), WorkBack.noBumpSteer(joints, OUTER, 6));
  }

  @Test
  void ranges_and_where_they_turn_are_the_references() {
    for (JsonNode row : cases()) {
      Linkage linkage = new Linkage(faulty(row));
      for (JsonNode over : ReferenceLinkage.each(row.get("p2p_continuous")).toList()) {
        double from = over.get("window").get(0).doubleValue();
        double to = over.get("window").get(1).doubleValue();
        Span span = Span.of(linkage, Quantity.TOE, from, to, 0);
        double back = Span.of(linkage, Quantity.TOE, to, from, 0).range();
        assertEquals(span.range(), back, 1e-9);
        assertEquals(over.get("p2p_deg").doubleValue(), Math.toDegrees(span.range()), 1e-7);
        assertEquals(over.get("max_deg").doubleValue(), Math.toDegrees(span.most()), 1e-7);
        assertEquals(over.get("z_at_max").doubleValue(), span.mostAtMm(), 1e-4);
        assertEquals(over.get("min_deg").doubleValue(), Math.toDegrees(span.least()), 1e-7);
        assertEquals(over.get("z_at_min").doubleValue(), span.leastAtMm(), 1e-4);
      }
    }
  }

  @Test
  void the_least_over_the_travel_is_less_than_beside_it_and_than_with_none_at_ride() {
    for (JsonNode row : cases()) {
      Joints joints = faulty(row);
      double by = WorkBack.leastBumpSteer(joints, OUTER, -120, 150, 25);
      double least = WorkBack.bumpSteerRad(OUTER.moved(joints, by), -120, 150);
      for (double beside : new double[] {-3, -0.5, -0.01, 0.01, 0.5, 3}) {
        double other = WorkBack.bumpSteerRad(OUTER.moved(joints, by + beside), -120, 150);
        assertTrue(least < other, "by " + by + ", beside " + beside);
      }
      double atRide = WorkBack.noBumpSteer(joints, OUTER, 25).orElseThrow();
      assertTrue(least <= WorkBack.bumpSteerRad(OUTER.moved(joints, atRide), -120, 150));
    }
  }

  private static final List<Rod> UPPER = List.of(Rod.UPPER_FRONT, Rod.UPPER_REAR, Rod.TIE_ROD);
  private static final List<Rod> LOWER = List.of(Rod.LOWER_FRONT, Rod.LOWER_REAR, Rod.TIE_ROD);

  private static Map<Quantity, Double> wanted(double camber, double caster) {
    return Map.of(Quantity.CAMBER, camber, Quantity.CASTER, caster, Quantity.TOE, G1.toeRad());
  }

  @Test
  void lengths_for_camber_and_caster_with_toe_set_again_bring_them_about() {
    double caster = new Linkage(G1).design(0).orElseThrow().casterRad();
    for (List<Rod> rods : List.of(UPPER, LOWER)) {
      for (double camberDeg : new double[] {-1.5, 0, 0.5}) {
        for (double moreCasterDeg : new double[] {-1, 0, 1}) {
          double camber = Math.toRadians(camberDeg);
          double more = caster + Math.toRadians(moreCasterDeg);
          List<Longer> lengths = WorkBack.lengthsFor(G1, rods, wanted(camber, more));
          Pose pose = new Linkage(Reassembly.of(G1, List.copyOf(lengths))).design(0).orElseThrow();
          assertEquals(camber, pose.camberRad(), 1e-10);
          assertEquals(more, pose.casterRad(), 1e-10);
          assertEquals(G1.toeRad(), pose.toeRad(), 1e-10);
        }
      }
    }
    for (Longer none : WorkBack.lengthsFor(G1, UPPER, wanted(G1.camberRad(), caster))) {
      assertEquals(0, none.byMm(), 1e-6);
    }
  }

  /** A metre up the tie rod is in one line with its arm, or the travel is not reached. */
  @Test
  void the_search_goes_round_what_makes_no_corner() {
    assertEquals(-0.9665, WorkBack.noBumpSteer(G1, OUTER, 1000).orElseThrow(), 5e-5);
    double by = WorkBack.leastBumpSteer(G1, OUTER, -280, 280, 500);
    assertTrue(Math.abs(by) < 25, "by " + by);
    assertThrows(LinkageRefused.class, () -> WorkBack.leastBumpSteer(G1, OUTER, -500, 280, 25));
  }

  /**
   * With TO 150 mm forward the rod is in line with its arm: the slope changes sign, and is not 0.
   */
  @Test
  void where_the_rod_and_its_arm_come_into_line_no_shim_is_found() {
    Coordinate forward = new Coordinate.Along(Joint.TO, Coordinate.Axis.X);
    WorkBack.noBumpSteer(G1, forward, 300)
        .ifPresent(
            by ->
                assertEquals(
                    0,
                    new Linkage(forward.moved(G1, by)).design(0).orElseThrow().toePerMm(),
                    1e-9,
                    "by " + by));
  }

  @Test
  void what_cannot_be_brought_about_is_refused() {
    assertThrows(
        LinkageRefused.class, () -> WorkBack.lengthsFor(G1, UPPER, wanted(Math.toRadians(89), 1)));
  }

  /** linkage.json's shock lengths and motion ratios, of two other methods, at rack 0. */
  @Test
  void a_spacer_on_the_shock_is_the_references_change_of_shock_length() {
    Linkage linkage = new Linkage(G1);
    Map<Double, JsonNode> at = new HashMap<>();
    ReferenceLinkage.rows(ReferenceLinkage.G1).stream()
        .filter(r -> r.get("rack").doubleValue() == 0 && r.get("feasible").booleanValue())
        .forEach(r -> at.put(r.get("dz").doubleValue(), r.get("out")));
    for (double[] solidWanted : new double[][] {{160, 100}, {100, 160}, {240, -20}}) {
      JsonNode today = at.get(solidWanted[0]);
      JsonNode then = at.get(solidWanted[1]);
      Figure solid = Figure.of(solidWanted[0], new Source("solid", SourceKind.PLACING), 0.8);
      Figure wanted = Figure.of(solidWanted[1], new Source("ride", SourceKind.PLACING), 0.5);
      Figure thicker = WorkBack.spacerOnShock(linkage, List.of(), solid, wanted).orElseThrow();
      assertEquals(
          then.get("shock_length_mm").doubleValue() - today.get("shock_length_mm").doubleValue(),
          thicker.value(),
          1e-6);
      double bySolid = 0.8 * today.get("shock_motion_ratio").doubleValue();
      double byRide = 0.5 * then.get("shock_motion_ratio").doubleValue();
      assertEquals(Math.hypot(bySolid, byRide), thicker.u(), 1e-8);
    }
    Figure worked =
        WorkBack.spacerOnShock(linkage, List.of(), Figure.exact(160), Figure.exact(100))
            .orElseThrow();
    assertEquals(40.542, worked.value(), 5e-4);
    assertEquals(0, worked.u());
  }

  /**
   * The same mark under both heights, and a mount that is 2 mm off, by the reference's own sums.
   */
  @Test
  void what_both_places_share_cancels_in_the_spacer_and_a_mount_counts_by_the_difference() {
    Linkage linkage = new Linkage(G1);
    Source mark = new Source("mark", SourceKind.PLACING);
    Figure solid = Figure.of(160, mark, 1);
    Figure wanted = Figure.of(100, mark, 1);
    double less = 0.684746982872882 - 0.666916131069181;
    assertEquals(
        less, WorkBack.spacerOnShock(linkage, List.of(), solid, wanted).orElseThrow().u(), 1e-8);

    Coordinate mount = new Along(Joint.SU, Axis.Y);
    Figure at = Figure.of(mount.of(G1), new Source("SU", SourceKind.PLACING), 2);
    Figure thicker =
        WorkBack.spacerOnShock(
                linkage,
                List.of(new CoordinateFigure(mount, at)),
                Figure.exact(160),
                Figure.exact(100))
            .orElseThrow();
    // dL/dSU is the unit vector from SL to SU: by hand from where SL stands at either height.
    double slope = across(linkage, 100) - across(linkage, 160);
    assertEquals(2 * Math.abs(slope), thicker.u(), 1e-4);
    assertTrue(
        WorkBack.spacerOnShock(linkage, List.of(), Figure.exact(160), Figure.exact(-500))
            .isEmpty());
  }

  private static double across(Linkage linkage, double heightMm) {
    Vec su = G1.get(Joint.SU);
    Vec sl = linkage.at(heightMm, 0).pose().places().get(Joint.SL);
    return (su.y() - sl.y()) / su.distance(sl);
  }

  /** A mount of the upper arm 6 mm up: today and tried, at the same wheel heights. */
  @Test
  void tried_first_stands_beside_today() {
    Linkage today = new Linkage(G1);
    Linkage tried = new Linkage(Reassembly.of(G1, List.of(new Moved(Joint.UF, new Vec(0, 0, 6)))));
    for (double height : new double[] {-150, 0, 150}) {
      assertEquals(405 + height, ModelFigure.value(today, p -> p.hub().z(), height, 0), 1e-9);
      assertEquals(405 + height, ModelFigure.value(tried, p -> p.hub().z(), height, 0), 1e-9);
      double caster = ModelFigure.value(tried, Pose::casterRad, height, 0);
      double was = ModelFigure.value(today, Pose::casterRad, height, 0);
      assertTrue(Math.abs(Math.toDegrees(caster - was)) > 0.01, "" + caster);
    }
    double below = ModelFigure.value(today, Pose::casterRad, -390, 0);
    assertTrue(Double.isNaN(below), "below where it assembles");
  }
}
