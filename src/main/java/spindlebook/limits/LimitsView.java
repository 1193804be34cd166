package spindlebook.limits;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.advice.Ladder;
import spindlebook.advice.NextReading;
import spindlebook.card.Capital;
import spindlebook.card.CureAddress;
import spindlebook.card.NeedAddress;
import spindlebook.card.TravelWords;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.Layout;
import spindlebook.definition.WatchPoint;
import spindlebook.drawing.State;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.page.Link;
import spindlebook.travel.End;
import spindlebook.travel.TravelFindings;

/**
 * What limits a corner, end by end, and what to read next.
 *
 * @param next the most important first, as many as are listed; empty when all is there, holds and
 *     is decided
 * @param nextMore how many more there are
 * @param ends bump above droop, as on the tape
 */
public record LimitsView(
    Card card,
    TravelFindings travel,
    TravelWords words,
    List<NextReading> next,
    int nextMore,
    List<LadderView> ends) {
  private static final int MOST_NEXT = 8;

  /** All that acts at one full lock. */
  public record LockRow(String title, List<String> told) {}

  static LimitsView of(Card card, TravelFindings travel) {
    TravelWords words = new TravelWords(card, travel);
    List<NextReading> ranked = words.next();
    List<NextReading> next = ranked.stream().limit(MOST_NEXT).toList();
    return new LimitsView(
        card,
        travel,
        words,
        next,
        ranked.size() - next.size(),
        Stream.of(End.BUMP, End.DROOP)
            .map(e -> LadderView.of(card, words, Ladder.of(travel, e), travel))
            .toList());
  }

  public NextWords say() {
    return new NextWords(card.corner(), travel, words);
  }

  /** One round that reads all that is listed; null for fewer than two readings. */
  public String nextTogether() {
    return NeedAddress.together(
        card.corner(), words, next.stream().map(NextReading::need).toList());
  }

  public String pairings() {
    return card.layout() == Layout.SOLID_AXLE_END
        ? " Both together and crossed are two motions, each counted from its own stop."
        : "";
  }

  /** Droop first, as hands do. */
  public List<LadderView> tabs() {
    return ends.stream().sorted(Comparator.comparing(e -> e.ladder().end())).toList();
  }

  /** What an end needs, or what is to be read of it next, and where; null when it needs nothing. */
  public Link key(LadderView end) {
    if (!end.end().end().needs().isEmpty()) {
      return new Link(
          Capital.of(words.needsBrief(end.end().end().needs())) + end.where(),
          end.end().href(end.end().end().needs()));
    }
    return next.stream()
        .filter(n -> n.end() == end.ladder().end() && end.end().state() != State.CLEAR)
        .findFirst()
        .map(n -> new Link(Capital.of(say().brief(n)), say().href(n)))
        .orElse(null);
  }

  // --- mid-travel and full lock

  public List<LockRow> locks() {
    List<LockRow> rows = new ArrayList<>();
    for (Steering lock : List.of(Steering.FULL_LEFT, Steering.FULL_RIGHT)) {
      List<String> told = new ArrayList<>();
      for (LadderView end : ends) {
        end.ladder().locks().stream()
            .filter(l -> l.lock() == lock)
            .filter(l -> !l.rungs().isEmpty())
            .forEach(l -> told.add(end.told(l)));
      }
      long mid = travel.midTravel().stream().filter(m -> m.steering() == lock).count();
      if (mid > 0) {
        told.add(
            mid == 1
                ? "In mid-travel one place, above, at this lock only."
                : "In mid-travel " + mid + " places, above, at this lock only.");
      }
      if (!told.isEmpty()) {
        rows.add(new LockRow(Capital.of(lock.words()), told));
      }
    }
    return rows;
  }

  public static Optional<Link> steeringStop(Card card) {
    return card.adjuster(AdjusterKind.STEERING_STOP)
        .map(a -> new Link("steering stop", CureAddress.adjuster(card, a)));
  }

  public static String curve(String corner, WatchPoint point) {
    return "/corners/" + corner + "/curves?of=p-" + point.point();
  }
}
