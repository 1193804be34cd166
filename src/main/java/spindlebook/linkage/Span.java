package spindlebook.linkage;

import spindlebook.curve.Bisection;

/**
 * Between what a quantity stays over a part of the travel, its turning points among them: how much
 * bump steer there is, how long a shock must be open and closed.
 *
 * @param leastAtMm, mostAtMm the heights where it does
 */
public record Span(double least, double leastAtMm, double most, double mostAtMm) {
  private static final double STEP_MM = 10;

  /**
   * From one height to another at a rack position; its turning points where the exact rate is 0.
   *
   * @throws LinkageRefused where the linkage does not get there
   */
  public static Span of(
      Linkage linkage, Quantity quantity, double fromMm, double toMm, double rackMm) {
    Pose at = linkage.at(fromMm, rackMm).pose();
    Span span = at(quantity, at);
    int steps = (int) Math.max(1, Math.ceil(Math.abs(toMm - fromMm) / STEP_MM));
    for (int i = 1; i <= steps; i++) {
      Pose from = at;
      at = linkage.at(fromMm + (toMm - fromMm) * i / steps, from).pose();
      double before = quantity.perMm(from);
      double after = quantity.perMm(at);
      if (before * after < 0) {
        double sign = Math.signum(after);
        double turn =
            Bisection.zero(
                h -> sign * quantity.perMm(linkage.at(h, from).pose()),
                from.heightMm(),
                at.heightMm());
        span = span.and(at(quantity, linkage.at(turn, from).pose()));
      }
      span = span.and(at(quantity, at));
    }
    return span;
  }

  private static Span at(Quantity quantity, Pose pose) {
    double value = quantity.of(pose);
    return new Span(value, pose.heightMm(), value, pose.heightMm());
  }

  public Span and(Span other) {
    return new Span(
        Math.min(least, other.least),
        least <= other.least ? leastAtMm : other.leastAtMm,
        Math.max(most, other.most),
        most >= other.most ? mostAtMm : other.mostAtMm);
  }

  public double range() {
    return most - least;
  }
}
