package spindlebook.card;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;
import spindlebook.words.EntryWords;

/**
 * A correction of what was withdrawn, or answered away, while its form was open: nothing is
 * written, which would bring the entry back unasked, and what was typed stays on the page.
 *
 * @param words what the entry said
 * @param typed each field that was filled, with its name
 * @param putBack null when it was not withdrawn but answered away
 */
public record Meanwhile(String words, List<String> typed, PutBack putBack, String entryHref) {

  /** Shows it; an entry that never was is not found. */
  public static void show(Context ctx, CarBook history, String entry, Posted posted) {
    Content content = history.original(entry).orElseThrow(NotFoundResponse::new);
    String href = "/entries/" + entry;
    PageFrame frame =
        PageFrame.of("Withdrawn meanwhile · Spindlebook", "It does not count any more")
            .up("the entry", href);
    Meanwhile view =
        new Meanwhile(
            new EntryWords(history).of(content),
            posted.typed(),
            PutBack.of(history, entry).orElse(null),
            href);
    ctx.status(HttpStatus.CONFLICT);
    Html.show(ctx, Html.TEMPLATES.cardMeanwhile(frame, view));
  }
}
