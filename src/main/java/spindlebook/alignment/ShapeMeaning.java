package spindlebook.alignment;

import java.util.ArrayList;
import java.util.List;
import spindlebook.alignment.FaultSeen.Sureness;
import spindlebook.definition.RackSide;
import spindlebook.uncertainty.Figure;

/**
 * What the shape of a toe curve says about the tie rod, how sure that is, and which reading would
 * tell the cases apart.
 *
 * <pre>
 *   seen when |slope| (|curvature|) > v = 1.5 U = 3 u            v: what the noise lets see
 *   plain when > 3 v
 *   effects at the far end w:  |slope| w,  |curvature| w² / 2
 *   the smaller effect, under {@value #COMES_ALONG} of the larger, may come with it and is not said
 * </pre>
 *
 * v is three standard uncertainties so that noise alone speaks in 3 of 1,000 cases; the 2 of a
 * decision would let it speak in 46. A height fault bends the curve by about a tenth of its own
 * effect, hence the last rule. Measured against a rod whose slope and bend are both nothing; signs
 * as {@link TieRodFault}. Source: derived in docs/methods-alignment.md; 1,000 rigid corners in the
 * test.
 *
 * <p>Worked example: rack behind, slope −0.0047 ± 0.0004, curvature −7e-6 ± 1e-5 °/mm², w 120:
 * outer end too high, plain; the bend: can't tell.
 *
 * @param height what the slope says
 * @param length what the bend says
 * @param next readings that would tell more, most useful first
 */
public record ShapeMeaning(FaultSeen height, FaultSeen length, List<TellsApart> next) {
  /** Three standard uncertainties, in U. */
  public static final double SEEN_IN_U = 1.5;

  public static final double PLAIN = 3;
  public static final double COMES_ALONG = 0.25;

  /** What the noise of a figure lets see. */
  public static double seen(Figure figure) {
    return SEEN_IN_U * figure.U();
  }

  public static ShapeMeaning of(BumpShape shape, RackSide rack) {
    double farMm =
        Math.max(shape.rideMm() - shape.window().fromMm(), shape.window().toMm() - shape.rideMm());
    double slope = shape.slope().value();
    double curvature = shape.curvature().value();
    double byHeight = Math.abs(slope) * farMm;
    double byLength = Math.abs(curvature) * farMm * farMm / 2;
    FaultSeen height =
        new FaultSeen(
            TieRodFault.ofSlope(slope, rack),
            shape.slope(),
            byHeight,
            sureness(shape.slope(), byHeight, byLength));
    FaultSeen length =
        new FaultSeen(
            TieRodFault.ofCurvature(curvature, rack),
            shape.curvature(),
            byLength,
            sureness(shape.curvature(), byLength, byHeight));
    return new ShapeMeaning(height, length, next(height, length, shape));
  }

  /** What is said to be there, the larger effect first; may be nothing. */
  public List<FaultSeen> said() {
    List<FaultSeen> both =
        height.effectRad() >= length.effectRad()
            ? List.of(height, length)
            : List.of(length, height);
    return both.stream().filter(seen -> seen.sureness().said()).toList();
  }

  private static Sureness sureness(Figure figure, double effect, double other) {
    double times = Math.abs(figure.value()) / seen(figure);
    if (!(times > 1)) {
      return Sureness.CANT_TELL;
    }
    if (effect < COMES_ALONG * other) {
      return Sureness.MAY_COME_WITH_THE_OTHER;
    }
    return times > PLAIN ? Sureness.PLAIN : Sureness.LIKELY;
  }

  private static List<TellsApart> next(FaultSeen height, FaultSeen length, BumpShape shape) {
    List<TellsApart> next = new ArrayList<>();
    if (shape.degree() < 3) {
      next.add(TellsApart.FIVE_PLACES);
    }
    if (height.sureness() == Sureness.CANT_TELL) {
      next.add(TellsApart.TOE_AT_BOTH_ENDS);
    }
    if (length.sureness() == Sureness.CANT_TELL) {
      next.add(TellsApart.TOE_AT_RIDE_AND_ENDS);
    }
    if (height.sureness() == Sureness.MAY_COME_WITH_THE_OTHER
        || length.sureness() == Sureness.MAY_COME_WITH_THE_OTHER) {
      next.add(TellsApart.AFTER_FIRST_CURE);
    }
    if (height.sureness().said()) {
      next.add(TellsApart.ROD_HEIGHTS);
    }
    if (length.sureness().said()) {
      next.add(TellsApart.INNER_SPREAD);
    }
    return next;
  }
}
