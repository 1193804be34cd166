package spindlebook.compare;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.CureAddress;
import spindlebook.plan.PuttingBack;

/**
 * What brings the settings of an earlier entry back.
 *
 * @param after the corners at which something would not hold then
 */
public record PutBackView(
    String car, PointSelect select, Point at, PuttingBack back, List<After> after) {
  /** The steps, in the order in which they are made. */
  public Map<PuttingBack.Turn, List<PuttingBack.Step>> turns() {
    return back.steps().stream()
        .collect(Collectors.groupingBy(PuttingBack.Step::turn, TreeMap::new, Collectors.toList()));
  }

  public String words(PuttingBack.Step s) {
    return Capital.of(s.adjuster().name())
        + (s.now() == null ? "" : " from " + s.now().inWords())
        + " to "
        + s.then().inWords();
  }

  public String href(PuttingBack.Step s) {
    return CureAddress.of(
        s.corner(), s.adjuster().adjuster(), s.then(), "put back as at " + at.words());
  }

  /**
   * One corner once all of it is done: what no longer holds then.
   *
   * @param unconfirmed readings that would be put back, not confirmed
   * @param stale those that hold now and would not
   * @param still those that do not hold now either
   */
  public record After(String place, Again unconfirmed, Again stale, Again still) {
    boolean none() {
      return counted().isEmpty();
    }

    /** {@code 5 put back, not confirmed; 2 stale as now}. */
    public String counted() {
      return Stream.of(
              unconfirmed.count() + " set back, to check",
              stale.count() + " to measure again by it",
              still.count() + " to measure again as now")
          .filter(c -> !c.startsWith("0 "))
          .collect(Collectors.joining("; "));
    }
  }

  /**
   * @param lines one for each thing, however often it was read
   */
  public record Again(int count, List<String> lines) {}
}
