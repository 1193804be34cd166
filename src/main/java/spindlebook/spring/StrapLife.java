package spindlebook.spring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.exception.MathIllegalArgumentException;
import org.apache.commons.math3.exception.MathIllegalStateException;

/**
 * Tells at which use a strap's allowance is gone, or that its readings do not tell.
 *
 * <pre>
 *   likely shapes: AICc within 4 of the least      AICc = n ln(spread²) + 2 k n/(n − k − 1)
 *   from the earliest early to the latest late end of {@link StrapFit#reaches} among them
 * </pre>
 *
 * <p>n readings, k = parameters + 1, spread² = RSS/n, not less than what the tape alone would
 * leave, u² (n − k + 1)/n. A shape is tried with readings at two more uses than it has parameters;
 * one whose τ is not known to within itself counts for nothing. No forecast: readings at fewer than
 * five uses; a likely shape that may never get there; a late end beyond twice the use read where
 * the straight line is likely (how it bends was hardly seen), three times otherwise (both common
 * practice, no source). All readings are of one strap under one stated pull; a new strap starts
 * anew. Sunlight and years weaken a strap without making it longer: this does not see them.
 *
 * <p>Source: Akaike's criterion for few readings, Hurvich and Tsai 1989, from memory; that the
 * intervals hold what they should is shown on simulated straps. Worked example: the ten readings of
 * {@link StrapFit}: straight alone is likely, the allowance of 464 mm gone at 71.46 to 95.19 h.
 *
 * @param fits all that could be fitted, the likeliest first
 * @param forecast empty together with a {@code why}
 */
public record StrapLife(List<StrapFit> fits, Optional<Gone> forecast, Optional<NoForecast> why) {
  private static final double LIKELY = 4;
  private static final int LEAST_USES = 5;

  /** Hours of use at which the allowance is gone: the 95 % interval and its middle. */
  public record Gone(double earlyHours, double middleHours, double lateHours) {}

  /** Why nothing is forecast. */
  public enum NoForecast {
    TOO_FEW_READINGS,
    MAY_NEVER_GET_THERE,
    TOO_FAR_AHEAD
  }

  /**
   * @param tapeUMm standard uncertainty of one reading by itself; 0 where it is not known
   * @param goneAtMm the length at which the allowance is used up
   */
  public static StrapLife of(double[] hours, double[] lengthMm, double tapeUMm, double goneAtMm) {
    List<StrapFit> fits = fits(hours, lengthMm, tapeUMm);
    if (fits.isEmpty() || uses(hours) < LEAST_USES) {
      return none(fits, NoForecast.TOO_FEW_READINGS);
    }
    List<StrapFit> told = fits.stream().filter(StrapFit::told).toList();
    double best = told.get(0).aicc();
    List<StrapFit> likely = told.stream().filter(fit -> fit.aicc() - best <= LIKELY).toList();
    List<StrapFit.Reached> reached = likely.stream().map(fit -> fit.reaches(goneAtMm)).toList();
    if (reached.stream().anyMatch(r -> r.late().isEmpty())) {
      return none(fits, NoForecast.MAY_NEVER_GET_THERE);
    }
    double late = reached.stream().mapToDouble(r -> r.late().orElseThrow()).max().orElseThrow();
    boolean straight = likely.stream().anyMatch(fit -> fit.shape() == StrapShape.STRAIGHT);
    if (late > (straight ? 2 : 3) * Arrays.stream(hours).max().orElseThrow()) {
      return none(fits, NoForecast.TOO_FAR_AHEAD);
    }
    return new StrapLife(
        fits,
        Optional.of(
            new Gone(
                reached.stream().mapToDouble(r -> r.early().orElseThrow()).min().orElseThrow(),
                reached.get(0).centre().orElseThrow(),
                late)),
        Optional.empty());
  }

  /** The shape the readings speak for most; empty with too few readings. */
  public Optional<StrapFit> likeliest() {
    return fits.stream().filter(StrapFit::told).findFirst();
  }

  private static StrapLife none(List<StrapFit> fits, NoForecast why) {
    return new StrapLife(fits, Optional.empty(), Optional.of(why));
  }

  private static long uses(double[] hours) {
    return Arrays.stream(hours).distinct().count();
  }

  private static List<StrapFit> fits(double[] hours, double[] lengthMm, double tapeUMm) {
    List<StrapFit> fits = new ArrayList<>();
    for (StrapShape shape : StrapShape.values()) {
      if (uses(hours) >= shape.columns(0, 1).length + (shape.settles ? 3 : 2)) {
        try {
          fits.add(StrapFit.of(shape, hours, lengthMm, tapeUMm));
        } catch (MathIllegalArgumentException | MathIllegalStateException notTold) {
          // These readings do not tell this shape's parameters: it is not among the answers.
        }
      }
    }
    fits.sort(Comparator.comparingDouble(StrapFit::aicc));
    return List.copyOf(fits);
  }
}
