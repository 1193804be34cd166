package spindlebook.travel;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import spindlebook.corner.Lock;
import spindlebook.corner.Pairing;
import spindlebook.corner.Place;
import spindlebook.uncertainty.Difference;
import spindlebook.uncertainty.Source;

/**
 * One limit of an end on two cards: the same watch point at the same lock as each wheel sees it,
 * the shock, or the ground; on a solid axle in the same pairing.
 *
 * @param one empty where the first card has no such limit
 * @param room the first one's room less the second one's; empty unless both have it, and when a
 *     limit is only known to lie beyond what was read
 */
public record LimitPair(
    End end, Optional<Limit> one, Optional<Limit> other, Optional<Difference> room) {

  private record Key(Limit.Kind kind, String point, Lock lock, Pairing pairing) {
    static Key of(Place place, Limit limit) {
      return new Key(
          limit.kind(),
          limit.point() == null ? null : limit.point().point(),
          limit.steering() == null ? Lock.STRAIGHT : Lock.of(place, limit.steering()),
          limit.pairing());
    }
  }

  /** Whether two limits are the same thing. */
  public static boolean same(Place onePlace, Limit one, Place otherPlace, Limit other) {
    return Key.of(onePlace, one).equals(Key.of(otherPlace, other));
  }

  /** All limits of both ends, in the order in which they act on the first card. */
  public static List<LimitPair> of(
      Place onePlace,
      TravelFindings one,
      Place otherPlace,
      TravelFindings other,
      Predicate<Source> shared) {
    List<LimitPair> pairs = new ArrayList<>();
    for (End end : End.values()) {
      Map<Key, Limit> first = byKey(onePlace, one.at(end));
      Map<Key, Limit> second = byKey(otherPlace, other.at(end));
      Set<Key> all = new LinkedHashSet<>(first.keySet());
      all.addAll(second.keySet());
      for (Key key : all) {
        pairs.add(
            pair(
                end,
                Optional.ofNullable(first.get(key)),
                Optional.ofNullable(second.get(key)),
                shared));
      }
    }
    return pairs;
  }

  private static Map<Key, Limit> byKey(Place place, EndFindings end) {
    Map<Key, Limit> limits = new LinkedHashMap<>();
    end.limits().forEach(l -> limits.putIfAbsent(Key.of(place, l), l));
    return limits;
  }

  private static LimitPair pair(
      End end, Optional<Limit> one, Optional<Limit> other, Predicate<Source> shared) {
    Optional<Difference> room =
        known(one)
            .flatMap(a -> known(other).map(b -> Difference.of(a.roomMm(), b.roomMm(), shared)));
    return new LimitPair(end, one, other, room);
  }

  private static Optional<Limit> known(Optional<Limit> limit) {
    return limit.filter(l -> l.found() && l.roomMm() != null);
  }
}
