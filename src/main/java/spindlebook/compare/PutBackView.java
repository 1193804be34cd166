package spindlebook.compare;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What brings the settings of an earlier entry back.
 *
 * @param said that there is nothing to do; empty when there is
 * @param turns the steps, in the order in which they are made
 */
public record PutBackView(
    String action,
    PointSelect at,
    String compareHref,
    String said,
    List<Turn> turns,
    List<Cannot> cannot,
    List<After> after) {

  public record Turn(String words, String why, List<Step> steps) {
    public Turn {
      steps = List.copyOf(steps);
    }
  }

  public record Step(String words, String place, String href) {}

  /**
   * @param href the entry that did it; null for none
   */
  public record Cannot(String what, String why, String href) {}

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
              unconfirmed.count() + " put back, not confirmed",
              stale.count() + " stale by it",
              still.count() + " stale as now")
          .filter(c -> !c.startsWith("0 "))
          .collect(Collectors.joining("; "));
    }
  }

  /**
   * @param lines one for each thing, however often it was read
   */
  public record Again(int count, List<String> lines) {
    public Again {
      lines = List.copyOf(lines);
    }
  }

  public PutBackView {
    turns = List.copyOf(turns);
    cannot = List.copyOf(cannot);
    after = List.copyOf(after);
  }
}
