package spindlebook.backup;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import spindlebook.card.Days;

/**
 * How a place stood when it was last looked at, and the words for it.
 *
 * @param name what it is to its owner
 * @param here false while it is away, like a stick that is pulled out
 * @param sameDisk whether it goes when the book's disk goes
 * @param good the newest copy that was found whole; null while there is none
 * @param copies all copies of the book in it, the oldest first
 * @param used bytes its files take
 * @param left bytes left on its disk
 * @param lacking photos that are whole neither beside the book nor in it
 * @param problem why the last backup did not work, in one sentence; null when it did
 */
public record Standing(
    String name,
    Path folder,
    boolean here,
    boolean sameDisk,
    BookCopy good,
    List<BookCopy> copies,
    long used,
    long left,
    int lacking,
    String problem) {
  public Standing {
    copies = List.copyOf(copies);
  }

  static Standing unseen(String name, Path folder) {
    return new Standing(name, folder, true, false, null, List.of(), 0, 0, 0, null);
  }

  Standing away() {
    return new Standing(name, folder, false, sameDisk, good, copies, used, left, lacking, null);
  }

  /** The last good copy of a book that now has n entries. */
  public String last(long n) {
    if (good == null) {
      return problem == null ? "No copy yet" : "No good copy";
    }
    return "Last good copy " + words(good) + (good.n() == n ? " · all of the book" : "");
  }

  /** What stands in the way; empty when nothing does. */
  public String trouble() {
    String told = problem == null ? "" : problem;
    return here ? told : "Not there now. Plug it in: it catches up by itself.";
  }

  /** What else is to be said of it. */
  public List<String> more() {
    List<String> more = new ArrayList<>();
    if (here && !copies.isEmpty()) {
      more.add(
          (copies.size() == 1 ? "1 copy" : copies.size() + " copies")
              + String.format(" · %s used · %s left", Place.size(used), Place.size(left)));
    }
    if (sameDisk) {
      more.add("Same disk as the book: both go together.");
    }
    if (lacking > 0) {
      more.add(Backup.are(lacking, "photo") + " missing or damaged beside the book.");
    }
    return more;
  }

  /** All copies in words, the newest first. */
  public List<String> all() {
    List<String> all = new ArrayList<>(copies.stream().map(Standing::words).toList());
    Collections.reverse(all);
    return all;
  }

  private static String words(BookCopy copy) {
    return Days.minute(copy.at()) + " · " + Backup.entries(copy.n());
  }
}
