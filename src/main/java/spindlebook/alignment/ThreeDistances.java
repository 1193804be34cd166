package spindlebook.alignment;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/**
 * The point at given distances from three others: of the two, the one on the wanted side.
 *
 * <p>Source: meeting of three spheres, derived in docs/methods-alignment.md.
 * IllegalArgumentException where they do not meet.
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
    if (Double.isNaN(z)) {
      throw new IllegalArgumentException("the corner does not go together");
    }
    Vector3D foot = a.add(x, ex).add(y, ey);
    double side = Math.signum(ez.dotProduct(near.subtract(a)));
    return foot.add(side * z, ez);
  }
}
