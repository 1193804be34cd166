package spindlebook.units;

/**
 * What a rate, a force or a mass is counted in.
 *
 * <p>One pound is exactly 0.45359237 kg (international yard and pound agreement, 1959); what it
 * weighs, and a kilogram, by standard gravity, 9.80665 m/s² (3rd CGPM, 1901).
 */
public enum AmountUnit {
  N_PER_MM("N/mm", true, 1),
  LB_PER_IN("lb/in", true, 0.45359237 * AmountUnit.GRAVITY / 25.4),
  NEWTON("N", false, 1),
  POUND("lb", false, 0.45359237 * AmountUnit.GRAVITY),
  KILOGRAM("kg", false, AmountUnit.GRAVITY);

  private static final double GRAVITY = 9.80665;

  private final String word;
  private final boolean rate;
  private final double si;

  AmountUnit(String word, boolean rate, double si) {
    this.word = word;
    this.rate = rate;
    this.si = si;
  }

  public String word() {
    return word;
  }

  /** Whether it is a force for each length; else a force, or the mass that weighs so much. */
  public boolean rate() {
    return rate;
  }

  /** N/mm, or N. */
  double si() {
    return si;
  }

  /** N/mm or N in this unit. */
  public double of(double newtons) {
    return newtons / si;
  }

  /** A mass in kg that weighs so many newtons. */
  public static double kg(double newtons) {
    return newtons / GRAVITY;
  }
}
