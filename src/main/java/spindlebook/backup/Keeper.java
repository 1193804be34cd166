package spindlebook.backup;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.Consumer;
import spindlebook.log.Book;
import spindlebook.log.BookFile;
import spindlebook.log.BookRefused;
import spindlebook.log.WholeFile;

/** Keeps one place up to the book: knows when it is due, and how it came out. */
final class Keeper {
  static final Duration QUIET = Duration.ofMinutes(10);
  static final Duration AT_LATEST = Duration.ofHours(1);
  static final Duration DAILY = Duration.ofDays(1);

  private final Book book;
  private final Path data;
  private final Place place;
  private final Consumer<String> tell;
  private volatile Standing standing;
  private Instant tried;
  private Instant looked;
  private long upTo = -1;
  private Instant lacksSince;

  Keeper(String name, Book book, Path data, Place place, Consumer<String> tell) {
    this.book = book;
    this.data = data;
    this.place = place;
    this.tell = tell;
    this.standing = Standing.unseen(name, place.folder);
  }

  Standing standing() {
    return standing;
  }

  /**
   * Whether it is time: at the start, when it is back, ten quiet minutes after a change, an hour
   * after one at the latest, and once a day.
   *
   * @param changed when the book was last written to, as far as anybody looked
   */
  boolean due(Instant now, Instant changed) {
    boolean lacks = book.lastN() != upTo;
    if (lacks && lacksSince == null) {
      lacksSince = now;
    }
    if (!there() || book.lastN() == 0) {
      return false;
    }
    boolean again = tried == null || gone(QUIET, tried, now);
    return tried == null
        || gone(DAILY, tried, now)
        || lacks && again && (gone(QUIET, changed, now) || gone(AT_LATEST, lacksSince, now));
  }

  /** A clock that was set back shows a time that is still to come: that one is over too. */
  private static boolean gone(Duration time, Instant since, Instant now) {
    return !since.plus(time).isAfter(now) || since.isAfter(now);
  }

  /** Whether the place is there; one that had copies and now has none is not, but its mount. */
  private boolean there() {
    boolean there =
        place.isBeside(data)
            || Files.isDirectory(place.folder)
                && (Files.isDirectory(place.books()) || !hadCopies());
    if (!there && standing.here()) {
      standing = standing.away();
      tell.accept("Backups: " + place.folder + " is not there now; it is caught up when it is.");
    }
    if (there && !standing.here()) {
      tried = null;
    }
    return there;
  }

  private Path known() {
    return Place.beside(data).folder.resolve("places.txt");
  }

  private boolean hadCopies() {
    try {
      return Files.exists(known())
          && Files.readAllLines(known()).contains(place.folder.toAbsolutePath().toString());
    } catch (IOException unreadable) {
      return false;
    }
  }

  private void remember() throws IOException {
    if (!place.isBeside(data) && !hadCopies()) {
      String known = Files.exists(known()) ? Files.readString(known()) : "";
      Files.createDirectories(known().getParent());
      WholeFile.put(known(), (known + place.folder.toAbsolutePath() + "\n").getBytes(UTF_8));
    }
  }

  /** Brings the place up to the book now. */
  void run(Instant now, Consumer<String> progress) {
    if (!there()) {
      return;
    }
    if (looked == null || gone(DAILY, looked, now)) {
      place.lookAgain();
      looked = now;
    }
    tried = now;
    String problem = null;
    Backup done = null;
    try {
      BookFile.Extent extent = book.extent();
      done = Backup.of(data, extent, place, now, progress);
      upTo = extent.n();
      lacksSince = null;
      remember();
    } catch (BackupRefused | BookRefused refused) {
      problem = refused.getMessage();
    } catch (IOException trouble) {
      problem = BackupRefused.disk(data, trouble).getMessage();
    }
    if (problem != null && !problem.equals(standing.problem())) {
      tell.accept("No backup: " + problem);
    }
    standing = seen(done, problem);
  }

  private Standing seen(Backup done, String problem) {
    try {
      Place.Good good = done == null ? place.newestGood(book.id()) : null;
      return new Standing(
          standing.name(),
          place.folder,
          true,
          !place.isBeside(data) && sameDisk(),
          done != null ? done.newest() : good == null ? null : good.copy(),
          place.copies(book.id()),
          place.used(),
          place.left(),
          done == null ? 0 : done.lacking(),
          problem);
    } catch (IOException | UncheckedIOException trouble) {
      String why =
          problem == null ? BackupRefused.disk(place.folder, trouble).getMessage() : problem;
      return new Standing(
          standing.name(), place.folder, true, false, null, List.of(), 0, 0, 0, why);
    }
  }

  private boolean sameDisk() throws IOException {
    FileStore here = Files.getFileStore(data);
    return here.equals(Files.getFileStore(place.folder));
  }
}
