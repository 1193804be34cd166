package spindlebook.linkage;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.SingularMatrixException;
import spindlebook.entry.Joint;
import spindlebook.linkage.Change.Longer;
import spindlebook.linkage.Change.Moved;
import spindlebook.linkage.Change.Rod;

/**
 * The corner put together anew from changed parts, straight ahead, its wheel centre as high as it
 * was: what camber, toe and all else become if nothing is set again.
 *
 * <pre>
 *   |L−LF|, |L−LR|, |U−UF|, |U−UR|, |TO−TI|, |U−L|, |TO−L|, |TO−U| as the parts are long,  hub z as before
 *   nine equations for L, U and TO by Newton's steps, the change in {@link #PARTS} parts
 * </pre>
 *
 * <p>Shock and strap mounts keep their place in the lower arm, seen from its ball joint and pivot
 * line. Assumes arms whose two legs may be set one by one; how far a welded arm's threads let them
 * is ConvergingThreads'. Source: derived here; holds to 1e-8° against the rod-end rows of
 * alignment.json.
 */
public final class Reassembly {
  private static final int PARTS = 4;
  private static final int MOST_STEPS = 50;
  private static final double CLOSE_MM = 1e-10;

  private final Joints made;
  private final Map<Rod, Double> lengths = new EnumMap<>(Rod.class);
  private final double hubMm;

  private Reassembly(Joints today, List<Change> changes) {
    Joints moved = today;
    for (Change change : changes) {
      if (change instanceof Moved m) {
        moved = moved.with(m.joint(), moved.get(m.joint()).plus(m.by()));
      }
    }
    made = moved;
    for (Rod rod : Rod.values()) {
      lengths.put(rod, rod.lengthMm(today));
    }
    for (Change change : changes) {
      if (change instanceof Longer longer) {
        lengths.merge(longer.rod(), longer.byMm(), Double::sum);
      }
    }
    hubMm = today.get(Joint.W).z();
  }

  /**
   * As it then stands, which is its new design.
   *
   * @throws LinkageRefused where the parts do not go together
   */
  public static Joints of(Joints today, List<Change> changes) {
    double[] at = {
      today.get(Joint.L).x(), today.get(Joint.L).y(), today.get(Joint.L).z(),
      today.get(Joint.U).x(), today.get(Joint.U).y(), today.get(Joint.U).z(),
      today.get(Joint.TO).x(), today.get(Joint.TO).y(), today.get(Joint.TO).z()
    };
    Reassembly parts = null;
    for (int i = 1; i <= PARTS; i++) {
      double of = (double) i / PARTS;
      parts = new Reassembly(today, changes.stream().map(change -> change.part(of)).toList());
      at = parts.together(at);
    }
    return parts.joints(today, at);
  }

  private double[] together(double[] start) {
    double[] at = start.clone();
    for (int steps = 0; steps < MOST_STEPS; steps++) {
      double[] off = new double[9];
      double[][] slopes = new double[9][9];
      equations(at, off, slopes);
      if (new ArrayRealVector(off, false).getLInfNorm() < CLOSE_MM) {
        return at;
      }
      try {
        double[] step =
            new LUDecomposition(new Array2DRowRealMatrix(slopes, false))
                .getSolver()
                .solve(new ArrayRealVector(off, false))
                .toArray();
        for (int i = 0; i < 9; i++) {
          at[i] -= step[i];
        }
      } catch (SingularMatrixException e) {
        break;
      }
    }
    throw new LinkageRefused("With these changes the corner does not go together.");
  }

  /** How far each length and the hub's height are off, and what each coordinate does to it. */
  private void equations(double[] at, double[] off, double[][] slopes) {
    int row = 0;
    for (Map.Entry<Rod, Double> length : lengths.entrySet()) {
      Rod rod = length.getKey();
      int column = rod.outer == Joint.L ? 0 : rod.outer == Joint.U ? 3 : 6;
      Vec d = point(at, column).minus(made.get(rod.inner));
      off[row] = d.length() - length.getValue();
      put(slopes[row++], column, d.unit());
    }
    inKnuckle(5, at, 0, Joint.L, 3, Joint.U, off, slopes);
    inKnuckle(6, at, 0, Joint.L, 6, Joint.TO, off, slopes);
    inKnuckle(7, at, 3, Joint.U, 6, Joint.TO, off, slopes);

    Vec l = point(at, 0);
    Vec e = point(at, 3).minus(l);
    Vec f = point(at, 6).minus(l);
    InKnuckle hub = inKnuckle(made.get(Joint.W).minus(made.get(Joint.L)));
    off[8] = l.z() + hub.at(e, f, e.cross(f)).z() - hubMm;
    Vec byU = new Vec(hub.c() * f.y(), -hub.c() * f.x(), hub.a());
    Vec byT = new Vec(-hub.c() * e.y(), hub.c() * e.x(), hub.b());
    put(slopes[8], 0, new Vec(0, 0, 1).minus(byU).minus(byT));
    put(slopes[8], 3, byU);
    put(slopes[8], 6, byT);
  }

