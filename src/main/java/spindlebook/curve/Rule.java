package spindlebook.curve;

import java.util.ArrayList;
import java.util.List;
import spindlebook.definition.Keep;

/** What the owner demands of a value. Exactly at the limit keeps the rule. */
public sealed interface Rule {
  /** What is demanded, one rule a number. */
  static List<Rule> of(Keep keep) {
    List<Rule> rules = new ArrayList<>();
    if (keep.least() != null) {
      rules.add(new AtLeast(keep.least().mm()));
    }
    if (keep.most() != null) {
      rules.add(new AtMost(keep.most().mm()));
    }
    if (keep.mostAngle() != null) {
      rules.add(new AtMost(keep.mostAngle().rad()));
    }
    return rules;
  }

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
