package spindlebook.linkage;

import java.util.EnumMap;
import java.util.Map;
import spindlebook.entry.Joint;

/**
 * Where everything stands at one lower-arm angle and rack position, and how fast it moves.
 *
 * <pre>  d(anything)/d(height) = d(anything)/dθ / d(height)/dθ     at a fixed rack  </pre>
 *
 * dθ-rates are solved from the velocity equations (no link changes its length), exactly, not by
 * differences. What needs a shock, a strap or hardware that was not given is NaN.
 *
 * @param lowerRad, rackMm what it was asked for
 * @param upperWay, tieWay on which side of their dead centres upper arm and tie rod are, ±1
 * @param room sin² of the angle from the nearer of the two dead centres, 0 to 1
 * @param l lower ball joint; {@code e} from it to the upper one, {@code f} to the tie rod's end,
 *     {@code n} e × f; {@code hub} the wheel centre; {@code per…} each for a radian of θ
 */
public record Pose(
    Linkage linkage,
    double lowerRad,
    int upperWay,
    int tieWay,
    double rackMm,
    double room,
    double cos,
    double sin,
    double upperCos,
    double upperSin,
    Vec l,
    Vec e,
    Vec f,
    Vec n,
    Vec hub,
    Vec perE,
    Vec perF,
    Vec perN,
    Vec perHub)
    implements Found {

  /** Wheel centre above the design one, at this rack position; + bump. */
  public double heightMm() {
    return hub.z() - joints().get(Joint.W).z();
  }

  double heightPerRad() {
    return perHub.z();
  }

  private Joints joints() {
    return linkage.joints();
  }

  private int side() {
    return joints().side();
  }

  Pose turnedTo(double angleRad) {
    return linkage.pose(angleRad, upperWay, tieWay, rackMm);
  }

  /** Across the dead centre at which this pose stands. */
  Pose pastDeadCentre() {
    Vec tangent = linkage.upper.perRad(upperCos, upperSin);
    double upper = e.dot(tangent) / (e.length() * tangent.length());
    Vec rod = tie().minus(inner());
    double tie = n.dot(rod) / (n.length() * rod.length());
    return Math.abs(upper) < Math.abs(tie)
        ? linkage.pose(lowerRad, -upperWay, tieWay, rackMm)
        : linkage.pose(lowerRad, upperWay, -tieWay, rackMm);
  }

  public Vec upper() {
    return l.plus(e);
  }

  /** The tie rod's outer end. */
  public Vec tie() {
    return l.plus(f);
  }

  /** The tie rod's inner end. */
  public Vec inner() {
    Vec design = joints().get(Joint.TI);
    return new Vec(design.x(), design.y() + rackMm, design.z());
  }

  /** Where every point of the corner stands; directions as they point. */
  public Map<Joint, Vec> places() {
    Map<Joint, Vec> places = new EnumMap<>(joints().at());
    places.put(Joint.L, l);
    places.put(Joint.U, upper());
    places.put(Joint.TI, inner());
    places.put(Joint.TO, tie());
    places.put(Joint.W, hub);
    places.computeIfPresent(Joint.SL, (joint, p) -> linkage.shock.at(cos, sin));
    places.computeIfPresent(Joint.KL, (joint, p) -> linkage.strap.at(cos, sin));
    return places;
  }

  /** Of unit length, outboard. */
  public Vec spin() {
    return linkage.spin.at(e, f, n);
  }

  private Vec perSpin() {
    return linkage.spin.at(perE, perF, perN);
  }

  public double upperRad() {
    return Math.atan2(upperSin, upperCos);
  }

  /** −asin s_z of the spin axis s: the wheel's plane to the vertical. */
  public double camberRad() {
    return -Math.asin(spin().z());
  }

  public double camberPerMm() {
    double z = spin().z();
    return -perSpin().z() / Math.sqrt(1 - z * z) / heightPerRad();
  }

  /** atan2(s_x, outboard s_y). */
  public double toeRad() {
    Vec s = spin();
    return Math.atan2(s.x(), side() * s.y());
  }

  public double toePerMm() {
    Vec s = spin();
    return side() * turn(s.y(), s.x(), perSpin().y(), perSpin().x());
  }

  /** atan2 of the kingpin in side view. */
  public double casterRad() {
    return Math.atan2(-e.x(), e.z());
  }

  public double casterPerMm() {
    return -turn(e.z(), e.x(), perE.z(), perE.x());
  }

  /** atan2 of the kingpin in front view, in the body's axes even when steered. */
  public double kpiRad() {
    return Math.atan2(-side() * e.y(), e.z());
  }

  public double kpiPerMm() {
    return -side() * turn(e.z(), e.y(), perE.z(), perE.y());
  }

  /** d atan2(b, a) for each mm of height. */
  private double turn(double a, double b, double perA, double perB) {
    return (perB * a - b * perA) / (a * a + b * b) / heightPerRad();
  }

  /** Outward movement of the wheel centre from the design. */
  public double halfTrackMm() {
    return side() * (hub.y() - joints().get(Joint.W).y());
  }

  public double halfTrackPerMm() {
    return side() * perHub.y() / heightPerRad();
  }

  public double wheelbaseMm() {
    return hub.x() - joints().get(Joint.W).x();
  }

  public double shockMm() {
    return between(Joint.SU, linkage.shock);
  }

  /** Shock lost for each mm of height. */
  public double shockRatio() {
    return ratio(Joint.SU, linkage.shock);
  }

  public double strapMm() {
    return between(Joint.KU, linkage.strap);
  }

  public double strapRatio() {
    return ratio(Joint.KU, linkage.strap);
  }

  private double between(Joint onBody, Orbit onArm) {
    return onArm == null ? Double.NaN : onArm.at(cos, sin).distance(joints().get(onBody));
  }

  private double ratio(Joint onBody, Orbit onArm) {
    if (onArm == null) {
      return Double.NaN;
    }
    Vec along = onArm.at(cos, sin).minus(joints().get(onBody));
    return -along.dot(onArm.perRad(cos, sin)) / along.length() / heightPerRad();
  }

  /** Between the bolt in the knuckle and the housing in the arm, 0 to π. */
  public double lowerUniballRad() {
    return linkage.lowerBolt == null
        ? Double.NaN
        : linkage.lowerBolt.at(e, f, n).angle(linkage.lowerHouse.at(cos, sin));
  }

  public double upperUniballRad() {
    return linkage.upperBolt == null
        ? Double.NaN
        : linkage.upperBolt.at(e, f, n).angle(linkage.upperHouse.at(upperCos, upperSin));
  }

  /** asin(stud · rod): how far the rod leans out of square with its stud, + towards its head. */
  public double outerRodEndRad() {
    return linkage.outerStud == null ? Double.NaN : lean(linkage.outerStud.at(e, f, n));
  }

  public double innerRodEndRad() {
    return joints().has(Joint.STUD_TI) ? lean(joints().get(Joint.STUD_TI)) : Double.NaN;
  }

  private double lean(Vec stud) {
    return Math.asin(stud.unit().dot(tie().minus(inner()).unit()));
  }

  /** Between tie rod and steering arm (square from TO to the kingpin); 0 or π: in one line. */
  public double tieToArmRad() {
    Vec arm = e.times(e.dot(f) / e.dot(e)).minus(f);
    return inner().minus(tie()).angle(arm);
  }
}
