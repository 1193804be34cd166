package spindlebook.travel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import spindlebook.curve.Node;
import spindlebook.curve.Nodes;
import spindlebook.curve.Ratio;
import spindlebook.definition.Adjuster;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.Allowance;
import spindlebook.definition.Dimension;
import spindlebook.definition.Given;
import spindlebook.definition.HeldBack;
import spindlebook.definition.SettingUnit;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.fold.Card;
import spindlebook.fold.Change;
import spindlebook.fold.InForce;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.uncertainty.Figure;

/**
 * How much further the wheel will drop as a limit strap takes up its stretch.
 *
 * <pre>
 *   e_strap = max(0, p·ℓ − max(0, m − ℓ))        e_wheel = e_strap / |dλ/dz|
 * </pre>
 *
 * p the share of its length a new strap is expected to take up (the owner's; 10 % is common
 * practice, no source); ℓ the new strap's mount-to-mount length at its present setting (mm); m that
 * length read on the strap now, under the corner's weight (mm); λ(z) strap length against wheel
 * position (mm), from at least two heights; z wheel position, + towards bump. All positive. What
 * has been taken up already shows in where the strap stops today and is not held back twice.
 *
 * <p>Assumes that the strap pulls at full droop and that the ratio holds over the little way from S
 * to S − e: with a ratio changing by 2 % over 60 mm, as the reference corner's does, 2 % of e. p
 * has no uncertainty of its own; growth and ratio bring theirs.
 *
 * <p>Without a reading at the same height, nothing is counted as taken up: the strap is held to be
 * as new, which holds back more. So it is once the strap was driven since m was read; the doubt of
 * that m stays in e, so that nothing looks surer for having gone stale, and m stays a point of
 * λ(z): its mounts are where they were. A length w typed at a re-check after the drive counts:
 *
 * <pre>
 *   e_strap = max(0, p·ℓ − max(0, w − ℓ)) + max(0, w − m)      m = ℓ where it was not read on it
 * </pre>
 *
 * the first still to come, the second come since S was read. Missing lengths come back as needs.
 * Derived in docs/methods-corner.md.
 *
 * <p>Worked: ℓ 508, p 10 %, m 520.7: e_strap = 50.8 − 12.7 = 38.1 mm; at a ratio of 0.5 the wheel
 * drops 76.2 mm further.
 */
public final class StrapStretch {
  /** Times at most that U is found again where it ends; by then it stays, where the ratio tells. */
  private static final int FURTHER = 64;

  /** Where the ratio may be nothing it has no end, and a kilometre of wheel is far enough. */
  private static final double FARTHEST_MM = 1e6;

  private final Card card;
  private final Pairing pairing;
  private final List<SeenHeight> onTheStrap;
  final List<Need> needs = new ArrayList<>();

  /** With the ends of a solid axle in one pairing; null for a wheel hung alone. */
  public StrapStretch(Card card, Pairing pairing) {
    this.card = card;
    this.pairing = pairing;
    this.onTheStrap = Nodes.at(card, HeightName.ON_THE_STRAP, pairing);
  }

  /** At the wheel, held back below S; empty with {@link #needs} when a term is missing. */
  Optional<HeldAtWheel> heldBack(double stopMm) {
    Optional<HeldAtWheel> withoutStop = withoutStop();
    HeldBack share = card.heldBack(Allowance.STRAP_STRETCH).orElse(null);
    if (share == null || withoutStop.isPresent()) {
      return withoutStop;
    }
    Optional<Figure> unloaded = newLength();
    Optional<Figure> ratio = ratio(stopMm);
    if (unloaded.isEmpty() || ratio.isEmpty()) {
      return Optional.empty();
    }
    List<SeenReading> readOnIt = readOnTheStrap(SeenReading::counts);
    List<SeenReading> before =
        readOnIt.isEmpty() ? readOnTheStrap(r -> r.stale() && r.countsAlongTravel()) : List.of();
    Figure all = unloaded.get().times(share.percent() / 100);
    Optional<Figure> now = pairing == Pairing.CROSSED ? Optional.empty() : card.strapNow();
    Figure atStrap =
        now.map(length -> since(unloaded.get(), all, before, length))
            .orElseGet(() -> atStrap(unloaded.get(), all, readOnIt, before));
    List<String> readings = new ArrayList<>(readOnIt.stream().map(SeenReading::key).toList());
    Nodes.lengths(card, Quantity.STRAP_LENGTH, pairing).forEach(n -> readings.addAll(n.readings()));
    return Optional.of(
        new HeldAtWheel(
            quotient(atStrap, ratio.get()),
            atStrap,
            ratio.get(),
            readings.stream().distinct().toList(),
            before.stream()
                .filter(r -> now.isEmpty())
                .flatMap(r -> r.because().stream())
                .map(Change::words)
                .distinct()
                .toList(),
            StrapLengths.of(card, pairing).modelled()));
  }

  /** What can be said when nobody has read where the strap stops: no share is nothing to come. */
  Optional<HeldAtWheel> withoutStop() {
    Optional<HeldBack> share = card.heldBack(Allowance.STRAP_STRETCH);
    if (share.isEmpty()) {
      needs.add(Need.choose(Allowance.STRAP_STRETCH));
      return Optional.empty();
    }
    if (share.get().percent() == 0) {
      return Optional.of(
          new HeldAtWheel(
              Figure.exact(0), Figure.exact(0), Figure.exact(1), List.of(), List.of(), false));
    }
    if (newLength().isEmpty()) {
      needs.add(Need.give(card, Dimension.NEW_STRAP_LENGTH));
    }
    return Optional.empty();
  }

