package spindlebook.life;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import spindlebook.advice.StopMoved;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.Days;
import spindlebook.card.NeedAddress;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.definition.Adjuster;
import spindlebook.definition.Setting;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.State;
import spindlebook.entry.Content;
import spindlebook.entry.HappeningKind;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Change;
import spindlebook.fold.InForce;
import spindlebook.fold.SeenSignOff;
import spindlebook.fold.SeenUse;
import spindlebook.page.Link;
import spindlebook.travel.Cure;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Life;
import spindlebook.travel.Life.Known;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/**
 * A corner's life as its page shows it.
 *
 * @param hits what hit or bent it
 * @param settings what was set otherwise in its time and what is tried first, at most four
 * @param tried null where nothing is to be tried
 */
public record LifeView(
    CarBook book,
    Card card,
    TravelFindings travel,
    TravelWords words,
    Life life,
    List<Change> hits,
    List<SetOverTime> settings,
    Tried tried) {
  private static final int MOST_SETTINGS = 4;

  public record Turn(Instant at, Setting to) {}

  /**
   * @param first null where nobody said
   */
  public record SetOverTime(String adjuster, String name, Setting first, List<Turn> turns) {}

  /** What a cure would make of an end's margin. */
  public record Tried(End end, String adjuster, Setting to, Known known) {
    boolean of(SetOverTime setting) {
      return adjuster.equals(setting.adjuster());
    }
  }

  /**
   * @param figure null while it is not known
   * @param needs what it wants, and where that is read; null where it wants nothing
   */
  public record Row(
      String end, State state, String word, FigureText figure, Link needs, String since) {}

  public record Told(long n, String when, String words, String href) {}

  static LifeView of(CarBook book, Card card, TravelFindings travel, Life life) {
    Tried tried = tried(card, travel);
    List<Change> hits =
        card.changes().stream()
            .filter(c -> c.place() == null || c.place() == card.place())
            .filter(
                c ->
                    book.standing(c.key()).orElse(null) instanceof Content.Happening h
                        && h.what() == HappeningKind.HIT_OR_BENT)
            .toList();
    TravelWords words = new TravelWords(card, travel);
    List<SetOverTime> settings = settings(book, card, life.points().get(0).n(), tried);
    return new LifeView(book, card, travel, words, life, hits, settings, tried);
  }

  private static List<SetOverTime> settings(CarBook book, Card card, long from, Tried tried) {
    return card.adjusters().stream()
        .map(InForce::adjuster)
        .sorted(Comparator.comparing(Adjuster::kind))
        .map(a -> setting(book, card, a, from))
        .filter(s -> !s.turns().isEmpty() || tried != null && tried.of(s))
        .limit(MOST_SETTINGS)
        .toList();
  }

  private static SetOverTime setting(CarBook book, Card card, Adjuster of, long from) {
    Setting first = of.first();
    List<Turn> turns = new ArrayList<>();
    for (Change change : card.changes()) {
      if (change.place() == card.place()
          && of.adjuster().equals(change.adjuster())
          && book.standing(change.key()).orElse(null) instanceof Content.Adjustment to) {
        first = turns.isEmpty() && to.from() != null ? to.from() : first;
        if (change.n() >= from) {
          turns.add(new Turn(change.at(), to.to()));
        } else {
          first = to.to();
        }
      }
    }
    String name = of.name().replaceFirst("^limit |^bump-stop ", "");
    return new SetOverTime(of.adjuster(), name, first, turns);
  }

  private static Tried tried(Card card, TravelFindings travel) {
    return Stream.of(travel.droop(), travel.bump())
        .flatMap(end -> end.cure().stream().flatMap(c -> tried(card, travel, end, c)))
        .findFirst()
        .orElse(null);
  }

  private static Stream<Tried> tried(Card card, TravelFindings travel, EndFindings end, Cure c) {
    return card.adjuster(c.adjuster()).filter(a -> c.to() != null).stream()
        .flatMap(a -> StopMoved.of(card, travel, a.adjuster(), c.from(), c.to()).stream())
        .flatMap(moved -> moved.marginMm().stream())
        .sorted(Comparator.comparingDouble(Figure::value))
        .map(m -> new Known(Outcome.CLEAR, m.value(), m.U(), end.marginAtLeast(), true))
        .map(known -> new Tried(end.end(), c.adjuster(), c.to(), known));
  }

  public LifeSheet sheet() {
    return LifeDrawing.of(this);
  }

  Instant last() {
    return book.entries().get(book.entries().size() - 1).at();
  }

  String title() {
    return "Margins of the " + card.place().words() + " against time; told in words below.";
  }

  String address(long n) {
    return "/corners/" + card.corner() + "?at=" + n;
  }

  List<SeenUse> uses() {
    return book.uses();
  }

  List<SeenSignOff> signOffs() {
    return book.signOffs().stream().filter(s -> !s.takenBack()).toList();
  }

  String signed(SeenSignOff signOff) {
    int open = signOff.signOff().open().size();
    return "signed off, " + (open == 0 ? "nothing" : open) + " open";
  }

  public List<Row> rows() {
    return Stream.of(End.DROOP, End.BUMP).map(this::row).toList();
  }

  private Row row(End of) {
    EndFindings end = travel.at(of);
    Figure margin = end.roomMm().orElse(null);
    boolean needs = end.outcome() == Outcome.NEEDS && !end.needs().isEmpty();
    return new Row(
        of.words(),
        Shown.state(end.outcome()),
        margin == null && end.outcome() != Outcome.SHORT
            ? Shown.state(end.outcome()).word()
            : words.roomWord(end),
        margin == null ? null : words.lengths().signedFigure(margin),
        needs
            ? new Link(
                words.needsBrief(end.needs()), NeedAddress.of(card.corner(), words, end.needs()))
            : null,
        since(of));
  }

  /** From when on it has been known so, but for times when it was to be measured again. */
  private String since(End of) {
    List<Life.Point> points = life.points();
    Life.Point since = points.get(points.size() - 1);
    Known now = since.ends().at(of);
    for (int i = points.size() - 2; i >= 0; i--) {
      Known known = points.get(i).ends().at(of);
      if (known.current() ? !known.near(now) : now.marginMm() == null && known.marginMm() != null) {
        break;
      }
      since = known.current() == now.current() ? points.get(i) : since;
    }
    return "since " + day(since.at());
  }

  private static String day(Instant at) {
    return Days.day(at).replaceFirst(" \\d{4}$", "");
  }

  /** What came since the last sign-off; null before the first. */
  public Told since() {
    return signOffs().stream()
        .reduce((earlier, later) -> later)
        .map(
            s -> {
              long n = s.n();
              long drives = uses().stream().filter(u -> u.n() > n).count();
              long hit = hits.stream().filter(h -> h.n() > n).count();
              long set =
                  card.changes().stream()
                      .filter(c -> c.n() > n && c.adjuster() != null)
                      .filter(c -> c.place() == card.place())
                      .count();
              return new Told(
                  n,
                  "Since " + day(s.at()) + ":",
                  Counted.of(drives, "drive")
                      + (hit == 0 ? "" : ", " + Counted.of(hit, "hit"))
                      + (set == 0 ? ", nothing set" : ", " + set + " set"),
                  "/sign-offs/" + s.key() + "/since");
            })
        .orElse(null);
  }

  /** The same in words, newest first. */
  public List<Told> told() {
    List<Told> all = new ArrayList<>();
    String before = "";
    for (Life.Point p : life.points()) {
      String text = Capital.of(said(p, End.DROOP)) + "; " + said(p, End.BUMP);
      if (!text.equals(before)) {
        all.add(new Told(p.n(), Days.day(p.at()), text, address(p.n())));
      }
      before = text;
    }
    card.changes().stream()
        .filter(c -> c.place() == null || c.place() == card.place())
        .map(c -> new Told(c.n(), Days.day(c.at()), Capital.of(c.words()), "/entries/" + c.key()))
        .forEach(all::add);
    signOffs().stream()
        .map(s -> new Told(s.n(), Days.day(s.at()), signed(s), "/sign-offs/" + s.key()))
        .forEach(all::add);
    return all.stream()
        .filter(t -> t.n() >= life.points().get(0).n())
        .sorted(Comparator.comparingLong(Told::n).reversed())
        .toList();
  }

  private String said(Life.Point point, End end) {
    Known known = point.ends().at(end);
    if (known.outcome() == Outcome.SHORT && known.marginMm() == null) {
      return end.words() + " too close at every height read";
    }
    if (!known.shown()) {
      boolean before =
          life.points().stream().anyMatch(p -> p.n() < point.n() && p.ends().at(end).shown());
      return end.words() + (before ? " to measure again" : " not measured");
    }
    return end.words()
        + " "
        + margin(known)
        + (known.outcome() == Outcome.SHORT ? ", past it" : "")
        + (known.outcome() == Outcome.CANT_TELL ? ", can’t tell" : "");
  }

  String margin(Known known) {
    return (known.atLeast() ? "at least " : "")
        + words.lengths().signedText(known.marginMm())
        + (known.expandedMm() > 0 ? " ± " + words.lengths().plusMinus(known.expandedMm()) : "");
  }

  /** Where the life before this is shown; null where there is none. */
  public String earlier() {
    return life.earlier() == 0 ? null : "/corners/" + card.corner() + "/life?to=" + life.earlier();
  }
}
