package spindlebook.photo;

import io.javalin.http.Context;
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
import spindlebook.card.Addressed;
import spindlebook.card.CornerBar;
import spindlebook.fold.Card;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.FormPage;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;
import spindlebook.web.StaticFiles;
import spindlebook.web.Who;

/** Photos of a corner: taken, shown, before and after a change beside each other. */
public record PhotoPages(Histories histories, PhotoStore store) {
  private static final Logger LOG = LoggerFactory.getLogger(PhotoPages.class);
  private static final String FILE = "photo";
  private static final String CHOOSE = "Take a photo, or choose one.";

  public void list(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    String of = ctx.queryParam("of");
    Posted chosen = Posted.proposed(of == null ? Map.of() : Map.of("of", List.of(of)));
    Asked a = Asked.of(chosen, card.details().unit(), card.n());
    PhotoForm.ask(a, histories.of(card.car()), card);
    show(ctx, card, a);
  }

  private void show(Context ctx, Card card, Asked a) {
    PageFrame frame =
        CornerBar.under(card, "Photos", "Photos").sub("Kept without the place they were taken at.");
    FormPage form = a.page(frame, "/corners/" + card.corner() + "/photos", "Save", null);
    PhotoView view = PhotoView.of(histories.of(card.car()), card.corner());
    a.show(ctx, Html.TEMPLATES.photoList(form, view, a.posted().problem(FILE)));
  }

  public void add(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = Asked.of(Html.posted(ctx), card.details().unit(), card.n());
    PhotoForm form = PhotoForm.ask(a, histories.of(card.car()), card);
    List<UploadedFile> sent = sent(ctx);
    if (sent.size() != 1) {
      a.wrong(FILE, sent.isEmpty() ? CHOOSE : "Send one photo at a time, each with its own words.");
    }
    if (a.ok()) {
      keep(ctx, card, form, a, sent.get(0));
    }
    if (a.ok()) {
      Html.next(ctx, "/corners/" + card.corner() + "/photos");
    } else {
      show(ctx, card, a);
    }
  }

  private void keep(Context ctx, Card card, PhotoForm form, Asked a, UploadedFile sent) {
    try (InputStream in = sent.content()) {
      store.add(form.photo(card, store.keep(in)), a.key(), Who.of(ctx));
    } catch (PhotoRefused refused) {
      a.wrong(FILE, refused.getMessage());
    } catch (IOException trouble) {
      LOG.warn("a photo was not kept", trouble);
      a.wrong(
          FILE,
          "The photo could not be written to the disk and is not kept: look whether the disk is"
              + " full, and send it again.");
    }
  }

  /** The files that hold something: the form has two boxes for one. */
  private static List<UploadedFile> sent(Context ctx) {
    List<UploadedFile> files = ctx.isMultipartFormData() ? ctx.uploadedFiles(FILE) : List.of();
    return files.stream().filter(f -> f.size() > 0).toList();
  }

  /** A photo never changes under its name; where its file is missing a picture of it says so. */
  public void file(Context ctx) throws IOException {
    String name = ctx.pathParam("file");
    Path file = store.file(name).orElse(null);
    if (file == null && name.endsWith(".small.jpg")) {
      ctx.redirect(StaticFiles.href("photo-missing.svg"));
      return;
    }
    if (file == null) {
      throw new NotFoundResponse();
    }
    ctx.header("Cache-Control", "private, max-age=31536000, immutable");
    ctx.contentType("image/jpeg").result(Files.newInputStream(file));
  }
}
