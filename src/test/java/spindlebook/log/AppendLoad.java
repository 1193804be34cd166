package spindlebook.log;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Appends as fast as the disk lets it, from one thread and from eight, and prints how many a second
 * got their answer. Not a test: how to run it stands in docs/benchmarks.md.
 */
final class AppendLoad {
  private static final int SECONDS = 5;

  private AppendLoad() {}

  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createTempDirectory(Path.of(arguments[0]), "load");
    try (Book book = Book.open(folder, Clock.systemUTC(), System.out::println)) {
      book.append(List.of(Bench.car("mule"), Bench.corner("lf", "mule")));
      run(book, "warm", 1);
      if (arguments.length > 1) {
        fill(book, Long.parseLong(arguments[1]));
      }
      double one = run(book, "one", 1);
      double eight = run(book, "eight", 8);
      System.out.printf(Locale.ROOT, "ratio %.1f%n", eight / one);
    }
    reopen(folder, "as it is");
    Files.delete(folder.resolve("index.clean"));
    reopen(folder, "with the index built anew");
  }

  /** So long that nothing may grow with it. */
  private static void fill(Book book, long entries) {
    long start = System.nanoTime();
    while (book.lastN() < entries) {
      List<Draft> some = new ArrayList<>();
      for (int i = 0; i < 500; i++) {
        some.add(reading("fill-" + book.lastN() + "-" + i));
      }
      book.append(some);
    }
    System.out.printf(
        Locale.ROOT, "filled to %d in %.1f s%n", book.lastN(), (System.nanoTime() - start) / 1e9);
  }

  private static Draft reading(String key) {
    return Bench.draft(
        key, "reading", Bench.body().put("corner", "lf").put("text", "8 1/4").put("value", 209.55));
  }

  private static double run(Book book, String name, int threads) throws InterruptedException {
    long entries = book.lastN();
    long forces = book.forces();
    long start = System.nanoTime();
    long end = start + SECONDS * 1_000_000_000L;
    List<Thread> senders = new ArrayList<>();
    for (int i = 0; i < threads; i++) {
      String prefix = name + "-" + i + "-";
      Thread sender =
          new Thread(
              () -> {
                for (int n = 0; System.nanoTime() < end; n++) {
                  book.append(reading(prefix + n));
                }
              });
      sender.start();
      senders.add(sender);
    }
    for (Thread sender : senders) {
      sender.join();
    }
    double seconds = (System.nanoTime() - start) / 1e9;
    double rate = (book.lastN() - entries) / seconds;
    System.out.printf(
        Locale.ROOT,
        "%s: %d threads, %.0f appends/s, %.0f forces/s%n",
        name,
        threads,
        rate,
        (book.forces() - forces) / seconds);
    return rate;
  }

  private static void reopen(Path folder, String how) throws IOException {
    long start = System.nanoTime();
    try (Book book = Book.open(folder, Clock.systemUTC(), System.out::println)) {
      System.out.printf(
          Locale.ROOT,
          "opened %s: %d entries, %d MB, %.2f s%n",
          how,
          book.lastN(),
          Files.size(folder.resolve(LogFile.NAME)) >> 20,
          (System.nanoTime() - start) / 1e9);
    }
  }
}
