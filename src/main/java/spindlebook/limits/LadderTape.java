package spindlebook.limits;

import static spindlebook.drawing.TapeSheet.FIGURE;
import static spindlebook.drawing.TapeSheet.SMALL;
import static spindlebook.drawing.TapeSheet.WORDS;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.advice.Rung;
import spindlebook.advice.Win;
import spindlebook.card.Capital;
import spindlebook.card.CureAddress;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.drawing.Spread;
import spindlebook.drawing.State;
import spindlebook.drawing.Steer;
import spindlebook.drawing.TapeFace;
import spindlebook.drawing.TapeFace.Band;
import spindlebook.drawing.TapeSheet;
import spindlebook.drawing.TapeSheet.Line;
import spindlebook.drawing.TapeSheet.Note;
import spindlebook.drawing.TextWidth;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Limit;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/**
 * One end of the tape at a larger scale: every rung on a line of its own, numbered in the order in
 * which they act. The tape gives way to its labels, never the other way.
 */
final class LadderTape {
  private static final double BORDER_MM = 25.4;
  private static final double SHORTEST_MM = 90;
  private static final double FURTHEST_MM = 60;
  private static final double LOW = 392;
  private static final int MOST_RUNGS = 6;

  private static final double TAPE_FROM = 4.5;
  private static final double TAPE_WIDE = 22;
  private static final double TAPE_TO = TAPE_FROM + TAPE_WIDE;
  private static final double BRACKET = 29.5;
  private static final double SHELF = 32;
  private static final double BALLOON = 33;
  private static final double LABEL = 42.5;
  private static final double LABEL_WIDE = 56;

  /** A label's width on a narrow phone, by the wide typeface that lines are reckoned in. */
  private static final double NARROW = 200;

  private static final double BALL = 26;

  /** One line of the drawing: how tall it is, where its middle would like to be, what it draws. */
  private record Item(double tall, double wanted, DoubleConsumer draws) {}

  private final LadderView view;
  private final TravelWords words;
  private final EndFindings end;
  private final EndFindings.Reach reach;
  private final int outward;
  private final String id;
  private final List<Line> lines = new ArrayList<>();
  private final List<Note> notes = new ArrayList<>();
  private final List<Band> bands = new ArrayList<>();
  private final List<Item> items = new ArrayList<>();
  private TapeFace face;
  private Rung above;
  private double aboveAt;

  private LadderTape(LadderView view, EndFindings.Reach reach, String id) {
    this.view = view;
    this.words = view.end().words();
    this.end = view.end().end();
    this.reach = reach;
    this.outward = end.end().outward();
    this.id = id;
  }

  /**
   * Empty when nothing at this end has a place.
   *
   * @param reach the stop, on a solid axle of the one pairing whose motion is drawn
   */
  static Optional<TapeSheet> of(LadderView view, EndFindings.Reach reach, String id, String title) {
    return new LadderTape(view, reach, id).sheet(title);
  }

  private Optional<TapeSheet> sheet(String title) {
    List<Rung> rungs = view.rungs().stream().filter(this::drawn).toList();
    List<Double> places =
        Stream.of(
                stop().stream(),
                needed().stream(),
                rungs.stream().limit(MOST_RUNGS).map(Rung::atMm),
                kept().stream().map(k -> k.get(0).atMm()))
            .flatMap(s -> s)
            .flatMap(Stream::ofNullable)
            .map(mm -> from(mm) * outward)
            .sorted()
            .toList();
    if (places.isEmpty()) {
      return Optional.empty();
    }
    double inner = places.get(0);
    double outer = inner;
    for (double at : places) {
      outer = at - outer < FURTHEST_MM ? at : outer;
    }
    outer += BORDER_MM * 0.6;
    inner = Math.min(inner - BORDER_MM * 1.2, outer - SHORTEST_MM);
    bands(inner * outward);
    double height = LOW;
    do {
      draw(rungs, inner, outer, height);
      double sum = items.stream().mapToDouble(Item::tall).sum();
      if (sum <= height) {
        break;
      }
      height = sum + 8;
    } while (true);
    place(height);
    return Optional.of(
        new TapeSheet(title, height, TAPE_FROM, TAPE_WIDE, face, 0, lines, notes, null));
  }

