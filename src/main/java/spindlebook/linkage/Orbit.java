package spindlebook.linkage;

/**
 * The circle on which an arm carries one of its points, or the cone on which it carries a
 * direction.
 *
 * <pre>  p(φ) = centre + spoke cos φ + ahead sin φ        dp/dφ = ahead cos φ − spoke sin φ  </pre>
 *
 * φ from the design, right-handed about the axis; spoke and ahead square to it and as long as each
 * other. Source: rotation of a vector about an axis (Rodrigues), from memory.
 */
record Orbit(Vec centre, Vec spoke, Vec ahead) {

  /** {@code axis} of unit length. */
  static Orbit of(Vec through, Vec axis, Vec point) {
    Vec arm = point.minus(through);
    Vec centre = through.plus(arm.dot(axis), axis);
    Vec spoke = point.minus(centre);
    return new Orbit(centre, spoke, axis.cross(spoke));
  }

  Vec at(double cos, double sin) {
    return centre.plus(cos, spoke).plus(sin, ahead);
  }

  Vec perRad(double cos, double sin) {
    return ahead.times(cos).plus(-sin, spoke);
  }
}
