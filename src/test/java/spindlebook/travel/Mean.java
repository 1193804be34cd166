package spindlebook.travel;

import java.util.Locale;
import java.util.concurrent.atomic.DoubleAdder;
import java.util.concurrent.atomic.LongAdder;

/** A mean in mm, gathered from several threads. */
final class Mean {
  private final LongAdder of = new LongAdder();
  private final DoubleAdder sum = new DoubleAdder();

  void add(double mm) {
    of.increment();
    sum.add(mm);
  }

  @Override
  public String toString() {
    return String.format(Locale.ROOT, "%.2f mm", sum.sum() / of.sum());
  }
}
