package spindlebook.linkage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import spindlebook.uncertainty.Figure;

/**
 * What a linkage says of a quantity, with the doubt of its coordinates: their slopes by differences
 * of a thousandth of what a tape tells.
 */
public final class ModelFigure {
  private static final double STEP_OF_TAPE = 1e-3;

  private ModelFigure() {}

  /**
   * Straight ahead at a height, then steered with the jack left alone; empty where the corner does
   * not get there or lacks the mounts.
   *
   * @param coordinates of this linkage, each with its doubt
   */
  public static Optional<Figure> of(
      Linkage linkage,
      List<CoordinateFigure> coordinates,
      ToDoubleFunction<Pose> quantity,
      double heightMm,
      double rackMm) {
    return of(linkage, coordinates, at -> value(at, quantity, heightMm, rackMm));
  }

  /** Of anything that a linkage tells; empty where it tells no number. */
  public static Optional<Figure> of(
      Linkage linkage, List<CoordinateFigure> coordinates, ToDoubleFunction<Linkage> what) {
    double here = what.applyAsDouble(linkage);
    if (Double.isNaN(here)) {
      return Optional.empty();
    }
    List<Figure> figures = new ArrayList<>();
    double[] slopes = new double[coordinates.size()];
    for (int i = 0; i < slopes.length; i++) {
      Coordinate coordinate = coordinates.get(i).coordinate();
      double step = STEP_OF_TAPE * coordinate.byTape();
      Linkage moved = new Linkage(coordinate.moved(linkage.joints(), step));
      double there = what.applyAsDouble(moved);
      slopes[i] = Double.isNaN(there) ? 0 : (there - here) / step;
      figures.add(coordinates.get(i).value());
    }
    return Optional.of(Figure.linear(here, figures, slopes));
  }

  /** NaN where it does not get there, or lacks what it takes. */
  public static double value(
      Linkage at, ToDoubleFunction<Pose> quantity, double heightMm, double rackMm) {
    return at.at(heightMm, 0) instanceof Pose straight
            && at.steered(straight, rackMm) instanceof Pose pose
        ? quantity.applyAsDouble(pose)
        : Double.NaN;
  }
}