  private void inKnuckle(
      int row,
      double[] at,
      int one,
      Joint oneJoint,
      int other,
      Joint otherJoint,
      double[] off,
      double[][] slopes) {
    Vec d = point(at, other).minus(point(at, one));
    off[row] = d.length() - made.get(oneJoint).distance(made.get(otherJoint));
    put(slopes[row], other, d.unit());
    put(slopes[row], one, d.unit().times(-1));
  }

  private static Vec point(double[] at, int column) {
    return new Vec(at[column], at[column + 1], at[column + 2]);
  }

  private static void put(double[] row, int column, Vec slope) {
    row[column] = slope.x();
    row[column + 1] = slope.y();
    row[column + 2] = slope.z();
  }

  private InKnuckle inKnuckle(Vec direction) {
    Vec l = made.get(Joint.L);
    return InKnuckle.of(made.get(Joint.U).minus(l), made.get(Joint.TO).minus(l), direction);
  }

  private Joints joints(Joints today, double[] at) {
    Vec l = point(at, 0);
    Vec e = point(at, 3).minus(l);
    Vec f = point(at, 6).minus(l);
    Vec n = e.cross(f);
    Map<Joint, Vec> joints = new EnumMap<>(made.at());
    joints.put(Joint.L, l);
    joints.put(Joint.U, point(at, 3));
    joints.put(Joint.TO, point(at, 6));
    Vec hub = made.get(Joint.W).minus(made.get(Joint.L));
    joints.put(Joint.W, l.plus(inKnuckle(hub).at(e, f, n)));
    for (Joint fixed : List.of(Joint.BOLT_L, Joint.BOLT_U, Joint.STUD_TO)) {
      joints.computeIfPresent(fixed, (joint, v) -> inKnuckle(v).at(e, f, n));
    }
    ArmAxes lowerBefore = ArmAxes.of(today, Joint.LF, Joint.LR, today.get(Joint.L));
    ArmAxes lower = ArmAxes.of(made, Joint.LF, Joint.LR, l);
    ArmAxes upperBefore = ArmAxes.of(today, Joint.UF, Joint.UR, today.get(Joint.U));
    ArmAxes upper = ArmAxes.of(made, Joint.UF, Joint.UR, joints.get(Joint.U));
    for (Joint mount : List.of(Joint.SL, Joint.KL)) {
      joints.computeIfPresent(
          mount, (joint, p) -> l.plus(lower.same(lowerBefore, p.minus(today.get(Joint.L)))));
    }
    joints.computeIfPresent(Joint.HOUSE_L, (joint, v) -> lower.same(lowerBefore, v));
    joints.computeIfPresent(Joint.HOUSE_U, (joint, v) -> upper.same(upperBefore, v));
    Vec spin = inKnuckle(today.spin()).at(e, f, n);
    return new Joints(
        today.left(),
        joints,
        Math.atan2(spin.x(), today.side() * spin.y()),
        -Math.asin(spin.z()),
        today.radiusMm());
  }

  /** An arm's own axes: along its pivot line, from that to its joint, and square to both. */
  private record ArmAxes(Vec along, Vec out, Vec square) {
    static ArmAxes of(Joints joints, Joint front, Joint rear, Vec tip) {
      Vec along = joints.get(rear).minus(joints.get(front)).unit();
      Vec out = tip.minus(joints.get(front));
      Vec unit = out.plus(-out.dot(along), along).unit();
      return new ArmAxes(along, unit, along.cross(unit));
    }

    /** What lay so in the arm before, as it lies now. */
    Vec same(ArmAxes before, Vec v) {
      return along
          .times(v.dot(before.along))
          .plus(v.dot(before.out), out)
          .plus(v.dot(before.square), square);
    }
  }
}
