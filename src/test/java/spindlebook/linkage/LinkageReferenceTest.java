package spindlebook.linkage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import spindlebook.entry.Joint;
import spindlebook.linkage.Found.StopsAssembling;

/** linkage.json: every row to the file's own tolerances, its identities, and where it ends. */
class LinkageReferenceTest {
  private static final Linkage G1 = new Linkage(ReferenceLinkage.g1());

  /** Told without its scaling, and nothing that anybody asks for. */
  private static final Set<String> LEFT_OUT = Set.of("velocity_det");

  private static final Set<String> RATIOS = Set.of("shock_motion_ratio", "strap_ratio");

  static Map<String, Double> byName(Pose pose) {
    double[] values = Columns.of(pose);
    Map<String, Double> byName = new HashMap<>();
    for (int i = 0; i < values.length; i++) {
      byName.put(Columns.NAMES.get(i), values[i]);
    }
    return byName;
  }

  private static double tolerance(String name) {
    JsonNode tolerance = ReferenceLinkage.ALL.get("tolerance");
    String kind =
        name.endsWith("_deg_per_mm")
            ? "derivatives_deg_per_mm"
            : name.endsWith("_deg")
                ? "angles_deg"
                : RATIOS.contains(name) ? "ratios" : "positions_mm";
    return tolerance.get(kind).doubleValue();
  }

  private static void agrees(JsonNode expected, Pose pose, String where) {
    Map<String, Double> got = byName(pose);
    expected
        .fields()
        .forEachRemaining(
            field -> {
              String name = field.getKey();
              if (field.getValue().isArray()) {
                for (int i = 0; i < 3; i++) {
                  // A spin axis is a direction of length 1: its parts are angles in radians.
                  double tolerance = name.equals("spin_axis") ? 1e-9 : tolerance(name);
                  assertEquals(
                      field.getValue().get(i).doubleValue(),
                      got.get(name + "_" + "xyz".charAt(i)),
                      tolerance,
                      name + where);
                }
              } else if (!LEFT_OUT.contains(name)) {
                assertEquals(
                    field.getValue().doubleValue(), got.get(name), tolerance(name), name + where);
              }
            });
  }

  @Test
  void every_row_to_its_tolerances_and_each_from_the_design_or_from_its_neighbour() {
    List<JsonNode> rows = ReferenceLinkage.rows(ReferenceLinkage.G1);
    assertEquals(87, rows.size());
    Map<Double, Pose> near = new HashMap<>();
    for (JsonNode row : rows) {
      double height = row.get("dz").doubleValue();
      double rack = row.get("rack").doubleValue();
      String where = " at " + height + ", rack " + rack;
      agrees(row.get("out"), G1.at(height, rack).pose(), where);
      if (near.containsKey(rack)) {
        agrees(row.get("out"), G1.at(height, near.get(rack)).pose(), where + " from its neighbour");
      }
      near.put(rack, G1.at(height, rack).pose());
    }
  }

  @Test
  void parallel_equal_arms_and_a_congruent_tie_rod_only_move_the_knuckle() {
    JsonNode identity = ReferenceLinkage.identity("I1");
    Joints joints = ReferenceLinkage.joints(identity.get("inputs"));
    Linkage linkage = new Linkage(joints);
    Pose design = linkage.design(0).orElseThrow();
    double a = 480;
    double angle0 = Math.toRadians(-5);
    List<JsonNode> rows = ReferenceLinkage.rows(identity);
    assertEquals(9, rows.size());
    for (JsonNode row : rows) {
      double height = row.get("dz").doubleValue();
      Pose pose = linkage.at(height, 0).pose();
      double angle = Math.asin(Math.sin(angle0) + height / a);
      assertEquals(
          a * (Math.cos(angle) - Math.cos(angle0)), pose.halfTrackMm(), 1e-9, "half track");
      assertEquals(angle0 - angle, pose.lowerRad(), 1e-9);
      assertEquals(Math.toRadians(-0.5), pose.camberRad(), 1e-9);
      assertEquals(Math.toRadians(0.2), pose.toeRad(), 1e-9);
      assertEquals(design.casterRad(), pose.casterRad(), 1e-9);
      assertEquals(design.kpiRad(), pose.kpiRad(), 1e-9);
      JsonNode closed = row.get("closed_form");
      assertEquals(closed.get("half_track_change").doubleValue(), pose.halfTrackMm(), 1e-9);
      assertEquals(closed.get("shock_length").doubleValue(), pose.shockMm(), 1e-9);
      assertEquals(closed.get("shock_motion_ratio").doubleValue(), pose.shockRatio(), 1e-9);
    }
  }

