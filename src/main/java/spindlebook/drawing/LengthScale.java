package spindlebook.drawing;

/** What the tape is printed in: quarters of an inch, or half centimetres. */
public enum LengthScale {
  /** Short ticks every 1/4 in, middle every 1/2 in, long ones with a numeral every inch. */
  INCH(6.35, 2, 4, 4, 1),
  /** Short ticks every 5 mm, middle every centimetre, long ones with a numeral every 5 cm. */
  MM(5, 2, 10, 10, 5);

  private final double tickMm;
  private final int middleEvery;
  private final int longEvery;
  private final int numeralEvery;
  private final int numeralStep;

  LengthScale(double tickMm, int middleEvery, int longEvery, int numeralEvery, int numeralStep) {
    this.tickMm = tickMm;
    this.middleEvery = middleEvery;
    this.longEvery = longEvery;
    this.numeralEvery = numeralEvery;
    this.numeralStep = numeralStep;
  }

  double tickMm() {
    return tickMm;
  }

  /** Length of a tick as a share of a long one. */
  double tickShare(long tick) {
    return tick % longEvery == 0 ? 1 : tick % middleEvery == 0 ? 0.7 : 0.42;
  }

  boolean numbered(long tick, int everyNth) {
    return tick % ((long) numeralEvery * everyNth) == 0;
  }

  /** Distance between two numerals. */
  double numeralMm() {
    return tickMm * numeralEvery;
  }

  /** What stands beside the tick: inches or centimetres from zero, without a sign, as on a tape. */
  String numeral(long tick) {
    return Long.toString(Math.abs(tick) / numeralEvery * numeralStep);
  }
}
