package spindlebook.spring;

/** How a strap gets longer with use; t in hours, length in mm. */
public enum StrapShape {
  /** L0 + c t: it creeps at one pace. */
  STRAIGHT(false),
  /** L0 + b ln(1 + t/1 h): ever more slowly, without an end. */
  LOG(false),
  /** L0 + a (1 − exp(−t/τ)): it takes a set and stays. */
  SETTLING(true),
  /** L0 + a (1 − exp(−t/τ)) + c t: it takes a set and creeps on. */
  SETTLING_AND_CREEP(true);

  /** Whether a time τ is fitted beside the factors of the columns. */
  final boolean settles;

  StrapShape(boolean settles) {
    this.settles = settles;
  }

  /** What L0, a or b, and c are the factors of. */
  double[] columns(double hours, double tauHours) {
    double set = -Math.expm1(-hours / tauHours);
    return switch (this) {
      case STRAIGHT -> new double[] {1, hours};
      case LOG -> new double[] {1, Math.log1p(hours)};
      case SETTLING -> new double[] {1, set};
      case SETTLING_AND_CREEP -> new double[] {1, set, hours};
    };
  }
}
