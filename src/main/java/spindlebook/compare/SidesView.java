package spindlebook.compare;

import java.util.List;
import spindlebook.sheet.Rows.Titled;

/**
 * Left against right, of one end of the car.
 *
 * @param tabs the ends of the car that have both corners; empty when there is one
 * @param summary how many differ by more than their ±
 */
public record SidesView(List<Tab> tabs, String summary, List<Titled> groups, String compareHref) {
  public record Tab(String word, String href, boolean here) {}
}
