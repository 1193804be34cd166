package spindlebook.fold;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.definition.Adjuster;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.Allowance;
import spindlebook.definition.CarDetails;
import spindlebook.definition.Dimension;
import spindlebook.definition.Given;
import spindlebook.definition.HeldBack;
import spindlebook.definition.Layout;
import spindlebook.definition.Place;
import spindlebook.definition.Tool;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Content;
import spindlebook.entry.GapResult;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.uncertainty.Figure;

/**
 * One corner as of a point of the book: what is watched, what is set, what was read and what each
 * of it is worth now. The pure fold of the car's entries; see {@link CarBook#card}.
 *
 * @param givenAcross what is given of the other wheel of the axle
 * @param joints of the linkage, each as it was laid out last, in the enum's order
 * @param strapNow the strap's length hanging on it as typed at a re-check, mm; empty where nobody
 *     did, or it was driven, set or read in a round since
 * @param springs what carries it and ends its motion, as its owner gave it
 * @param memo what was worked out from this card, kept with it
 */
public record Card(
    String car,
    CarDetails details,
    String corner,
    Place place,
    Layout layout,
    long n,
    List<WatchPoint> watchPoints,
    List<InForce> adjusters,
    Map<Dimension, SeenGiven> given,
    Map<Dimension, SeenGiven> givenAcross,
    Map<Allowance, HeldBack> heldBack,
    List<Tool> tools,
    List<SeenRound> rounds,
    List<SeenHeight> heights,
    List<SeenReading> readings,
    List<Change> changes,
    List<Doubted> doubts,
    Aligned aligned,
    List<SeenJoint> joints,
    Optional<Figure> strapNow,
    SeenSprings springs,
    Memo memo) {

  /** The same of a longer book, in which nothing of it is otherwise. */
  Card in(long longer) {
    return with(longer, rounds, heights, readings, memo);
  }

  /** With a round in which nothing was read yet. */
  Card with(long longer, SeenRound round) {
    List<SeenRound> all = new ArrayList<>(rounds);
    all.add(round);
    return with(longer, all, heights, readings, memo);
  }

  /** With other heights and readings. */
  Card with(long longer, List<SeenHeight> seenHeights, List<SeenReading> seenReadings) {
    return with(longer, rounds, seenHeights, seenReadings, memo.anew());
  }

  /** With other heights, and other readings of one thing; of none where that is null. */
  Card reading(
      Object thing, long longer, List<SeenHeight> seenHeights, List<SeenReading> seenReadings) {
    return with(longer, rounds, seenHeights, seenReadings, memo.afterReading(thing));
  }

  private Card with(
      long longer,
      List<SeenRound> seenRounds,
      List<SeenHeight> seenHeights,
      List<SeenReading> seenReadings,
      Memo known) {
    return new Card(
        car,
        details,
        corner,
        place,
        layout,
        longer,
        watchPoints,
        adjusters,
        given,
        givenAcross,
        heldBack,
        tools,
        List.copyOf(seenRounds),
        List.copyOf(seenHeights),
        List.copyOf(seenReadings),
        changes,
        doubts,
        aligned,
        joints,
        strapNow,
        springs,
        known);
  }

  public Optional<WatchPoint> watchPoint(String point) {
    return watchPoints.stream().filter(w -> w.point().equals(point)).findFirst();
  }

  /** What is to be read at a height, without where: the watch point's name, the quantity's. */
  public String what(Content.ToRead read) {
    return read.point() == null
        ? read.quantity().words()
        : watchPoint(read.point()).map(WatchPoint::name).orElse(read.point());
  }

  public Optional<InForce> adjuster(String adjuster) {
    return adjusters.stream().filter(a -> a.adjuster().adjuster().equals(adjuster)).findFirst();
  }

  public Optional<InForce> adjuster(AdjusterKind kind) {
    return adjusters.stream().filter(a -> a.adjuster().kind() == kind).findFirst();
  }

  /** A given length that still holds. */
  public Optional<Given> given(Dimension dimension) {
    return holding(given.get(dimension));
  }

  /** All given lengths that still hold. */
  public List<Given> givenNow() {
    return Stream.of(Dimension.values()).flatMap(d -> given(d).stream()).toList();
  }

  /** What is set, as another corner begins with it: as it stands now. */
  public List<Adjuster> adjustersAsSet() {
    return adjusters.stream()
        .map(
            a ->
                a.adjuster()
                    .from(
                        a.setting() != null && a.setting().unit() == a.adjuster().unit()
                            ? a.setting()
                            : null))
        .toList();
  }

  /** A given length whose part was changed since. */
  public Optional<SeenGiven> givenBefore(Dimension dimension) {
    return Optional.ofNullable(given.get(dimension)).filter(g -> !g.stands().counts());
  }

  /** As given of the other wheel of the axle. */
  public Optional<Given> givenAcross(Dimension dimension) {
    return holding(givenAcross.get(dimension));
  }

  private static Optional<Given> holding(SeenGiven seen) {
    return Optional.ofNullable(seen).filter(g -> g.stands().counts()).map(SeenGiven::given);
  }

  public Optional<HeldBack> heldBack(Allowance allowance) {
    return Optional.ofNullable(heldBack.get(allowance));
  }

  public Optional<SeenRound> round(String key) {
    return rounds.stream().filter(r -> r.key().equals(key)).findFirst();
  }

  public Optional<SeenHeight> height(String key) {
    return one("heights", heights, SeenHeight::key, key);
  }

  public Optional<SeenReading> reading(String key) {
    return one("readings", readings, SeenReading::key, key);
  }

  public List<SeenHeight> heightsOf(String round) {
    return all("heights of rounds", heights, h -> h.round().key(), round);
  }

  public List<SeenReading> readingsIn(String round) {
    return all("readings in rounds", readings, r -> r.height().round().key(), round);
  }

  public List<SeenReading> readingsAt(String height) {
    return all("readings at heights", readings, r -> r.height().key(), height);
  }

  public List<SeenReading> readingsOf(String point) {
    return readingsOf((Object) point);
  }

  public List<SeenReading> readingsOf(Quantity quantity) {
    return readingsOf((Object) quantity);
  }

  List<SeenReading> readingsOf(Object thing) {
    return memo.get(
        readings(thing), () -> readings.stream().filter(r -> r.thing().equals(thing)).toList());
  }

  /** The name under which the readings of a thing are kept. */
  static Memo.Of readings(Object thing) {
    return new Memo.Of(thing, "readings");
  }

  private <T> Optional<T> one(String what, List<T> list, Function<T, String> key, String wanted) {
    Map<String, T> byKey =
        memo.get(
            what,
            () -> list.stream().collect(Collectors.toMap(key, one -> one, (one, more) -> one)));
    return Optional.ofNullable(byKey.get(wanted));
  }

  private <T, K> List<T> all(String what, List<T> list, Function<T, K> by, K wanted) {
    Map<K, List<T>> grouped =
        memo.get(what, () -> list.stream().collect(Collectors.groupingBy(by)));
    return grouped.getOrDefault(wanted, List.of());
  }

  /** The reading of the same thing at the same named place and steering before this one. */
  public Optional<SeenReading> before(SeenReading reading) {
    return readings.stream()
        .filter(r -> r.n() < reading.n() && r.samePlace(reading))
        .reduce((first, second) -> second);
  }

  /**
   * The last reading of a quantity at a named place and steering, in any round, with the ends of a
   * solid axle in one pairing.
   */
  public Optional<SeenReading> last(
      HeightName name, Pairing pairing, Steering steering, Quantity quantity, String point) {
    return readings.stream()
        .filter(r -> r.height().name() == name && r.reading().steering() == steering)
        .filter(r -> r.height().pairing() == pairing)
        .filter(r -> point == null ? r.of(quantity) : r.of(point))
        .reduce((first, second) -> second);
  }

  /**
   * What no longer holds, or was put back and not confirmed, each thing once; not what holds from
   * another reading of the same place, as when a late phone sends an older one.
   */
  public List<ReadAgain> readAgain() {
    return memo.get("read again", this::eachOnce);
  }

  private List<ReadAgain> eachOnce() {
    Map<Content.ToRead, List<Unsure>> each = new LinkedHashMap<>();
    unsure().forEach(u -> each.computeIfAbsent(u.toRead(), t -> new ArrayList<>()).add(u));
    return each.entrySet().stream()
        .map(e -> together(e.getKey(), e.getValue()))
        .sorted(
            Comparator.comparing((ReadAgain r) -> r.toRead().name())
                .thenComparing(r -> r.toRead().steering()))
        .toList();
  }

  private record Unsure(Content.ToRead toRead, Standing stands, List<Change> because) {}

  private static ReadAgain together(Content.ToRead toRead, List<Unsure> readings) {
    boolean stale = readings.stream().anyMatch(u -> u.stands() == Standing.STALE);
    return new ReadAgain(
        toRead,
        stale ? Standing.STALE : Standing.PUT_BACK,
        Change.each(readings.stream().map(Unsure::because)).toList());
  }

  /** The same as a list to read. */
  public List<Content.ToRead> toReadAgain() {
    return readAgain().stream().map(ReadAgain::toRead).toList();
  }

  /** Of that only what one change moved, by the change's key. */
  public List<Content.ToRead> toReadAgainAfter(String change) {
    return readAgain().stream()
        .filter(r -> r.because().stream().anyMatch(c -> c.key().equals(change)))
        .map(ReadAgain::toRead)
        .toList();
  }

  private List<Unsure> unsure() {
    List<Unsure> unsure = new ArrayList<>();
    Set<List<Object>> held = new HashSet<>();
    heights.stream()
        .filter(h -> h.positionCounts() && h.stop() == Standing.LIVE)
        .forEach(h -> held.add(List.of(h.name(), h.pairing())));
    for (SeenHeight h : heights) {
      if (h.name().onePlace()
          && unsure(h.stop())
          && !held.contains(List.of(h.name(), h.pairing()))) {
        Content.ToRead height =
            new Content.ToRead(h.name(), null, Steering.STRAIGHT, null, null, crossed(h));
        unsure.add(new Unsure(height, h.stop(), h.because()));
      }
    }
    Spots live = new Spots();
    for (int i = 0; i < readings.size(); i++) {
      SeenReading r = readings.get(i);
      if (r.stands() == Standing.LIVE && r.reading().result() != GapResult.NOT_LOOKED) {
        live.add(r, Spots.ANY, i);
      }
    }
    for (SeenReading r : readings) {
      boolean typedSince =
          strapNow.isPresent() && r.of(Quantity.STRAP_LENGTH) && r.height().onTheStrap();
      if (unsure(r.stands())
          && !typedSince
          && live.near(r, Spots.ANY).stream()
              .map(readings::get)
              .noneMatch(o -> o.samePlace(r) || o.near(r))) {
        Content.ToRead reading =
            new Content.ToRead(
                r.height().name(),
                r.height().height().label(),
                r.reading().steering(),
                r.reading().quantity(),
                r.reading().point(),
                crossed(r.height()));
        unsure.add(new Unsure(reading, r.stands(), r.because()));
      }
    }
    return unsure;
  }

  private static Pairing crossed(SeenHeight height) {
    return height.crossed() ? Pairing.CROSSED : null;
  }

  private static boolean unsure(Standing standing) {
    return standing == Standing.STALE || standing == Standing.PUT_BACK;
  }

  /**
   * With one height, or one reading, more: as if somebody had taken it now. It stands for what no
   * longer holds at its place.
   *
   * @param height null where the reading is at a height that is there
   * @param reading null where only the height was read
   */
  public Card supposing(SeenHeight height, SeenReading reading) {
    List<SeenHeight> allHeights = new ArrayList<>();
    for (SeenHeight h : heights) {
      boolean moved =
          height != null
              && height.name().onePlace()
              && h.name() == height.name()
              && h.pairing() == height.pairing();
      allHeights.add(moved ? h.replaced() : h);
    }
    List<SeenReading> allReadings = new ArrayList<>();
    for (SeenReading r : readings) {
      boolean stoodFor =
          reading != null && !r.counts() && (r.samePlace(reading) || r.near(reading));
      allReadings.add(stoodFor ? r.replaced() : r);
    }
    if (height != null) {
      allHeights.add(height);
    }
    if (reading != null) {
      allReadings.add(reading);
    }
    return reading(reading == null ? null : reading.thing(), n, allHeights, allReadings);
  }

  /** Position of the last change of a setting, or happening, that this card knows. */
  public long lastChange() {
    return changes.stream().mapToLong(Change::n).max().orElse(0);
  }

  /** The steerings at which a watch point is to be looked at on this corner. */
  public List<Steering> steeringsFor(WatchPoint point) {
    return !layout.steered() || !point.place().steered()
        ? List.of(Steering.STRAIGHT)
        : point.place().worstAtALock()
            ? List.of(Steering.FULL_LEFT, Steering.FULL_RIGHT)
            : List.of(Steering.STRAIGHT, Steering.FULL_LEFT, Steering.FULL_RIGHT);
  }

  /**
   * How the ends of a solid axle are to stand when something is read; null alone for a wheel that
   * is hung alone.
   */
  public List<Pairing> pairings() {
    return layout == Layout.SOLID_AXLE_END
        ? List.of(Pairing.values())
        : Collections.singletonList(null);
  }
}