  private void draw(List<Rung> rungs, double inner, double outer, double height) {
    items.clear();
    lines.clear();
    notes.clear();
    face =
        new TapeFace(
            id,
            true,
            Math.min(inner * outward, outer * outward),
            Math.max(inner * outward, outer * outward),
            height,
            84,
            words.lengths().scale(),
            bands);
    bandWords();
    cure();
    needed().ifPresent(this::needed);
    stop().ifPresent(this::stop);
    for (int i = 0; i < Math.min(MOST_RUNGS, rungs.size()); i++) {
      rung(rungs.get(i), i == 0);
    }
    if (rungs.size() > MOST_RUNGS) {
      later(rungs.size() - MOST_RUNGS, outward < 0 ? height : 0);
    }
    kept().forEach(this::kept);
  }

  private void place(double height) {
    List<Item> ordered = items.stream().sorted(Comparator.comparingDouble(Item::wanted)).toList();
    double[] centres =
        Spread.apart(
            ordered.stream().mapToDouble(Item::wanted).toArray(),
            ordered.stream().mapToDouble(Item::tall).toArray(),
            0,
            height);
    for (int i = 0; i < centres.length; i++) {
      ordered.get(i).draws().accept(centres[i] - ordered.get(i).tall() / 2);
    }
  }

  /** The ground is met in either motion of a solid axle. */
  private boolean drawn(Rung rung) {
    return reach.pairing() == null
        || rung.condition().isEmpty()
        || rung.condition().equals(reach.pairing().words());
  }

  /** Rules kept as far as they were read, in one list for each state, the least far read first. */
  private List<List<Rung>> kept() {
    return Stream.of(Outcome.values())
        .map(o -> view.kept().stream().filter(r -> drawn(r) && r.limit().outcome() == o).toList())
        .filter(l -> !l.isEmpty())
        .toList();
  }

  private void bands(double innerMm) {
    Optional<Double> limit = limit().map(l -> from(l.positionMm()));
    Optional<Double> usable = (limit.isPresent() ? needed() : stop()).map(this::from);
    Optional<Double> goesTo = Optional.ofNullable(reach.mm()).map(this::from);
    limit.ifPresent(l -> goesTo.ifPresent(r -> band(l, r, Band.Kind.PAST_A_LIMIT)));
    limit.or(() -> goesTo).ifPresent(l -> usable.ifPresent(u -> band(u, l, Band.Kind.HELD_BACK)));
    usable.ifPresent(u -> band(innerMm, u, Band.Kind.USABLE));
  }

  /** The limit that comes first in this motion. */
  private Optional<Limit> limit() {
    return end.rules().isEmpty()
        ? Optional.empty()
        : end.limits().stream()
            .filter(Limit::found)
            .filter(l -> l.pairing() == null || l.pairing() == reach.pairing())
            .findFirst();
  }

  /** Only outwards: a limit that lies further out than the stop leaves nothing beyond it. */
  private void band(double innerMm, double outerMm, Band.Kind kind) {
    if (innerMm * outward < outerMm * outward) {
      bands.add(new Band(Math.min(innerMm, outerMm), Math.max(innerMm, outerMm), kind));
    }
  }

  private void bandWords() {
    double outermost = outward < 0 ? face.height() : 0;
    double reached = outward < 0 ? 0 : face.height();
    for (Band band : bands) {
      double top = face.at(band.toMm());
      double tall = face.at(band.fromMm()) - top;
      reached = outward < 0 ? Math.max(reached, top + tall) : Math.min(reached, top);
      if (band.kind() != Band.Kind.USABLE && tall > SMALL + 12) {
        String word = band.kind() == Band.Kind.HELD_BACK ? "held back" : "past a limit";
        bandWord(word, top + tall / 2);
      }
    }
    if (Math.abs(outermost - reached) > 2 * SMALL) {
      bandWord("out of reach", (outermost + reached) / 2);
    }
  }

  private void bandWord(String word, double middle) {
    notes.add(
        Note.at("note-band", TAPE_FROM, middle - SMALL / 2, TAPE_WIDE, SMALL).words("", word));
  }

  private Optional<Figure> stop() {
    return reach.stop().map(s -> s.positionMm());
  }

  private Optional<Figure> needed() {
    return reach.neededMm().filter(n -> limit().isPresent());
  }

