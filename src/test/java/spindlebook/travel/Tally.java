package spindlebook.travel;

import java.util.Locale;
import java.util.concurrent.atomic.LongAdder;

/** How many of how many; counted from several threads. */
final class Tally {
  private final LongAdder of = new LongAdder();
  private final LongAdder met = new LongAdder();

  void count(boolean yes) {
    of.increment();
    if (yes) {
      met.increment();
    }
  }

  double percent() {
    return 100.0 * met.sum() / of.sum();
  }

  @Override
  public String toString() {
    return String.format(Locale.ROOT, "%.2f %%", percent());
  }
}