  @Test
  void a_tie_rod_shifted_along_the_lower_arms_axis_steers_nothing_and_a_raised_one_does() {
    JsonNode shifted = ReferenceLinkage.identity("I2a");
    Linkage none = new Linkage(ReferenceLinkage.joints(shifted.get("inputs")));
    for (JsonNode row : ReferenceLinkage.rows(shifted)) {
      Pose pose = none.at(row.get("dz").doubleValue(), 0).pose();
      assertEquals(0, Math.toDegrees(pose.toeRad()), 1e-9);
      assertEquals(0, Math.toDegrees(pose.toePerMm()), 1e-12);
      agrees(row.get("model"), pose, " I2a");
    }
    JsonNode raised = ReferenceLinkage.identity("I2b");
    Linkage steers = new Linkage(ReferenceLinkage.joints(raised.get("inputs")));
    for (JsonNode row : ReferenceLinkage.rows(raised)) {
      agrees(row.get("model"), steers.at(row.get("dz").doubleValue(), 0).pose(), " I2b");
    }
  }

  @Test
  void the_arms_of_a_planar_corner_keep_to_freudensteins_equation() {
    JsonNode identity = ReferenceLinkage.identity("I3");
    Joints joints = ReferenceLinkage.joints(identity.get("inputs"));
    Linkage linkage = new Linkage(joints);
    for (JsonNode row : ReferenceLinkage.rows(identity)) {
      Pose pose = linkage.at(row.get("dz").doubleValue(), 0).pose();
      double lower = row.get("theta2_rad").doubleValue();
      double upper = row.get("theta4_rad").doubleValue();
      assertEquals(lower, fromGround(joints, pose.l(), Joint.LF), 1e-10);
      assertEquals(upper, fromGround(joints, pose.upper(), Joint.UF), 1e-10);
      assertEquals(0, freudenstein(joints, pose), 1e-10);
      assertEquals(row.get("camber_deg").doubleValue(), Math.toDegrees(pose.camberRad()), 1e-9);
    }
  }

  /** K1 cos θ4 − K2 cos θ2 + K3 − cos(θ2 − θ4), from memory. */
  private static double freudenstein(Joints joints, Pose pose) {
    double a = inFrontView(joints.get(Joint.L), joints.get(Joint.LF));
    double b = inFrontView(joints.get(Joint.U), joints.get(Joint.L));
    double c = inFrontView(joints.get(Joint.U), joints.get(Joint.UF));
    double d = inFrontView(joints.get(Joint.UF), joints.get(Joint.LF));
    double lower = fromGround(joints, pose.l(), Joint.LF);
    double upper = fromGround(joints, pose.upper(), Joint.UF);
    return d / a * Math.cos(upper)
        - d / c * Math.cos(lower)
        + (a * a - b * b + c * c + d * d) / (2 * a * c)
        - Math.cos(lower - upper);
  }

  private static double inFrontView(Vec one, Vec other) {
    return Math.hypot(one.y() - other.y(), one.z() - other.z());
  }

  /** The arm's angle in front view from the line between the inner pivots, anticlockwise. */
  private static double fromGround(Joints joints, Vec outer, Joint pivot) {
    Vec ground = joints.get(Joint.UF).minus(joints.get(Joint.LF));
    Vec arm = outer.minus(joints.get(pivot));
    return Math.IEEEremainder(
        Math.atan2(arm.z(), arm.y()) - Math.atan2(ground.z(), ground.y()), 2 * Math.PI);
  }

  @Test
  void camber_turns_about_the_instant_centre() {
    JsonNode identity = ReferenceLinkage.identity("I4");
    JsonNode inputs = ReferenceLinkage.identity("I3").get("inputs");
    Pose design = new Linkage(ReferenceLinkage.joints(inputs)).design(0).orElseThrow();
    assertEquals(
        identity.get("dcamber_dz_deg_per_mm").doubleValue(),
        Math.toDegrees(design.camberPerMm()),
        1e-10);
    double lever = 900 - identity.get("IC_yz").get(0).doubleValue();
    assertEquals(-1 / lever, design.camberPerMm(), 1e-12);
    assertEquals(identity.get("wheel_centre_dy_dz").doubleValue(), design.halfTrackPerMm(), 1e-10);
  }

