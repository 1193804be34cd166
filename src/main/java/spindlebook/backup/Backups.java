package spindlebook.backup;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import spindlebook.card.Days;
import spindlebook.log.Book;

/**
 * The backups of the book that is open: made by themselves by a thread of their own, which nobody
 * who saves something waits for.
 */
public final class Backups implements AutoCloseable {
  private static final long FIRST_LOOK_MILLIS = 3_000;
  private static final long LOOK_EVERY_MILLIS = 30_000;
  private static final Duration OLD = Duration.ofDays(1);

  private final Book book;
  private final Clock clock;
  private final Consumer<String> tell;
  private final List<Keeper> keepers = new ArrayList<>();
  private final Object working = new Object();
  private Thread thread;
  private boolean asked;
  private volatile boolean closing;
  private volatile String doing;
  private long seen = -1;
  private Instant changed = Instant.EPOCH;

  /**
   * @param second another place, on a stick or a NAS; null for none
   * @param tell gets one sentence when a backup does not work
   */
  public Backups(Book book, Path data, Path second, Clock clock, Consumer<String> tell) {
    this.book = book;
    this.clock = clock;
    this.tell = tell;
    keepers.add(new Keeper("On this machine", book, data, Place.beside(data), tell));
    if (second != null) {
      keepers.add(new Keeper("Second place", book, data, new Place(second), tell));
    }
  }

  /** From here on they are made by themselves, the first one in a moment. */
  public synchronized void byThemselves() {
    if (thread == null && !closing) {
      thread = new Thread(this::run, "backups");
      thread.setDaemon(true);
      thread.setPriority(Thread.MIN_PRIORITY);
      thread.start();
    }
  }

  /** One now, whatever is due. */
  synchronized void askNow() {
    asked = true;
    doing = "Starting";
    byThemselves();
    notifyAll();
  }

  private void run() {
    for (long wait = FIRST_LOOK_MILLIS; waited(wait); wait = LOOK_EVERY_MILLIS) {
      look();
    }
  }

  /** False when there is nothing more to wait for. */
  private synchronized boolean waited(long millis) {
    long until = System.nanoTime() + millis * 1_000_000;
    try {
      for (long left = millis; left > 0 && !asked && !closing; ) {
        wait(left);
        left = (until - System.nanoTime()) / 1_000_000;
      }
    } catch (InterruptedException ended) {
      return false;
    }
    return !closing;
  }

  /** Makes what is due. */
  void look() {
    boolean all;
    synchronized (this) {
      all = asked;
      asked = false;
    }
    synchronized (working) {
      Instant now = clock.instant();
      if (book.lastN() != seen) {
        changed = seen < 0 ? Instant.EPOCH : now;
        seen = book.lastN();
      }
      try {
        for (Keeper keeper : keepers) {
          if (keeper.due(now, changed) || all) {
            keeper.run(now, this::step);
          }
        }
      } catch (CancellationException closed) {
        // What was begun is under no name yet; the next start begins it again.
      } catch (RuntimeException unforeseen) {
        tell.accept("Backups failed, and are tried again: " + unforeseen);
      } finally {
        doing = null;
      }
    }
  }

  private void step(String words) {
    if (closing) {
      throw new CancellationException();
    }
    doing = words;
  }

  /** What is being done just now; empty when nothing is. */
  Optional<String> doing() {
    return Optional.ofNullable(doing);
  }

  List<Standing> standings() {
    return keepers.stream().map(Keeper::standing).toList();
  }

  Book book() {
    return book;
  }

  /** One short sentence when no place has a good copy that is young enough; else empty. */
  public Optional<String> warning() {
    if (book.lastN() == 0) {
      return Optional.empty();
    }
    BookCopy newest = null;
    boolean failed = false;
    for (Standing standing : standings()) {
      failed |= standing.problem() != null;
      if (standing.good() != null
          && (newest == null || standing.good().at().isAfter(newest.at()))) {
        newest = standing.good();
      }
    }
    if (newest == null) {
      return failed ? Optional.of("No good backup of this book.") : Optional.empty();
    }
    boolean lacks = !book.lastHash().startsWith(newest.hash());
    return lacks && newest.at().plus(OLD).isBefore(clock.instant())
        ? Optional.of("No backup since " + Days.minute(newest.at()) + ".")
        : Optional.empty();
  }

  /** Stops, in the middle of one if need be. */
  @Override
  public void close() {
    Thread last;
    synchronized (this) {
      closing = true;
      last = thread;
      notifyAll();
    }
    try {
      if (last != null) {
        last.join();
      }
    } catch (InterruptedException hurried) {
      Thread.currentThread().interrupt();
    }
  }
}
