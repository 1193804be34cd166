package spindlebook.parts;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/**
 * Finds a joint held at known lengths from three others: of the two places, the one on the side of
 * {@code near}.
 *
 * <pre>
 *   ex = unit(b − a)    ey = unit(c − a − i ex), i = ex · (c − a)    ez = ex × ey
 *   x = (ra² − rb² + d²) / 2d    y = (ra² − rc² + i² + j² − 2 i x) / 2j    z = ± √(ra² − x² − y²)
 *   p = a + x ex + y ey + z ez
 * </pre>
 *
 * a, b, c the three joints and ra, rb, rc the lengths from them, mm, in any one set of axes; d = |b
 * − a|, j = ey · (c − a). Lengths that do not reach are an IllegalArgumentException, three joints
 * on one line an ArithmeticException. Source: meeting of three spheres, from memory; derived in
 * docs/methods-alignment.md.
 *
 * <p>Worked example: 3, √12, 3 from (0, 0, 0), (3, 0, 0), (0, 4, 0): (1, 2, 2), or (1, 2, −2) with
 * {@code near} below.
 */
final class ThreeDistances {
  private ThreeDistances() {}

  static Vector3D meet(
      Vector3D a, double ra, Vector3D b, double rb, Vector3D c, double rc, Vector3D near) {
    Vector3D ex = b.subtract(a).normalize();
    Vector3D toC = c.subtract(a);
    double i = ex.dotProduct(toC);
    Vector3D ey = toC.subtract(i, ex).normalize();
    Vector3D ez = Vector3D.crossProduct(ex, ey);
    double d = b.subtract(a).getNorm();
    double j = ey.dotProduct(toC);
    double x = (ra * ra - rb * rb + d * d) / (2 * d);
    double y = (ra * ra - rc * rc + i * i + j * j - 2 * i * x) / (2 * j);
    double z = Math.sqrt(ra * ra - x * x - y * y);
    if (!Double.isFinite(z)) {
      throw new IllegalArgumentException("the corner does not go together");
    }
    Vector3D foot = a.add(x, ex).add(y, ey);
    double side = Math.signum(ez.dotProduct(near.subtract(a)));
    return foot.add(side * z, ez);
  }
}
