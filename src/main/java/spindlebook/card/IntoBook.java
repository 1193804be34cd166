package spindlebook.card;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import spindlebook.entry.Content;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.log.Draft;
import spindlebook.page.Asked;
import spindlebook.page.FormKey;
import spindlebook.page.Html;
import spindlebook.web.Who;

/** What a form was answered with, into the book. */
public record IntoBook(Book book) {
  /** One entry, and on to a page that says it was saved. */
  public void put(Context ctx, Asked asked, Content content, String next) {
    put(ctx, asked, Map.of("", content), next);
  }

  public void put(Context ctx, Asked asked, Map<String, ? extends Content> contents, String next) {
    put(ctx, asked, contents);
    Html.next(ctx, Html.saved(next));
  }

  /** The same of what is not found any more once it is written: sent again, the first answer. */
  public void once(Context ctx, Asked asked, Supplier<? extends Content> content, String next) {
    if (book.byKey(asked.key().key()).isEmpty()) {
      put(ctx, asked, content.get());
    }
    Html.next(ctx, Html.saved(next));
  }

  /** One entry, by the form's own key: sent again, it is stored once. */
  public void put(Context ctx, Asked asked, Content content) {
    put(ctx, asked, Map.of("", content));
  }

  /**
   * All that one form changed, in one go.
   *
   * @param contents by what the keys of their entries end in: none is written twice
   */
  public void put(Context ctx, Asked asked, Map<String, ? extends Content> contents) {
    FormKey form = asked.key().within(book.lastN());
    List<Draft> drafts = new ArrayList<>();
    contents.forEach(
        (end, content) ->
            drafts.add(
                Bodies.draft(
                    end.isEmpty() ? form.key() : form.key() + "-" + end,
                    form.after(),
                    Who.of(ctx),
                    content)));
    if (!drafts.isEmpty()) {
      book.append(drafts);
    }
  }
}
