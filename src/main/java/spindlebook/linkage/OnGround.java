package spindlebook.linkage;

/**
 * Where wheel and kingpin meet the ground.
 *
 * <pre>
 *   u = unit(z − (z·s) s)     contact C = hub − R u     G, A the kingpin at C's and at the hub's height
 *   scrub = (C − G) · unit(s_x, s_y, 0)        trail = −(C − G) · forward, square to that
 * </pre>
 *
 * As ScrubTrail of the alignment, in whole vectors without doubt: the tests hold them together.
 *
 * @param bodyScrubMm, bodyTrailMm the same along the car's axes
 * @param hubOffsetMm, hubTrailMm how far the hub lies outboard of and behind the kingpin at its
 *     height
 */
public record OnGround(
    Vec contact,
    double scrubMm,
    double trailMm,
    double bodyScrubMm,
    double bodyTrailMm,
    double hubOffsetMm,
    double hubTrailMm) {

  public static OnGround of(Pose pose) {
    Joints joints = pose.linkage().joints();
    int side = joints.side();
    Vec s = pose.spin();
    double flat = Math.sqrt(s.x() * s.x() + s.y() * s.y());
    Vec up = new Vec(-s.z() * s.x(), -s.z() * s.y(), flat * flat).times(1 / flat);
    Vec contact = pose.hub().plus(-joints.radiusMm(), up);
    Vec fromAxis = contact.minus(onKingpin(pose, contact.z()));
    Vec hub = pose.hub().minus(onKingpin(pose, pose.hub().z()));
    return new OnGround(
        contact,
        (fromAxis.x() * s.x() + fromAxis.y() * s.y()) / flat,
        -side * (fromAxis.x() * s.y() - fromAxis.y() * s.x()) / flat,
        side * fromAxis.y(),
        -fromAxis.x(),
        side * hub.y(),
        -hub.x());
  }

  private static Vec onKingpin(Pose pose, double z) {
    return pose.l().plus((z - pose.l().z()) / pose.e().z(), pose.e());
  }

  public double resultantMm() {
    return Math.sqrt(scrubMm * scrubMm + trailMm * trailMm);
  }

  /** Outward movement of the contact centre from the design. */
  public double halfTrackMm(Pose pose) {
    Linkage linkage = pose.linkage();
    return linkage.joints().side() * (contact.y() - linkage.design.contact.y());
  }
}
