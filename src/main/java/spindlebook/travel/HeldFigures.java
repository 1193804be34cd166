package spindlebook.travel;

import spindlebook.definition.HeldBack;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/** An allowance given as a length: a chosen number, exact unless its owner gives a half-width. */
public final class HeldFigures {
  private HeldFigures() {}

  public static Figure of(HeldBack held) {
    Figure exact = Figure.exact(held.length().mm());
    return held.halfWidth() == null
        ? exact
        : exact.withSource(
            new Source("held:" + held.allowance() + " " + exact.value(), SourceKind.ALLOWANCE),
            Rectangular.u(held.halfWidth().mm()));
  }
}
