package spindlebook.travel;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import spindlebook.curve.Bisection;
import spindlebook.curve.Bound;
import spindlebook.curve.Node;
import spindlebook.curve.PositionToSetting;
import spindlebook.curve.Ratio;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.SourceKind;

/**
 * The reference corner's strap, scaled, read with a tape at two to five heights of which the lowest
 * is on the strap; its advice is asked for a stop that must go some way up or down.
 *
 * @param nodes mount-to-mount lengths as read
 * @param slipMm how far the book's scale of positions lies off the true one: the mark's error
 */
record SimulatedStrap(double scale, double fromMm, double toMm, double slipMm, List<Node> nodes) {

  static SimulatedStrap any(int heights, TapeError error, Random random) {
    double scale = 0.7 + 0.6 * random.nextDouble();
    double markMm = 600 + 400 * random.nextDouble();
    TapeError.Tool tape = error.tape(random);
    Figure mark = tape.read("mark", markMm, random, SourceKind.MARK);
    double stopMm = TrueCurves.FROM_MM + 25 + 55 * random.nextDouble();
    double spanMm = 120 + 220 * random.nextDouble();
    List<Node> nodes = new ArrayList<>();
    for (int i = 0; i < heights; i++) {
      double by = i == 0 || i == heights - 1 ? 0 : TapeError.spread(random, 0.3);
      double at = stopMm + spanMm * (i + by) / (heights - 1);
      nodes.add(
          new Node(
              tape.read("h" + i, markMm + at, random).minus(mark),
              tape.read("l" + i, scale * TrueCurves.STRAP.at(at), random),
              Bound.EXACT,
              List.of("@" + i)));
    }
    double from = nodes.get(0).positionMm().value();
    double to =
        from + (random.nextInt(5) == 0 ? -20 * random.nextDouble() : 60 * random.nextDouble());
    // Positions are told from the mark as it was read; the tape's own bias is in both.
    double slip = markMm + tape.bias() - mark.value();
    return new SimulatedStrap(scale, from, to, slip, nodes);
  }

  PositionToSetting.Converted advice() {
    return PositionToSetting.lengthChange(nodes, fromMm, toMm);
  }

  boolean changeHeld() {
    double truth = length(toMm) - length(fromMm);
    return Math.abs(advice().changeMm().value() - truth) <= advice().changeMm().U();
  }

  /** The wheel moves as told when that change is made. */
  boolean wheelHeld() {
    PositionToSetting.Converted moved =
        PositionToSetting.wheelChange(nodes, fromMm, advice().changeMm().value());
    double wanted = length(fromMm) + advice().changeMm().value();
    double low = TrueCurves.FROM_MM;
    double high = TrueCurves.TO_MM;
    double truth = Bisection.zero(x -> scale * TrueCurves.STRAP.at(x) - wanted, high, low);
    return Math.abs(moved.changeMm().value() - (truth - (fromMm - slipMm))) <= moved.changeMm().U();
  }

  /** How fast the length truly changes where it hangs, positive, and as the book has it. */
  boolean ratioHeld() {
    Figure ratio = Ratio.at(nodes, nodes.get(0).positionMm().value());
    double truth = scale * TrueCurves.STRAP.slope(fromMm - slipMm);
    return Math.abs(ratio.value() - truth) <= ratio.U();
  }

  private double length(double bookMm) {
    return scale * TrueCurves.STRAP.at(bookMm - slipMm);
  }
}
