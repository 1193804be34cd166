package spindlebook.watch;

import java.util.List;
import spindlebook.corner.Adjuster;
import spindlebook.corner.Content;
import spindlebook.corner.Given;
import spindlebook.corner.HeldBack;
import spindlebook.corner.Tool;
import spindlebook.corner.WatchPoint;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.log.Draft;
import spindlebook.web.FormKey;

/** Definitions: new versions of what is watched, set, given, held back and measured with. */
public final class DefinitionStore {
  private final Book book;

  public DefinitionStore(Book book) {
    this.book = book;
  }

  void watchPoint(String corner, WatchPoint point, FormKey form, String who) {
    append(form, who, of(null, corner, null, point, null, null, null, null));
  }

  /** Several at once from one form; sent again, none is written twice. */
  void watchPoints(String corner, List<WatchPoint> points, FormKey form, String who) {
    List<Draft> drafts = new java.util.ArrayList<>();
    for (WatchPoint point : points) {
      drafts.add(
          Bodies.draft(
              form.key() + "-" + drafts.size(),
              form.after(),
              who,
              of(null, corner, null, point, null, null, null, null)));
    }
    if (!drafts.isEmpty()) {
      book.append(drafts);
    }
  }

  /** Keys of all corners in the book, of all cars, in its order. */
  List<String> corners() {
    return book.read(
        handle ->
            handle
                .createQuery(
                    """
                    select key from entry where kind = 'corner' order by kind, n
                    """)
                .mapTo(String.class)
                .list());
  }

  void adjuster(String corner, Adjuster adjuster, FormKey form, String who) {
    append(form, who, of(null, corner, null, null, adjuster, null, null, null));
  }

  void tool(String car, Tool tool, FormKey form, String who) {
    append(form, who, of(car, null, tool, null, null, null, null, null));
  }

  void retire(String corner, Content.Retired retired, FormKey form, String who) {
    append(form, who, of(null, corner, null, null, null, null, null, retired));
  }

  void retireTool(String car, String tool, FormKey form, String who) {
    Content.Retired retired = new Content.Retired(null, null, tool);
    append(form, who, of(car, null, null, null, null, null, null, retired));
  }

  /** Several at once from one form; sent again, none is written twice. */
  void given(String corner, List<Given> given, List<HeldBack> heldBack, FormKey form, String who) {
    List<Draft> drafts = new java.util.ArrayList<>();
    for (Given g : given) {
      drafts.add(
          Bodies.draft(
              form.key() + "-" + g.dimension().ordinal(),
              form.after(),
              who,
              of(null, corner, null, null, null, g, null, null)));
    }
    for (HeldBack h : heldBack) {
      drafts.add(
          Bodies.draft(
              form.key() + "-h" + h.allowance().ordinal(),
              form.after(),
              who,
              of(null, corner, null, null, null, null, h, null)));
    }
    if (!drafts.isEmpty()) {
      book.append(drafts);
    }
  }

  private void append(FormKey form, String who, Content.Definition definition) {
    book.append(Bodies.draft(form.key(), form.after(), who, definition));
  }

  private static Content.Definition of(
      String car,
      String corner,
      Tool tool,
      WatchPoint point,
      Adjuster adjuster,
      Given given,
      HeldBack heldBack,
      Content.Retired retired) {
    return new Content.Definition(
        car, corner, null, tool, point, adjuster, given, heldBack, retired);
  }
}
