package spindlebook.log;

import java.util.Optional;

/**
 * The room that is left on the disk of a book.
 *
 * @param free bytes
 * @param book length of the book's file in bytes
 */
record Room(long free, long book) {
  private static final long MEGABYTE = 1 << 20;

  /** For the index to be built anew: it takes up to some three times the book. */
  private static final long LEAST = 8 * MEGABYTE;

  /** Weeks of work and dozens of photos before nothing can be kept any more. */
  private static final long LITTLE = 200 * MEGABYTE;

  boolean enough() {
    return free >= LEAST + 4 * book;
  }

  /** One sentence while there is little left; empty as long as there is plenty. */
  Optional<String> warning() {
    return free >= LITTLE + 4 * book
        ? Optional.empty()
        : Optional.of(
            "The disk of the book is nearly full: "
                + free / MEGABYTE
                + " MB left. Make room before nothing more can be kept.");
  }
}
