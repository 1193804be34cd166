package spindlebook.life;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.advice.StopMoved;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.Days;
import spindlebook.card.NeedAddress;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.definition.Setting;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.State;
import spindlebook.entry.Content;
import spindlebook.entry.HappeningKind;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Change;
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
    List<Event> hits,
    List<SetOverTime> settings,
    Tried tried) {
  private static final int MOST_SETTINGS = 4;

  public record Event(long n, Instant at, String words) {}

  public record Turn(Instant at, Setting to) {}

  /**
   * @param first null where nobody said
   */
  public record SetOverTime(String adjuster, String name, Setting first, List<Turn> turns) {}

  /** What a cure would make of an end's margin. */
  public record Tried(End end, String adjuster, Setting to, Known known) {}

  /**
   * @param figure null while it is not known
   * @param needs what it wants, and where that is read; null where it wants nothing
   */
  public record Row(
      String end, State state, String word, FigureText figure, Link needs, String since) {}

  public record Told(String when, String words, String href) {}

  static LifeView of(CarBook book, Card card, TravelFindings travel, Life life) {
    Tried tried = tried(card, travel);
    List<Event> hits = new ArrayList<>();
    for (Change change : card.changes()) {
      if (book.standing(change.key()).orElse(null) instanceof Content.Happening h
          && h.what() == HappeningKind.HIT_OR_BENT
          && (change.place() == null || change.place() == card.place())) {
        hits.add(new Event(change.n(), change.at(), "hit"));
      }
    }
    return new LifeView(
        book,
        card,
        travel,
        new TravelWords(card, travel),
        life,
        hits,
        settings(book, card, tried),
        tried);
  }

  private static List<SetOverTime> settings(CarBook book, Card card, Tried tried) {
    return card.adjusters().stream()
        .sorted(Comparator.comparing(a -> a.adjuster().kind()))
        .map(
            a -> {
              String name = a.adjuster().adjuster();
              List<Turn> turns = new ArrayList<>();
              Setting first = a.adjuster().first();
              for (Change change : card.changes()) {
                if (change.place() == card.place()
                    && name.equals(change.adjuster())
                    && book.standing(change.key()).orElse(null) instanceof Content.Adjustment to) {
                  first = turns.isEmpty() && to.from() != null ? to.from() : first;
                  turns.add(new Turn(change.at(), to.to()));
                }
              }
              return new SetOverTime(
                  name, a.adjuster().name().replaceFirst("^limit |^bump-stop ", ""), first, turns);
            })
        .filter(
            s -> !s.turns().isEmpty() || (tried != null && tried.adjuster().equals(s.adjuster())))
        .limit(MOST_SETTINGS)
        .toList();
  }

  private static Tried tried(Card card, TravelFindings travel) {
    for (EndFindings end : List.of(travel.droop(), travel.bump())) {
      Cure cure = end.cure().filter(c -> c.to() != null && c.from() != null).orElse(null);
      if (cure != null) {
        Optional<Figure> least =
            card.adjuster(cure.adjuster()).stream()
                .flatMap(
                    a -> StopMoved.of(card, travel, a.adjuster(), cure.from(), cure.to()).stream())
                .flatMap(m -> m.marginMm().stream())
                .min(Comparator.comparingDouble(Figure::value));
        if (least.isPresent()) {
          Figure mm = least.get();
          Known known = new Known(Outcome.CLEAR, mm.value(), mm.U(), end.marginAtLeast(), true);
          return new Tried(end.end(), cure.adjuster(), cure.to(), known);
        }
      }
    }
    return null;
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
    return signOff.who() + (open == 0 ? ", nothing open" : ", " + open + " open");
  }

  public List<Row> rows() {
    return Stream.of(End.DROOP, End.BUMP).map(this::row).toList();
  }

  private Row row(End of) {
    EndFindings end = travel.at(of);
    Figure margin = end.marginMm().orElse(null);
    boolean needs = end.outcome() == Outcome.NEEDS && !end.needs().isEmpty();
    return new Row(
        of.words(),
        Shown.state(end.outcome()),
        margin == null ? Shown.state(end.outcome()).word() : words.marginWord(end),
        margin == null ? null : words.margin(end, margin),
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
    record At(long n, Told told) {}

    List<At> all = new ArrayList<>();
    String before = "";
    for (Life.Point point : life.points()) {
      String text = said(point, End.DROOP) + "; " + said(point, End.BUMP);
      if (!text.equals(before)) {
        all.add(
            new At(
                point.n(), new Told(Days.day(point.at()), Capital.of(text), address(point.n()))));
      }
      before = text;
    }
    long from = life.points().get(0).n();
    card.changes().stream()
        .filter(c -> c.n() >= from && (c.place() == null || c.place() == card.place()))
        .forEach(
            c ->
                all.add(
                    new At(
                        c.n(),
                        new Told(Days.day(c.at()), Capital.of(c.words()), "/entries/" + c.key()))));
    for (SeenSignOff s : signOffs()) {
      all.add(
          new At(
              s.n(), new Told(Days.day(s.at()), "Signed: " + signed(s), "/sign-offs/" + s.key())));
    }
    return all.stream().sorted(Comparator.comparingLong(At::n).reversed()).map(At::told).toList();
  }

  private String said(Life.Point point, End end) {
    Known known = point.ends().at(end);
    if (!known.shown()) {
      boolean before =
          life.points().stream().anyMatch(p -> p.n() < point.n() && p.ends().at(end).shown());
      return end.words() + (before ? " to measure again" : " not measured");
    }
    return end.words()
        + (known.atLeast() ? " at least " : " ")
        + words.lengths().signedText(known.marginMm())
        + (known.expandedMm() > 0 ? " ± " + words.lengths().plusMinus(known.expandedMm()) : "")
        + (known.outcome() == Outcome.SHORT ? ", past it" : "")
        + (known.outcome() == Outcome.CANT_TELL ? ", can’t tell" : "");
  }

  public List<Link> more() {
    String corner = "/corners/" + card.corner();
    String car = "/cars/" + card.car();
    return List.of(
        new Link("Rounds", corner + "/rounds"),
        new Link("The book", car + "/book?corner=" + card.corner()),
        new Link("Photos", corner + "/photos"),
        new Link("Telltales", corner + "/telltales"),
        new Link("To do", car + "/to-do"),
        new Link("Fasteners", corner + "/fasteners"),
        new Link("Blank sheet", corner + "/paper"),
        new Link("Print", corner + "/print"));
  }

  /** Where the life before this is shown; null where there is none. */
  public String earlier() {
    return life.earlier() == 0 ? null : "/corners/" + card.corner() + "/life?to=" + life.earlier();
  }
}
