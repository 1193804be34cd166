package spindlebook.fold;

import java.time.Instant;

/** What an entry of the book says: its key, its place in the book, and when who wrote it. */
public interface OfEntry {
  Noted entry();

  default String key() {
    return entry().key();
  }

  default long n() {
    return entry().n();
  }

  /** Null where a book written by hand does not say. */
  default Instant at() {
    return entry().at();
  }

  default String who() {
    return entry().who();
  }
}
