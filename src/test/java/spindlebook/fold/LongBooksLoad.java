package spindlebook.fold;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import spindlebook.travel.CornerTravel;

/**
 * What it takes to fold books that grew in one direction only and to say what is found, at an
 * eighth of their length and whole, in milliseconds of processor and in memory asked for. Not a
 * test: how to run it stands in docs/benchmarks.md.
 */
final class LongBooksLoad {
  private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  /** Processor time of the thread, and the memory it asked for. */
  private record Cost(double millis, double megabytes) {}

  private LongBooksLoad() {}

  public static void main(String[] arguments) {
    int n = Integer.parseInt(arguments[0]);
    print("marks taken as at the one before", WorkOfAFoldTest::marksAsBefore, n);
    print("corrections of corrections", WorkOfAFoldTest::corrections, n);
    print("readings of one gap in one round", WorkOfAFoldTest::repeats, 5 * n / 2);
    print("heights and readings, a change every ten", WorkOfAFoldTest::rounds, n / 10);
  }

  private static void print(String what, IntFunction<List<String>> lines, int n) {
    List<Noted> eighth = HandBooks.of(lines.apply(n / 8)).entries();
    List<Noted> whole = HandBooks.of(lines.apply(n)).entries();
    List<Cost> small = new ArrayList<>();
    List<Cost> large = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      small.add(cost(eighth));
      large.add(cost(whole));
    }
    Cost before = middle(small);
    Cost after = middle(large);
    System.out.printf(
        Locale.ROOT,
        "| %s, %d entries | %.0f | %.0f | %.1f | %.1f |%n",
        what,
        whole.size(),
        before.millis(),
        after.millis(),
        after.millis() / Math.max(10, before.millis()),
        after.megabytes() / before.megabytes());
  }

  private static Cost middle(List<Cost> costs) {
    return costs.stream().sorted(Comparator.comparingDouble(Cost::millis)).toList().get(2);
  }

  private static Cost cost(List<Noted> entries) {
    long start = THREADS.getCurrentThreadCpuTime();
    long bytes = THREADS.getCurrentThreadAllocatedBytes();
    Card card = CarBook.of(entries).card("lf");
    card.readAgain();
    CornerTravel.of(card);
    return new Cost(
        (THREADS.getCurrentThreadCpuTime() - start) / 1e6,
        (THREADS.getCurrentThreadAllocatedBytes() - bytes) / 1e6);
  }
}
