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
}
