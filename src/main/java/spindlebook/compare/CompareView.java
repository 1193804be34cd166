package spindlebook.compare;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import spindlebook.page.Link;
import spindlebook.page.Posted;

/**
 * Two points of the book beside each other, one corner at a time.
 *
 * @param here the corner that is shown; null where the car has none
 */
public record CompareView(
    String action,
    Asked asked,
    List<PointSelect> selects,
    List<Compared> corners,
    Compared here,
    List<Link> links) {
  public String href(Compared corner) {
    return action
        + "?one="
        + asked.one().at()
        + "&other="
        + asked.other().at()
        + (asked.beside().isEmpty()
            ? ""
            : "&beside=" + URLEncoder.encode(asked.beside(), StandardCharsets.UTF_8))
        + "&corner="
        + Posted.word(corner.place());
  }

  public String said() {
    if (here == null) {
      return "This car has no corner in the book.";
    }
    return asked.samePoint() ? "Both are the same point of the book. " + here.said() : here.said();
  }
}
