package spindlebook.fold;

import spindlebook.entry.Content;

/** An entry with what stands under its key now. */
public record Written<C extends Content>(Noted entry, C content) implements OfEntry {
  /** The last change of a setting that the writer knew of. */
  long after() {
    return entry.after();
  }
}
