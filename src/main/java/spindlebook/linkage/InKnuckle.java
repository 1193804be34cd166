package spindlebook.linkage;

/**
 * A direction fixed in the knuckle, told by what the knuckle's three joints span: a e + b f + c
 * e×f, e from L to U, f from L to TO. What the joints do, it does; no turned axes are needed.
 */
record InKnuckle(double a, double b, double c) {

  static InKnuckle of(Vec e, Vec f, Vec direction) {
    Vec n = e.cross(f);
    double volume = n.dot(n);
    return new InKnuckle(
        direction.dot(f.cross(n)) / volume,
        direction.dot(n.cross(e)) / volume,
        direction.dot(n) / volume);
  }

  Vec at(Vec e, Vec f, Vec n) {
    return e.times(a).plus(b, f).plus(c, n);
  }
}
