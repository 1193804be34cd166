package spindlebook.drivecheck;

import java.util.Arrays;
import spindlebook.align.AlignedText;
import spindlebook.card.Shown;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.State;
import spindlebook.entry.SignedCorner;
import spindlebook.fold.Standing;
import spindlebook.uncertainty.Outcome;
import spindlebook.units.LengthUnit;

/** What a sign-off kept of one corner, as it is shown: in its unit, from its zero. */
public record SignedWords(SignedCorner corner, Lengths lengths) {
  /** The one position that cannot be counted from ride. */
  static final String RIDE = "ride height, spindle from the frame mark";

  SignedWords(SignedCorner corner, LengthUnit unit) {
    this(corner, new Lengths(unit));
  }

  public FigureText figure(SignedCorner.Figure f) {
    FigureText text =
        f.position()
            ? FigureText.of(lengths.signed(f.mm() - corner.zeroMm()), lengths.unit().word())
            : length(f);
    return f.expandedMm() > 0 ? text.within(lengths.plusMinus(f.expandedMm())) : text;
  }

  private FigureText length(SignedCorner.Figure f) {
    return f.name().endsWith("margin") || f.name().equals(RIDE)
        ? lengths.signedFigure(f.mm())
        : lengths.figure(f.mm());
  }

  /** In one line: {@code at least +1 3/8 in ± 1/16}; a position says what it is counted from. */
  String text(SignedCorner.Figure f) {
    return (f.atLeast() ? "at least " : "")
        + figure(f).words()
        + (f.position() ? " " + corner.zero() : "");
  }

  /** Null where it was not known. */
  public FigureText figure(SignedCorner.Aligned a) {
    return a.value() == null
        ? null
        : AlignedText.of(a.figure(), a.value(), a.expanded(), lengths.unit());
  }

  /** In one line: {@code −0.50° ± 0.21, stale; target −1° to 0°}. */
  String text(SignedCorner.Aligned a) {
    String value =
        a.value() == null ? "not known" : figure(a).words() + (holds(a) ? "" : ", " + a.stands());
    return a.target() == null ? value : value + "; target " + a.target();
  }

  private static boolean holds(SignedCorner.Aligned a) {
    return Standing.LIVE.words().equals(a.stands());
  }

  /** What it was worth where that does not hold, else how it stood against its target. */
  public State state(SignedCorner.Aligned a) {
    if (a.value() != null && !holds(a)) {
      return Arrays.stream(Standing.values())
          .filter(s -> s.words().equals(a.stands()))
          .findFirst()
          .map(Shown::state)
          .orElse(State.NOT_MEASURED);
    }
    return a.outcome() == null ? null : state(a.outcome());
  }

  public String text(SignedCorner.SetTo set) {
    return set.to() == null ? "not said" : set.to();
  }

  /** Where it was met, from the corner's zero; null when that was not known. */
  public FigureText position(SignedCorner.Limit limit) {
    return limit.mm() == null
        ? null
        : within(lengths.signed(limit.mm() - corner.zeroMm()), limit.expandedMm());
  }

  public FigureText room(SignedCorner.Limit limit) {
    return limit.roomMm() == null
        ? null
        : within(lengths.signed(limit.roomMm()), limit.roomExpandedMm());
  }

  private FigureText within(String bare, Double expandedMm) {
    FigureText text = FigureText.of(bare, lengths.unit().word());
    return expandedMm != null && expandedMm > 0 ? text.within(lengths.plusMinus(expandedMm)) : text;
  }

  /** What its outcome's state does not say. */
  public String outcome() {
    return state(corner.outcome()) == State.NOT_MEASURED ? corner.outcome() : "";
  }

  /** The shape and colour of an outcome's words. */
  public State state(String outcome) {
    return Arrays.stream(Outcome.values())
        .filter(o -> o.words().equals(outcome))
        .findFirst()
        .map(Shown::state)
        .orElse(State.NOT_MEASURED);
  }
}
