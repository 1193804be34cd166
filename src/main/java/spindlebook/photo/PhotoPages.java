package spindlebook.photo;

import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import spindlebook.card.Shown;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.log.Histories;
import spindlebook.web.Crumb;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** Photos of a corner: taken, shown, before and after a change beside each other. */
public final class PhotoPages {
  private static final Logger LOG = LoggerFactory.getLogger(PhotoPages.class);
  private static final String FILE = "photo";
  private static final String CHOOSE = "Take a photo, or choose one.";

  private final Histories histories;
  private final PhotoStore store;

  public PhotoPages(Histories histories, PhotoStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void list(Context ctx) {
    Card card = card(ctx);
    String of = ctx.queryParam("of");
    Map<String, List<String>> chosen = of == null ? Map.of() : Map.of("of", List.of(of));
    show(ctx, card, new Posted(chosen), FormKey.fresh(card.n()));
  }

  private void show(Context ctx, Card card, Posted posted, FormKey key) {
    CarBook history = histories.of(card.car());
    PageFrame frame =
        PageFrame.of("Photos · Spindlebook", "Photos")
            .sub("Kept without the place they were taken at.")
            .plan(Shown.plan(card))
            .crumbs(new Crumb(card.place().words(), "/corners/" + card.corner()));
    FormPage form =
        new FormPage(
            frame,
            "/corners/" + card.corner() + "/photos",
            key,
            new PhotoForm(history, card).parts(posted),
            "Put it in the book",
            null);
    if (!posted.ok()) {
      ctx.status(422);
    }
    Html.show(
        ctx,
        Html.TEMPLATES.photoList(form, PhotoView.of(history, card.corner()), posted.problem(FILE)));
  }

  public void add(Context ctx) {
    Card card = card(ctx);
    Posted posted = posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.n()));
    PhotoForm form = new PhotoForm(histories.of(card.car()), card);
    form.check(posted);
    UploadedFile sent = sent(ctx);
    if (sent == null) {
      posted.wrong(FILE, CHOOSE);
    }
    if (posted.ok() && !store.has(key)) {
      keep(ctx, form, posted, sent, key);
    }
    if (posted.ok()) {
      Html.next(ctx, "/corners/" + card.corner() + "/photos");
    } else {
      show(ctx, card, posted, key);
    }
  }

  private void keep(Context ctx, PhotoForm form, Posted posted, UploadedFile sent, FormKey key) {
    try (InputStream in = sent.content()) {
      PhotoStore.Kept kept = store.keep(in);
      store.add(form.read(posted, kept), key, Who.of(ctx));
    } catch (PhotoRefused refused) {
      posted.wrong(FILE, refused.getMessage());
    } catch (IOException trouble) {
      LOG.warn("a photo was not kept", trouble);
      posted.wrong(
          FILE,
          "The photo could not be written to the disk and is not kept: look whether the disk is"
              + " full, and send it again.");
    }
  }

  /** What is larger than a photo may be was not taken in, and is told as that. */
  private static Posted posted(Context ctx) {
    try {
      return Html.posted(ctx);
    } catch (Exception notTakenIn) { // The server throws checked ones that nobody declares.
      boolean tooMuch = false;
      for (Throwable why = notTakenIn; why != null; why = why.getCause()) {
        tooMuch |= String.valueOf(why.getMessage()).contains("exceed");
      }
      throw new HttpResponseException(tooMuch ? 413 : 400, "");
    }
  }

  /** The first file that holds something: a form may have two boxes for it. */
  private static UploadedFile sent(Context ctx) {
    List<UploadedFile> files = ctx.isMultipartFormData() ? ctx.uploadedFiles(FILE) : List.of();
    return files.stream().filter(f -> f.size() > 0).findFirst().orElse(null);
  }

  /** A photo never changes under its name. */
  public void file(Context ctx) throws IOException {
    Path file = store.file(ctx.pathParam("file")).orElseThrow(NotFoundResponse::new);
    ctx.header("Cache-Control", "private, max-age=31536000, immutable");
    ctx.contentType("image/jpeg").result(Files.newInputStream(file));
  }

  private Card card(Context ctx) {
    return histories.cornerCard(ctx.pathParam("corner")).orElseThrow(NotFoundResponse::new);
  }
}
