package spindlebook.book;

import java.util.List;
import spindlebook.card.PutBack;
import spindlebook.drawing.State;
import spindlebook.page.Field;
import spindlebook.page.FormKey;

/**
 * One entry of the book.
 *
 * @param gone why it does not count though nothing is doubted, in one sentence; null when it may
 * @param goneHref the page of what took it along; null when it was itself taken back
 * @param doubt why it waits for an answer; null when it does not
 * @param corrects what was sent first under its form's key, which it may correct; else null
 * @param correctHref where it can be corrected; null where it cannot
 * @param takeBack how it is taken back; null where it cannot be, or was
 * @param putBack how it is put back; null unless it was taken back
 */
public record EntryView(
    String key,
    String words,
    String meta,
    State state,
    List<String> notes,
    String gone,
    String goneHref,
    String doubt,
    String itIsSo,
    String itIsNot,
    String corrects,
    FormKey answerKey,
    String correctHref,
    TakeBack takeBack,
    PutBack putBack,
    String line) {
  /**
   * @param takesAlong what goes with it, one sentence; empty when nothing does
   */
  public record TakeBack(String takesAlong, Field reason, FormKey key) {}
}
