package spindlebook.gauge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.alignment.Track;
import spindlebook.card.AlignedText;
import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.card.SettleWords;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.Rounded;
import spindlebook.entry.AlignedFigure;
import spindlebook.entry.AlignmentWay;
import spindlebook.finding.Findings;
import spindlebook.fold.Card;
import spindlebook.fold.Change;
import spindlebook.fold.SeenAlignment;
import spindlebook.fold.Standing;
import spindlebook.measured.AlignedFinding;
import spindlebook.measured.AlignedNote;
import spindlebook.measured.MeasuredAlignment;
import spindlebook.page.Link;
import spindlebook.page.Posted;
import spindlebook.sheet.FigureRow;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;
import spindlebook.units.LengthUnit;

/** The page of a corner's alignment. */
public record AlignmentView(Card card, Optional<Card> mirror, MeasuredAlignment measured) {
  public record Block(String title, List<FigureRow> rows) {}

  AlignmentView(Card card, Optional<Card> mirror) {
    this(card, mirror, new MeasuredAlignment(card, mirror));
  }

  private LengthUnit unit() {
    return card.details().unit();
  }

  public List<Block> blocks() {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        card.layout().steered()
            ? new Block(
                "Camber, caster, KPI",
                List.of(
                    row(AlignedFigure.CAMBER), row(AlignedFigure.CASTER), row(AlignedFigure.KPI)))
            : new Block("Camber", List.of(row(AlignedFigure.CAMBER))));
    blocks.add(new Block("Toe", toe()));
    if (card.layout().steered()) {
      blocks.add(
          new Block(
              "Where the axis meets the ground",
              List.of(row(AlignedFigure.SCRUB), row(AlignedFigure.TRAIL))));
    }
    blocks.add(new Block("Track", track()));
    return blocks;
  }

  /** The forms, one for each way. */
  public List<Link> measure() {
    return TakenBy.at(card).stream()
        .map(
            by -> new Link(by.link(), AlignmentPages.address(card) + "/new?way=" + Posted.word(by)))
        .toList();
  }

  /** The other wheel's page; null where the car has none. */
  public Link other() {
    return mirror.map(m -> new Link(m.place().words(), AlignmentPages.address(m))).orElse(null);
  }

  private List<FigureRow> toe() {
    List<FigureRow> rows = new ArrayList<>();
    rows.add(row("This wheel", measured.of(AlignedFigure.TOE)));
    mirror.ifPresent(
        m -> {
          AlignedFinding there = new MeasuredAlignment(m, Optional.of(card)).of(AlignedFigure.TOE);
          rows.add(row(Capital.of(m.place().words()), there));
        });
    rows.add(row("Total", measured.of(AlignedFigure.TOTAL_TOE)));
    return rows;
  }

  private List<FigureRow> track() {
    List<FigureRow> rows = new ArrayList<>();
    rows.add(row("Wheel centres", measured.of(AlignedFigure.TRACK)));
    AlignedFinding found = measured.of(AlignedFigure.TRACK);
    if (found.value() != null) {
      Track last = measured.lastTrack().orElseThrow();
      rows.add(plain("Hub face to hub face", last.hubFacesMm()));
      if (!found.notes().contains(AlignedNote.SECTION_NOT_KNOWN)) {
        rows.add(plain("Over the tyres at the hub", last.outsideMm()));
      }
    }
    return rows;
  }

  private FigureRow plain(String name, Figure mm) {
    return new FigureRow(name, AlignedText.of(AlignedFigure.TRACK, mm, unit()));
  }

  private FigureRow row(AlignedFigure figure) {
    return row(Capital.of(figure.words()), measured.of(figure));
  }

  private FigureRow row(String name, AlignedFinding found) {
    return FigureRow.of(
        Findings.of(found),
        name,
        figures(found),
        words(found),
        from(found),
        new RoundBeside(found, unit()).view());
  }

  // --- the figure

  private List<FigureText> figures(AlignedFinding found) {
    if (found.value() == null) {
      return List.of();
    }
    FigureText figure = AlignedText.of(found.figure(), found.value(), unit());
    return found
        .acrossEdgeMm()
        .map(edge -> List.of(Rounded.signed(edge, unit().mm(), unit().word()), figure))
        .orElse(List.of(figure));
  }

  // --- what is said beneath

  /** What the sign means, the target, then what else ought to be known. */
  private List<String> words(AlignedFinding found) {
    List<String> words = new ArrayList<>();
    words.add(Capital.of(found.value() == null ? found.missing().words() : meaning(found)) + ".");
    if (found.target() != null) {
      words.add("Your target: " + found.target().content().inWords() + ".");
    }
    if (found.value() != null) {
      more(found, words);
    }
    return words;
  }

  private void more(AlignedFinding found, List<String> more) {
    found
        .acrossEdgeMm()
        .ifPresent(
            edge -> {
              LengthUnit other = unit() == LengthUnit.INCH ? LengthUnit.MM : LengthUnit.INCH;
              more.add(
                  "Across "
                      + new Lengths(unit()).text(found.acrossMm())
                      + "; that is "
                      + Rounded.signed(edge, other.mm(), other.word()).words()
                      + ".");
            });
    if (found.figure() == AlignedFigure.CASTER) {
      measured
          .smallAngleCasterRad()
          .ifPresent(
              s -> more.add("By the small-angle formula " + Rounded.degrees(s).words() + "."));
    }
    settles(found).ifPresent(more::add);
    if (found.stands() == Standing.STALE || found.stands() == Standing.PUT_BACK) {
      because(
              Stream.concat(
                  found.from().stream().flatMap(f -> f.because().stream()),
                  found.inRound().stream().flatMap(r -> r.because().stream())))
          .ifPresent(more::add);
    }
    if (found.stands() == Standing.IN_DOUBT) {
      more.add("In doubt: it does not count until somebody answers.");
    }
    found.notes().forEach(n -> more.add(n.words()));
    if (found.from().isEmpty()) {
      return;
    }
    SeenAlignment last = found.from().get(0);
    if (last.way() instanceof AlignmentWay.Gauge gauge && gauge.turned() != null) {
      measured
          .gaugeZeroRad()
          .ifPresent(z -> more.add("Last turned round the gauge showed " + too(z) + "."));
    }
    MeasuredAlignment.lineLeanRad(last)
        .ifPresent(
            d ->
                more.add(
                    "The line leaned by "
                        + Rounded.degrees(d).words()
                        + ", + its front end inward: taken into account."));
    more.add("Read with " + tools(last) + ".");
  }

  private static String tools(SeenAlignment one) {
    TakenBy by = TakenBy.of(one.way());
    List<String> names = new ArrayList<>();
    if (by.readsLengths()) {
      names.add(one.lengthTool().name());
    }
    if (by.readsAngles() && by != TakenBy.DIAL) {
      names.add(one.angleTool().name());
    }
    if (by.readsLocks()) {
      names.add(one.lockTool().name());
    }
    return String.join(" and ", names);
  }

  /** How much a gauge shows on an upright wheel. */
  static String too(Figure zeroRad) {
    return Rounded.degrees(zeroRad).words() + " on an upright wheel";
  }

  /** What the sign says; a value within its ± of 0 may be either. */
  private static String meaning(AlignedFinding found) {
    AlignedFigure figure = found.figure();
    if (figure.minus().isEmpty()) {
      return figure.plus();
    }
    if (Math.abs(found.value().value()) <= found.value().U()) {
      return "+ would be " + figure.plus() + "; its ± leaves either";
    }
    return found.value().value() > 0 ? figure.plus() : figure.minus();
  }

  private static Optional<String> settles(AlignedFinding found) {
    if (found.target() == null || !found.counts()) {
      return Optional.empty();
    }
    if (found.against() == null) {
      return Optional.of(
          "Give across what toe is read as a length, and it can be held against your target.");
    }
    return found.against().decision() == Outcome.CANT_TELL
        ? Optional.of(SettleWords.words(found.against().settles()))
        : Optional.empty();
  }

  static Optional<String> because(Stream<Change> changes) {
    return changes
        .map(Change::words)
        .distinct()
        .reduce((one, other) -> one + "; " + other)
        .map(w -> "Since then: " + w + ".");
  }

  private List<Link> from(AlignedFinding found) {
    List<Link> links = new ArrayList<>();
    for (SeenAlignment one : found.from()) {
      AlignmentWay way = one.way();
      String where = one.place() == card.place() ? "" : one.place().words() + ", ";
      links.add(
          new Link(
              where + way.words() + ", " + Days.day(one.at()) + ", " + one.who(),
              "/entries/" + one.key()));
    }
    links.addAll(RoundBeside.links(found.inRound()));
    if (found.target() != null) {
      links.add(new Link("the target", "/entries/" + found.target().key()));
    }
    return links;
  }
}
