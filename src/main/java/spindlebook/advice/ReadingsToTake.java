package spindlebook.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.advice.NextReading.Why;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.HeightName;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.Change;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.EndLimit;
import spindlebook.travel.Judged;
import spindlebook.travel.Limit;
import spindlebook.travel.MidTravel;
import spindlebook.travel.Need;
import spindlebook.travel.SolidStop;
import spindlebook.travel.Total;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Settles;
import spindlebook.uncertainty.SourceKind;

/** Gathers what is missing, undecided and stale on a card, by the rule of {@link NextReading}. */
final class ReadingsToTake {
  /** How many are supposed: so that a corner where much is open stays quick. */
  private static final int MOST_SUPPOSED = 12;

  private final Card card;
  private final TravelFindings travel;
  private final List<NextReading> found = new ArrayList<>();

  ReadingsToTake(Card card, TravelFindings travel) {
    this.card = card;
    this.travel = travel;
  }

  List<NextReading> ranked() {
    ends().forEach(this::withholding);
    ends().forEach(this::undecided);
    ends().forEach(this::costing);
    travel.midTravel().forEach(this::undecided);
    split();
    unsure();
    suppose();
    return found.stream().sorted(theOneThatMattersMostFirst()).toList();
  }

  List<NextReading> missing() {
    ends().forEach(this::withholding);
    split();
    return found.stream().sorted(theOneThatMattersMostFirst()).toList();
  }

  /** What rules, and what holds the strap or the stop, can decide more than its own limit. */
  private void suppose() {
    if (ends().flatMap(e -> e.limits().stream()).noneMatch(Supposed::open)) {
      return;
    }
    found.stream()
        .filter(r -> r.why() != Why.WITHHOLDS)
        .sorted(
            Comparator.comparing((NextReading r) -> r.why() != Why.UNSURE_WHERE_IT_RULES)
                .thenComparing(theOneThatMattersMostFirst()))
        .limit(MOST_SUPPOSED)
        .toList()
        .forEach(r -> found.set(found.indexOf(r), r.deciding(Supposed.decides(card, travel, r))));
  }

  static Comparator<NextReading> theOneThatMattersMostFirst() {
    return Comparator.comparing((NextReading r) -> r.why() != Why.WITHHOLDS)
        .thenComparing(r -> -r.settled())
        .thenComparing(NextReading::why)
        .thenComparing(r -> -r.withholds())
        .thenComparing(r -> kind(r.need()))
        // A sum's last digits are no reason to ask for one thing before another.
        .thenComparing(r -> -Math.rint(r.atStakeMm() * 1e6))
        .thenComparing(r -> r.end() == null ? End.values().length : r.end().ordinal())
        .thenComparing(
            r ->
                r.need().toRead() == null
                    ? HeightName.values().length
                    : r.need().toRead().name().ordinal());
  }

  private static int kind(Need need) {
    if (need.toRead() == null) {
      return need.dimension() != null ? 2 : 3;
    }
    return need.toRead().quantity() == null ? 0 : 1;
  }

  private Stream<EndFindings> ends() {
    return Stream.of(travel.droop(), travel.bump());
  }

  // --- missing

  private void withholding(EndFindings end) {
    List<Need> settling = end.settling();
    for (Need need : end.needs()) {
      if (!settling.contains(need)) {
        Limit limit =
            end.limits().stream().filter(l -> l.needs().contains(need)).findFirst().orElse(null);
        int waiting = waiting(end, need);
        add(Why.WITHHOLDS, end.end(), need, limit, null, need.noHigherThanMm(), waiting, 0);
      }
    }
  }

  private int waiting(EndFindings end, Need need) {
    int figures = end.marginMm().isEmpty() || end.marginAtLeast() ? 1 : 0;
    for (Total total : List.of(travel.asSet(), travel.asItCouldBe())) {
      figures += total.needs().contains(need) ? 1 : 0;
    }
    return figures;
  }

  // --- undecided

  private void undecided(EndFindings end) {
    end.limits().stream()
        .filter(l -> l.outcome() == Outcome.CANT_TELL)
        .forEach(l -> undecided(end, l));
  }

  private void undecided(EndFindings end, Limit limit) {
    double stake = atStakeMm(end, limit);
    if (!limit.needs().isEmpty() && !nearItsBroken(limit)) {
      Need need = limit.needs().get(0);
      add(Why.UNDECIDED, end.end(), need, limit, null, need.noHigherThanMm(), 0, stake);
    } else if (Settles.byReading(limit.settles()) && !inBracket(limit)) {
      again(end, limit, stake);
    } else if (betweenReadings(limit)) {
      Need need = Need.read(inBetween(end.end(), limit), List.of());
      add(Why.UNDECIDED, end.end(), need, limit, null, middleMm(limit), 0, stake);
    }
  }

