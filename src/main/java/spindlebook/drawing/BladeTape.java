package spindlebook.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Predicate;
import spindlebook.drawing.TapeBlade.Mark;

/** What both ways of drawing share: which ticks there are and which of them get a numeral. */
final class BladeTape {
  private final TapeBlade blade;
  private final double unitsPerMm;

  BladeTape(TapeBlade blade, double lengthUnits) {
    this.blade = blade;
    this.unitsPerMm = lengthUnits / (blade.toMm() - blade.fromMm());
  }

  /**
   * One tick of the tape.
   *
   * @param at where it is, drawing units
   * @param share its length against a long one, 0 to 1
   * @param numeral empty for most
   */
  record Tick(double at, double share, String numeral) {}

  /** Ticks that can be told apart, numerals that do not touch; {@code along} places a position. */
  List<Tick> ticks(DoubleUnaryOperator along, double numeralUnits, double lengthUnits) {
    LengthScale scale = blade.scale();
    int coarser = 1;
    while (scale.tickMm() * coarser * unitsPerMm < 3) {
      coarser *= 2;
    }
    int everyNth = 1;
    while (scale.numeralMm() * everyNth * unitsPerMm < numeralUnits * 1.5) {
      everyNth *= 2;
    }
    long first = (long) Math.ceil(blade.fromMm() / scale.tickMm());
    long last = (long) Math.floor(blade.toMm() / scale.tickMm());
    first += Math.floorMod(-first, (long) coarser);
    List<Tick> ticks = new ArrayList<>();
    for (long tick = first; tick <= last; tick += coarser) {
      double at = along.applyAsDouble(tick * scale.tickMm());
      boolean clear = at > numeralUnits * 0.6 && at < lengthUnits - numeralUnits * 0.6;
      String numeral = clear && scale.numbered(tick, everyNth) ? scale.numeral(tick) : "";
      ticks.add(new Tick(at, scale.tickShare(tick), numeral));
    }
    return ticks;
  }

  /** Whether a numeral may stand there without a mark's line running through it. */
  boolean free(double at, double reach, DoubleUnaryOperator along, Predicate<Mark> across) {
    return blade.marks().stream()
        .filter(across)
        .noneMatch(mark -> Math.abs(along.applyAsDouble(mark.positionMm()) - at) < reach);
  }

  /** Half of a bracket: to scale, but never so small that it cannot be seen. */
  double bracketUnits(Mark mark) {
    return Math.max(2.5, mark.uncertaintyMm() * unitsPerMm);
  }
}