  /** Whether a length of the strap, hanging on it, says that its whole share has come. */
  public boolean usedUp(double lengthMm) {
    double share = card.heldBack(Allowance.STRAP_STRETCH).map(h -> h.percent() / 100).orElse(0.0);
    return newLength().filter(l -> lengthMm - l.value() >= share * l.value()).isPresent();
  }

  /**
   * The length at which its whole share has come; empty while that or the new length is not known.
   */
  public Optional<Double> usedUpAtMm() {
    return card.heldBack(Allowance.STRAP_STRETCH)
        .flatMap(share -> newLength().map(l -> l.value() * (1 + share.percent() / 100)));
  }

  /** What came since S was read and what is still to come; both end the wheel lower than S. */
  private static Figure since(
      Figure newLengthMm, Figure all, List<SeenReading> before, Figure now) {
    Figure then =
        before.isEmpty()
            ? newLengthMm
            : Figure.mean(before.stream().map(SeenReading::value).toList());
    Figure growth = now.minus(newLengthMm);
    Figure toCome = growth.value() <= 0 ? all : all.minus(growth);
    Figure came = now.minus(then);
    // Where one of the two is nothing, the doubt of the strap's length is all in the other.
    if (came.value() <= 0) {
      return atLeastNothing(toCome);
    }
    return toCome.value() <= 0 ? came : toCome.plus(came);
  }

  /** What has grown past its share is as doubtful as what has not. */
  private static Figure atLeastNothing(Figure mm) {
    return mm.value() < 0 ? mm.plus(-mm.value()) : mm;
  }

  private static Figure atStrap(
      Figure newLengthMm, Figure all, List<SeenReading> readOnIt, List<SeenReading> before) {
    List<SeenReading> read = readOnIt.isEmpty() ? before : readOnIt;
    if (read.isEmpty()) {
      return all;
    }
    Figure loaded = Figure.mean(read.stream().map(SeenReading::value).toList());
    Figure growth = loaded.minus(newLengthMm);
    Figure left = growth.value() <= 0 ? all : all.minus(growth);
    if (readOnIt.isEmpty()) {
      return left.plus(all.value() - left.value());
    }
    return atLeastNothing(left);
  }

  /** Strap length per wheel travel at the stop, positive. */
  private Optional<Figure> ratio(double stopMm) {
    List<Node> lengths = StrapLengths.of(card, pairing).nodes();
    if (lengths.size() < 2) {
      needs.add(
          Need.read(
              lengths.isEmpty() ? HeightName.ON_THE_STRAP : HeightName.IN_BETWEEN,
              Quantity.STRAP_LENGTH,
              pairing,
              List.of()));
      return Optional.empty();
    }
    Optional<Double> read = Nodes.nearestRead(lengths, stopMm);
    if (read.isEmpty()) {
      needs.add(Need.read(HeightName.ON_THE_STRAP, Quantity.STRAP_LENGTH, pairing, List.of()));
      return Optional.empty();
    }
    Figure ratio = Ratio.at(lengths, read.get());
    if (!Ratio.falls(ratio)) {
      // A strap that grows with bump holds nothing at droop: say so by asking for it
      // again.
      needs.add(
          Need.read(
              HeightName.IN_BETWEEN,
              Quantity.STRAP_LENGTH,
              pairing,
              List.of("the strap lengths read do not get shorter towards bump")));
      return Optional.empty();
    }
    return Optional.of(ratio.times(-1));
  }

  private List<SeenReading> readOnTheStrap(Predicate<SeenReading> which) {
    return card.readings().stream()
        .filter(r -> which.test(r) && r.of(Quantity.STRAP_LENGTH) && r.value() != null)
        .filter(r -> onTheStrap.stream().anyMatch(h -> h.key().equals(r.height().key())))
        .toList();
  }

  /** The unloaded strap at its present setting: as new, and the holes or turns since. */
  private Optional<Figure> newLength() {
    Optional<Given> given = card.given(Dimension.NEW_STRAP_LENGTH);
    InForce strap = card.adjuster(AdjusterKind.LIMIT_STRAP).orElse(null);
    if (strap == null
        || strap.setting() == null
        || strap.setting().unit() != strap.adjuster().unit()) {
      return given.map(GivenFigures::of);
    }
    Adjuster adjuster = strap.adjuster();
    if (adjuster.unit() == SettingUnit.LENGTH) {
      return Optional.of(Figure.exact(strap.setting().amount()));
    }
    if (given.isEmpty()
        || adjuster.first() == null
        || adjuster.first().unit() != adjuster.unit()
        || adjuster.step() == null
        || adjuster.unit() == SettingUnit.WORDS) {
      return given.map(GivenFigures::of);
    }
    double steps = strap.setting().amount() - adjuster.first().amount();
    double shorterMm = steps * adjuster.step().mm() * (adjuster.moreShortens() ? 1 : -1);
    return Optional.of(GivenFigures.of(given.get()).plus(-shorterMm));
  }

  /**
   * A length carried to the wheel. Its U is that of the place where it may end, for there the
   * ratio's doubt has more way to act: the further end of Fieller's interval (E. C. Fieller, J. R.
   * Stat. Soc. B 16, 1954; from memory).
   */
  static Figure quotient(Figure dividend, Figure divisor) {
    double value = dividend.value() / divisor.value();
    Figure quotient = Figure.exact(value);
    double before = -1;
    for (int i = 0; i < FURTHER && quotient.U() - before > 1e-7 && before < FARTHEST_MM; i++) {
      before = quotient.U();
      double furthest = value + Math.copySign(quotient.U(), value);
      quotient =
          Figure.linear(
              value,
              List.of(dividend, divisor),
              new double[] {1 / divisor.value(), -furthest / divisor.value()});
    }
    return quotient;
  }
}
