package spindlebook.curve;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.Memo;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/** The readings of a card that count, as points along its travel. */
public final class Nodes {
  private Nodes() {}

  /**
   * How what was read of a watch point stands against what is demanded of it today, where it was
   * read: by the same bounds as along the travel. A reading that tells nothing of a rule, or not
   * where it was taken, needs to be taken again.
   */
  public static Outcome outcome(SeenReading seen) {
    if (seen.height().positionMm() == null) {
      return Outcome.NEEDS;
    }
    return Rule.of(seen.point().keep()).stream()
        .map(rule -> node(seen, rule).map(n -> n.against(rule)).orElse(Outcome.NEEDS))
        .reduce(Outcome.CLEAR, Outcome::worse);
  }

  /**
   * A watch point at one steering, against one of its rules. 'Well clear' is no less than the rule
   * was when somebody looked (no more, for an angle); 'touches' and 'binds' leave nothing of a gap;
   * where a drill does not go there is less than the drill.
   */
  public static List<Node> watchPoint(
      Card card, String point, Steering steering, Pairing pairing, Rule rule) {
    return watchPoint(card, point, steering, pairing, rule, SeenReading::counts);
  }

  public static List<Node> watchPoint(
      Card card,
      String point,
      Steering steering,
      Pairing pairing,
      Rule rule,
      Predicate<SeenReading> which) {
    List<Node> nodes = new ArrayList<>();
    for (SeenReading reading : card.readingsOf(point)) {
      if (which.test(reading)
          && reading.reading().steering() == steering
          && stood(reading.height(), pairing)) {
        node(reading, rule).ifPresent(nodes::add);
      }
    }
    return nodes;
  }

  /** Whether a height is of a pairing; of any when that is null, as for a wheel hung alone. */
  public static boolean stood(SeenHeight height, Pairing pairing) {
    return pairing == null || height.pairing() == pairing;
  }

  private static Optional<Node> node(SeenReading seen, Rule rule) {
    Content.Reading reading = seen.reading();
    boolean gap = rule instanceof Rule.AtLeast;
    return switch (reading.result()) {
      case NUMBER -> Optional.ofNullable(seen.value()).map(v -> of(seen, v, Bound.EXACT));
      case GO_NO_GO -> {
        if (seen.value() != null) {
          yield Optional.of(of(seen, seen.value(), Bound.EXACT));
        }
        yield reading.go() != null
            ? Optional.of(of(seen, Figure.exact(reading.go().mm()), Bound.AT_LEAST))
            : Optional.of(
                of(seen, Figure.exact(Math.nextDown(reading.noGo().mm())), Bound.AT_MOST));
      }
      case WELL_CLEAR ->
          Rule.of(seen.pointThen().keep()).stream()
              .filter(then -> then.getClass() == rule.getClass())
              .map(then -> Figure.exact(then.limit()))
              .map(then -> of(seen, then, gap ? Bound.AT_LEAST : Bound.AT_MOST))
              .findFirst();
      case TOUCHES, BINDS ->
          gap
              ? Optional.of(of(seen, Figure.exact(0), Bound.AT_MOST))
              : Optional.of(of(seen, Figure.exact(beyond(rule)), Bound.AT_LEAST));
      case NOT_LOOKED, UNREAD -> Optional.empty();
    };
  }

  /** A joint that binds is past its rule, whatever the rule is. */
  private static double beyond(Rule rule) {
    return Math.nextUp(rule.limit());
  }

  /**
   * A length read straight ahead: strap, shock or stop gap. That of a strap driven or set since
   * still tells how far its mounts were apart there.
   */
  public static List<Node> lengths(Card card, Quantity quantity, Pairing pairing) {
    return lengths(card, quantity, pairing, SeenReading::countsAlongTravel);
  }

  /** The same, one node a place. */
  public static List<Node> merged(Card card, Quantity quantity, Pairing pairing) {
    return card.memo()
        .get(
            new Memo.Of(quantity, Optional.ofNullable(pairing)),
            () -> Node.merge(lengths(card, quantity, pairing)));
  }

  public static List<Node> lengths(
      Card card, Quantity quantity, Pairing pairing, Predicate<SeenReading> which) {
    return card.readingsOf(quantity).stream()
        .filter(r -> which.test(r) && r.value() != null)
        .filter(r -> r.reading().steering() == Steering.STRAIGHT)
        .filter(r -> stood(r.height(), pairing))
        .map(r -> of(r, r.value(), Bound.EXACT))
        .toList();
  }

  /**
   * The wheel position nearest to {@code positionMm} among those read, when it is near enough that
   * the ratio there is the ratio here: half an inch (common practice, no source).
   */
  public static Optional<Double> nearestRead(List<Node> merged, double positionMm) {
    double from = merged.get(0).positionMm().value();
    double to = merged.get(merged.size() - 1).positionMm().value();
    double nearest = Math.min(to, Math.max(from, positionMm));
    return Math.abs(nearest - positionMm) <= 12.7 ? Optional.of(nearest) : Optional.empty();
  }

  /** Heights that say where their named place is. */
  public static List<SeenHeight> at(Card card, HeightName name, Pairing pairing) {
    return card.heights().stream()
        .filter(h -> h.name() == name && h.stopCounts() && stood(h, pairing))
        .toList();
  }

  public static Figure meanPosition(List<SeenHeight> heights) {
    return Figure.mean(heights.stream().map(SeenHeight::positionMm).toList());
  }

  public static List<String> keys(List<SeenHeight> heights) {
    return heights.stream().map(SeenHeight::key).toList();
  }

  private static Node of(SeenReading seen, Figure value, Bound bound) {
    return new Node(seen.height().positionMm(), value, bound, List.of(seen.key()));
  }
}
