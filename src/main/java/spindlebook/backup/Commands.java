package spindlebook.backup;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.function.Consumer;
import spindlebook.log.BookFile;

/** What the command line asks for; what it throws is one sentence. */
public final class Commands {
  private Commands() {}

  /**
   * Makes a backup, also while a program has the book open.
   *
   * @param place null for the one beside the book
   * @return the exit code: 0 when the copy lacks nothing
   */
  public static int backup(Path data, Path place, Clock clock, Consumer<String> tell) {
    if (place != null && !Files.isDirectory(place.toAbsolutePath().getParent())) {
      throw new BackupRefused(
          "There is no folder %s: plug the stick in, or make the folder.",
          place.toAbsolutePath().getParent());
    }
    Place to = place == null ? Place.beside(data) : new Place(place);
    Backup done = Backup.of(data, BookFile.extent(data), to, clock.instant(), step -> {});
    tell.accept(done.sentence());
    return done.lacking() == 0 ? 0 : 1;
  }

  /**
   * Puts a book back into its folder, or says what that would do.
   *
   * @param from a copy, a place, a folder with a book, or a downloaded zip
   */
  public static int restore(
      Path data, Path from, boolean dryRun, Clock clock, Consumer<String> tell) {
    if (dryRun) {
      Restore.tryOut(data, from, tell);
    } else {
      Restore.run(data, from, clock.instant(), tell);
    }
    return 0;
  }

  /**
   * Takes another book, or one car of it, into this one.
   *
   * @param from a copy, a place, a folder with a book, or a downloaded zip
   * @param car its key or name; null for all of the book
   */
  public static int bringIn(Path data, Path from, String car, Clock clock, Consumer<String> tell) {
    Import.run(data, from, car, clock, tell);
    return 0;
  }

  /** Looks a book through; 0 only when all is good. */
  public static int verify(Path book, Consumer<String> tell) {
    return Verify.of(book, tell) ? 0 : 1;
  }
}
