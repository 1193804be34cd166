package spindlebook.limits;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.CureAddress;
import spindlebook.card.NeedAddress;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.corner.AdjusterKind;
import spindlebook.corner.Card;
import spindlebook.corner.Layout;
import spindlebook.corner.Steering;
import spindlebook.corner.WatchPoint;
import spindlebook.travel.End;
import spindlebook.travel.Ladder;
import spindlebook.travel.Limit;
import spindlebook.travel.MidTravel;
import spindlebook.travel.NextReading;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Outcome;
import spindlebook.web.Link;
import spindlebook.web.State;

/** What limits a corner, end by end, and what to read next. */
public final class LimitsView {
  private static final int MOST_NEXT = 8;

  private final Card card;
  private final TravelFindings travel;
  private final TravelWords words;
  private final List<NextReading> ranked;
  private final List<LadderView> ladders;

  LimitsView(Card card, TravelFindings travel) {
    this.card = card;
    this.travel = travel;
    this.words = new TravelWords(card, travel);
    this.ranked = words.next();
    this.ladders =
        Stream.of(End.DROOP, End.BUMP)
            .map(e -> new LadderView(card, words, Ladder.of(travel, e), travel))
            .toList();
  }

  public record Count(State state, long of) {}

  /** A rule broken, or too close to call, between the ends. */
  public record MidRow(State state, String told, String cure, List<Link> cures) {}

  /** All that acts at one full lock. */
  public record LockRow(String title, List<String> told, Link stop) {}

  public String corner() {
    return card.corner();
  }

  /** What positions are counted from. */
  public String positions() {
    return "Positions are " + words.zero().words() + ", + towards bump." + pairings();
  }

  /** The most important first; empty when all is there, holds and is decided. */
  public List<NextReading> next() {
    return ranked.stream().limit(MOST_NEXT).toList();
  }

  /** How many more there are than are listed. */
  public int nextMore() {
    return ranked.size() - next().size();
  }

  public NextWords say() {
    return new NextWords(card.corner(), travel, words);
  }

  /** What nothing that is listed will settle, and why. */
  public List<String> leftOpen() {
    return words.leftOpen();
  }

  /** One round that reads all that is listed; null for fewer than two readings. */
  public String nextTogether() {
    return NeedAddress.together(corner(), words, next().stream().map(NextReading::need).toList());
  }

  public List<LadderView> ends() {
    return ladders;
  }

  public List<MidRow> midTravel() {
    return travel.midTravel().stream().map(this::mid).toList();
  }

  private String pairings() {
    return card.layout() == Layout.SOLID_AXLE_END
        ? " Both together and crossed are two motions, each counted from its own stop: first comes"
            + " what the wheel gets past the furthest."
        : "";
  }

  /** How many limits are in each state, worst first. */
  public List<Count> counts() {
    Map<Outcome, Integer> counts = new EnumMap<>(Outcome.class);
    Stream.concat(
            Stream.of(travel.droop(), travel.bump())
                .flatMap(e -> e.limits().stream())
                .map(Limit::outcome),
            travel.midTravel().stream().map(MidTravel::outcome))
        .forEach(o -> counts.merge(o, 1, Integer::sum));
    return counts.entrySet().stream()
        .map(e -> new Count(Shown.state(e.getKey()), e.getValue()))
        .toList();
  }

  // --- mid-travel and full lock

  private MidRow mid(MidTravel mid) {
    List<Link> cures = new ArrayList<>();
    cures.add(new Link("its curve", curve(corner(), mid.point())));
    boolean lock = mid.steering().full();
    if (lock) {
      steeringStop(card).ifPresent(cures::add);
    }
    String cure =
        "Cured by room made where it is"
            + (lock ? ", or by less lock: the steering stop." : "; no stop keeps the wheel out.");
    return new MidRow(Shown.state(mid.outcome()), Capital.of(words.midTravel(mid)), cure, cures);
  }

  public List<LockRow> locks() {
    List<LockRow> rows = new ArrayList<>();
    for (Steering lock : List.of(Steering.FULL_LEFT, Steering.FULL_RIGHT)) {
      List<String> told = new ArrayList<>();
      for (LadderView ladder : ladders) {
        ladder.locks().stream()
            .filter(l -> l.lock() == lock)
            .filter(l -> !l.rungs().isEmpty())
            .forEach(l -> told.add(ladder.told(l)));
      }
      long mid = travel.midTravel().stream().filter(m -> m.steering() == lock).count();
      if (mid > 0) {
        told.add(
            mid == 1
                ? "In mid-travel one place acts at this lock only, above."
                : "In mid-travel " + mid + " places act at this lock only, above.");
      }
      if (!told.isEmpty()) {
        rows.add(new LockRow(Capital.of(lock.words()), told, steeringStop(card).orElse(null)));
      }
    }
    return rows;
  }

  static Optional<Link> steeringStop(Card card) {
    return card.adjuster(AdjusterKind.STEERING_STOP)
        .map(a -> new Link("steering stop", CureAddress.adjuster(card, a)));
  }

  static String curve(String corner, WatchPoint point) {
    return "/corners/" + corner + "/curves?of=p-" + point.point();
  }
}
