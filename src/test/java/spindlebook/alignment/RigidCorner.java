package spindlebook.alignment;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import spindlebook.parts.Pivots;

/**
 * A rigid double A-arm with tie rod, solved without any of the program's code: six unknowns of the
 * knuckle's pose, six constraints, Newton. As on the left: x forward, y outboard, z up, mm.
 *
 * @param rodMm tie rod; what {@link #of} gives leaves toe at ride as it is
 */
record RigidCorner(
    Vector3D lowerFront,
    Vector3D lowerRear,
    Vector3D lower,
    Vector3D upperFront,
    Vector3D upperRear,
    Vector3D upper,
    Vector3D tieInner,
    Vector3D tieOuter,
    Vector3D centre,
    double camberRad,
    double toeRad,
    double rodMm) {
  private static final double DIFFERENCE_MM = 2;

  static RigidCorner of(Pivots p) {
    return new RigidCorner(
        p.lowerFront(),
        p.lowerRear(),
        p.lower(),
        p.upperFront(),
        p.upperRear(),
        p.upper(),
        p.tieInner(),
        p.tieOuter(),
        p.wheelCentre(),
        p.camberRad(),
        p.toeRad(),
        p.tieOuter().distance(p.tieInner()));
  }

  /** Other tie-rod ends, the rod set so that toe at ride stays. */
  RigidCorner withRod(Vector3D inner, Vector3D outer) {
    return withRod(inner, outer, inner.distance(outer));
  }

  RigidCorner withRod(Vector3D inner, Vector3D outer, double rodMm) {
    return new RigidCorner(
        lowerFront,
        lowerRear,
        lower,
        upperFront,
        upperRear,
        upper,
        inner,
        outer,
        centre,
        camberRad,
        toeRad,
        rodMm);
  }

  RigidCorner outerUp(double mm) {
    return withRod(tieInner, tieOuter.add(mm, Vector3D.PLUS_K));
  }

  /** The rod longer along its own line: the inner end further from the outer. */
  RigidCorner rodLonger(double mm) {
    Vector3D inward = tieInner.subtract(tieOuter).normalize();
    return withRod(tieInner.add(mm, inward), tieOuter);
  }

  /** Toe in rad, + in, with the wheel centre so far above ride. */
  double toe(double riseMm) {
    double[] pose = new double[6];
    int steps = Math.max(1, (int) Math.ceil(Math.abs(riseMm) / 40));
    for (int i = 1; i <= steps; i++) {
      solve(pose, riseMm * i / steps);
    }
    Vector3D axis =
        turned(
            pose,
            new Vector3D(
                Math.sin(toeRad) * Math.cos(camberRad),
                Math.cos(toeRad) * Math.cos(camberRad),
                -Math.sin(camberRad)));
    return Math.atan2(axis.getX(), axis.getY());
  }

  double slope(double at) {
    double h = DIFFERENCE_MM;
    return (toe(at - 2 * h) - 8 * toe(at - h) + 8 * toe(at + h) - toe(at + 2 * h)) / (12 * h);
  }

  double curvature(double at) {
    double h = DIFFERENCE_MM;
    return (-toe(at - 2 * h) + 16 * toe(at - h) - 30 * toe(at) + 16 * toe(at + h) - toe(at + 2 * h))
        / (12 * h * h);
  }

  /** The tie-rod ends moved (outer up, inner along the rod) until slope and bend at ride are 0. */
  RigidCorner neutral() {
    RigidCorner at = this;
    for (int i = 0; i < 12; i++) {
      double s = at.slope(0);
      double c = at.curvature(0);
      RigidCorner up = at.outerUp(1);
      RigidCorner longer = at.rodLonger(1);
      double su = up.slope(0) - s;
      double cu = up.curvature(0) - c;
      double sl = longer.slope(0) - s;
      double cl = longer.curvature(0) - c;
      double det = su * cl - sl * cu;
      double upMm = -(s * cl - c * sl) / det;
      double longerMm = -(su * c - cu * s) / det;
      at = at.outerUp(bounded(upMm)).rodLonger(bounded(longerMm));
      if (Math.abs(upMm) + Math.abs(longerMm) < 1e-3) {
        return at;
      }
    }
    throw new IllegalStateException("no neutral rod");
  }

  private static double bounded(double mm) {
    return Math.max(-60, Math.min(60, mm));
  }

  private void solve(double[] pose, double riseMm) {
    for (int i = 0; i < 40; i++) {
      double[] f = remainders(pose, riseMm);
      double[][] matrix = new double[6][7];
      for (int j = 0; j < 6; j++) {
        double step = j < 3 ? 1e-6 : 1e-4;
        double there = pose[j];
        pose[j] = there + step;
        double[] up = remainders(pose, riseMm);
        pose[j] = there - step;
        double[] down = remainders(pose, riseMm);
        pose[j] = there;
        for (int k = 0; k < 6; k++) {
          matrix[k][j] = (up[k] - down[k]) / (2 * step);
          matrix[k][6] = -f[k];
        }
      }
      double[] change = eliminated(matrix);
      double size = 0;
      for (int j = 0; j < 6; j++) {
        pose[j] += change[j];
        size += Math.abs(change[j]) * (j < 3 ? 100 : 1);
      }
      if (size < 1e-11) {
        return;
      }
    }
    double left = 0;
    for (double r : remainders(pose, riseMm)) {
      left += Math.abs(r);
    }
    if (!(left < 1e-9)) {
      throw new IllegalStateException("the corner does not assemble at " + riseMm);
    }
  }

  private double[] remainders(double[] pose, double riseMm) {
    Vector3D l = placed(pose, lower);
    Vector3D u = placed(pose, upper);
    return new double[] {
      l.distance(lowerFront) - lower.distance(lowerFront),
      l.distance(lowerRear) - lower.distance(lowerRear),
      u.distance(upperFront) - upper.distance(upperFront),
      u.distance(upperRear) - upper.distance(upperRear),
      placed(pose, tieOuter).distance(tieInner) - rodMm,
      placed(pose, centre).getZ() - centre.getZ() - riseMm
    };
  }

  private Vector3D placed(double[] pose, Vector3D point) {
    return centre
        .add(new Vector3D(pose[3], pose[4], pose[5]))
        .add(turned(pose, point.subtract(centre)));
  }

  private static Vector3D turned(double[] pose, Vector3D v) {
    Vector3D w = new Vector3D(pose[0], pose[1], pose[2]);
    double angle = w.getNorm();
    if (angle < 1e-12) {
      return v.add(w.crossProduct(v));
    }
    Vector3D k = w.scalarMultiply(1 / angle);
    return new Vector3D(
        Math.cos(angle),
        v,
        Math.sin(angle),
        k.crossProduct(v),
        k.dotProduct(v) * (1 - Math.cos(angle)),
        k);
  }

  private static double[] eliminated(double[][] m) {
    int n = m.length;
    for (int c = 0; c < n; c++) {
      int best = c;
      for (int r = c + 1; r < n; r++) {
        best = Math.abs(m[r][c]) > Math.abs(m[best][c]) ? r : best;
      }
      double[] swap = m[c];
      m[c] = m[best];
      m[best] = swap;
      for (int r = c + 1; r < n; r++) {
        double factor = m[r][c] / m[c][c];
        for (int k = c; k <= n; k++) {
          m[r][k] -= factor * m[c][k];
        }
      }
    }
    double[] x = new double[n];
    for (int r = n - 1; r >= 0; r--) {
      double sum = m[r][n];
      for (int k = r + 1; k < n; k++) {
        sum -= m[r][k] * x[k];
      }
      x[r] = sum / m[r][r];
    }
    return x;
  }
}
