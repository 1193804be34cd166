package spindlebook.align;

import java.util.ArrayList;
import java.util.List;
import spindlebook.corner.Content;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.log.Draft;
import spindlebook.web.FormKey;

/** Alignment as measured, and its targets, into the book. */
public final class AlignmentStore {
  private final Book book;

  public AlignmentStore(Book book) {
    this.book = book;
  }

  void add(Content.Alignment alignment, FormKey form, String who) {
    book.append(Bodies.draft(form.key(), form.after(), who, alignment));
  }

  void correct(String target, Content.Alignment body, String reason, FormKey form, String who) {
    book.append(
        Bodies.draft(form.key(), form.after(), who, new Content.Correction(target, body, reason)));
  }

  /** All that one form changed, in one go; sent again, none is written twice. */
  void targets(List<Content.Target> targets, FormKey form, String who) {
    List<Draft> drafts = new ArrayList<>();
    for (Content.Target target : targets) {
      String key = form.key() + "-" + target.figure().ordinal();
      drafts.add(Bodies.draft(key, form.after(), who, target));
    }
    if (!drafts.isEmpty()) {
      book.append(drafts);
    }
  }
}
