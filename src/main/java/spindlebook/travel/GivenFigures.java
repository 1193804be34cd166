package spindlebook.travel;

import spindlebook.definition.Given;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * A dimension as a figure: exact when taken from a drawing, or with the half-width its owner gives
 * (rectangular, one source wherever the dimension enters; another number is another measuring, and
 * a source of its own).
 */
public final class GivenFigures {
  private GivenFigures() {}

  public static Figure of(Given given) {
    Figure exact = Figure.exact(given.length().mm());
    return given.halfWidth() == null
        ? exact
        : exact.withSource(
            new Source("given:" + given.dimension() + " " + exact.value(), SourceKind.ALLOWANCE),
            Rectangular.u(given.halfWidth().mm()));
  }
}
