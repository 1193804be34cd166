package spindlebook.book;

import java.util.List;
import spindlebook.web.State;

/**
 * One entry of the book.
 *
 * @param doubt why it waits for an answer; null when it does not
 * @param other for a clash of two settings: what the other one says; null otherwise
 * @param correctHref where it can be corrected; null where it cannot
 */
public record EntryView(
    String key,
    String words,
    String meta,
    State state,
    List<String> notes,
    String doubt,
    String itIsSo,
    String itIsNot,
    String correctHref,
    boolean takeBack,
    String line) {
  public EntryView {
    notes = List.copyOf(notes);
  }
}
