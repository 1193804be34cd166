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
import spindlebook.limits.LimitsView.LockRow;
import spindlebook.limits.LimitsView.MidRow;
import spindlebook.limits.LimitsView.NextRow;
import spindlebook.limits.LimitsView.OneEnd;
import spindlebook.travel.End;
import spindlebook.travel.Ladder;
import spindlebook.travel.Limit;
import spindlebook.travel.LockLimits;
import spindlebook.travel.MidTravel;
import spindlebook.travel.Need;
import spindlebook.travel.NextReading;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Outcome;
import spindlebook.web.Link;

/** Lays a corner's ladders and what to read next out as a page. */
final class LimitsViews {
  private static final int MOST_NEXT = 8;

  private final Card card;
  private final TravelFindings travel;
  private final TravelWords words;
  private final String corner;

  LimitsViews(Card card, TravelFindings travel) {
    this.card = card;
    this.travel = travel;
    this.words = new TravelWords(card, travel);
    this.corner = card.corner();
  }

  LimitsView view() {
    List<NextReading> ranked = words.next();
    List<NextReading> listed = ranked.stream().limit(MOST_NEXT).toList();
    NextWords next = new NextWords(corner, travel, words);
    List<NextRow> rows = listed.stream().map(next::row).toList();
    Ladder droop = Ladder.of(travel, End.DROOP);
    Ladder bump = Ladder.of(travel, End.BUMP);
    return new LimitsView(
        corner,
        "Positions are " + words.zero().words() + ", + towards bump." + pairings(),
        counts(),
        rows,
        ranked.size() - rows.size(),
        words.leftOpen(),
        together(listed.stream().map(NextReading::need).toList()),
        List.of(end(droop), end(bump)),
        travel.midTravel().stream().map(this::mid).toList(),
        locks(droop, bump));
  }

  private String pairings() {
    return card.layout() == Layout.SOLID_AXLE_END
        ? " Both together and crossed are two motions, each counted from its own stop: first comes"
            + " what the wheel gets past the furthest."
        : "";
  }

  private OneEnd end(Ladder ladder) {
    return new EndRows(card, words, ladder, travel).end(this::together);
  }

  /** One round for all that is to be read; null where that would be one thing or none. */
  private String together(List<Need> needs) {
    List<Need> toRead = needs.stream().filter(n -> n.toRead() != null).distinct().toList();
    return toRead.size() < 2 ? null : NeedAddress.of(corner, words, toRead);
  }

  private List<LimitsView.Count> counts() {
    Map<Outcome, Integer> counts = new EnumMap<>(Outcome.class);
    Stream.concat(
            Stream.of(travel.droop(), travel.bump())
                .flatMap(e -> e.limits().stream())
                .map(Limit::outcome),
            travel.midTravel().stream().map(MidTravel::outcome))
        .forEach(o -> counts.merge(o, 1, Integer::sum));
    return counts.entrySet().stream()
        .map(e -> new LimitsView.Count(Shown.state(e.getKey()), e.getValue()))
        .toList();
  }

  // --- mid-travel and full lock

  private MidRow mid(MidTravel mid) {
    List<Link> cures = new ArrayList<>();
    cures.add(new Link("its curve", curve(corner, mid.point())));
    boolean lock = mid.steering().full();
    if (lock) {
      steeringStop(card).ifPresent(cures::add);
    }
    String cure =
        "Cured by room made where it is"
            + (lock ? ", or by less lock: the steering stop." : "; no stop keeps the wheel out.");
    return new MidRow(Shown.state(mid.outcome()), Capital.of(words.midTravel(mid)), cure, cures);
  }

  private List<LockRow> locks(Ladder droop, Ladder bump) {
    List<LockRow> rows = new ArrayList<>();
    for (Steering lock : List.of(Steering.FULL_LEFT, Steering.FULL_RIGHT)) {
      List<String> told = new ArrayList<>();
      for (Ladder ladder : List.of(droop, bump)) {
        ladder.locks().stream()
            .filter(l -> l.lock() == lock)
            .filter(l -> !l.rungs().isEmpty())
            .forEach(l -> told.add(told(ladder, l)));
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

  private String told(Ladder ladder, LockLimits lock) {
    LadderWords say = new LadderWords(words, ladder);
    List<String> names =
        lock.rungs().stream().map(ladder.rungs()::get).map(say::name).distinct().toList();
    return Capital.of(ladder.end().words())
        + ": "
        + String.join("; ", names)
        + ". "
        + say.lessLock(lock.wins());
  }

  static Optional<Link> steeringStop(Card card) {
    return card.adjuster(AdjusterKind.STEERING_STOP)
        .map(a -> new Link("steering stop", CureAddress.adjuster(card, a)));
  }

  static String curve(String corner, WatchPoint point) {
    return "/corners/" + corner + "/curves?of=p-" + point.point();
  }
}
