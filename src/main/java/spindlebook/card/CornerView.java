package spindlebook.card;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.corner.Card;
import spindlebook.corner.Change;
import spindlebook.corner.Content;
import spindlebook.corner.InForce;
import spindlebook.corner.ReadAgain;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenReading;
import spindlebook.corner.Standing;
import spindlebook.finding.LimitNames;
import spindlebook.travel.MidTravel;
import spindlebook.travel.Total;
import spindlebook.travel.TravelFindings;
import spindlebook.web.BladeDrawing;
import spindlebook.web.FigureText;
import spindlebook.web.GapSheet;
import spindlebook.web.Lengths;
import spindlebook.web.Link;
import spindlebook.web.SettingRow;
import spindlebook.web.State;

/** One corner's page. */
public final class CornerView {
  private static final int OPEN_AT_MOST = 5;
  private static final String[][] MORE = {
    {"Limits", "/limits"},
    {"Print", "/print"},
    {"curves", "/curves"},
    {"bump steer", "/bump-steer"},
    {"alignment", "/alignment"},
    {"rod ends on paper", "/rod-ends"},
    {"wheel on paper", "/wheel"},
    {"watched", "/watch-points"},
    {"given, held back", "/given"},
    {"fasteners", "/fasteners"},
    {"telltales", "/telltales"},
    {"photos", "/photos"}
  };

  private final Card card;
  private final TravelFindings travel;
  private final TravelWords words;
  private final Lengths lengths;
  private final String corner;
  private final List<Link> instead;
  private final List<GapBlock> gaps;

  /**
   * @param instead ways to other points of the book, where it is only to look at: nothing on it
   *     then starts a change, and its heights are the book's entries; null as it stands now
   */
  CornerView(Card card, TravelFindings travel, List<Link> instead) {
    this.card = card;
    this.travel = travel;
    this.words = new TravelWords(card, travel);
    this.lengths = words.lengths();
    this.corner = "/corners/" + card.corner();
    this.instead = instead;
    this.gaps = GapSheets.of(card, words);
  }

  /**
   * The gaps of one height, folded away unless one of them is short.
   *
   * @param counts how many are in each state, worst first
   */
  public record GapBlock(
      String name, FigureText position, List<Count> counts, boolean open, GapSheet sheet) {}

  public record Count(State state, int of) {}

  /**
   * Usable travel, whole and split about ride.
   *
   * @param figure null with {@code needs} said instead
   */
  public record Usable(
      String title,
      FigureText figure,
      String note,
      FigureText droop,
      FigureText bump,
      String needs) {}

  public record HeightRow(
      String name, FigureText position, State state, String detail, String href) {}

  public boolean toLookAt() {
    return instead != null;
  }

  public Card card() {
    return card;
  }

  /** Null before the first height with a known position. */
  public BladeDrawing blade() {
    return Blades.of(card, travel, true).map(BladeDrawing::standing).orElse(null);
  }

  public List<Usable> usable() {
    return List.of(
        usable("As set, stop to stop", travel.asSet()),
        usable("As it could be, limit to limit", travel.asItCouldBe()));
  }

  public List<EndView> ends() {
    return Stream.of(travel.droop(), travel.bump())
        .map(e -> new EndView(card, words, e, toLookAt()))
        .toList();
  }

  public List<MidTravel> midTravel() {
    return travel.midTravel();
  }

  public TravelWords words() {
    return words;
  }

  /** One block a height, from the highest down. */
  public List<GapBlock> gaps() {
    return gaps;
  }

  public List<SettingRow> settings() {
    return card.adjusters().stream().map(this::setting).toList();
  }

  public String raw() {
    return travel
        .rawMm()
        .map(f -> "Raw travel read so far: " + lengths.text(f.value()) + ".")
        .orElse("");
  }

  /** What positions are counted from, one sentence. */
  public String positions() {
    return "Positions are " + words.zero().words() + ", + towards bump.";
  }

  public List<Link> more() {
    if (toLookAt()) {
      return instead;
    }
    List<Link> more = new ArrayList<>();
    for (String[] page : MORE) {
      more.add(new Link(page[0], corner + page[1]));
    }
    more.add(new Link("to do", "/cars/" + card.car() + "/to-do?corner=" + card.corner()));
    more.add(new Link("rounds", corner + "/rounds"));
    more.add(new Link("blank sheet", corner + "/paper"));
    more.add(new Link("in the book", "/cars/" + card.car() + "/book?corner=" + card.corner()));
    return more;
  }

  private Usable usable(String title, Total total) {
    if (total.mm().isEmpty()) {
      String needs =
          total.needs().isEmpty() ? "no limit found yet" : "needs " + words.needs(total.needs());
      return new Usable(title, null, "", null, null, needs);
    }
    return new Usable(
        title,
        lengths.figure(total.mm().get()),
        total.atLeast() ? "at least: an end has no limit as far as it was read" : "",
        total.droopMm().map(lengths::figure).orElse(null),
        total.bumpMm().map(lengths::figure).orElse(null),
        total.droopMm().isEmpty() ? "no ride height read: not split" : "");
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
        toLookAt() ? null : corner + "/adjustments/" + inForce.adjuster().adjuster());
  }

  /** What is to be read again. */
  public List<ReadAgain> stale() {
    return card.readAgain();
  }

  /** Whether it is short enough to be told at once. */
  public boolean staleOpen() {
    return stale().size() <= OPEN_AT_MOST;
  }

  public State state(ReadAgain again) {
    return Shown.state(again.stands());
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

  public List<HeightRow> heights() {
    return card.heights().stream()
        .filter(h -> h.stop() != Standing.REPLACED)
        .sorted(
            Comparator.comparingDouble(
                (SeenHeight h) ->
                    h.positionMm() == null ? Double.MAX_VALUE : -h.positionMm().value()))
        .map(this::height)
        .toList();
  }

  private HeightRow height(SeenHeight h) {
    long readings = card.readingsAt(h.key()).stream().filter(SeenReading::counts).count();
    State state = !h.stands().counts() ? Shown.state(h.stands()) : Shown.state(h.stop());
    return new HeightRow(
        h.words(),
        h.positionMm() == null ? null : words.position(h.positionMm()),
        state,
        Days.day(h.at()) + ", " + Counted.of(readings, "reading"),
        (toLookAt() ? "/entries/" : "/heights/") + h.key());
  }
}
