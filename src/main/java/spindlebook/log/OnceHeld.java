package spindlebook.log;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * What the files beside the book know that it held: entries that were acknowledged once do not go
 * missing in silence.
 *
 * @param ends the last entry as {@code generation.json} and {@code index.clean} note it
 * @param aBook whether anything beside it shows that there was a book
 * @param restored as many entries a book put back by hand holds, {@link #NOT_RESTORED} if nobody
 *     said so
 */
record OnceHeld(List<End> ends, boolean aBook, long restored) {
  static final long NOT_RESTORED = -1;
  static final OnceHeld NOTHING = new OnceHeld(List.of(), false, NOT_RESTORED);

  /**
   * An entry that was in the book.
   *
   * @param hash of its line
   */
  record End(long n, String hash) {}

  static OnceHeld in(Path folder, long restored) throws IOException {
    Generation generation = Generation.read(folder);
    List<End> ends = new ArrayList<>();
    if (generation != null) {
      ends.add(new End(generation.n(), generation.hash()));
    }
    CleanMark.read(folder).ifPresent(mark -> ends.add(new End(mark.n(), mark.hash())));
    // A book without entries has nothing to lose.
    ends.removeIf(end -> end.n() < 1);
    boolean aBook = generation != null || Files.exists(folder.resolve(Index.FILE));
    return new OnceHeld(List.copyOf(ends), aBook || !ends.isEmpty(), restored);
  }

  /** How many entries it held, 0 when that is not known. */
  long most() {
    return ends.stream().mapToLong(End::n).max().orElse(0);
  }

  /**
   * Whether a book read to its end lacks an entry that was in it, and was put back on purpose.
   *
   * @param found those of {@link #ends} that are in it
   * @throws BookRefused when it lacks one and nobody said so
   */
  boolean refuseLost(Path path, Scan scan, Set<End> found) {
    boolean whole = found.containsAll(ends);
    if (!whole && restored != scan.lastN) {
      throw BookRefused.book(
          "%s%s: put the newest copy back with 'restore', or, to go on with this one, start once"
              + " with --restored %d.",
          scan.damage == null ? "" : scan.damage.sentence() + " ",
          scan.lastN < most()
              ? String.format("%s once held %d entries, it now holds %d", path, most(), scan.lastN)
              : String.format("Entry %d of %s is not the one that was written", most(), path),
          scan.lastN);
    }
    return !whole;
  }
}
