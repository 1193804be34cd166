package spindlebook.parts;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/**
 * The circle that the upper joint can go on, before and after its rod ends are turned ({@link
 * #turned}).
 *
 * <p>Axes as {@link Pivots}. Source: derived in docs/methods-alignment.md.
 *
 * <p>Worked example: pivots 350 mm apart, the joint 385 mm from their line and midway, front 1.27
 * mm out and rear 1.27 mm in: radius 384.990 mm, 2.794 mm further back along the line.
 *
 * @param centre foot of the joint on the pivot line
 * @param along unit vector of the pivot line, forward
 */
record UpperArm(Vector3D centre, Vector3D along, double radiusMm) {

  /**
   * The arm after turns of both rod ends, its threads square to the pivot line: the balls stay, the
   * arm shifts and yaws about the middle of the pivot line.
   *
   * <pre>
   *   ball line in the arm: from (−S/2, −mR) to (S/2, −mF);  joint (b, a) seen along it
   *   S' = √(S² + δ²), δ = mF − mR, A = a + (mF + mR)/2
   *   along the line (b S − A δ)/S'        from it  (A S + b δ)/S'
   * </pre>
   *
   * S pivot to pivot, mF, mR the rod ends out by, a the joint from the pivot line, b ahead of its
   * middle, mm.
   */
  static UpperArm turned(Pivots p, double frontOutMm, double rearOutMm) {
    Vector3D line = p.upperFront().subtract(p.upperRear());
    double spread = line.getNorm();
    Vector3D along = line.normalize();
    Vector3D middle = p.upperFront().add(p.upperRear()).scalarMultiply(0.5);
    Vector3D toJoint = p.upper().subtract(middle);
    double axial = toJoint.dotProduct(along);
    double across = toJoint.subtract(axial, along).getNorm() + (frontOutMm + rearOutMm) / 2;
    double out = frontOutMm - rearOutMm;
    double length = Math.hypot(spread, out);
    return new UpperArm(
        middle.add((axial * spread - across * out) / length, along),
        along,
        (across * spread + axial * out) / length);
  }

  /** From one of its pivots to its joint. */
  double legMm(Vector3D pivot) {
    return Math.hypot(radiusMm, pivot.distance(centre));
  }
}
