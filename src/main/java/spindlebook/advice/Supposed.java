package spindlebook.advice;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import spindlebook.curve.Node;
import spindlebook.curve.Nodes;
import spindlebook.curve.Rule;
import spindlebook.definition.Layout;
import spindlebook.definition.Measure;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Content;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.GapResult;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.fold.Card;
import spindlebook.fold.Noted;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Standing;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.End;
import spindlebook.travel.Limit;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * What one more reading would decide, had it been taken and come out at its middle.
 *
 * <pre>
 *   read before at that place: the same value again
 *   else: on the straight line between the readings either side; past the last of them, as there
 * </pre>
 *
 * <p>It brings a placing of its own, at a place of its own also steps of its own; the tape and a
 * shared mark are those of the readings beside it. A height of a stop is supposed where it was read
 * last. It assumes that the value is where it is expected: a hint and no promise. What was never
 * read has no middle, and a number to give has none. Source: derived in docs/methods-travel.md.
 */
final class Supposed {
  private static final String KEY = "supposed";

  private final Card card;
  private final ToRead read;
  private final Double nearMm;

  private Supposed(Card card, NextReading next) {
    this.card = card;
    this.read = next.need().toRead();
    this.nearMm = next.nearMm();
  }

  /** The limits open now that are clear, or short, once it is taken. */
  static List<Limit> decides(Card card, TravelFindings now, NextReading next) {
    if (next.need().toRead() == null) {
      return List.of();
    }
    Supposed supposed = new Supposed(card, next);
    return supposed.card().stream().flatMap(then -> supposed.decided(then, now)).toList();
  }

  private Stream<Limit> decided(Card then, TravelFindings now) {
    return Stream.of(End.values())
        .flatMap(
            end -> {
              List<Limit> limits = limits(then, now, end);
              return now.at(end).limits().stream().filter(l -> open(l) && decided(l, limits));
            });
  }

  /** A watch point's reading moves its own limits alone. */
  private List<Limit> limits(Card then, TravelFindings now, End end) {
    return point()
        .map(p -> CornerTravel.limits(then, p, now, end))
        .orElseGet(() -> CornerTravel.of(then).at(end).limits());
  }

  static boolean open(Limit limit) {
    return limit.outcome() == Outcome.CANT_TELL || limit.outcome() == Outcome.NEEDS;
  }

  private static boolean decided(Limit limit, List<Limit> then) {
    List<Limit> same = then.stream().filter(l -> same(l, limit)).toList();
    return !same.isEmpty() && same.stream().noneMatch(Supposed::open);
  }

  private static boolean same(Limit one, Limit other) {
    return one.kind() == other.kind()
        && one.steering() == other.steering()
        && one.pairing() == other.pairing()
        && Objects.equals(one.point(), other.point());
  }

  private Optional<Card> card() {
    Optional<SeenReading> before =
        last(
            card.readings(),
            r ->
                r.height().positionCounts()
                    && ReadingsToTake.toRead(r).equals(read)
                    && (nearMm == null || mm(r.height()) == nearMm));
    if (nearMm != null && before.isEmpty()) {
      return card.heights().stream()
          .filter(h -> h.positionCounts() && h.asked() == read.pairing())
          .min(Comparator.comparingDouble(h -> Math.abs(mm(h) - nearMm)))
          .map(h -> height(h, nearMm, HeightName.IN_BETWEEN))
          .flatMap(h -> middle(h).map(r -> card.supposing(h, r)));
    }
    Optional<SeenHeight> named =
        last(
            card.heights(),
            h -> h.positionCounts() && h.name() == read.name() && h.asked() == read.pairing());
    if (read.quantity() == null) {
      return named.map(h -> card.supposing(height(h, mm(h), h.name()), null));
    }
    return before
        .map(r -> reading(r.height(), r.reading(), fresh(r.value(), false)))
        .or(() -> named.flatMap(this::middle))
        .map(r -> card.supposing(null, r));
  }

  private static <T> Optional<T> last(List<T> all, Predicate<T> which) {
    return all.stream().filter(which).reduce((earlier, later) -> later);
  }

