package spindlebook.plan;

import static spindlebook.entry.HeightName.FULL_BUMP;
import static spindlebook.entry.HeightName.IN_BETWEEN;
import static spindlebook.entry.HeightName.ON_THE_STRAP;
import static spindlebook.entry.HeightName.RIDE;
import static spindlebook.entry.HeightName.STOP_OUT;
import static spindlebook.entry.HeightName.STOP_TOUCH;
import static spindlebook.entry.HeightName.STRAP_OFF;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import spindlebook.definition.Allowance;
import spindlebook.definition.Dimension;
import spindlebook.definition.HeldBack;
import spindlebook.entry.Content;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;

/**
 * A round as a plan for the jack, built backwards from what both ends are judged by:
 *
 * <pre>
 *   droop: S and the stretch to come; every rule past where the strap lets the wheel go
 *          strap off · on the strap · in between, 1st
 *   bump:  B; every rule past where the solid stop and the impact let it go
 *          bump stop touches · solid · stop out
 * </pre>
 *
 * <p>Past its stop every watch point is looked at: read as a number where it gets tight ({@link
 * Tight}), else seen to be well clear. Kept for sure there, it is asked nowhere further in; else at
 * the end's other two heights, for three numbers tell where a rule is met and two only between
 * which. A strap's length tells its stretch and its ratio, a shock's both its ends, a stop's gap
 * where it is solid when no jack gets there. Ride decides no end: it is a round of its own, spring
 * in, on the tyres.
 */
public final class JackPlan {
  /** Where toe and camber are read along the travel when they are chosen. */
  private static final Set<HeightName> ALONG =
      EnumSet.of(ON_THE_STRAP, IN_BETWEEN, RIDE, STOP_TOUCH, FULL_BUMP);

  /** As far past where a stop lets the wheel go as a height there is aimed: common practice. */
  public static final double PAST_MM = 12.7;

  private JackPlan() {}

  /**
   * One setting of the jack.
   *
   * @param name where the end stands that the round names
   * @param label the owner's words for it; null for none
   * @param pairing how the ends of a solid axle stand; null of a wheel hung alone
   * @param otherEnd where its other end stands; the same both together, null of a wheel hung alone
   */
  public record Stand(HeightName name, String label, Pairing pairing, HeightName otherEnd) {
    static Stand alone(HeightName name) {
      return new Stand(name, null, null, null);
    }

    public static Stand together(HeightName name) {
      return new Stand(name, null, Pairing.BOTH_TOGETHER, name);
    }

    static Stand crossed(HeightName name, HeightName otherEnd) {
      return new Stand(name, null, Pairing.CROSSED, otherEnd);
    }

    /** With the other end as far the other way as it goes in a round. */
    public static Stand crossed(HeightName name, Content.Round round) {
      HeightName up = round.bumpStopIn() ? FULL_BUMP : STOP_OUT;
      return crossed(
          name,
          switch (name) {
            case STRAP_OFF, ON_THE_STRAP -> up;
            case STOP_TOUCH, FULL_BUMP, STOP_OUT -> ON_THE_STRAP;
            case IN_BETWEEN, RIDE -> IN_BETWEEN;
          });
    }
  }

  /** All of a round, in order; a height in between as often as it is to be read. */
  public static List<Stand> of(Content.Round round, boolean axle) {
    if (!whole(round)) {
      return round.toRead().stream()
          .map(t -> asked(t, round, axle))
          .distinct()
          .sorted(Comparator.comparing(Stand::name))
          .sorted(Comparator.comparing(s -> s.pairing() == Pairing.CROSSED))
          .toList();
    }
    List<Stand> all = new ArrayList<>();
    names(round).forEach(n -> all.add(axle ? Stand.together(n) : Stand.alone(n)));
    if (axle && !round.springIn()) {
      // Past both stops first, while they are off and out.
      all.add(Stand.crossed(STOP_OUT, STRAP_OFF));
      all.add(Stand.crossed(STRAP_OFF, STOP_OUT));
      if (round.bumpStopIn()) {
        all.add(Stand.crossed(ON_THE_STRAP, FULL_BUMP));
        all.add(Stand.crossed(FULL_BUMP, ON_THE_STRAP));
      }
    }
    return List.copyOf(all);
  }

  private static Stand asked(ToRead read, Content.Round round, boolean axle) {
    Stand stand =
        !axle
            ? Stand.alone(read.name())
            : read.pairing() == null
                ? Stand.together(read.name())
                : Stand.crossed(read.name(), round);
    return new Stand(stand.name(), read.label(), stand.pairing(), stand.otherEnd());
  }

  private static List<HeightName> names(Content.Round round) {
    if (round.springIn()) {
      // A spring lets the wheel be read where it stands, and where it hangs.
      return List.of(round.onTyres() ? RIDE : ON_THE_STRAP);
    }
    return round.bumpStopIn()
        ? List.of(STRAP_OFF, ON_THE_STRAP, IN_BETWEEN, IN_BETWEEN, STOP_TOUCH, FULL_BUMP, STOP_OUT)
        : List.of(STRAP_OFF, ON_THE_STRAP, IN_BETWEEN, IN_BETWEEN, STOP_OUT);
  }

