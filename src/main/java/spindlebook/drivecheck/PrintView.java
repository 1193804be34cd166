package spindlebook.drivecheck;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.advice.DriveCheck;
import spindlebook.advice.ThingFirst;
import spindlebook.card.Capital;
import spindlebook.card.TravelWords;
import spindlebook.corner.EndView;
import spindlebook.drawing.FigureText;
import spindlebook.finding.Finding;
import spindlebook.finding.Findings;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.InForce;
import spindlebook.sheet.Cell;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Total;

/**
 * One corner on one sheet of paper, to be read at arm's length: what does not fit is counted, and
 * stands on the page.
 *
 * @param alignment what is known of it, in one sentence; empty when nothing is
 * @param first what is to see to at this corner, that does not stand with its end
 */
public record PrintView(
    DriveCheck.Checked at, TravelWords words, String alignment, List<String> first, String signed) {
  private static final int MOST_FIRST = 6;

  /** Alignment takes the room of the others. */
  private static final int MOST_FIRST_ALIGNED = 4;

  private static final int MOST_SETTINGS = 12;

  static PrintView of(CarBook history, DriveCheck check, DriveCheck.Checked at) {
    Card card = at.card();
    return new PrintView(
        at,
        new TravelWords(card, at.travel()),
        alignment(card, SignOffCopy.mirror(check, at)),
        CheckWords.of(history, check).stream()
            .filter(l -> card.corner().equals(l.thing().corner()))
            .filter(l -> !toldWithItsEnd(at, l.thing()))
            .map(l -> Capital.of(l.thing().why().words()) + ": " + l.words())
            .toList(),
        CheckLine.signed(history).orElse("Not signed off yet."));
  }

  private static String alignment(Card card, Optional<Card> mirror) {
    String all =
        Findings.of(card, mirror, false).all(Finding.Group.ALIGNMENT).stream()
            .filter(f -> f.figure() != null)
            .map(
                f ->
                    f.name()
                        + " "
                        + Cell.text(f, f.figure(), card.details().unit(), false).words()
                        + (f.word().isEmpty() ? "" : ", " + f.word()))
            .collect(Collectors.joining("; "));
    return all.isEmpty() ? "" : all + ".";
  }

  /** The worst limit of an end stands in its finding already, or what reads it with others. */
  private static boolean toldWithItsEnd(DriveCheck.Checked at, ThingFirst thing) {
    if (thing.end() == null) {
      return false;
    }
    EndFindings end = at.travel().at(thing.end());
    return end.limits().stream()
        .filter(l -> l.outcome() == end.outcome())
        .limit(1)
        .anyMatch(thing.limits()::contains);
  }

  public List<EndView> ends() {
    return Stream.of(at.travel().droop(), at.travel().bump())
        .map(e -> new EndView(at.card(), words, e, true))
        .toList();
  }

  private Total total() {
    Total could = at.travel().asItCouldBe();
    return could.mm().isPresent() ? could : at.travel().asSet();
  }

  /** Null where there is no total. */
  public FigureText usable() {
    return total().mm().map(words.lengths()::figure).orElse(null);
  }

  /** What the one large figure is: as it could be, as set, or why there is none. */
  public String usableWord() {
    return "usable travel, "
        + (total().mm().isEmpty()
            ? "no total yet"
            : (total().atLeast() ? "at least, " : "")
                + (total().equals(at.travel().asItCouldBe()) ? "as it could be" : "as set"));
  }

  /** In force, those that nobody has said left out. */
  public List<InForce> settings() {
    return at.card().adjusters().stream()
        .filter(a -> a.setting() != null)
        .limit(MOST_SETTINGS)
        .toList();
  }

  public List<String> shown() {
    return first.stream().limit(alignment.isEmpty() ? MOST_FIRST : MOST_FIRST_ALIGNED).toList();
  }
}
