package spindlebook.travel;

/** What the owner demands of a value. Exactly at the limit keeps the rule. */
public sealed interface Rule {
  double limit();

  boolean kept(double value);

  /** How far the value is inside its rule: 0 at the limit, negative when the rule is broken. */
  double clearance(double value);

  /** A gap, a thread engagement, a slack: at least the limit. */
  record AtLeast(double limit) implements Rule {
    @Override
    public boolean kept(double value) {
      return value >= limit;
    }

    @Override
    public double clearance(double value) {
      return value - limit;
    }
  }

  /** An angle of a joint: at most the limit. */
  record AtMost(double limit) implements Rule {
    @Override
    public boolean kept(double value) {
      return value <= limit;
    }

    @Override
    public double clearance(double value) {
      return limit - value;
    }
  }
}
