package spindlebook.backup;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import spindlebook.log.BookFile;

/**
 * One whole copy of a book's file in a place, named by when it was made and how far it goes: {@code
 * 2031-05-04T080000Z-n123-0123456789ab.jsonl}.
 *
 * @param at to the second
 * @param n position of its last entry
 * @param hash how the hash of its last line begins, which no line after it vouches for
 */
record BookCopy(Path file, Instant at, long n, String hash) {
  private static final Pattern NAME =
      Pattern.compile("(\\d{4}-\\d\\d-\\d\\dT\\d{6})Z-n(\\d{1,18})-([0-9a-f]{12})\\.jsonl");

  /** No colons: a stick's file system takes none. */
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HHmmss", Locale.ROOT);

  static String time(Instant at) {
    return TIME.format(at.atOffset(ZoneOffset.UTC)) + "Z";
  }

  /** One that is to be made in a folder. */
  static BookCopy in(Path folder, Instant at, long n, String hash) {
    String start = hash.substring(0, 12);
    Path file = folder.resolve(time(at) + "-n" + n + "-" + start + ".jsonl");
    return new BookCopy(file, at, n, start);
  }

  /** Whether that is all of it, as it was made. */
  boolean is(BookFile.Chain chain) {
    return chain.damage() == null && chain.n() == n && chain.hash().startsWith(hash);
  }

  /** Empty for a file that is named otherwise. */
  static Optional<BookCopy> of(Path file) {
    Matcher name = NAME.matcher(String.valueOf(file.getFileName()));
    if (!name.matches()) {
      return Optional.empty();
    }
    try {
      Instant at = LocalDateTime.parse(name.group(1), TIME).toInstant(ZoneOffset.UTC);
      return Optional.of(new BookCopy(file, at, Long.parseLong(name.group(2)), name.group(3)));
    } catch (DateTimeException noTime) {
      return Optional.empty();
    }
  }
}
