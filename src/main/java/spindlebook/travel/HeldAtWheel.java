package spindlebook.travel;

import java.util.List;
import spindlebook.uncertainty.Figure;

/**
 * Travel held back beyond a stop, at the wheel.
 *
 * @param mm at the wheel, 0 or more
 * @param atStopMm the same at the strap; null when it was chosen at the wheel
 * @param ratio stop movement per wheel movement, positive; null with {@code atStopMm}
 * @param because what befell the strap since its growth was read, in words: all of its stretch is
 *     held back until it is read again; empty when its growth counts, or never did
 * @param modelled whether {@code ratio} is by the linkage, the strap not read at two places
 */
public record HeldAtWheel(
    Figure mm,
    Figure atStopMm,
    Figure ratio,
    List<String> readings,
    List<String> because,
    boolean modelled) {}
