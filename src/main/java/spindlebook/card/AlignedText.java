package spindlebook.card;

import java.util.Optional;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Rounded;
import spindlebook.entry.AlignedFigure;
import spindlebook.measured.AlignedFinding;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;

/** Figures of alignment as every page shows them. */
public final class AlignedText {
  private AlignedText() {}

  /** In degrees, or in the unit: to as many decimals as its ± bears. */
  public static FigureText of(AlignedFigure figure, Figure value, LengthUnit unit) {
    return figure == AlignedFigure.TRACK
        ? Rounded.plain(value, unit.mm(), unit.word())
        : apart(figure, value, unit);
  }

  /** Of two such figures, how far they lie apart: always with its sign. */
  public static FigureText apart(AlignedFigure figure, Figure apart, LengthUnit unit) {
    return figure.angle() ? Rounded.degrees(apart) : Rounded.signed(apart, unit.mm(), unit.word());
  }

  /** Toe as a length across the wheel's edge, in words; empty where nobody said across what. */
  public static Optional<String> acrossEdge(AlignedFinding found, LengthUnit unit) {
    return found.acrossEdgeMm().map(mm -> Rounded.signed(mm, unit.mm(), unit.word()).words());
  }
}
