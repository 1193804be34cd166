package spindlebook.travel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.curve.Bound;
import spindlebook.curve.Node;
import spindlebook.curve.Nodes;
import spindlebook.curve.PositionToSetting;
import spindlebook.curve.Ratio;
import spindlebook.definition.Dimension;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.fold.Card;
import spindlebook.fold.Change;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.Standing;
import spindlebook.uncertainty.Figure;

/**
 * Where the bump stop is solid: read there, or worked out when a hand jack cannot reach it.
 *
 * <pre>
 *   g(B) = g(T) − c        beyond the gaps read, by the ratio at touch:  B = T + c / |dg/dz|
 * </pre>
 *
 * T wheel position where the stop touches its pad (mm, + towards bump); c the stop's crush from
 * touch to solid, at the stop (mm, &gt; 0); g(z) gap from stop to pad against wheel position (mm),
 * from two or more heights, the touch itself being a gap of nothing; B in mm.
 *
 * <p>Assumes that the stop is solid once crushed by c, along the line of the gap read, and that the
 * gap goes on by its ratio, bending no more than where it was read ({@link PositionToSetting}): a
 * stop that leans has a ratio that falls. A full bump that was read stands before one worked out,
 * as long as the two agree: |B_read − B| ≤ U of the difference, in which a shared mark cancels.
 * Else one of the two is wrong, nobody knows which, and both are kept: the one further out for the
 * margin, the one nearer in for the travel as set. Derived in docs/methods-corner.md. c has the
 * uncertainty its owner gives; T and the ratio bring theirs.
 *
 * <p>Worked: T 101.6, c 38.1, ratio 0.60: B = 101.6 + 63.5 = 165.1 mm.
 */
public final class SolidStop {
  private final Card card;
  private final Pairing pairing;
  final List<Need> needs = new ArrayList<>();

  /** With the ends of a solid axle in one pairing; null for a wheel hung alone. */
  public SolidStop(Card card, Pairing pairing) {
    this.card = card;
    this.pairing = pairing;
  }

  Optional<StopFound> found() {
    Optional<StopFound> read = read();
    Optional<StopFound> computed = computed();
    if (read.isEmpty()) {
      if (computed.isPresent() && outlivedAFullBump()) {
        needs.add(
            Need.read(
                HeightName.FULL_BUMP, null, pairing, why(card, HeightName.FULL_BUMP, pairing)));
        return Optional.empty();
      }
      return computed;
    }
    // What the computed one lacks is not needed beside one that was read.
    needs.clear();
    if (computed.isEmpty()) {
      return read;
    }
    Figure apart = read.get().positionMm().minus(computed.get().positionMm());
    if (Math.abs(apart.value()) <= apart.U()) {
      return read;
    }
    return Optional.of(
        apart.value() > 0
            ? read.get().against(computed.get())
            : computed.get().against(read.get()));
  }

  /** Touch was read before what made a full bump stale: alone it would say more than with it. */
  private boolean outlivedAFullBump() {
    long touchN =
        Nodes.at(card, HeightName.STOP_TOUCH, pairing).stream()
            .mapToLong(SeenHeight::n)
            .max()
            .orElse(0);
    return card.heights().stream()
        .filter(h -> h.name() == HeightName.FULL_BUMP && h.stop() == Standing.STALE)
        .filter(h -> Nodes.stood(h, pairing))
        .flatMap(h -> h.because().stream())
        .anyMatch(change -> change.n() > touchN);
  }

  private Optional<StopFound> read() {
    List<SeenHeight> solid = Nodes.at(card, HeightName.FULL_BUMP, pairing);
    return solid.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new StopFound(
                Nodes.meanPosition(solid), false, unconfirmed(solid), Nodes.keys(solid), null));
  }

  private Optional<StopFound> computed() {
    List<SeenHeight> touch = Nodes.at(card, HeightName.STOP_TOUCH, pairing);
    if (touch.isEmpty()) {
      needs.add(
          Need.read(
              HeightName.STOP_TOUCH, null, pairing, why(card, HeightName.STOP_TOUCH, pairing)));
      return Optional.empty();
    }
    Figure touchMm = Nodes.meanPosition(touch);
    Optional<Figure> crush = card.given(Dimension.STOP_CRUSH).map(GivenFigures::of);
    if (crush.isEmpty()) {
      needs.add(Need.give(card, Dimension.STOP_CRUSH));
    }
    List<Node> gaps = closing();
    Optional<Figure> further =
        gaps.isEmpty()
            ? Optional.empty()
            : PositionToSetting.wheelChange(
                    gaps, touchMm.value(), crush.orElse(Figure.exact(0)).times(-1))
                .map(PositionToSetting.Converted::changeMm);
    if (further.isEmpty()) {
      needs.add(Need.read(HeightName.IN_BETWEEN, Quantity.STOP_GAP, pairing, List.of()));
    }
    if (crush.isEmpty() || further.isEmpty()) {
      return Optional.empty();
    }
    List<String> readings = new ArrayList<>(Nodes.keys(touch));
    Nodes.lengths(card, Quantity.STOP_GAP, pairing).forEach(n -> readings.addAll(n.readings()));
    return Optional.of(
        new StopFound(touchMm.plus(further.get()), true, unconfirmed(touch), readings, null));
  }

  /**
   * What setting an end's stop changes, against wheel position: the strap, or the gap to the pad.
   */
  public static List<Node> setLengths(Card card, End end, Pairing pairing) {
    return end == End.DROOP
        ? StrapLengths.of(card, pairing).nodes()
        : new SolidStop(card, pairing).closing();
  }

  /**
   * Gap from stop to pad against wheel position, nothing at touch; empty when it was read at fewer
   * than two places or does not close towards bump.
   */
  List<Node> closing() {
    List<Node> gaps = gaps(Nodes.at(card, HeightName.STOP_TOUCH, pairing));
    return gaps.size() > 1
            && Ratio.falls(Ratio.at(gaps, gaps.get(gaps.size() - 1).positionMm().value()))
        ? gaps
        : List.of();
  }

  private List<Node> gaps(List<SeenHeight> touch) {
    List<Node> gaps = new ArrayList<>(Nodes.lengths(card, Quantity.STOP_GAP, pairing));
    for (SeenHeight height : touch) {
      gaps.add(new Node(height.positionMm(), Figure.exact(0), Bound.EXACT, List.of(height.key())));
    }
    return Node.merge(gaps);
  }

  static boolean unconfirmed(List<SeenHeight> heights) {
    return heights.stream().anyMatch(h -> h.stop() == Standing.PUT_BACK);
  }

  /** Why a named height no longer says where it is; empty when it was never read. */
  public static List<String> why(Card card, HeightName name, Pairing pairing) {
    return Change.each(
            card.heights().stream()
                .filter(h -> h.name() == name && h.stop() == Standing.STALE)
                .filter(h -> Nodes.stood(h, pairing))
                .map(SeenHeight::because))
        .map(Change::words)
        .distinct()
        .toList();
  }
}
