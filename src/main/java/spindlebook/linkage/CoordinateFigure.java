package spindlebook.linkage;

import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/** Where a coordinate is, mm or rad, and how sure. */
public record CoordinateFigure(Coordinate coordinate, Figure value) {

  /** As it was given: laid out with a tape at the car, ± {@link Coordinate#byTape}. */
  public static CoordinateFigure asGiven(Coordinate coordinate, Joints joints) {
    Source own = new Source("given: " + coordinate.words(), SourceKind.PLACING);
    return new CoordinateFigure(
        coordinate, Figure.of(coordinate.of(joints), own, coordinate.byTape() / Figure.K));
  }

  /** The same, of which nothing is known: ± ten times what a tape may be off. */
  public Figure anywhere() {
    Source own = new Source("anywhere: " + coordinate.words(), SourceKind.PLACING);
    return Figure.of(value.value(), own, 10 * coordinate.byTape() / Figure.K);
  }
}
