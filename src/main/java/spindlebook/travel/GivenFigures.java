package spindlebook.travel;

import spindlebook.definition.Given;
import spindlebook.definition.HeldBack;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.units.TypedLength;

/**
 * A dimension, or an allowance given as a length, as a figure: exact when taken from a drawing or
 * chosen, or with the half-width its owner gives (rectangular, one source wherever it enters;
 * another number is another measuring, and a source of its own).
 */
public final class GivenFigures {
  private GivenFigures() {}

  public static Figure of(Given given) {
    return of("given:" + given.dimension(), given.length(), given.halfWidth());
  }

  public static Figure of(HeldBack held) {
    return of("held:" + held.allowance(), held.length(), held.halfWidth());
  }

  private static Figure of(String what, TypedLength length, TypedLength halfWidth) {
    double mm = length.mm();
    return Rectangular.within(mm, what + " " + mm, halfWidth == null ? 0 : halfWidth.mm());
  }
}
