package spindlebook.curve;

import java.util.List;
import spindlebook.uncertainty.Figure;

/**
 * Tells how much a length (strap, shock, stop gap) changes per millimetre of wheel.
 *
 * <pre>  ratio = dlength / dposition,  mm per mm</pre>
 *
 * <p>Negative for a strap or shock that gets shorter towards bump. With three or more wheel
 * positions it is the slope of the {@link ShapePreservingCubic}; its interpolation source is
 * rectangular with half width |slope − slope of the straight line between the neighbouring
 * readings|. With two it is the slope of the line between them; how the length bends was not read,
 * and a ratio is taken to change by no more than a tenth in 100 mm of wheel ({@link
 * MeasuredCurve}). What both lengths or both positions share (tool, mark) cancels.
 *
 * <p>Assumes a length that was read as it was when pulled straight. Never extrapolated: a position
 * outside the readings is an IllegalArgumentException, fewer than two positions too.
 *
 * <p>Source: derived in docs/methods.md. Worked example: strap 548.8 mm at −260, 519.5 mm at −200
 * mm: ratio −0.4883; each length with u = 0.5 mm of its own: √2 · 0.5 / 60 = 0.0118, and at −260 mm
 * the bend 0.4883 / 1000 · 30 / √3 = 0.0085: u = 0.0145.
 */
public final class Ratio {
  private Ratio() {}

  public static Figure at(List<Node> lengths, double positionMm) {
    return MeasuredCurve.through(lengths).slopeAt(positionMm);
  }

  public static boolean falls(Figure ratio) {
    return ratio.value() < 0 && !level(ratio.value());
  }

  /** No more than 1 mm in 100 of wheel stops no wheel (common practice, no source). */
  static boolean level(double ratio) {
    return Math.abs(ratio) <= 0.01;
  }
}