  private double from(Figure mm) {
    return words.zero().from(mm);
  }

  /** Whether it lies on the piece of tape that is drawn; what lies far out has only its label. */
  private boolean shown(Figure mm) {
    return mm != null && from(mm) >= face.fromMm() && from(mm) <= face.toMm();
  }

  private double y(Figure mm) {
    return face.at(from(mm));
  }

  private void cure() {
    String cure = words.cureKey(end);
    if (cure.isEmpty()) {
      return;
    }
    String to = words.cureTo(end);
    double tall = 18 + WORDS + SMALL * TextWidth.wrap(to, 14, false, NARROW, 4).size();
    item(
        tall,
        0,
        top ->
            notes.add(
                Note.at("note-key", LABEL - 3, top + 4, LABEL_WIDE + 3, tall - 8)
                    .words(cure, to)
                    .href(CureAddress.of(view.end().card(), end.cure().orElseThrow()))));
  }

  private void needed(Figure mm) {
    double at = y(mm);
    shelf(at, "l l-unknown", "must stop by", "", null, mm);
  }

  private void stop(Figure mm) {
    double at = y(mm);
    lines.add(new Line("l-case", null, TAPE_FROM - 2, at, TAPE_FROM + 8, at));
    lines.add(new Line("l-stop", null, TAPE_FROM - 2, at, TAPE_FROM + 8, at));
    lines.add(new Line("l", null, TAPE_FROM + 8, at, TAPE_TO, at));
    boolean notConfirmed = reach.stop().orElseThrow().notConfirmed();
    shelf(
        at,
        "l",
        outward < 0 ? "strap goes tight" : "solid stop",
        notConfirmed ? State.PUT_BACK.word() : "",
        notConfirmed ? State.PUT_BACK : null,
        mm);
  }

  /** A label on a line of its own, which leads to its place on the tape. */
  private void shelf(double at, String mark, String what, String sub, State state, Figure mm) {
    double tall = (sub.isEmpty() ? FIGURE : FIGURE + SMALL) + 3;
    item(
        tall,
        at - tall / 2,
        top -> {
          double y = top + tall - 1;
          lines.add(new Line(mark, null, TAPE_TO, at, BRACKET + 1.5, at));
          lines.add(new Line(mark, null, BRACKET + 1.5, at, SHELF, y));
          lines.add(new Line(mark, null, SHELF, y, LABEL + LABEL_WIDE, y));
          notes.add(
              Note.at("note-shelf", SHELF, top, 40, tall).words(what, sub).state(state, null));
          notes.add(
              Note.at("note-left", 60, top, 38.5, FIGURE)
                  .figure(words.position(mm), "t3")
                  .href("#" + view.anchor("sums")));
        });
  }

  private void rung(Rung rung, boolean first) {
    int number = view.rungs().indexOf(rung) + 1;
    boolean stop = rung.what() == Rung.What.STOP;
    State state = stop ? null : Shown.state(rung.limit().outcome());
    String tone = state == null || state == State.CLEAR ? "" : state.mark();
    Steer lock = stop ? null : TravelWords.steer(rung.limit());
    String name =
        Capital.of(
            lock == null
                ? view.say().name(rung).replaceFirst("^the ", "")
                : words.pointName(rung.limit()));
    double namesTall = WORDS * TextWidth.wrap(name, 17, true, NARROW - 34, 4).size();
    String sub =
        rung.atMm() == null
            ? "at every height read"
            : rung.brokenMm() == null
                ? ""
                : "or later, by " + words.position(rung.brokenMm().value());
    String turned =
        Stream.of(lock == null ? "" : lock.word(), sub)
            .filter(t -> !t.isEmpty())
            .collect(Collectors.joining(", "));
    double tall =
        namesTall
            + (rung.atMm() == null ? 0 : FIGURE)
            + SMALL * TextWidth.wrap(turned, 14, false, NARROW, 2).size()
            + 6;
    double at = rung.atMm() == null ? (outward < 0 ? 0 : face.height()) : y(rung.atMm());
    if (shown(rung.atMm()) && !stop) {
      String mark = first ? "l-limit " + tone : "l " + tone;
      lines.add(new Line("l-case", null, TAPE_FROM + TAPE_WIDE / 2, at, TAPE_TO + 1, at));
      lines.add(new Line(mark, null, TAPE_FROM + TAPE_WIDE / 2, at, TAPE_TO + 1, at));
    }
    item(
        tall,
        at,
        top -> {
          double middle = top + 2 + WORDS / 2;
          if (shown(rung.atMm())) {
            lines.add(new Line("l " + tone, null, TAPE_TO, at, BRACKET + 1.5, at));
            lines.add(new Line("l " + tone, null, BRACKET + 1.5, at, BALLOON, middle));
            bracket(rung, tone);
          }
          notes.add(
              Note.at("note-ball " + tone, BALLOON, middle - BALL / 2, 7, BALL)
                  .words(Integer.toString(number), ""));
          label(tone, top, tall, rung.atMm(), name, turned, state, lock, "#" + view.anchor(number));
          unknown(rung, middle);
        });
  }

