package spindlebook.use;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.Map;
import spindlebook.corner.CarBook;
import spindlebook.log.Histories;
import spindlebook.web.Crumb;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** How much a car was driven. */
public final class UsePages {
  private final Histories histories;
  private final UseStore store;

  public UsePages(Histories histories, UseStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void log(Context ctx) {
    CarBook history = history(ctx);
    show(ctx, history, new Posted(Map.of()), FormKey.fresh(history.n()));
  }

  private static void show(Context ctx, CarBook history, Posted posted, FormKey key) {
    String car = history.car().orElseThrow();
    PageFrame frame =
        PageFrame.of("Use log · Spindlebook", "Use log")
            .sub("Straps stretch and nuts work loose by it.")
            .crumbs(new Crumb(history.details().orElseThrow().name(), "/cars/" + car));
    FormPage form =
        new FormPage(
            frame,
            "/cars/" + car + "/use",
            key,
            UseForm.parts(posted),
            "Put the drive in the book",
            null);
    if (!posted.ok()) {
      ctx.status(422);
    }
    Html.show(ctx, Html.TEMPLATES.useLog(form, UseList.of(history.uses())));
  }

  public void driven(Context ctx) {
    CarBook history = history(ctx);
    String car = history.car().orElseThrow();
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(history.n()));
    if (UseForm.read(posted, car) instanceof UseForm.Accepted accepted) {
      store.add(accepted.use(), key, Who.of(ctx));
      Html.next(ctx, "/cars/" + car + "/re-check");
    } else {
      show(ctx, history, posted, key);
    }
  }

  private CarBook history(Context ctx) {
    CarBook history = histories.of(ctx.pathParam("car"));
    if (history.car().isEmpty()) {
      throw new NotFoundResponse();
    }
    return history;
  }
}
