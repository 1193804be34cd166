package spindlebook.travel;

import java.util.List;
import java.util.Optional;

/**
 * Rules of one end that are kept at their last reading, while the wheel may go further: one height
 * reads them all.
 *
 * @param limits two or more
 * @param outToMm wheel position, mm, + towards bump, as far out as the furthest of them asks for
 */
public record UnreadReach(End end, List<Limit> limits, double outToMm) {
  static Optional<UnreadReach> of(End end, List<Limit> limits) {
    List<Limit> further = limits.stream().filter(Limit::mayGoPastWhatWasRead).toList();
    double furthest =
        further.stream()
            .mapToDouble(l -> l.needs().get(0).noHigherThanMm() * end.outward())
            .max()
            .orElse(0);
    return further.size() < 2
        ? Optional.empty()
        : Optional.of(new UnreadReach(end, further, furthest * end.outward()));
  }

  /** What is to be read. */
  public List<Need> needs() {
    return limits.stream().map(l -> l.needs().get(0).outTo(outToMm)).toList();
  }
}
