package spindlebook.backup;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import spindlebook.card.Days;

/**
 * One place as the page shows it.
 *
 * @param name what it is to its owner
 * @param path where it is
 * @param last the last good copy, in words
 * @param whole whether that copy holds all of the book
 * @param lines what else is to be said of it
 * @param problem what is wrong; empty when nothing is
 * @param copies all copies, the newest first
 */
public record PlaceView(
    String name,
    String path,
    String last,
    boolean whole,
    List<String> lines,
    String problem,
    List<String> copies) {
  static PlaceView of(String name, Standing standing, long n) {
    BookCopy good = standing.good();
    List<String> lines = new ArrayList<>();
    if (standing.here() && !standing.copies().isEmpty()) {
      lines.add(
          Backup.many(standing.copies().size(), "copy").replace("copys", "copies")
              + " · "
              + Place.size(standing.used())
              + " used · "
              + Place.size(standing.left())
              + " left");
    }
    if (standing.sameDisk()) {
      lines.add("Same disk as the book: both go together.");
    }
    if (standing.lacking() > 0) {
      lines.add(Backup.are(standing.lacking(), "photo") + " missing or damaged beside the book.");
    }
    List<String> copies =
        new ArrayList<>(standing.copies().stream().map(c -> PlaceView.words(c)).toList());
    Collections.reverse(copies);
    return new PlaceView(
        name,
        standing.folder().toString(),
        good == null ? "No copy yet" : "Last good copy " + PlaceView.words(good),
        good != null && good.n() == n,
        List.copyOf(lines),
        problem(standing),
        List.copyOf(copies));
  }

  private static String problem(Standing standing) {
    if (!standing.here()) {
      return "Not there now. Plug it in: it catches up by itself.";
    }
    return standing.problem() == null ? "" : standing.problem();
  }

  private static String words(BookCopy copy) {
    return Days.minute(copy.at()) + " · " + Backup.entries(copy.n());
  }
}
