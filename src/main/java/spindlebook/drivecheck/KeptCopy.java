package spindlebook.drivecheck;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Zero;
import spindlebook.entry.Content;
import spindlebook.entry.SignedCorner;
import spindlebook.finding.Finding;
import spindlebook.finding.Finding.Group;
import spindlebook.fold.CarBook;
import spindlebook.fold.SeenSignOff;
import spindlebook.sheet.Cell;

/**
 * A copy as it was kept, one corner at a time, and held against what the same entries give today.
 *
 * @param shown the corner that is shown; null without corners
 * @param again null where it cannot be computed anew: entry n is not what it was
 */
public record KeptCopy(SeenSignOff seen, String since, SignedCorner shown, CopyChanges again) {
  /**
   * @param folded closed until it is asked for
   */
  public record Table(String title, boolean folded, List<Row> rows) {
    /** Whether there is a column of places. */
    public boolean places() {
      return rows.stream().anyMatch(r -> r.at() != null);
    }
  }

  /**
   * @param at where a limit was met; null for any other thing, and where that was not known
   */
  public record Row(String what, Cell at, Cell cell) {}

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
        shown.orElse(null),
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

  public List<Table> tables() {
    return Stream.of(
            table("Figures", false, Group.TOTAL, Group.STOP, Group.HELD_BACK, Group.MARGIN),
            table("Alignment", false, Group.ALIGNMENT, Group.SWIVEL),
            table("Settings and springs", true, Group.SETTING, Group.SPRING),
            table("Limits", true, Group.LIMIT, Group.MID_TRAVEL),
            table("Rules and numbers", true, Group.RULE))
        .filter(t -> !t.rows().isEmpty())
        .toList();
  }

  private Table table(String title, boolean folded, Group... groups) {
    List<Row> rows =
        SignOffCopy.findings(shown).stream()
            .filter(f -> List.of(groups).contains(f.group()))
            .map(this::row)
            .toList();
    return new Table(folded ? title + ": " + rows.size() : title, folded, rows);
  }

  private Row row(Finding of) {
    Zero zero = CopyChanges.zero(shown);
    boolean limit = of.position() != null && !of.isPlace();
    return new Row(
        Capital.of(of.title()),
        limit ? Cell.at(of.position(), zero, kept().unit()) : null,
        Cell.of(of, of, zero, kept().unit()));
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
