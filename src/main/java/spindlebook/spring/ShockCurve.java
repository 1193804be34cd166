package spindlebook.spring;

import java.util.Optional;
import java.util.function.DoubleFunction;
import spindlebook.curve.Bisection;
import spindlebook.curve.MeasuredCurve;
import spindlebook.linkage.Linkage;
import spindlebook.uncertainty.Figure;

/**
 * Tells how long the shock is at a wheel position, and how much of it a millimetre of wheel takes.
 *
 * <pre>
 *   MR = −dL/dz     bend = dMR/dz     stroke used = ∫ MR dz = L(droop) − L(bump)
 * </pre>
 *
 * <p>z wheel position in mm, + bump; L eye to eye in mm; MR in mm of shock per mm of wheel, + where
 * bump shortens the shock; bend per mm. From readings: slope of the curve through them, bend by the
 * slopes 25 mm either way (as far as was read). From a linkage: exact, the bend by five points 1 mm
 * apart. Nothing is extrapolated: outside, an IllegalArgumentException. MR at ride times the travel
 * is not the stroke: 6.5 mm too little of 365.9 on the reference corner.
 *
 * <p>Source: virtual work, any textbook. Worked example: the reference corner at −200 mm: L 772.499
 * mm, MR 0.62106, bend −0.00006357 per mm; from −250 to 250 mm it uses 325.425 mm, and with 9.525
 * mm kept open and 12.7 closed needs a shock of 813.224 mm open and 465.574 closed.
 */
public record ShockCurve(double fromMm, double toMm, DoubleFunction<Here> here) {
  /** At one wheel position: L, MR and dMR/dz. */
  public record Here(Figure lengthMm, Figure ratio, Figure bendPerMm) {}

  /** Through shock lengths that were read. */
  public static ShockCurve read(MeasuredCurve lengths) {
    return new ShockCurve(
        lengths.fromMm(),
        lengths.toMm(),
        z -> {
          double low = Math.max(lengths.fromMm(), z - 25);
          double high = Math.min(lengths.toMm(), z + 25);
          Figure bend = lengths.slopeAt(low).minus(lengths.slopeAt(high)).times(1 / (high - low));
          return new Here(lengths.at(z), lengths.slopeAt(z).times(-1), bend);
        });
  }

  /** Of a linkage with its shock's mounts, rack straight ahead. */
  public static ShockCurve of(Linkage linkage, double fromMm, double toMm) {
    return new ShockCurve(
        fromMm,
        toMm,
        z -> {
          double near = ratio(linkage, z + 1) - ratio(linkage, z - 1);
          double bend = (8 * near - ratio(linkage, z + 2) + ratio(linkage, z - 2)) / 12;
          Figure length = Figure.exact(linkage.at(z, 0).pose().shockMm());
          return new Here(length, Figure.exact(ratio(linkage, z)), Figure.exact(bend));
        });
  }

  private static double ratio(Linkage linkage, double z) {
    return linkage.at(z, 0).pose().shockRatio();
  }

  public Here at(double positionMm) {
    if (!(positionMm >= fromMm && positionMm <= toMm)) {
      throw new IllegalArgumentException(
          "the shock is known from " + fromMm + " to " + toMm + " mm, not at " + positionMm);
    }
    return here.apply(positionMm);
  }

  /** Where the wheel is when the shock is that long; empty outside what is known, or held still. */
  public Optional<Figure> wheelAt(Figure lengthMm) {
    double wanted = lengthMm.value();
    if (!(wanted <= at(fromMm).lengthMm.value() && wanted >= at(toMm).lengthMm.value())) {
      return Optional.empty();
    }
    double z = Bisection.zero(x -> wanted - at(x).lengthMm.value(), fromMm, toMm);
    Here found = at(z);
    return !(found.ratio.value() > 0)
        ? Optional.empty()
        : Optional.of(found.lengthMm.minus(lengthMm).times(1 / found.ratio.value()).plus(z));
  }
}