  private static double mm(SeenHeight height) {
    return height.positionMm().value();
  }

  private SeenHeight height(SeenHeight like, double positionMm, HeightName name) {
    Content.Height was = like.height();
    Content.Height height =
        new Content.Height(
            was.round(),
            name,
            null,
            was.spindle(),
            was.mark(),
            was.markAsAt(),
            null,
            null,
            was.otherEnd(),
            was.pairing());
    Figure there = fresh(like.positionMm(), name == HeightName.IN_BETWEEN);
    return new SeenHeight(
        supposed(like, height),
        like.round(),
        height,
        there.plus(positionMm - there.value()),
        like.markMm(),
        Standing.LIVE,
        Standing.LIVE,
        List.of());
  }

  private Noted supposed(SeenHeight like, Content content) {
    return new Noted(card.n() + 1, KEY, like.at(), like.who(), 0, content);
  }

  private Optional<SeenReading> middle(SeenHeight height) {
    Pairing pairing =
        card.layout() == Layout.SOLID_AXLE_END
            ? read.pairing() == null ? Pairing.BOTH_TOGETHER : read.pairing()
            : null;
    Optional<WatchPoint> point = point();
    List<Node> nodes =
        read.quantity() == Quantity.WATCH_POINT
            ? point
                .map(p -> Rule.of(p.keep()).get(0))
                .map(r -> Nodes.watchPoint(card, read.point(), read.steering(), pairing, r))
                .orElse(List.of())
            : Nodes.lengths(card, read.quantity(), pairing);
    boolean angle = point.filter(p -> p.place().measure() == Measure.ANGLE).isPresent();
    Content.Reading number =
        new Content.Reading(
            height.key(),
            read.steering(),
            read.quantity(),
            read.point(),
            GapResult.NUMBER,
            KEY,
            angle ? null : new TypedLength(KEY, 0, LengthUnit.MM, KEY),
            angle ? new TypedAngle(KEY, 0, KEY) : null,
            null,
            null,
            null,
            null,
            null,
            null);
    return between(Node.merge(nodes), mm(height)).map(v -> reading(height, number, v));
  }

  private static Optional<Figure> between(List<Node> nodes, double atMm) {
    Optional<Node> below = last(nodes, n -> n.positionMm().value() <= atMm);
    Optional<Node> above = nodes.stream().filter(n -> n.positionMm().value() > atMm).findFirst();
    return below
        .or(() -> above)
        .map(
            low -> {
              Node high = above.orElse(low);
              double widthMm = high.positionMm().value() - low.positionMm().value();
              double share = widthMm <= 0 ? 0 : (atMm - low.positionMm().value()) / widthMm;
              double value =
                  low.value().value() + share * (high.value().value() - low.value().value());
              Figure like = low.value().U() >= high.value().U() ? low.value() : high.value();
              Figure there = fresh(like, true);
              return there.plus(value - there.value());
            });
  }

  private Optional<WatchPoint> point() {
    return read.point() == null ? Optional.empty() : card.watchPoint(read.point());
  }

  private SeenReading reading(SeenHeight height, Content.Reading content, Figure value) {
    WatchPoint point = point().orElse(null);
    return new SeenReading(
        supposed(height, content),
        height,
        content,
        point,
        point,
        value,
        Standing.LIVE,
        Standing.LIVE,
        Standing.LIVE,
        List.of());
  }

  /** The same value read anew; null for what is no number. */
  private static Figure fresh(Figure like, boolean elsewhere) {
    if (like == null) {
      return null;
    }
    Map<Source, Double> parts = new LinkedHashMap<>();
    like.parts()
        .forEach(
            (source, part) -> {
              boolean own =
                  source.kind() == SourceKind.PLACING
                      || (elsewhere && source.kind() == SourceKind.RESOLUTION);
              parts.put(own ? new Source(KEY + " " + source.id(), source.kind()) : source, part);
            });
    return Figure.of(like.value(), parts);
  }
}
