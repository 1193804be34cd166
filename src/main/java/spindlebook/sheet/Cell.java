package spindlebook.sheet;

import spindlebook.card.AlignedText;
import spindlebook.card.RideText;
import spindlebook.card.Shown;
import spindlebook.card.Zero;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.Rounded;
import spindlebook.drawing.State;
import spindlebook.entry.AlignedFigure;
import spindlebook.finding.CornerFigure;
import spindlebook.finding.Finding;
import spindlebook.finding.Finding.Group;
import spindlebook.measured.AlignedFinding;
import spindlebook.ride.RideFinding;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;

/**
 * A finding as a table shows it.
 *
 * @param figure null where there is no number, with {@code word} instead
 * @param word beside a figure: that it is at least so much, or what it is counted from
 * @param state null for what simply holds
 * @param stateWord in the words of what it is about
 */
public record Cell(FigureText figure, String word, State state, String stateWord) {
  public Cell(FigureText figure, String word, State state) {
    this(figure, word, state, state == null ? "" : state.brief());
  }

  private static Cell of(FigureText figure, String word, Finding finding) {
    Cell plain = new Cell(figure, word, Shown.state(finding));
    return finding.word().isEmpty() ? plain : new Cell(figure, word, plain.state(), finding.word());
  }

  /**
   * @param either what it is where this one has no such thing, {@code finding} null
   * @param zero what places are counted from
   */
  public static Cell of(Finding finding, Finding either, Zero zero, LengthUnit unit) {
    if (finding == null) {
      boolean mid = either.group() == Group.MID_TRAVEL;
      return new Cell(null, mid ? "nothing found" : "not there", null);
    }
    Figure figure = finding.figure();
    if (figure == null) {
      return of(null, finding.says(), finding);
    }
    if (finding.isPlace()) {
      Cell at = at(figure, zero, unit);
      return of(at.figure(), at.word(), finding);
    }
    String word =
        finding.of() instanceof AlignedFinding aligned
            ? AlignedText.acrossEdge(aligned, unit).orElse("")
            : finding.atLeast() ? "at least" : finding.says();
    return of(text(finding, figure, unit, signed(finding)), word, finding);
  }

  /** Of a wheel position. */
  public static Cell at(Figure positionMm, Zero zero, LengthUnit unit) {
    return new Cell(
        new Lengths(unit).signedFigure(positionMm.plus(-zero.mm())), zero.words(), null);
  }

  /** Whether its sign says on which side of something it lies. */
  private static boolean signed(Finding finding) {
    return switch (finding.group()) {
      case MARGIN, LIMIT -> true;
      default -> finding.id().equals(CornerFigure.RIDE.name());
    };
  }

  /** A figure of that finding, or what two of them are apart. */
  public static FigureText text(Finding of, Figure figure, LengthUnit unit, boolean signed) {
    Lengths lengths = new Lengths(unit);
    if (of.of() instanceof RideFinding ride) {
      return new RideText(unit, ride.counted() == null ? "" : ride.counted().words())
          .of(ride.figure().unit(), figure);
    }
    if (of.group() == Group.ALIGNMENT) {
      AlignedFigure aligned = AlignedFigure.valueOf(of.id());
      return signed
          ? AlignedText.apart(aligned, figure, unit)
          : AlignedText.of(aligned, figure, unit);
    }
    if (of.group() == Group.SWIVEL) {
      return signed ? Rounded.degrees(figure) : Rounded.plainDegrees(figure);
    }
    return signed ? lengths.signedFigure(figure) : lengths.figure(figure);
  }
}
