package spindlebook.backup;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.IsoFields;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Which copies of a book have become too many: all of the last day stay, then the last one of each
 * day for a month, of each week for a year, of each month for ever.
 *
 * <p>Ages are counted back from the newest copy and not from a clock, so that a wrong one thins
 * nothing, and neither does a summer in which nobody wrote.
 */
final class Thinning {
  private static final Duration ALL = Duration.ofDays(1);
  private static final Duration DAYS = Duration.ofDays(31);
  private static final Duration WEEKS = Duration.ofDays(366);

  private Thinning() {}

  /**
   * Each copy that may go, with the later one that stands for it; the newest never goes.
   *
   * @param copies oldest first
   */
  static Map<BookCopy, BookCopy> mayGo(List<BookCopy> copies) {
    Map<String, BookCopy> stays = new LinkedHashMap<>();
    Map<BookCopy, BookCopy> goes = new LinkedHashMap<>();
    for (int i = copies.size() - 1; i >= 0; i--) {
      BookCopy copy = copies.get(i);
      Duration age = Duration.between(copy.at(), copies.get(copies.size() - 1).at());
      BookCopy later = stays.putIfAbsent(span(copy, age), copy);
      if (later != null) {
        goes.put(copy, later);
      }
    }
    return goes;
  }

  /** What only one copy is kept of, in UTC. */
  private static String span(BookCopy copy, Duration age) {
    LocalDate day = copy.at().atOffset(ZoneOffset.UTC).toLocalDate();
    if (age.compareTo(ALL) <= 0) {
      return copy.file().toString();
    }
    if (age.compareTo(DAYS) <= 0) {
      return day.toString();
    }
    if (age.compareTo(WEEKS) <= 0) {
      return day.get(IsoFields.WEEK_BASED_YEAR) + "w" + day.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR);
    }
    return day.getYear() + "m" + day.getMonthValue();
  }
}
