package spindlebook.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import spindlebook.entry.Content;
import spindlebook.entry.HappeningKind;
import spindlebook.entry.TelltaleKind;
import spindlebook.fold.CarBook;
import spindlebook.fold.Noted;
import spindlebook.fold.SeenUse;
import spindlebook.fold.Written;

/**
 * What is to be looked at between two drives, and what of it was, as the book knows it. What was
 * looked at since the last drive is of this re-check; what came before that drive was of an earlier
 * one.
 *
 * @param drive the last drive; empty before the first
 * @param before the last entry of the re-check before that drive; null where there was none
 * @param touched changes of settings and happenings since then, newest first, drives left out
 */
public record ReCheck(Optional<SeenUse> drive, Noted before, List<Noted> touched) {
  public static ReCheck of(CarBook book) {
    Optional<SeenUse> drive = book.lastUse();
    Noted before = null;
    for (Noted entry : book.entries()) {
      Content content = book.standing(entry.key()).orElse(null);
      if (looks(content) && drive.isPresent() && entry.n() < drive.get().n()) {
        before = entry;
      }
    }
    long since = before == null ? 0 : before.n();
    List<Noted> touched = new ArrayList<>();
    for (Noted entry : book.entries()) {
      if (entry.n() > since && touches(book.standing(entry.key()).orElse(null))) {
        touched.add(entry);
      }
    }
    touched.sort(Comparator.comparingLong(Noted::n).reversed());
    return new ReCheck(drive, before, touched);
  }

  /** Whether an entry was made since the last drive. */
  public boolean since(long n) {
    return n > drive.map(SeenUse::n).orElse(0L);
  }

  /** The last telltale of a kind at a corner; empty when it was not read since the last drive. */
  public Optional<Written<Content.Telltale>> read(CarBook book, String corner, TelltaleKind what) {
    return book.telltales().stream()
        .filter(t -> t.content().corner().equals(corner) && t.content().what() == what)
        .filter(t -> since(t.n()))
        .reduce((earlier, later) -> later);
  }

  private static boolean looks(Content content) {
    return content instanceof Content.Telltale
        || (content instanceof Content.Fastener f && f.tight() != null);
  }

  private static boolean touches(Content content) {
    return content instanceof Content.Adjustment
        || (content instanceof Content.Happening h && h.what() != HappeningKind.DRIVEN);
  }
}
