package spindlebook.drivecheck;

import java.util.List;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.entry.Content;
import spindlebook.entry.SignedCorner;
import spindlebook.fold.CarBook;
import spindlebook.fold.SeenSignOff;

/**
 * A copy as it was kept, one corner at a time, and held against what the same entries give today.
 *
 * @param shown the corner that is shown; null without corners
 * @param again null where it cannot be computed anew: entry n is not what it was
 */
public record KeptCopy(SeenSignOff seen, String since, SignedWords shown, CopyChanges again) {
  /**
   * @param sameChain whether entry n of this book is the one it was signed at
   * @param asked the corner to show; else the first
   */
  static KeptCopy of(CarBook history, SeenSignOff seen, boolean sameChain, Optional<String> asked) {
    Content.SignOff kept = seen.signOff();
    Optional<SignedCorner> shown =
        kept.corners().stream()
            .filter(c -> asked.filter(c.corner()::equals).isPresent())
            .findFirst()
            .or(() -> kept.corners().stream().findFirst());
    return new KeptCopy(
        seen,
        CheckLine.since(history, seen),
        shown.map(c -> new SignedWords(c, kept.unit())).orElse(null),
        sameChain ? again(history, kept) : null);
  }

  private static CopyChanges again(CarBook history, Content.SignOff kept) {
    List<SignedCorner> today = SignOffCopy.anew(history, kept);
    return today.equals(kept.corners())
        ? new CopyChanges(List.of())
        : CopyChanges.between(kept.corners(), today, kept.unit(), kept.unit());
  }

  public Content.SignOff kept() {
    return seen.signOff();
  }

  public String outcome() {
    return Capital.of(CheckLine.outcome(seen));
  }

  /** Whether computing it anew gives the same. */
  public String computedAnew() {
    if (again == null) {
      return "Entry "
          + kept().n()
          + " of this book is not the one it was signed at, so it cannot be computed anew here.";
    }
    return "Computed anew from entries 1 to "
        + kept().n()
        + (again.none() ? " today: the same." : " today, this is different:");
  }

  public List<CopyChanges.Row> differs() {
    return again == null ? List.of() : again.rows();
  }
}
