package spindlebook.backup;

import java.nio.file.Path;
import java.util.List;

/**
 * How a place stood when it was last looked at.
 *
 * @param here false while it is away, like a stick that is pulled out
 * @param sameDisk whether it goes when the book's disk goes
 * @param good the newest copy that was found whole; null while there is none
 * @param copies all copies of the book in it, the oldest first
 * @param used bytes its files take
 * @param left bytes left on its disk
 * @param lacking photos that are whole neither beside the book nor in it
 * @param problem why the last backup did not work, in one sentence; null when it did
 */
record Standing(
    Path folder,
    boolean here,
    boolean sameDisk,
    BookCopy good,
    List<BookCopy> copies,
    long used,
    long left,
    int lacking,
    String problem) {
  Standing {
    copies = List.copyOf(copies);
  }

  static Standing unseen(Path folder) {
    return new Standing(folder, true, false, null, List.of(), 0, 0, 0, null);
  }

  Standing away() {
    return new Standing(folder, false, sameDisk, good, copies, used, left, lacking, null);
  }
}