  @Test
  void a_right_corner_is_the_left_ones_mirror() {
    JsonNode identity = ReferenceLinkage.identity("I5");
    Joints right = ReferenceLinkage.joints(identity.get("inputs"));
    for (JsonNode row : ReferenceLinkage.rows(identity)) {
      double height = row.get("dz").doubleValue();
      double rack = row.get("rack_right").doubleValue();
      Pose pose = new Linkage(right).at(height, rack).pose();
      agrees(row.get("right"), pose, " right");
      Map<String, Double> left =
          byName(new Linkage(RandomLinkage.mirrored(right)).at(height, -rack).pose());
      byName(pose)
          .forEach(
              (name, value) -> {
                boolean turns =
                    Set.of("steer_iso_deg", "inclination_iso_deg").contains(name)
                        || name.endsWith("_y");
                assertEquals(turns ? -left.get(name) : left.get(name), value, 1e-9, name);
              });
    }
  }

  @Test
  void rates_are_the_references_and_not_its_differences() {
    for (JsonNode row : ReferenceLinkage.rows(ReferenceLinkage.identity("I7"))) {
      Pose pose = G1.at(row.get("dz").doubleValue(), 0).pose();
      assertEquals(row.get("shock_MR_exact").doubleValue(), pose.shockRatio(), 1e-11);
      assertEquals(row.get("dtoe_exact").doubleValue(), Math.toDegrees(pose.toePerMm()), 1e-12);
      assertEquals(
          row.get("dcamber_exact").doubleValue(), Math.toDegrees(pose.camberPerMm()), 1e-12);
    }
  }

  @Test
  void it_goes_on_past_the_arms_dead_centre_and_refuses_where_the_wheel_itself_turns_back() {
    List<JsonNode> rows = ReferenceLinkage.rows(ReferenceLinkage.ALL.get("assembly_limits"));
    assertEquals(3, rows.size());
    for (JsonNode row : rows) {
      double rack = row.get("rack").doubleValue();
      double end = row.get("dz_singular_A").doubleValue();
      Found asked = G1.at(end - 0.5, rack);
      StopsAssembling refused = assertInstanceOf(StopsAssembling.class, asked);
      assertEquals(end, refused.heightMm(), 0.01);
      assertTrue(refused.words().contains("comes no lower"), refused.words());
      assertEquals(end + 0.05, G1.at(end + 0.05, rack).pose().heightMm(), 1e-8);
      JsonNode arm = row.get("dz_where_lower_arm_stops_A");
      if (!arm.isNull()) {
        double stops = arm.doubleValue();
        double before = G1.at(stops + 1, rack).pose().lowerRad();
        double at = G1.at(stops, rack).pose().lowerRad();
        Pose beyond = G1.at(stops - 1, rack).pose();
        double after = beyond.lowerRad();
        double back = G1.at(0, beyond).pose().toeRad();
        assertEquals(G1.at(0, rack).pose().toeRad(), back, 1e-9, "and back the same way");
        assertTrue(at > before && at > after, "the arm goes back from " + stops);
      }
    }
    for (double rack : new double[] {-60, 0, 60}) {
      StopsAssembling bump = assertInstanceOf(StopsAssembling.class, G1.at(2000, rack));
      assertTrue(bump.heightMm() > 420, bump.words());
      assertTrue(bump.words().contains("comes no higher"), bump.words());
    }
    assertEquals(
        "It stops assembling at −376.90 mm: at rack 0.0 mm the wheel comes no lower.",
        assertInstanceOf(StopsAssembling.class, G1.at(-400, 0)).words());
    assertEquals(
        "At rack 900.0 mm it does not assemble here: the tie rod does not reach.",
        assertInstanceOf(StopsAssembling.class, G1.at(0, 900)).words());
  }

  /** As SteeringAxis of the alignment has them. */
  @Test
  void the_kingpin_leans_as_its_joints_say() {
    Pose design = G1.design(0).orElseThrow();
    assertEquals(5.7106, Math.toDegrees(design.casterRad()), 5e-5);
    assertEquals(8.5308, Math.toDegrees(design.kpiRad()), 5e-5);
  }

  @Test
  void steered_at_one_jack_setting_the_lower_arm_stays() {
    Pose straight = G1.at(-140, 0).pose();
    Pose left = G1.steered(straight, 60).pose();
    assertEquals(straight.lowerRad(), left.lowerRad());
    assertTrue(Math.abs(left.heightMm() + 140) > 0.5, "its wheel rises or falls");
    Pose again = G1.at(left.heightMm(), 60).pose();
    assertEquals(left.toeRad(), again.toeRad(), 1e-10);
  }
}
