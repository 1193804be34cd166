package spindlebook.backup;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import spindlebook.log.BookFile;

/** Nothing was copied or put back, in one clear sentence for the terminal or the page. */
public final class BackupRefused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  BackupRefused(String sentence, Object... words) {
    super(String.format(sentence, words));
  }

  private BackupRefused(String sentence, Throwable cause) {
    super(sentence, cause);
  }

  /**
   * A disk that fails, or is not there any more.
   *
   * @param failed an IOException, in an unchecked one perhaps
   */
  static BackupRefused disk(Path where, Exception failed) {
    IOException trouble =
        failed instanceof UncheckedIOException unchecked
            ? unchecked.getCause()
            : (IOException) failed;
    return new BackupRefused(
        String.format("%s cannot be used: %s.", where, BookFile.said(trouble)), trouble);
  }

  static BackupRefused notOne(Path from, Exception trouble) {
    return new BackupRefused(
        from + " is no copy of a book that can be read, nor a folder or a zip with one.", trouble);
  }
}