  // --- what a round sets out to read

  /** Toe or camber read along with a whole round. */
  public static List<ToRead> along(Collection<Quantity> chosen) {
    return chosen.stream()
        .flatMap(
            q -> ALONG.stream().map(n -> new ToRead(n, null, Steering.STRAIGHT, q, null, null)))
        .toList();
  }

  /** Whether it sets out for the verdict, and not only to read this or that. */
  public static boolean whole(Content.Round round) {
    return whole(round.toRead());
  }

  public static boolean whole(List<ToRead> toRead) {
    return along(chosen(toRead)).equals(toRead);
  }

  /** Which of toe and camber a whole round reads along. */
  public static Set<Quantity> chosen(List<ToRead> toRead) {
    Set<Quantity> chosen = EnumSet.noneOf(Quantity.class);
    for (Quantity q : List.of(Quantity.CAMBER, Quantity.TOE)) {
      if (toRead.stream().anyMatch(t -> t.quantity() == q)) {
        chosen.add(q);
      }
    }
    return chosen;
  }

  // --- what is asked at a height of a whole round

  /**
   * The heights of the same end further out, outermost first; empty at the outermost, null where no
   * end is judged.
   *
   * @param nth which of its name it is, from 1
   */
  public static List<HeightName> furtherOut(HeightName name, int nth) {
    return switch (name) {
      case STRAP_OFF, STOP_OUT -> List.of();
      case ON_THE_STRAP -> List.of(STRAP_OFF);
      case FULL_BUMP -> List.of(STOP_OUT);
      case STOP_TOUCH -> List.of(STOP_OUT, FULL_BUMP);
      case IN_BETWEEN -> nth == 1 ? List.of(STRAP_OFF, ON_THE_STRAP) : null;
      case RIDE -> null;
    };
  }

  public static boolean droop(HeightName name) {
    return name.compareTo(IN_BETWEEN) <= 0;
  }

  /** Whether all that is not read there is seen to be well clear in one look. */
  public static boolean allLookedAt(HeightName name) {
    return name.pastAStop() || name == IN_BETWEEN;
  }

  /** Whether a length, toe or camber read there can change a verdict, or was chosen. */
  public static boolean asks(
      Content.Round round, Card end, Quantity quantity, HeightName name, int nth, Pairing pairing) {
    boolean crossed = pairing == Pairing.CROSSED;
    return switch (quantity) {
      case WATCH_POINT -> false;
      case STRAP_LENGTH ->
          droop(name)
              && nth == 1
              && !end.heldBack(Allowance.STRAP_STRETCH)
                  .map(HeldBack::percent)
                  .filter(p -> p == 0)
                  .isPresent();
      case SHOCK_LENGTH -> !crossed && (name.pastAStop() || name == ON_THE_STRAP);
      case STOP_GAP ->
          !crossed && name == IN_BETWEEN && nth == 2 && end.given(Dimension.STOP_CRUSH).isPresent();
      case CAMBER ->
          end.given(Dimension.READ_POINT_OUTBOARD).isPresent() || chosen(round, quantity, name);
      case TOE -> chosen(round, quantity, name);
    };
  }

  private static boolean chosen(Content.Round round, Quantity quantity, HeightName name) {
    return ALONG.contains(name) && chosen(round.toRead()).contains(quantity);
  }

  // --- where the jack is aimed

  /**
   * Wheel position, mm, + towards bump, at which a height is likely to be; empty where nothing is
   * known of it.
   *
   * @param nth which of its name it is, from 1
   * @param reachMm where its stop lets the wheel go in the end, of a height past it; empty where
   *     that is not known
   */
  public static OptionalDouble aimMm(Card card, Stand stand, int nth, OptionalDouble reachMm) {
    if (stand.name().pastAStop() && reachMm.isPresent()) {
      double out = stand.name() == STRAP_OFF ? -PAST_MM : PAST_MM;
      return OptionalDouble.of(reachMm.getAsDouble() + out);
    }
    if (stand.name() != IN_BETWEEN) {
      return last(card, stand, stand.name());
    }
    OptionalDouble low = last(card, stand, ON_THE_STRAP);
    OptionalDouble high = last(card, stand, STOP_TOUCH);
    return stand.label() != null || low.isEmpty() || high.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(low.getAsDouble() + nth * (high.getAsDouble() - low.getAsDouble()) / 3);
  }

  private static OptionalDouble last(Card card, Stand stand, HeightName name) {
    Pairing pairing = stand.pairing() == null ? Pairing.BOTH_TOGETHER : stand.pairing();
    Optional<SeenHeight> last =
        card.heights().stream()
            // Where its stop stood before it was moved is no place to go to.
            .filter(h -> h.name() == name && h.pairing() == pairing && h.stopCounts())
            .reduce((first, second) -> second);
    return last.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(last.get().positionMm().value());
  }
}
