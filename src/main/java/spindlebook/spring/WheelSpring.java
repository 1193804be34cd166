package spindlebook.spring;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import spindlebook.curve.Bisection;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Propagated;

/**
 * The coil as the wheel feels it: force, rate, where the car sits on it, and how fast it bounces.
 *
 * <pre>
 *   F_w = F MR      k_w = k MR² + F dMR/dz      ride: F_w = m g      f = √(k_w/m)/2π
 *   k_w and tyre k_t in series: k_w k_t/(k_w + k_t)
 *   wanted at z with f:  k = (k_w − m g bend/MR)/MR²,  k_w = m (2π f)²,  x = m g/(MR k)
 * </pre>
 *
 * <p>m sprung mass of the corner in kg, g = 9.80665 m/s²; F_w in N, k_w in N/mm, + up, at the wheel
 * centre, rack straight ahead; the weight of the arms and friction are left out. The slope term F
 * dMR/dz is of either sign, 7 % on the reference corner at ride. f by √(g/sag) is right only for a
 * constant rate through zero. What mass, coil and shock readings share goes through; where the car
 * sits is a figure too. Source: virtual work, any textbook; from memory. Worked example: the
 * reference corner, 520 kg, 56 N/mm loose at 791.173 mm: sits at −3.200 mm, 24.706 N/mm, 1.0970 Hz,
 * 1.0516 Hz with a tyre of 280 N/mm; collar turned by −2.204 mm it sits at 0.
 */
public record WheelSpring(ShockCurve shock, Coil coil) {
  public static final double G = 9.80665;

  /** Where the car sits: wheel position, how far the coil is pressed together, rate, frequency. */
  public record Ride(Figure positionMm, Figure compressionMm, Figure rateNPerMm, Figure hz) {}

  public Figure forceN(double positionMm) {
    return drawn(Figure.exact(positionMm), List.of(), v -> Coil.forceN(v, v[4]) * v[5]);
  }

  public Figure rateNPerMm(double positionMm) {
    return drawn(
        Figure.exact(positionMm),
        List.of(),
        v -> Coil.rateNPerMm(v, v[4]) * v[5] * v[5] + Coil.forceN(v, v[4]) * v[6]);
  }

  /** Without the slope term. */
  public double byRatioNPerMm(double positionMm) {
    ShockCurve.Here here = shock.at(positionMm);
    double ratio = here.ratio().value();
    return coil.at(here.lengthMm(), Coil::rateNPerMm).value() * ratio * ratio;
  }

  /** Right only for a constant rate through zero. */
  public static double bySagHz(double sagMm) {
    return Math.sqrt(G * 1000 / sagMm) / (2 * Math.PI);
  }

  /** Coil's inputs, then L, MR and bend at the position, then what else is given. */
  Figure drawn(Figure position, List<Figure> more, ToDoubleFunction<double[]> formula) {
    double z = position.value();
    ShockCurve.Here here = shock.at(z);
    List<Figure> all = new ArrayList<>(coil.inputs());
    all.addAll(List.of(here.lengthMm(), here.ratio(), here.bendPerMm()));
    all.addAll(more);
    all.add(position);
    return Propagated.of(
        all,
        at -> {
          double[] v = at.clone();
          double dz = v[v.length - 1] - z;
          v[4] -= v[5] * dz + v[6] * dz * dz / 2;
          v[5] += v[6] * dz;
          return formula.applyAsDouble(v);
        });
  }

  /** Empty when the car does not sit where the shock is known. */
  public Optional<Ride> ride(Figure massKg) {
    double weight = massKg.value() * G;
    if (forceN(shock.fromMm()).value() > weight || forceN(shock.toMm()).value() < weight) {
      return Optional.empty();
    }
    double z = Bisection.zero(x -> forceN(x).value() - weight, shock.fromMm(), shock.toMm());
    Figure left = massKg.times(G).minus(forceN(z));
    // At that very place, so that what is unsure of the curve there is one thing in all of it.
    Figure position = left.plus(-left.value()).times(1 / rateNPerMm(z).value()).plus(z);
    double low = Math.max(shock.fromMm(), z - 1);
    double high = Math.min(shock.toMm(), z + 1);
    double more = (rateNPerMm(high).value() - rateNPerMm(low).value()) / (high - low);
    Figure rate = rateNPerMm(z).plus(position.plus(-z).times(more));
    Figure compression = drawn(position, List.of(), v -> v[3] - v[4]);
    return Optional.of(new Ride(position, compression, rate, hz(rate, massKg)));
  }

  public static Figure hz(Figure rateNPerMm, Figure massKg) {
    double k = rateNPerMm.value();
    double m = massKg.value();
    double hz = Math.sqrt(k * 1000 / m) / (2 * Math.PI);
    // By its derivatives: half the rate's own doubt, also where that is as large as the rate.
    return rateNPerMm
        .plus(-k)
        .times(hz / (2 * k))
        .minus(massKg.plus(-m).times(hz / (2 * m)))
        .plus(hz);
  }

  /** The rate with the tyre's beneath it. */
  public static Figure onTyre(Figure rateNPerMm, Figure tyreNPerMm) {
    return Propagated.of(List.of(rateNPerMm, tyreNPerMm), v -> v[0] * v[1] / (v[0] + v[1]));
  }

  /** How far to turn the collar so that the car sits there: + presses the coil together. */
  public Figure collarToSitAt(double positionMm, Figure massKg) {
    return drawn(
        Figure.exact(positionMm),
        List.of(massKg),
        v -> v[4] + Coil.compressionMm(v, v[7] * G / v[5]) - v[3]);
  }

  /** One spring with which the car sits there and bounces so fast. */
  public Coil wanted(double positionMm, double hz, Figure massKg) {
    Figure there = Figure.exact(positionMm);
    return Coil.single(
        drawn(there, List.of(massKg), v -> wantedRate(v, hz)),
        drawn(there, List.of(massKg), v -> v[4] + v[7] * G / v[5] / wantedRate(v, hz)));
  }

  private static double wantedRate(double[] v, double hz) {
    double wheel = v[7] * Math.pow(2 * Math.PI * hz, 2) / 1000;
    return (wheel - v[7] * G * v[6] / v[5]) / (v[5] * v[5]);
  }
}
