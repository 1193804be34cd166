package spindlebook.linkage;

import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.util.Pair;
import spindlebook.entry.Joint;

/**
 * A pose the other way: the nine coordinates of L, U and TO from eight lengths and the wheel's
 * height, by Levenberg and Marquardt's method with the exact Jacobian.
 */
final class NineEquations {
  private static final LevenbergMarquardtOptimizer MARQUARDT =
      new LevenbergMarquardtOptimizer()
          .withCostRelativeTolerance(1e-14)
          .withParameterRelativeTolerance(1e-14)
          .withOrthoTolerance(1e-14);

  private final Linkage linkage;
  private final Joints joints;

  NineEquations(Linkage linkage) {
    this.linkage = linkage;
    this.joints = linkage.joints();
  }

  static double[] start(Pose near) {
    Vec l = near.l();
    Vec u = near.upper();
    Vec t = near.tie();
    return new double[] {l.x(), l.y(), l.z(), u.x(), u.y(), u.z(), t.x(), t.y(), t.z()};
  }

  double[] solved(double[] start, double heightMm, double rackMm) {
    MultivariateJacobianFunction lengths =
        at -> {
          double[] values = new double[9];
          double[][] jacobian = new double[9][9];
          equations(at.toArray(), heightMm, rackMm, values, jacobian);
          return new Pair<>(
              new ArrayRealVector(values, false), new Array2DRowRealMatrix(jacobian, false));
        };
    return MARQUARDT
        .optimize(
            new LeastSquaresBuilder()
                .start(start)
                .model(lengths)
                .target(new double[9])
                .maxEvaluations(200)
                .maxIterations(200)
                .checker((iteration, before, now) -> worst(now.getResiduals().toArray()) < 1e-10)
                .build())
        .getPoint()
        .toArray();
  }

  static double worst(double[] residuals) {
    double worst = 0;
    for (double residual : residuals) {
      worst = Math.max(worst, Math.abs(residual));
    }
    return worst;
  }

  private void equations(
      double[] p, double heightMm, double rackMm, double[] values, double[][] jacobian) {
    Vec l = new Vec(p[0], p[1], p[2]);
    Vec u = new Vec(p[3], p[4], p[5]);
    Vec t = new Vec(p[6], p[7], p[8]);
    Vec inner = joints.get(Joint.TI).plus(new Vec(0, rackMm, 0));
    fixed(0, l, 0, joints.get(Joint.LF), Joint.LF, Joint.L, values, jacobian);
    fixed(1, l, 0, joints.get(Joint.LR), Joint.LR, Joint.L, values, jacobian);
    fixed(2, u, 3, joints.get(Joint.UF), Joint.UF, Joint.U, values, jacobian);
    fixed(3, u, 3, joints.get(Joint.UR), Joint.UR, Joint.U, values, jacobian);
    fixed(4, t, 6, inner, Joint.TI, Joint.TO, values, jacobian);
    both(5, l, 0, u, 3, Joint.L, Joint.U, values, jacobian);
    both(6, l, 0, t, 6, Joint.L, Joint.TO, values, jacobian);
    both(7, u, 3, t, 6, Joint.U, Joint.TO, values, jacobian);

    InKnuckle hub = linkage.wheel;
    Vec e = u.minus(l);
    Vec f = t.minus(l);
    values[8] = l.z() + hub.at(e, f, e.cross(f)).z() - joints.get(Joint.W).z() - heightMm;
    double[] row = jacobian[8];
    row[0] = hub.c() * (e.y() - f.y());
    row[1] = hub.c() * (f.x() - e.x());
    row[2] = 1 - hub.a() - hub.b();
    row[3] = hub.c() * f.y();
    row[4] = -hub.c() * f.x();
    row[5] = hub.a();
    row[6] = -hub.c() * e.y();
    row[7] = hub.c() * e.x();
    row[8] = hub.b();
  }

  private void fixed(
      int row,
      Vec at,
      int column,
      Vec end,
      Joint a,
      Joint b,
      double[] values,
      double[][] jacobian) {
    Vec d = at.minus(end);
    double length = d.length();
    values[row] = length - joints.get(a).distance(joints.get(b));
    put(jacobian[row], column, d, 1 / length);
  }

  private void both(
      int row,
      Vec at,
      int column,
      Vec end,
      int endColumn,
      Joint a,
      Joint b,
      double[] values,
      double[][] jacobian) {
    fixed(row, at, column, end, a, b, values, jacobian);
    Vec d = at.minus(end);
    put(jacobian[row], endColumn, d, -1 / d.length());
  }

  private static void put(double[] row, int column, Vec d, double times) {
    row[column] = times * d.x();
    row[column + 1] = times * d.y();
    row[column + 2] = times * d.z();
  }
}
