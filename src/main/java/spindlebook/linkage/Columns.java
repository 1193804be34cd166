package spindlebook.linkage;

import static java.lang.Math.toDegrees;

import java.util.List;

/**
 * What is computed of a pose, as a sheet has it: in millimetres, degrees or degrees for each
 * millimetre, as a column's name ends; ratios have no unit. What was not given is NaN.
 */
public final class Columns {
  /** In the order of {@link #of}. */
  public static final List<String> NAMES =
      List.of(
          """
          L_x L_y L_z U_x U_y U_z TO_x TO_y TO_z W_x W_y W_z
          contact_x contact_y contact_z spin_axis_x spin_axis_y spin_axis_z
          camber_deg toe_in_deg steer_iso_deg inclination_iso_deg caster_deg kpi_deg
          scrub_mm trail_mm scrub_body_y_mm trail_body_x_mm scrub_resultant_mm
          axis_offset_at_wheel_centre_body_y_mm trail_at_wheel_centre_body_x_mm
          half_track_change_contact_mm half_track_change_wheel_centre_mm
          wheelbase_change_wheel_centre_mm
          lower_arm_rot_deg upper_arm_rot_deg
          shock_length_mm shock_motion_ratio strap_length_mm strap_ratio
          dcamber_dz_deg_per_mm dtoe_dz_deg_per_mm dcaster_dz_deg_per_mm dkpi_dz_deg_per_mm
          dhalf_track_wheel_centre_dz
          artic_lower_uniball_deg artic_upper_uniball_deg
          artic_tie_outer_deg artic_tie_inner_deg tie_rod_to_steer_arm_deg
          """
              .split("\\s+"));

  private Columns() {}

  public static double[] of(Pose p) {
    OnGround g = OnGround.of(p);
    int side = p.linkage().joints().side();
    Vec l = p.l();
    Vec u = p.upper();
    Vec t = p.tie();
    Vec w = p.hub();
    Vec c = g.contact();
    Vec s = p.spin();
    return new double[] {
      l.x(), l.y(), l.z(),
      u.x(), u.y(), u.z(),
      t.x(), t.y(), t.z(),
      w.x(), w.y(), w.z(),
      c.x(), c.y(), c.z(),
      s.x(), s.y(), s.z(),
      toDegrees(p.camberRad()), toDegrees(p.toeRad()), toDegrees(-side * p.toeRad()),
      toDegrees(-side * p.camberRad()), toDegrees(p.casterRad()), toDegrees(p.kpiRad()),
      g.scrubMm(), g.trailMm(), g.bodyScrubMm(),
      g.bodyTrailMm(), g.resultantMm(), g.hubOffsetMm(),
      g.hubTrailMm(), g.halfTrackMm(p), p.halfTrackMm(),
      p.wheelbaseMm(), toDegrees(p.lowerRad()), toDegrees(p.upperRad()),
      p.shockMm(), p.shockRatio(), p.strapMm(),
      p.strapRatio(), toDegrees(p.camberPerMm()), toDegrees(p.toePerMm()),
      toDegrees(p.casterPerMm()), toDegrees(p.kpiPerMm()), p.halfTrackPerMm(),
      toDegrees(p.lowerUniballRad()), toDegrees(p.upperUniballRad()), toDegrees(p.outerRodEndRad()),
      toDegrees(p.innerRodEndRad()), toDegrees(p.tieToArmRad())
    };
  }
}
