package spindlebook.log;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * The one thread that writes. Whoever comes while it waits for the disk is written together with
 * the others next time, so that one force serves all of them.
 */
final class Writer implements AutoCloseable {
  /** A batch stops growing here; it ends up larger only by one submission. */
  private static final int FULL = 4 << 20;

  private final LogFile log;
  private final Index index;
  private final Clock clock;
  private final Consumer<String> tell;
  private final List<Consumer<List<Entry>>> followers = new CopyOnWriteArrayList<>();
  private final List<Consumer<List<Entry>>> listeners = new CopyOnWriteArrayList<>();
  private final BlockingQueue<Waiting> queue = new LinkedBlockingQueue<>();
  private final Waiting last = new Waiting(List.of());
  private final Thread thread = new Thread(this::run, "book-writer");
  private boolean closed;
  private boolean littleRoom;

  /** Who handed in drafts and waits for them as entries. */
  private static final class Waiting {
    final List<Draft> drafts;
    final CompletableFuture<List<Entry>> answer = new CompletableFuture<>();

    /** As they are to stand in the book; theirs once they are on the disk. */
    List<Entry> entries;

    Waiting(List<Draft> drafts) {
      this.drafts = List.copyOf(drafts);
    }
  }

  Writer(LogFile log, Index index, Clock clock, Consumer<String> tell) {
    this.log = log;
    this.index = index;
    this.clock = clock;
    this.tell = tell;
  }

  void start() {
    index.onLost(() -> queue.add(new Waiting(List.of())));
    tellOfLittleRoom();
    thread.start();
  }

  /** Once each time it gets so little. */
  private void tellOfLittleRoom() {
    Optional<String> warning = log.room().warning();
    if (warning.isPresent() && !littleRoom) {
      tell.accept(warning.get());
    }
    littleRoom = warning.isPresent();
  }

  void onAppended(Consumer<List<Entry>> listener) {
    listeners.add(listener);
  }

  void followedBy(Consumer<List<Entry>> follower) {
    followers.add(follower);
  }

  /** The drafts as they stand in the book, in the order handed in. */
  List<Entry> append(List<Draft> drafts) {
    Waiting waiting = new Waiting(drafts);
    if (Thread.currentThread() == thread) {
      throw new IllegalStateException("the writer would wait for itself");
    }
    synchronized (queue) {
      if (closed) {
        throw BookRefused.disk(null, "The book is closed; Spindlebook is stopping.");
      }
      queue.add(waiting);
    }
    try {
      return waiting.answer.join();
    } catch (CompletionException failed) {
      if (failed.getCause() instanceof BookRefused refused) {
        throw refused;
      }
      throw failed;
    }
  }

  private void run() {
    boolean more = true;
    while (more) {
      more = keepWhoWaits();
    }
  }

  /** Writes one batch; false when the book is to be closed after it. */
  private boolean keepWhoWaits() {
    Waiting next = waitForOne();
    if (next != last && index.mend()) {
      followers.forEach(follower -> tell(follower, List.of()));
    }
    Instant at = clock.instant().truncatedTo(ChronoUnit.MILLIS);
    Batch batch = new Batch(log, at);
    List<Waiting> taken = new ArrayList<>();
    while (next != null && next != last) {
      try {
        if (next.drafts.isEmpty()) {
          log.refuseIfNothingIsTaken();
        }
        next.entries = batch.add(next.drafts);
        taken.add(next);
      } catch (RuntimeException | Error refused) {
        next.answer.completeExceptionally(refused);
      }
      next = batch.size() < FULL ? queue.poll() : null;
    }
    try {
      keep(batch, taken);
    } catch (BookRefused refused) {
      refuse(taken, refused);
    } catch (RuntimeException | Error unforeseen) {
      refuse(taken, log.breakDown(unforeseen));
    }
    return next != last;
  }

  private static void refuse(List<Waiting> taken, BookRefused refused) {
    taken.forEach(waiting -> waiting.answer.completeExceptionally(refused));
  }

  /** Null when nobody came for a while, and the index is to be mended. */
  private Waiting waitForOne() {
    while (true) {
      try {
        return index.isOpen() ? queue.take() : queue.poll(1, TimeUnit.SECONDS);
      } catch (InterruptedException nobodyShould) {
        tell.accept("The book's writer was interrupted and goes on.");
      }
    }
  }

  private void keep(Batch batch, List<Waiting> taken) {
    List<Entry> entries = List.copyOf(batch.entries);
    if (!entries.isEmpty()) {
      log.append(batch.lines());
      log.publish(entries, batch.lengths, batch.lastHash());
      index.apply(entries);
      followers.forEach(follower -> tell(follower, entries));
    }
    taken.forEach(waiting -> waiting.answer.complete(waiting.entries));
    if (!entries.isEmpty()) {
      listeners.forEach(listener -> tell(listener, entries));
      tellOfLittleRoom();
    }
  }

  private void tell(Consumer<List<Entry>> listener, List<Entry> entries) {
    try {
      listener.accept(entries);
    } catch (RuntimeException | Error trouble) {
      // The entries are on the disk, whatever becomes of who watches.
      tell.accept("Somebody who watches the book failed: " + trouble.getClass().getSimpleName());
    }
  }

  /** Writes what still waits, then stops. */
  @Override
  public void close() {
    synchronized (queue) {
      if (!closed) {
        closed = true;
        queue.add(last);
      }
    }
    boolean interrupted = false;
    while (thread.isAlive()) {
      try {
        thread.join();
      } catch (InterruptedException later) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
