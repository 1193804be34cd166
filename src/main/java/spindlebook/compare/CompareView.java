package spindlebook.compare;

import java.util.List;
import spindlebook.compare.Rows.Titled;
import spindlebook.web.Link;

/**
 * Two points of the book beside each other, one corner at a time.
 *
 * @param tabs the corners, each with what was found in one word
 * @param said one sentence on the corner that is shown
 * @param one what the columns are called
 * @param lacking what is missing, a sentence each
 * @param turned which way round a difference is; empty where there is none
 * @param groups what differs first, then what does not, folded
 */
public record CompareView(
    String action,
    List<PointSelect> selects,
    List<Tab> tabs,
    String said,
    String one,
    String other,
    String turned,
    List<String> lacking,
    List<Titled> groups,
    List<Link> links) {

  public record Tab(String place, String found, String href, boolean here) {}
}
