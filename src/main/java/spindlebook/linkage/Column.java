package spindlebook.linkage;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.ToDoubleBiFunction;
import java.util.function.ToDoubleFunction;

/**
 * One column of a sheet, in millimetres, degrees or degrees for each millimetre, as its name ends;
 * ratios have no unit.
 */
public record Column(String name, ToDoubleBiFunction<Pose, OnGround> of) {

  /** Everything that is computed of a pose, in the order of the sheet. */
  public static final List<Column> ALL = all();

  private static List<Column> all() {
    List<Column> all = new ArrayList<>();
    point(all, "L", (pose, ground) -> pose.l());
    point(all, "U", (pose, ground) -> pose.upper());
    point(all, "TO", (pose, ground) -> pose.tie());
    point(all, "W", (pose, ground) -> pose.hub());
    point(all, "contact", (pose, ground) -> ground.contact());
    point(all, "spin_axis", (pose, ground) -> pose.spin());
    degrees(all, "camber_deg", Pose::camberRad);
    degrees(all, "toe_in_deg", Pose::toeRad);
    degrees(all, "steer_iso_deg", pose -> -side(pose) * pose.toeRad());
    degrees(all, "inclination_iso_deg", pose -> -side(pose) * pose.camberRad());
    degrees(all, "caster_deg", Pose::casterRad);
    degrees(all, "kpi_deg", Pose::kpiRad);
    ground(all, "scrub_mm", OnGround::scrubMm);
    ground(all, "trail_mm", OnGround::trailMm);
    ground(all, "scrub_body_y_mm", OnGround::bodyScrubMm);
    ground(all, "trail_body_x_mm", OnGround::bodyTrailMm);
    ground(all, "scrub_resultant_mm", g -> Math.hypot(g.scrubMm(), g.trailMm()));
    ground(all, "axis_offset_at_wheel_centre_body_y_mm", OnGround::hubOffsetMm);
    ground(all, "trail_at_wheel_centre_body_x_mm", OnGround::hubTrailMm);
    all.add(new Column("half_track_change_contact_mm", (pose, g) -> g.halfTrackMm(pose)));
    plain(all, "half_track_change_wheel_centre_mm", Pose::halfTrackMm);
    plain(all, "wheelbase_change_wheel_centre_mm", Pose::wheelbaseMm);
    degrees(all, "lower_arm_rot_deg", Pose::lowerRad);
    degrees(all, "upper_arm_rot_deg", Pose::upperRad);
    plain(all, "shock_length_mm", Pose::shockMm);
    plain(all, "shock_motion_ratio", Pose::shockRatio);
    plain(all, "strap_length_mm", Pose::strapMm);
    plain(all, "strap_ratio", Pose::strapRatio);
    degrees(all, "dcamber_dz_deg_per_mm", Pose::camberPerMm);
    degrees(all, "dtoe_dz_deg_per_mm", Pose::toePerMm);
    degrees(all, "dcaster_dz_deg_per_mm", Pose::casterPerMm);
    degrees(all, "dkpi_dz_deg_per_mm", Pose::kpiPerMm);
    plain(all, "dhalf_track_wheel_centre_dz", Pose::halfTrackPerMm);
    degrees(all, "artic_lower_uniball_deg", Pose::lowerUniballRad);
    degrees(all, "artic_upper_uniball_deg", Pose::upperUniballRad);
    degrees(all, "artic_tie_outer_deg", Pose::outerRodEndRad);
    degrees(all, "artic_tie_inner_deg", Pose::innerRodEndRad);
    degrees(all, "tie_rod_to_steer_arm_deg", Pose::tieToArmRad);
    return List.copyOf(all);
  }

  private static void point(List<Column> all, String name, BiFunction<Pose, OnGround, Vec> at) {
    all.add(new Column(name + "_x", (pose, ground) -> at.apply(pose, ground).x()));
    all.add(new Column(name + "_y", (pose, ground) -> at.apply(pose, ground).y()));
    all.add(new Column(name + "_z", (pose, ground) -> at.apply(pose, ground).z()));
  }

  private static void plain(List<Column> all, String name, ToDoubleFunction<Pose> of) {
    all.add(new Column(name, (pose, ground) -> of.applyAsDouble(pose)));
  }

  private static void degrees(List<Column> all, String name, ToDoubleFunction<Pose> rad) {
    plain(all, name, pose -> Math.toDegrees(rad.applyAsDouble(pose)));
  }

  private static void ground(List<Column> all, String name, ToDoubleFunction<OnGround> of) {
    all.add(new Column(name, (pose, ground) -> of.applyAsDouble(ground)));
  }

  private static int side(Pose pose) {
    return pose.linkage().joints().side();
  }
}
