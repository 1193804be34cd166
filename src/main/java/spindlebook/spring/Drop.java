package spindlebook.spring;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import spindlebook.curve.Bisection;
import spindlebook.uncertainty.Figure;

/**
 * Tells where a wheel comes to rest that is dropped with the car on it, and how hard the stop
 * pushes then.
 *
 * <pre>
 *   (1 − η) m g (h + S) = E_coil(droop → z) + E_stop(z − touch)      S = z − droop
 *   push at rest:  F_w(z) + F_stop(z − touch)
 * </pre>
 *
 * <p>m sprung mass in kg, h the drop in mm, the tyre just touching at full droop; η what the damper
 * takes, 0 to 1, the owner's guess; touch the wheel position of the stop's first touch. m g S
 * counts: a car let go from hanging (h = 0) goes past where it sits. The tyre is taken rigid and
 * the wheel weightless, both to the cautious side but for the wheel's own blow. E_coil is k/2 (x² −
 * x₀²), not k MR² S²/2. The landing is a figure: what mass, drop, coil, shock, touch and chart
 * leave in doubt moves it along. Source: energy balance, any textbook. Worked example: the
 * reference corner, 520 kg, 56 N/mm, droop −250, touch 170 mm, stop 60 d + 0.02 d³: dropped 100 mm
 * rests at 246.364 mm, the stop 76.364 mm in and pushing 13488.03 N, 25854.85 N in all.
 *
 * @param chartFactor 1 ± what the chart may be off
 */
public record Drop(
    WheelSpring spring,
    StopChart stop,
    Figure chartFactor,
    Figure touchMm,
    Figure droopMm,
    Figure massKg,
    Figure dropMm,
    Figure damped) {

  /**
   * Wheel position, crush of the stop (0 where it is not reached), its force and the whole force on
   * the wheel, N.
   */
  public record Rest(Figure positionMm, Figure crushMm, Figure stopN, Figure wheelN) {}

  /** What the drop brings, what of it the coil leaves (below 0: nothing), what the stop takes. */
  public record Energy(Figure broughtJ, Figure leftToStopJ, Figure stopTakesJ) {}

  /** Empty when it does not come to rest where shock and chart are known, or does not move. */
  public Optional<Rest> rest() {
    double most = Math.min(spring.shock().toMm(), touchMm.value() + stop.mostMm());
    double first = droopMm.value() + 1;
    if (leftOver(most).value() > 0 || leftOver(first).value() < 0) {
      return Optional.empty();
    }
    double z = Bisection.zero(x -> -leftOver(x).value(), first, most);
    Figure left = leftOver(z);
    double push = stop.forceN(z - touchMm.value()) * chartFactor.value();
    double weight = (1 - damped.value()) * massKg.value() * WheelSpring.G;
    double against = spring.forceN(z).value() + push - weight;
    Figure at = left.plus(-left.value()).times(1000 / against).plus(z);
    // Moved by its doubt it must still be on the chart.
    if (z + at.u() + touchMm.u() > most) {
      return Optional.empty();
    }
    Figure crush = at.minus(touchMm);
    return Optional.of(
        new Rest(
            at,
            crush.value() < 0 ? crush.plus(-crush.value()) : crush,
            drawn(at, this::stopN),
            drawn(at, v -> Coil.forceN(v, v[4]) * v[5] + stopN(v))));
  }

  /** By a wheel position, full bump say. */
  public Energy energyAt(Figure at) {
    return new Energy(
        drawn(at, this::brought),
        drawn(at, v -> brought(v) - coil(v)),
        drawn(at, v -> stop.energyJ(v[14] - v[12]) * v[11]));
  }

  private Figure leftOver(double z) {
    return drawn(Figure.exact(z), v -> brought(v) - coil(v) - stop.energyJ(v[14] - v[12]) * v[11]);
  }

  private double stopN(double[] v) {
    return stop.forceN(v[14] - v[12]) * v[11];
  }

  private double brought(double[] v) {
    return (1 - v[9]) * v[7] * WheelSpring.G * (v[8] + v[14] - v[13]) / 1000;
  }

  private static double coil(double[] v) {
    return Coil.energyJ(v, v[4]) - Coil.energyJ(v, v[10]);
  }

  /** After coil and shock: mass, drop, damped, length at droop, chart, touch, droop, position. */
  private Figure drawn(Figure at, ToDoubleFunction<double[]> formula) {
    ShockCurve.Here droop = spring.shock().at(droopMm.value());
    Figure off = droopMm.plus(-droopMm.value());
    Figure atDroop = droop.lengthMm().minus(off.times(droop.ratio().value()));
    return spring.drawn(
        at, List.of(massKg, dropMm, damped, atDroop, chartFactor, touchMm, droopMm), formula);
  }
}
