package spindlebook.drivecheck;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.align.AlignedText;
import spindlebook.alignment.AlignedFinding;
import spindlebook.alignment.MeasuredAlignment;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.finding.LimitNames;
import spindlebook.travel.DriveCheck;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Limit;
import spindlebook.travel.ThingFirst;
import spindlebook.travel.Total;
import spindlebook.web.Lengths;
import spindlebook.web.State;

/** Lays a corner out for one sheet: what does not fit is counted, and stands on the page. */
final class PrintViews {
  private static final int MOST_FIRST = 6;

  /** Alignment takes the room of the others. */
  private static final int MOST_FIRST_ALIGNED = 4;

  private static final int MOST_SETTINGS = 12;

  private final TravelWords words;
  private final Lengths lengths;

  private PrintViews(TravelWords words) {
    this.words = words;
    this.lengths = words.lengths();
  }

  static PrintView of(CarBook history, DriveCheck check, DriveCheck.Checked at) {
    Card card = at.card();
    List<String> first =
        CheckWords.of(history, check).stream()
            .filter(l -> card.corner().equals(l.thing().corner()))
            .filter(l -> !toldWithItsEnd(at, l.thing()))
            .map(l -> Capital.of(l.thing().why().words()) + ": " + l.words())
            .toList();
    PrintViews views = new PrintViews(new TravelWords(card, at.travel()));
    Total could = at.travel().asItCouldBe();
    Total set = at.travel().asSet();
    Total told = could.mm().isPresent() ? could : set;
    String word =
        told.mm().isEmpty()
            ? "no total yet"
            : (told.atLeast() ? "at least, " : "")
                + (told.equals(could) ? "as it could be" : "as set");
    String alignment = views.alignment(card, SignOffCopy.mirror(check, at));
    int most = alignment.isEmpty() ? MOST_FIRST : MOST_FIRST_ALIGNED;
    return new PrintView(
        Shown.state(at.travel().outcome()),
        "usable travel, " + word,
        told.mm().map(views.lengths::figure).orElse(null),
        List.of(views.end(at.travel().droop()), views.end(at.travel().bump())),
        "Positions are " + views.words.zero().words() + ", + towards bump.",
        card.adjusters().stream()
            .filter(a -> a.setting() != null)
            .limit(MOST_SETTINGS)
            .map(a -> new PrintView.SetTo(Capital.of(a.adjuster().name()), a.setting().inWords()))
            .toList(),
        alignment,
        first.stream().limit(most).toList(),
        Math.max(0, first.size() - most),
        history
            .lastSignOff()
            .map(s -> CheckLine.signed(history, s) + ".")
            .orElse("Not signed off yet."));
  }

  private String alignment(Card card, Optional<Card> mirror) {
    return new MeasuredAlignment(card, mirror)
        .findings().stream()
            .filter(f -> f.value() != null)
            .map(this::aligned)
            .reduce((one, other) -> one + "; " + other)
            .map(all -> all + ".")
            .orElse("");
  }

  private String aligned(AlignedFinding found) {
    State state = AlignedText.state(found);
    return found.figure().words()
        + " "
        + AlignedText.of(found.figure(), found.value(), lengths.unit()).words()
        + (state == null ? "" : ", " + state.word());
  }

  /** The worst limit of an end stands in its finding already, or what reads it with others. */
  private static boolean toldWithItsEnd(DriveCheck.Checked at, ThingFirst thing) {
    if (thing instanceof ThingFirst.NotReadFarEnough of) {
      return told(at, of.reach().end()).filter(of.reach().limits()::contains).isPresent();
    }
    return thing instanceof ThingFirst.OfLimit of
        && told(at, of.end()).filter(of.limit()::equals).isPresent();
  }

  private static Optional<Limit> told(DriveCheck.Checked at, End of) {
    EndFindings end = at.travel().at(of);
    return end.limits().stream().filter(l -> l.outcome() == end.outcome()).findFirst();
  }

  private PrintView.End end(EndFindings end) {
    boolean droop = end.end() == End.DROOP;
    List<PrintView.Row> rows = new ArrayList<>();
    for (EndFindings.Reach reach : end.reaches()) {
      String stop = droop ? "strap stops the wheel" : "stop solid";
      reach
          .stop()
          .ifPresent(
              s ->
                  rows.add(
                      new PrintView.Row(
                          stop + LimitNames.pairing(reach.pairing()),
                          words.position(s.positionMm()))));
    }
    end.heldBack().ifPresent(h -> rows.add(new PrintView.Row("held back", lengths.figure(h.mm()))));
    end.rules()
        .filter(l -> l.positionMm() != null)
        .ifPresent(
            l ->
                rows.add(
                    new PrintView.Row("limit: " + words.name(l), words.position(l.positionMm()))));
    end.marginMm()
        .ifPresent(
            m -> rows.add(new PrintView.Row(TravelWords.marginName(end), words.margin(end, m))));
    return new PrintView.End(
        droop ? "Droop" : "Bump",
        Shown.state(end.outcome()),
        words.finding(end),
        words.cure(end),
        rows);
  }
}
