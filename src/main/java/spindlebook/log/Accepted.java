package spindlebook.log;

import java.util.List;

/**
 * The answer to a submission: its entries as they stand in the book, in the order handed in.
 *
 * @param wasThere true if nothing had to be written because every key was in the book already
 */
public record Accepted(List<Entry> entries, boolean wasThere) {
  public Accepted {
    entries = List.copyOf(entries);
  }
}
