package spindlebook.corner;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One corner as of a point of the book: what is watched, what is set, what was read and what each
 * of it is worth now. The pure fold of the car's entries; see {@link CarBook#card}.
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
    Map<Dimension, Given> given,
    Map<Allowance, HeldBack> heldBack,
    List<Tool> tools,
    List<SeenRound> rounds,
    List<SeenHeight> heights,
    List<SeenReading> readings,
    List<Change> changes,
    List<Doubted> doubts) {

  public Optional<WatchPoint> watchPoint(String point) {
    return watchPoints.stream().filter(w -> w.point().equals(point)).findFirst();
  }

  public Optional<InForce> adjuster(String adjuster) {
    return adjusters.stream().filter(a -> a.adjuster().adjuster().equals(adjuster)).findFirst();
  }

  public Optional<InForce> adjuster(AdjusterKind kind) {
    return adjusters.stream().filter(a -> a.adjuster().kind() == kind).findFirst();
  }

  public Optional<Given> given(Dimension dimension) {
    return Optional.ofNullable(given.get(dimension));
  }

  public Optional<HeldBack> heldBack(Allowance allowance) {
    return Optional.ofNullable(heldBack.get(allowance));
  }

  public Optional<SeenRound> round(String key) {
    return rounds.stream().filter(r -> r.key().equals(key)).findFirst();
  }

  public Optional<SeenHeight> height(String key) {
    return heights.stream().filter(h -> h.key().equals(key)).findFirst();
  }

  public Optional<SeenReading> reading(String key) {
    return readings.stream().filter(r -> r.key().equals(key)).findFirst();
  }

  public List<SeenHeight> heightsOf(String round) {
    return heights.stream().filter(h -> h.round().key().equals(round)).toList();
  }

  public List<SeenReading> readingsAt(String height) {
    return readings.stream().filter(r -> r.height().key().equals(height)).toList();
  }

  /** Position of the last change of a setting, or happening, that this card knows. */
  public long lastChange() {
    return changes.stream().mapToLong(Change::n).max().orElse(0);
  }

  /** The steerings at which a watch point is to be looked at on this corner. */
  public List<Steering> steeringsFor(WatchPoint point) {
    return layout.steered() && point.place().steered()
        ? List.of(Steering.STRAIGHT, Steering.FULL_LEFT, Steering.FULL_RIGHT)
        : List.of(Steering.STRAIGHT);
  }
}
