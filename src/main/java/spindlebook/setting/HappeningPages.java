package spindlebook.setting;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import spindlebook.corner.CarBook;
import spindlebook.corner.Content;
import spindlebook.corner.HappeningKind;
import spindlebook.log.Histories;
import spindlebook.web.Cautions;
import spindlebook.web.Choice;
import spindlebook.web.Crumb;
import spindlebook.web.Field;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.FormPart;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** What befell the car: hit, cut or welded, driven. */
public final class HappeningPages {
  private static final String WHOLE_CAR = "whole-car";

  private final Histories histories;
  private final AdjustmentStore store;

  public HappeningPages(Histories histories, AdjustmentStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void newHappening(Context ctx) {
    CarBook history = history(ctx);
    show(ctx, history, new Posted(Map.of()), FormKey.fresh(history.n()));
  }

  private static void show(Context ctx, CarBook history, Posted posted, FormKey key) {
    String car = history.car().orElseThrow();
    PageFrame frame =
        PageFrame.of("Something happened · Spindlebook", "Something happened")
            .sub("What cannot be set back by turning it back.")
            .crumbs(new Crumb(history.details().orElseThrow().name(), "/cars/" + car))
            .caution(Cautions.SETTING);
    FormPage page =
        new FormPage(
            frame,
            "/cars/" + car + "/happenings",
            key,
            List.of(
                new FormPart.Chosen(what(posted)),
                new FormPart.Chosen(where(history, posted)),
                new FormPart.Typed(
                    posted.fill(
                        Field.of("words", "In your words")
                            .hint("Where, how hard, how far. May be left empty.")))),
            "Put it in the book",
            "/cars/" + car);
    Html.form(ctx, posted, page);
  }

  private static Choice what(Posted posted) {
    List<Choice.Option> options = new ArrayList<>();
    for (HappeningKind kind : HappeningKind.values()) {
      String note =
          switch (kind) {
            case HIT_OR_BENT, CUT_WELDED_GROUND -> "all of that corner is to be read again";
            case DRIVEN -> "straps may have stretched";
          };
      options.add(
          new Choice.Option(
              Posted.word(kind),
              kind.words(),
              note,
              Posted.word(kind).equals(posted.text("what"))));
    }
    return new Choice("what", "What", "", posted.problem("what"), options);
  }

  private static Choice where(CarBook history, Posted posted) {
    List<Choice.Option> options = new ArrayList<>();
    String chosen = posted.text("where").isEmpty() ? WHOLE_CAR : posted.text("where");
    options.add(new Choice.Option(WHOLE_CAR, "the whole car", "", chosen.equals(WHOLE_CAR)));
    for (String corner : history.corners()) {
      options.add(
          new Choice.Option(
              corner, history.card(corner).place().words(), "", chosen.equals(corner)));
    }
    return new Choice("where", "Where", "", "", options);
  }

  public void happened(Context ctx) {
    CarBook history = history(ctx);
    String car = history.car().orElseThrow();
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(history.n()));
    HappeningKind what = posted.word("what", HappeningKind.class, null);
    if (what == null) {
      posted.wrong("what", "Say which of the three it was.");
    }
    String words = posted.line("words", 300);
    if (!posted.ok()) {
      show(ctx, history, posted, key);
      return;
    }
    String corner = history.corners().contains(posted.text("where")) ? posted.text("where") : null;
    store.happened(new Content.Happening(car, corner, what, words), key, Who.of(ctx));
    Html.next(
        ctx,
        corner == null
            ? "/cars/" + car
            : "/corners/" + corner + "/rounds/new?again=1&change=" + key.key());
  }

  private CarBook history(Context ctx) {
    CarBook history = histories.of(ctx.pathParam("car"));
    if (history.car().isEmpty()) {
      throw new NotFoundResponse();
    }
    return history;
  }
}
