package spindlebook.log;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/** What a book that is opened shows of this machine's clock and of newer programs. */
final class FirstLook {
  /** Less than that between two machines is no wrong clock. */
  private static final Duration A_DAY = Duration.ofDays(1);

  private Instant last = Instant.MIN;
  private long newer;

  void at(Entry entry) {
    last = entry.at().isAfter(last) ? entry.at() : last;
    newer += Bodies.isNewer(entry) ? 1 : 0;
  }

  List<String> sentences(Instant now) {
    List<String> sentences = new ArrayList<>();
    if (last.isAfter(now.plus(A_DAY))) {
      sentences.add(
          String.format(
              "This machine's clock says %s, but the book has an entry of %s: set the clock;"
                  + " entries keep their order whatever it says.",
              now.truncatedTo(ChronoUnit.SECONDS), last.truncatedTo(ChronoUnit.SECONDS)));
    }
    if (newer > 0) {
      sentences.add(
          String.format(
              "Entries that only a newer Spindlebook reads: %d. They are kept and do not count"
                  + " here; start the newer version.",
              newer));
    }
    return sentences;
  }
}
