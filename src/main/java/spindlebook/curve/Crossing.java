package spindlebook.curve;

/** One place where a curve meets a level. Positions are in millimetres. */
public sealed interface Crossing {
  /**
   * The curve goes through the level. At the curve's first or last point, where it can only leave
   * or arrive, it counts as going through.
   *
   * @param rising the curve rises there, seen towards greater x
   */
  record At(double x, boolean rising) implements Crossing {}

  /** The curve lies on the level from one place to another. */
  record Plateau(double from, double to) implements Crossing {}

  /** The curve reaches the level and turns back: not a crossing. */
  record Touch(double x) implements Crossing {}
}
