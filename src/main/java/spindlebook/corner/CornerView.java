package spindlebook.corner;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.card.Counted;
import spindlebook.card.Days;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.State;
import spindlebook.drawing.TapeSheet;
import spindlebook.entry.Content;
import spindlebook.finding.LimitNames;
import spindlebook.fold.Card;
import spindlebook.fold.Change;
import spindlebook.fold.InForce;
import spindlebook.fold.ReadAgain;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Standing;
import spindlebook.page.Link;
import spindlebook.page.SettingRow;
import spindlebook.travel.TravelFindings;

/**
 * One corner's page.
 *
 * @param instead ways to other points of the book, where it is only to look at: nothing on it then
 *     starts a change, and its heights are the book's entries; null as it stands now
 */
public record CornerView(Card card, TravelFindings travel, TravelWords words, List<Link> instead) {
  /** Of unknown position before all. */
  private static final Comparator<SeenHeight> HIGHEST_FIRST =
      Comparator.comparingDouble(
          h -> h.positionMm() == null ? Double.MAX_VALUE : -h.positionMm().value());

  static CornerView of(Card card, TravelFindings travel, List<Link> instead) {
    TravelWords words = new TravelWords(card, travel);
    return new CornerView(card, travel, words, instead);
  }

  public boolean toLookAt() {
    return instead != null;
  }

  /** Null before the first height with a known position. */
  public TapeSheet tape() {
    return CornerTape.of(card, travel, words, toLookAt()).orElse(null);
  }

  public GapMap map() {
    return GapMap.of(card, travel, words, toLookAt());
  }

  public String asOf() {
    return "as of entry " + card.n();
  }

  public List<EndView> ends() {
    return Stream.of(travel.droop(), travel.bump())
        .map(e -> new EndView(card, words, e, toLookAt()))
        .toList();
  }

  /** Shown where it is only to look at: none of them is changed from here. */
  public List<SettingRow> settings() {
    return card.adjusters().stream().map(this::setting).toList();
  }

  private SettingRow setting(InForce inForce) {
    Optional<Change> last =
        card.changes().stream()
            .filter(c -> c.n() == inForce.since() && inForce.since() > 0)
            .findFirst();
    String since =
        inForce.inDoubt().isEmpty()
            ? last.map(c -> Days.day(c.at()) + ", n " + c.n()).orElse("")
            : "another setting waits for an answer";
    return new SettingRow(
        inForce.adjuster().name(),
        inForce.setting() == null ? null : FigureText.of(inForce.setting().inWords(), ""),
        since,
        null);
  }

  public String what(ReadAgain again) {
    Content.ToRead t = again.toRead();
    String height =
        t.name().words()
            + (t.label() == null ? "" : ", " + t.label())
            + LimitNames.pairing(t.pairing());
    if (t.quantity() == null) {
      return "where '" + height + "' lies";
    }
    return card.what(t) + " · " + height + " · " + t.steering().words();
  }

  public String because(ReadAgain again) {
    return again.because().stream().map(Change::words).distinct().collect(Collectors.joining("; "));
  }

  public List<SeenHeight> heights() {
    return card.heights().stream()
        .filter(h -> h.stop() != Standing.REPLACED)
        .sorted(HIGHEST_FIRST)
        .toList();
  }

  public State state(SeenHeight h) {
    return Shown.state(h.stands().counts() ? h.stop() : h.stands());
  }

  public String detail(SeenHeight h) {
    long readings = card.readingsAt(h.key()).stream().filter(SeenReading::counts).count();
    return Days.day(h.at()) + ", " + Counted.of(readings, "reading");
  }
}
