package spindlebook.measured;

import java.util.Optional;
import spindlebook.entry.AlignedFigure;
import spindlebook.entry.AlignedThing;
import spindlebook.fold.Card;
import spindlebook.fold.SeenAlignment;
import spindlebook.fold.Standing;
import spindlebook.uncertainty.Figure;
import spindlebook.units.AngleFormat;
import spindlebook.units.TapeFormat;

/**
 * Whether a new measurement is worth asking about: far off what was known while nothing was changed
 * since.
 *
 * <pre>  |new − known| > 2° of camber, caster or KPI;  1° of toe;  1/2 in (12.7 mm) of track</pre>
 *
 * <p>Asked only where what was known still counts; the answer is the owner's. Source: common
 * practice, no source. Worked example: camber −0.3° known, −3° read: 2.7° off, asked about.
 */
public final class FarOff {
  private static final double FAR_RAD = Math.toRadians(2);
  private static final double FAR_TOE_RAD = Math.toRadians(1);
  private static final double FAR_MM = 12.7;

  private FarOff() {}

  /**
   * @param before the card without it
   * @param with the card as it would be with it
   * @param key its key
   */
  public static Optional<String> doubt(Card before, Card with, Optional<Card> mirror, String key) {
    SeenAlignment one = with.aligned().read(key).filter(SeenAlignment::counts).orElse(null);
    if (one == null || one.thing() == AlignedThing.GROUND_POINT) {
      return Optional.empty();
    }
    AlignedFigure figure = figure(one.thing());
    AlignedFinding known = new MeasuredAlignment(before, mirror).of(figure);
    if (known.value() == null || known.stands() != Standing.LIVE) {
      return Optional.empty();
    }
    return new MeasuredAlignment(with, mirror)
        .alone(one)
        .map(value -> off(value, known.value()))
        .filter(off -> off > far(figure))
        .map(
            off ->
                "It is "
                    + words(figure, off)
                    + " off what was known, and nothing was changed since.");
  }

  private static double off(Figure value, Figure known) {
    return Math.abs(value.value() - known.value());
  }

  private static AlignedFigure figure(AlignedThing thing) {
    return switch (thing) {
      case CAMBER -> AlignedFigure.CAMBER;
      case TOE -> AlignedFigure.TOE;
      case TOTAL_TOE -> AlignedFigure.TOTAL_TOE;
      case STEERING_AXIS -> AlignedFigure.CASTER;
      case GROUND_POINT -> AlignedFigure.SCRUB;
      case TRACK -> AlignedFigure.TRACK;
    };
  }

  private static double far(AlignedFigure figure) {
    return switch (figure) {
      case TOE, TOTAL_TOE -> FAR_TOE_RAD;
      case TRACK -> FAR_MM;
      default -> FAR_RAD;
    };
  }

  private static String words(AlignedFigure figure, double off) {
    return figure.angle()
        ? AngleFormat.degrees(off, 1)
        : TapeFormat.inches(off, 8) + " in (" + Math.round(off) + " mm)";
  }
}