  /**
   * A stop set to keep the near end of a bracket may give travel away: the rule may be kept up to
   * its far end, or to where the next limit acts.
   */
  private void costing(EndFindings end) {
    end.limits().stream()
        .filter(l -> l.outcome() == Outcome.SHORT)
        .forEach(l -> l.bracket().ifPresent(between -> costing(end, l, between)));
  }

  private void costing(EndFindings end, Limit limit, EndLimit.Crosses between) {
    Figure wide = Judged.room(end.end(), between.positionMm(), between.brokenMm());
    double roomMm = limit.roomMm().value();
    double winMm = Math.min(roomMm + wide.value(), others(end, limit)) - roomMm;
    // Within its own U the two heights are one.
    if (winMm > wide.U()) {
      Need need = Need.read(inBetween(end.end(), limit), List.of());
      add(Why.COSTS_TRAVEL, end.end(), need, limit, null, middleMm(limit), 0, winMm);
    }
  }

  /** The least room of the other limits. */
  private static double others(EndFindings end, Limit limit) {
    return end.limits().stream()
        .filter(l -> !l.equals(limit) && l.roomMm() != null)
        .mapToDouble(l -> l.roomMm().value())
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  /** How far the end's margin could move, were this limit known exactly. */
  static double atStakeMm(EndFindings end, Limit limit) {
    if (limit.roomMm() == null) {
      return 0;
    }
    double others = others(end, limit);
    double room = limit.roomMm().value();
    double unsure = limit.roomMm().U();
    double more =
        limit
            .bracket()
            .map(b -> Judged.room(end.end(), b.positionMm(), b.brokenMm()).value())
            .filter(wide -> wide > unsure)
            .orElse(unsure);
    double now = Math.min(room, others);
    double lower = now - Math.min(room - unsure, others);
    double higher = Math.min(room + more, others) - now;
    return Math.max(lower, higher);
  }

  /** The reading, or the stop's height, whose hand weighs most in what is not known. */
  private void again(EndFindings end, Limit limit, double stake) {
    Optional<SeenReading> reading =
        limit.readings().stream()
            .flatMap(key -> card.reading(key).stream())
            .max(Comparator.comparingDouble(r -> weight(limit, r.key())));
    Optional<SeenHeight> stop =
        end.stop().stream()
            .flatMap(s -> s.readings().stream())
            .flatMap(key -> card.height(key).stream())
            .max(Comparator.comparingDouble(h -> weight(limit, h.key() + ":spindle")));
    double ofStop = stop.map(h -> weight(limit, h.key() + ":spindle")).orElse(-1.0);
    Optional<SeenReading> heavier = reading.filter(r -> weight(limit, r.key()) >= ofStop);
    heavier
        .map(ReadingsToTake::toRead)
        .or(() -> stop.map(ReadingsToTake::toRead))
        .map(r -> Need.read(r, List.of()))
        .ifPresent(
            n ->
                add(
                    Why.UNDECIDED,
                    end.end(),
                    n,
                    limit,
                    limit.settles(),
                    heavier.map(ReadingsToTake::unnamedMm).orElse(null),
                    0,
                    stake));
  }

  /** Where a reading in between was taken, when nothing else says which of them it is. */
  private static Double unnamedMm(SeenReading reading) {
    SeenHeight height = reading.height();
    boolean named = height.name().onePlace() || height.height().label() != null;
    return named ? null : height.positionMm().value();
  }

  private static double weight(Limit limit, String sourceId) {
    Figure of = limit.roomMm() == null ? limit.positionMm() : limit.roomMm();
    return of.parts().entrySet().stream()
        .filter(part -> part.getKey().id().equals(sourceId))
        .mapToDouble(part -> Math.abs(part.getValue()))
        .sum();
  }

  /** Between two heights further apart than their own U: one between them tells more. */
  private static boolean inBracket(Limit limit) {
    return limit
        .bracket()
        .map(b -> b.brokenMm().minus(b.positionMm()))
        .filter(wide -> Math.abs(wide.value()) > wide.U())
        .isPresent();
  }

  /** To be read so near to where the rule is broken, in its last quarter, that little is won. */
  private static boolean nearItsBroken(Limit limit) {
    Double needMm = limit.needs().get(0).noHigherThanMm();
    if (needMm == null || !inBracket(limit)) {
      return false;
    }
    EndLimit.Crosses crosses = limit.bracket().orElseThrow();
    double brokenMm = crosses.brokenMm().value();
    return Math.abs(needMm - brokenMm) < Math.abs(crosses.positionMm().value() - brokenMm) / 4;
  }

  private static boolean betweenReadings(Limit limit) {
    if (limit.bracket().isPresent()) {
      return true;
    }
    Figure of = limit.roomMm() == null ? limit.positionMm() : limit.roomMm();
    double between = limit.positionMm().u(kind -> kind == SourceKind.INTERPOLATION);
    return limit.kind() != Limit.Kind.GROUND && between * between > of.u() * of.u() / 2;
  }

  private static double middleMm(Limit limit) {
    return limit
        .bracket()
        .map(b -> (b.positionMm().value() + b.brokenMm().value()) / 2)
        .orElseGet(() -> limit.positionMm().value());
  }

  private static ToRead inBetween(End end, Limit limit) {
    return limit.toRead(end).at(HeightName.IN_BETWEEN);
  }

  private void undecided(MidTravel mid) {
    if (mid.outcome() == Outcome.CANT_TELL && Settles.byReading(mid.settles())) {
      mid.shortfall().readings().stream()
          .flatMap(key -> card.reading(key).stream())
          .findFirst()
          .ifPresent(
              r ->
                  add(
                      Why.UNDECIDED,
                      null,
                      Need.read(toRead(r), List.of()),
                      null,
                      mid.settles(),
                      unnamedMm(r),
                      0,
                      0));
    }
  }

  // --- ride, and what no longer holds

  private void split() {
    if (travel.rideMm().isEmpty()) {
      ToRead ride = new ToRead(HeightName.RIDE, null, Steering.STRAIGHT, null, null);
      Need need = Need.read(ride, SolidStop.why(card, HeightName.RIDE, card.pairings().get(0)));
      add(Why.NO_SPLIT, null, need, null, null, null, 0, 0);
    }
  }

  private void unsure() {
    for (ToRead read : card.toReadAgain()) {
      if (found.stream().noneMatch(f -> sameThing(f.need().toRead(), read))) {
        Optional<EndFindings> rules = ends().filter(end -> rules(end, read)).findFirst();
        boolean ride = read.quantity() == null && read.name() == HeightName.RIDE;
        add(
            rules.isPresent() || ride ? Why.UNSURE_WHERE_IT_RULES : Why.UNSURE,
            rules.map(EndFindings::end).orElse(null),
            Need.read(read, because(read)),
            null,
            null,
            null,
            0,
            0);
      }
    }
  }

  /**
   * Whether an end's stop, what it holds back, or what acts first there rests on such a reading.
   */
  private static boolean rules(EndFindings end, ToRead read) {
    boolean droop = end.end() == End.DROOP;
    if (read.quantity() == null) {
      return droop
          ? read.name() == HeightName.ON_THE_STRAP
          : read.name() == HeightName.STOP_TOUCH || read.name() == HeightName.FULL_BUMP;
    }
    return switch (read.quantity()) {
      case STRAP_LENGTH -> droop;
      case STOP_GAP -> !droop;
      case SHOCK_LENGTH -> first(end).filter(l -> l.kind() == Limit.Kind.SHOCK).isPresent();
      case WATCH_POINT ->
          first(end)
              .filter(l -> l.point() != null && l.point().point().equals(read.point()))
              .filter(l -> l.steering() == read.steering())
              .isPresent();
      case CAMBER, TOE -> false;
    };
  }

  private static Optional<Limit> first(EndFindings end) {
    return end.rules().or(() -> end.limits().stream().findFirst());
  }

  private List<String> because(ToRead read) {
    Stream<List<Change>> changes =
        read.quantity() == null
            ? card.heights().stream()
                .filter(h -> h.name() == read.name() && h.asked() == read.pairing())
                .map(SeenHeight::because)
            : card.readings().stream()
                .filter(r -> !r.because().isEmpty() && toRead(r).equals(read))
                .map(SeenReading::because);
    return Change.each(changes).map(Change::words).distinct().toList();
  }

  /** At any height of that name: one jack setting serves for all that is read there. */
  private static boolean sameThing(ToRead one, ToRead other) {
    return one != null
        && one.name() == other.name()
        && one.quantity() == other.quantity()
        && one.steering() == other.steering()
        && one.pairing() == other.pairing()
        && Objects.equals(one.point(), other.point());
  }

  static ToRead toRead(SeenReading reading) {
    return new ToRead(
        reading.height().name(),
        reading.height().height().label(),
        reading.reading().steering(),
        reading.reading().quantity(),
        reading.reading().point(),
        reading.height().asked());
  }

  private static ToRead toRead(SeenHeight height) {
    return new ToRead(
        height.name(), height.height().label(), Steering.STRAIGHT, null, null, height.asked());
  }

  private void add(
      Why why,
      End end,
      Need need,
      Limit limit,
      Settles settles,
      Double nearMm,
      int withholds,
      double atStakeMm) {
    found.add(
        new NextReading(why, end, need, limit, settles, nearMm, withholds, atStakeMm, List.of()));
  }
}
