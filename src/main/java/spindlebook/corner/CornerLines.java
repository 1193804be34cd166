package spindlebook.corner;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import spindlebook.advice.DriveCheck;
import spindlebook.advice.DriveCheck.Checked;
import spindlebook.advice.ThingFirst;
import spindlebook.card.Capital;
import spindlebook.card.CureAddress;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.drawing.DrawnWheel;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.PlanView;
import spindlebook.drawing.State;
import spindlebook.drawing.TapeFace;
import spindlebook.fold.Card;
import spindlebook.page.Link;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Limit;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/**
 * A car's corners, the worst first: each a lying tape, all on one scale about one ride line.
 *
 * @param empty corners with no height yet, which have no tape
 * @param worst key of the worst corner
 * @param unit what all of it is counted in: "inches"
 */
public record CornerLines(List<Row> lines, List<Empty> empty, String worst, String unit) {
  private static final double ALONG = 358;
  private static final double ACROSS = 32;

  /** A corner that was never measured. */
  public record Empty(String name, String href, String measure, String toDo, PlanView plan) {}

  /**
   * A corner.
   *
   * @param again what is to be measured again or answered, short; may be empty
   * @param marks stops and limits on the tape, in its drawing units
   * @param words what its tape says, for who cannot see it
   * @param sentence what is wrong, of the worst corner and between the ends; else empty
   * @param cure what sets it right, of the worst corner alone; null where none is known
   * @param cureDoes what that sets it to, and wins at the wheel
   */
  public record Row(
      String name,
      String href,
      PlanView plan,
      State state,
      String again,
      TapeFace face,
      List<Mark> marks,
      Double ride,
      String words,
      Side droop,
      Side bump,
      String sentence,
      Link cure,
      String cureDoes) {}

  /** A stop, which comes from above, or a limit, from below. */
  public record Mark(double at, boolean stop, String tone) {}

  /**
   * What is to spare at an end.
   *
   * @param figure null where it is not known
   * @param words of what, or what is missing
   */
  public record Side(FigureText figure, String words, State state) {}

  /** A corner that has a tape, by itself. */
  private record Faced(Checked corner, TravelWords words, TapeFace face) {
    boolean ofRide() {
      return corner.travel().rideMm().isPresent();
    }
  }

  /** Of a check of the car, which says what is worst. */
  public static CornerLines of(DriveCheck check) {
    List<Checked> judged = check.worstFirst();
    Set<DrawnWheel> places =
        judged.stream().map(j -> Shown.place(j.card().place())).collect(Collectors.toSet());
    List<Faced> faced = new ArrayList<>();
    List<Empty> empty = new ArrayList<>();
    for (Checked j : judged) {
      TravelWords words = new TravelWords(j.card(), j.travel());
      CornerFace.of(j.card(), j.travel(), words, false, ALONG, ACROSS)
          .ifPresentOrElse(
              face -> faced.add(new Faced(j, words, face)), () -> empty.add(empty(j, places)));
    }
    // A corner whose ride nobody read is counted from its frame mark: on no scale with others.
    DoubleSummaryStatistics scale =
        faced.stream()
            .filter(Faced::ofRide)
            .flatMapToDouble(f -> DoubleStream.of(f.face().fromMm(), f.face().toMm()))
            .summaryStatistics();
    List<Row> rows = new ArrayList<>();
    for (Faced f : faced) {
      TapeFace face = f.ofRide() ? f.face().over(scale.getMin(), scale.getMax()) : f.face();
      Optional<ThingFirst> first = rows.isEmpty() ? check.worst(f.corner()) : Optional.empty();
      rows.add(row(f, plan(f.corner(), places), face, rows.isEmpty(), first.orElse(null)));
    }
    Optional<Card> worst = judged.stream().map(Checked::card).findFirst();
    return new CornerLines(
        rows,
        empty,
        worst.map(Card::corner).orElse(""),
        worst.map(c -> c.details().unit().many()).orElse(""));
  }

  private static PlanView plan(Checked j, Set<DrawnWheel> places) {
    return new PlanView(places, Set.of(Shown.place(j.card().place())));
  }