  /** What curing the inner of two rungs wins, where that is not known: an arrow with a question. */
  private void unknown(Rung rung, double middle) {
    Rung inner = outward < 0 ? above : rung;
    if (inner != null
        && inner.wins() instanceof Win.Withheld
        && above != null
        && middle - aboveAt > BALL + 12) {
      double one = aboveAt + BALL / 2;
      double other = middle - BALL / 2;
      lines.add(new Line("l l-unknown", "arrow", BALLOON + 3.5, one, BALLOON + 3.5, other));
      if (other - one > WORDS) {
        notes.add(
            Note.at("note-ball note-ask", BALLOON, (one + other - WORDS) / 2, 7, WORDS)
                .words("?", ""));
      }
    }
    above = rung;
    aboveAt = middle;
  }

  private void bracket(Rung rung, String tone) {
    double u = rung.atMm().U();
    double one = y(rung.atMm().plus(u));
    double other = y(rung.atMm().plus(-u));
    if (other - one > 4) {
      double x = BRACKET - (view.rungs().indexOf(rung) % 2 == 0 ? 0 : 1.4);
      lines.add(new Line("l " + tone, null, x, one, x, other));
      lines.add(new Line("l " + tone, null, x - 0.8, one, x + 0.8, one));
      lines.add(new Line("l " + tone, null, x - 0.8, other, x + 0.8, other));
    }
  }

  private void later(int more, double at) {
    item(
        WORDS + 6,
        at,
        top ->
            notes.add(
                Note.at("note-rung", LABEL, top, LABEL_WIDE, WORDS + 6)
                    .words(more + " more after these", "")
                    .href("#" + view.anchor(MOST_RUNGS + 1))));
  }

  /** Rules kept as far as they were read: how many, and how far the least far of them. */
  private void kept(List<Rung> kept) {
    Figure mm = kept.get(0).atMm();
    double at = Math.max(0, Math.min(face.height(), y(mm)));
    State state = Shown.state(kept.get(0).limit().outcome());
    String tone = state == State.CLEAR ? "" : state.mark();
    String what =
        kept.size() + (state == State.CLEAR ? " clear, read to" : " " + state.word() + " past");
    double namesTall = WORDS * TextWidth.wrap(what, 17, true, NARROW - 34, 3).size();
    item(
        namesTall + FIGURE + 6,
        at,
        top -> {
          double middle = top + 2 + WORDS / 2;
          if (shown(mm)) {
            lines.add(new Line("l l-unknown", null, TAPE_TO, at, BRACKET + 1.5, at));
            lines.add(new Line("l l-unknown", null, BRACKET + 1.5, at, LABEL - 1, middle));
          }
          String href = "#" + view.anchor("kept");
          label(tone, top, namesTall + FIGURE, mm, what, "", state, null, href);
        });
  }

  private void item(double tall, double wanted, DoubleConsumer draws) {
    items.add(new Item(tall, wanted, draws));
  }

  private void label(
      String tone,
      double y,
      double tall,
      Figure mm,
      String what,
      String sub,
      State state,
      Steer lock,
      String href) {
    notes.add(
        Note.at("note-rung " + tone, LABEL, y, LABEL_WIDE, tall)
            .figure(mm == null ? null : words.position(mm), "t3")
            .words(what, sub)
            .state(state, lock)
            .href(href));
  }
}
