package spindlebook.linkage;

import static java.lang.Math.toDegrees;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.ToDoubleBiFunction;

/**
 * One column of a sheet, in millimetres, degrees or degrees for each millimetre, as its name ends;
 * ratios have no unit.
 */
public record Column(String name, ToDoubleBiFunction<Pose, OnGround> of) {

  /** Everything that is computed of a pose, in the order of the sheet. */
  public static final List<Column> ALL = all();

  private static List<Column> all() {
    List<Column> all = new ArrayList<>();
    point(all, "L", (p, g) -> p.l());
    point(all, "U", (p, g) -> p.upper());
    point(all, "TO", (p, g) -> p.tie());
    point(all, "W", (p, g) -> p.hub());
    point(all, "contact", (p, g) -> g.contact());
    point(all, "spin_axis", (p, g) -> p.spin());
    all.addAll(
        List.of(
            new Column("camber_deg", (p, g) -> toDegrees(p.camberRad())),
            new Column("toe_in_deg", (p, g) -> toDegrees(p.toeRad())),
            new Column("steer_iso_deg", (p, g) -> -side(p) * toDegrees(p.toeRad())),
            new Column("inclination_iso_deg", (p, g) -> -side(p) * toDegrees(p.camberRad())),
            new Column("caster_deg", (p, g) -> toDegrees(p.casterRad())),
            new Column("kpi_deg", (p, g) -> toDegrees(p.kpiRad())),
            new Column("scrub_mm", (p, g) -> g.scrubMm()),
            new Column("trail_mm", (p, g) -> g.trailMm()),
            new Column("scrub_body_y_mm", (p, g) -> g.bodyScrubMm()),
            new Column("trail_body_x_mm", (p, g) -> g.bodyTrailMm()),
            new Column("scrub_resultant_mm", (p, g) -> Math.hypot(g.scrubMm(), g.trailMm())),
            new Column("axis_offset_at_wheel_centre_body_y_mm", (p, g) -> g.hubOffsetMm()),
            new Column("trail_at_wheel_centre_body_x_mm", (p, g) -> g.hubTrailMm()),
            new Column("half_track_change_contact_mm", (p, g) -> g.halfTrackMm(p)),
            new Column("half_track_change_wheel_centre_mm", (p, g) -> p.halfTrackMm()),
            new Column("wheelbase_change_wheel_centre_mm", (p, g) -> p.wheelbaseMm()),
            new Column("lower_arm_rot_deg", (p, g) -> toDegrees(p.lowerRad())),
            new Column("upper_arm_rot_deg", (p, g) -> toDegrees(p.upperRad())),
            new Column("shock_length_mm", (p, g) -> p.shockMm()),
            new Column("shock_motion_ratio", (p, g) -> p.shockRatio()),
            new Column("strap_length_mm", (p, g) -> p.strapMm()),
            new Column("strap_ratio", (p, g) -> p.strapRatio()),
            new Column("dcamber_dz_deg_per_mm", (p, g) -> toDegrees(p.camberPerMm())),
            new Column("dtoe_dz_deg_per_mm", (p, g) -> toDegrees(p.toePerMm())),
            new Column("dcaster_dz_deg_per_mm", (p, g) -> toDegrees(p.casterPerMm())),
            new Column("dkpi_dz_deg_per_mm", (p, g) -> toDegrees(p.kpiPerMm())),
            new Column("dhalf_track_wheel_centre_dz", (p, g) -> p.halfTrackPerMm()),
            new Column("artic_lower_uniball_deg", (p, g) -> toDegrees(p.lowerUniballRad())),
            new Column("artic_upper_uniball_deg", (p, g) -> toDegrees(p.upperUniballRad())),
            new Column("artic_tie_outer_deg", (p, g) -> toDegrees(p.outerRodEndRad())),
            new Column("artic_tie_inner_deg", (p, g) -> toDegrees(p.innerRodEndRad())),
            new Column("tie_rod_to_steer_arm_deg", (p, g) -> toDegrees(p.tieToArmRad()))));
    return List.copyOf(all);
  }

  private static void point(List<Column> all, String name, BiFunction<Pose, OnGround, Vec> at) {
    all.add(new Column(name + "_x", (p, g) -> at.apply(p, g).x()));
    all.add(new Column(name + "_y", (p, g) -> at.apply(p, g).y()));
    all.add(new Column(name + "_z", (p, g) -> at.apply(p, g).z()));
  }

  private static int side(Pose pose) {
    return pose.linkage().joints().side();
  }
}