  private static Empty empty(Checked j, Set<DrawnWheel> places) {
    String place = j.card().place().words();
    String corner = "/corners/" + j.card().corner();
    return new Empty(
        Capital.of(place), corner, corner + "/rounds/new", "Measure " + place, plan(j, places));
  }

  private static Row row(Faced f, PlanView plan, TapeFace face, boolean first, ThingFirst worst) {
    Checked j = f.corner();
    TravelWords words = f.words();
    Card card = j.card();
    TravelFindings travel = j.travel();
    Function<Figure, Double> at = mm -> face.at(words.zero().from(mm));
    List<Mark> marks = new ArrayList<>();
    for (EndFindings end : List.of(travel.droop(), travel.bump())) {
      end.stop().ifPresent(s -> marks.add(new Mark(at.apply(s.positionMm()), true, "")));
      end.rules()
          .ifPresent(
              l -> {
                String tone = l.outcome() == Outcome.CLEAR ? "" : Shown.state(l.outcome()).mark();
                marks.add(new Mark(at.apply(l.positionMm()), false, tone));
              });
    }
    EndFindings worse = worseEnd(travel, worst);
    boolean cured = first && worse.cure().isPresent();
    return new Row(
        Capital.of(card.place().words()),
        "/corners/" + card.corner(),
        plan,
        state(j, worst),
        again(card, travel),
        face,
        marks,
        travel.rideMm().map(at).orElse(null),
        words.finding(travel.droop()) + " " + words.finding(travel.bump()),
        side(travel.droop(), words),
        side(travel.bump(), words),
        worst == null ? midTravel(travel, words) : new WorstWords(words).cause(worst) + ".",
        cured
            ? new Link(words.cureKey(worse), CureAddress.of(card, worse.cure().orElseThrow()))
            : null,
        cured ? words.cureDoes(worse) : "");
  }

  /** What is broken, or not sure, between the ends: its tape shows nothing of it. */
  private static String midTravel(TravelFindings travel, TravelWords words) {
    return travel.midTravel().isEmpty()
        ? ""
        : Capital.of(words.midTravel(travel.midTravel().get(0)));
  }

  private static String again(Card card, TravelFindings travel) {
    int doubts = card.doubts().size();
    int again = card.readAgain().size();
    boolean ride = travel.rideMm().isEmpty();
    return doubts > 0
        ? doubts + " to check"
        : again == 0 ? "" : ride ? again + 1 + " to measure" : again + " to re-measure";
  }

  private static Side side(EndFindings end, TravelWords words) {
    State state = Shown.state(end.outcome());
    if (end.outcome() == Outcome.NEEDS) {
      String needs = end.needs().isEmpty() ? "no limit found" : words.needsBrief(end.needs());
      return new Side(null, needs, state);
    }
    String name =
        end.limits().stream()
            .filter(l -> l.outcome() == end.outcome() && l.outcome() != Outcome.CLEAR)
            .findFirst()
            .map(l -> shortName(words, l))
            .orElse("");
    boolean least = end.marginAtLeast() && end.outcome() == Outcome.CLEAR;
    return end.roomMm()
        .map(
            r -> new Side(words.lengths().signedFigure(r).bare(), least ? "at least" : name, state))
        .orElseGet(() -> new Side(null, name + ", " + words.roomWord(end), state));
  }

  /** "tie rod" of "tie rod to upper arm". */
  private static String shortName(TravelWords words, Limit limit) {
    String name = words.pointName(limit);
    int to = name.indexOf(" to ");
    return to < 0 ? name : name.substring(0, to);
  }

  /** A worst corner whose rules are all kept has readings that are missing, or hold no longer. */
  private static State state(Checked j, ThingFirst worst) {
    boolean kept = j.travel().outcome() == Outcome.CLEAR;
    return kept && worst != null ? Shown.state(worst.why()) : Shown.state(j.travel().outcome());
  }

  private static EndFindings worseEnd(TravelFindings travel, ThingFirst worst) {
    if (worst != null && worst.end() != null) {
      return travel.at(worst.end());
    }
    return travel.bump().outcome().ordinal() < travel.droop().outcome().ordinal()
        ? travel.bump()
        : travel.droop();
  }
}
