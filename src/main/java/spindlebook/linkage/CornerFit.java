package spindlebook.linkage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import spindlebook.linkage.Found.StopsAssembling;
import spindlebook.uncertainty.Figure;

/**
 * What corners with other coordinates say of the readings of one. Its rows are the readings, then
 * the coordinates as they were given; a column is a coordinate.
 */
final class CornerFit {
  /** Of what a tape tells: 0.0127 mm; the model's bend makes 1e-5 of a slope of it. */
  private static final double STEP = 1e-3;

  /** Where a corner does not assemble, no reading fits. */
  private static final double NOWHERE = 1e6;

  private final Joints given;
  private final List<CoordinateFigure> placed;
  private final List<CornerReading> readings;
  private final Pose[] straight;

  /** For each reading the first at its height, and the first with its rack there as well. */
  private final int[] atHeight;

  private final int[] atPose;

  CornerFit(Joints given, List<CoordinateFigure> placed, List<CornerReading> readings) {
    this.given = given;
    this.placed = placed;
    this.readings = readings;
    this.straight = new Pose[readings.size()];
    this.atHeight = firsts(r -> List.of(r.heightMm().value()));
    this.atPose = firsts(r -> List.of(r.heightMm().value(), r.rackMm()));
    Linkage linkage = new Linkage(given);
    for (int i = 0; i < straight.length; i++) {
      CornerReading reading = readings.get(i);
      Found found = linkage.at(reading.heightMm().value(), 0);
      if (found instanceof StopsAssembling stops) {
        throw new LinkageRefused(reading.key() + ": " + stops.words());
      }
      straight[i] = found.pose();
    }
  }

  private int[] firsts(Function<CornerReading, Object> of) {
    Map<Object, Integer> first = new HashMap<>();
    int[] firsts = new int[readings.size()];
    for (int i = 0; i < firsts.length; i++) {
      Integer earlier = first.putIfAbsent(of.apply(readings.get(i)), i);
      firsts[i] = earlier == null ? i : earlier;
    }
    return firsts;
  }

  double[] start() {
    return placed.stream().mapToDouble(p -> p.value().value()).toArray();
  }

  Joints joints(double[] coordinates) {
    Joints joints = given;
    for (int j = 0; j < coordinates.length; j++) {
      joints = placed.get(j).coordinate().with(joints, coordinates[j]);
    }
    return joints;
  }

  /** Each row with its doubt; a reading's height in it, as the corner's slope there makes it. */
  List<Figure> rows() {
    List<Figure> rows = new ArrayList<>();
    for (int i = 0; i < straight.length; i++) {
      CornerReading reading = readings.get(i);
      Pose pose = straight[i].linkage().steered(straight[i], reading.rackMm()).pose();
      double slope =
          reading.quantity().perMm(pose) * pose.heightPerRad() / straight[i].heightPerRad();
      rows.add(reading.value().minus(reading.heightMm().times(slope)));
    }
    placed.forEach(p -> rows.add(p.value()));
    return rows;
  }

  /** As read less as modelled, as given less as tried. */
  double[] off(double[] coordinates) {
    return off(coordinates, () -> joints(coordinates));
  }

  private double[] off(double[] coordinates, Supplier<Joints> joints) {
    double[] off = new double[straight.length + coordinates.length];
    double[] modelled = modelled(linkage(joints));
    for (int i = 0; i < straight.length; i++) {
      off[i] = Double.isNaN(modelled[i]) ? NOWHERE : readings.get(i).value().value() - modelled[i];
    }
    for (int j = 0; j < coordinates.length; j++) {
      off[straight.length + j] = placed.get(j).value().value() - coordinates[j];
    }
    return off;
  }

  private static Linkage linkage(Supplier<Joints> joints) {
    try {
      return new Linkage(joints.get());
    } catch (LinkageRefused none) {
      return null;
    }
  }

  /** Of each reading; NaN where the corner does not get there. */
  private double[] modelled(Linkage linkage) {
    double[] modelled = new double[straight.length];
    if (linkage == null) {
      Arrays.fill(modelled, Double.NaN);
      return modelled;
    }
    Found[] unsteered = new Found[straight.length];
    Found[] steered = new Found[straight.length];
    for (int i = 0; i < straight.length; i++) {
      CornerReading reading = readings.get(i);
      int h = atHeight[i];
      int p = atPose[i];
      if (h == i) {
        Pose near = linkage.alike(straight[i]);
        double height = reading.heightMm().value();
        unsteered[i] = near == null ? linkage.at(height, 0) : linkage.at(height, near);
      }
      if (p == i) {
        steered[i] =
            unsteered[h] instanceof Pose at ? linkage.steered(at, reading.rackMm()) : unsteered[h];
      }
      modelled[i] = steered[p] instanceof Pose pose ? reading.quantity().of(pose) : Double.NaN;
    }
    return modelled;
  }

  /** What a row's model gains for each unit of a coordinate; {@code here} is what rows are off. */
  RealMatrix slopes(double[] coordinates, double[] here) {
    double[][] slopes = new double[here.length][coordinates.length];
    Joints joints = joints(coordinates);
    for (int j = 0; j < coordinates.length; j++) {
      double step = STEP * placed.get(j).coordinate().byTape();
      double[] there = moved(coordinates, joints, j, step);
      if (nowhere(there) && !nowhere(here)) {
        step = -step;
        there = moved(coordinates, joints, j, step);
      }
      for (int i = 0; i < here.length; i++) {
        slopes[i][j] = (here[i] - there[i]) / step;
      }
    }
    return new Array2DRowRealMatrix(slopes, false);
  }

  private double[] moved(double[] coordinates, Joints joints, int j, double step) {
    double[] moved = coordinates.clone();
    moved[j] += step;
    return off(moved, () -> placed.get(j).coordinate().with(joints, moved[j]));
  }

  /** Whether the corner does not get to some reading's height. */
  private static boolean nowhere(double[] off) {
    return DoubleStream.of(off).anyMatch(o -> o == NOWHERE);
  }
}
