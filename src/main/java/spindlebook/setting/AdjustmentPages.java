package spindlebook.setting;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import spindlebook.card.Days;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.corner.Adjuster;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.InForce;
import spindlebook.corner.SettingUnit;
import spindlebook.log.Histories;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.EndFindings;
import spindlebook.travel.TravelFindings;
import spindlebook.units.LengthUnit;
import spindlebook.web.Cautions;
import spindlebook.web.Crumb;
import spindlebook.web.Field;
import spindlebook.web.FigureText;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.FormPart;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.SettingRow;
import spindlebook.web.Who;

/** Changing a setting: what it is now, what it becomes, and what that makes stale. */
public final class AdjustmentPages {
  private final Histories histories;
  private final AdjustmentStore store;

  public AdjustmentPages(Histories histories, AdjustmentStore store) {
    this.histories = histories;
    this.store = store;
  }

  /** All adjusters of a car, corner by corner. */
  public void ofCar(Context ctx) {
    String car = ctx.pathParam("car");
    CarBook history = histories.of(car);
    if (history.car().isEmpty()) {
      throw new NotFoundResponse();
    }
    List<SettingsOfCorner> corners =
        history.corners().stream().map(c -> settings(histories.card(car, c))).toList();
    PageFrame frame =
        PageFrame.of("Settings · Spindlebook", "Change a setting")
            .sub("Tap what was changed.")
            .crumbs(new Crumb(history.details().orElseThrow().name(), "/cars/" + car))
            .caution(Cautions.SETTING);
    Html.show(ctx, Html.TEMPLATES.settingSettings(frame, car, corners));
  }

  public void ofCorner(Context ctx) {
    Card card = card(ctx);
    PageFrame frame =
        PageFrame.of("Settings · Spindlebook", "Change a setting")
            .sub(card.place().words())
            .plan(Shown.plan(card))
            .crumbs(new Crumb(card.place().words(), "/corners/" + card.corner()))
            .caution(Cautions.SETTING);
    Html.show(ctx, Html.TEMPLATES.settingSettings(frame, card.car(), List.of(settings(card))));
  }

  private static SettingsOfCorner settings(Card card) {
    List<SettingRow> rows =
        card.adjusters().stream()
            .map(
                a ->
                    new SettingRow(
                        a.adjuster().name(),
                        a.setting() == null ? null : FigureText.of(a.setting().inWords(), ""),
                        a.at() == null ? "" : Days.day(a.at()),
                        "/corners/" + card.corner() + "/adjustments/" + a.adjuster().adjuster()))
            .toList();
    return new SettingsOfCorner(
        card.place().words(),
        rows,
        "/corners/" + card.corner() + "/adjusters/new",
        "/corners/" + card.corner() + "/trial");
  }

  public void adjuster(Context ctx) {
    Card card = card(ctx);
    InForce adjuster = adjuster(ctx, card);
    Map<String, List<String>> start = new HashMap<>();
    for (String name : List.of("from", "to", "why")) {
      if (ctx.queryParam(name) != null) {
        start.put(name, List.of(ctx.queryParam(name)));
      }
    }
    show(ctx, card, adjuster, new Posted(start), FormKey.fresh(card.lastChange()));
  }

  private void show(Context ctx, Card card, InForce adjuster, Posted posted, FormKey key) {
    Adjuster a = adjuster.adjuster();
    List<FormPart> parts = new ArrayList<>();
    parts.add(new FormPart.Said(nowIs(adjuster)));
    TravelFindings travel = CornerTravel.of(card);
    for (EndFindings end : List.of(travel.droop(), travel.bump())) {
      if (end.cure().filter(c -> c.adjuster().equals(a.adjuster())).isPresent()) {
        parts.add(new FormPart.Said(new TravelWords(card, travel).cure(end)));
      }
    }
    if (adjuster.setting() == null) {
      parts.add(
          new FormPart.Typed(
              posted.fill(
                  Field.of("from", "It was set to, if you know")
                      .hint(hint(a.unit()))
                      .unit(unit(a.unit(), card)))));
    }
    parts.add(
        new FormPart.Typed(
            posted.fill(
                Field.of("to", "It is now set to")
                    .hint(hint(a.unit()))
                    .unit(unit(a.unit(), card))
                    .focused())));
    parts.add(new FormPart.Typed(posted.fill(Field.of("why", "Why").hint("May be left empty."))));
    parts.add(
        new FormPart.Said(
            "Before anything is kept you see what it would make stale. " + Cautions.SETTING));
    FormPage page =
        new FormPage(
            frame(card, a),
            action(card, a) + "/would-move",
            key,
            parts,
            "What would it move?",
            "/corners/" + card.corner());
    Html.form(ctx, posted, page);
  }

  private static PageFrame frame(Card card, Adjuster adjuster) {
    return PageFrame.of(
            adjuster.name() + " · Spindlebook", spindlebook.card.Capital.of(adjuster.name()))
        .sub(card.place().words())
        .plan(Shown.plan(card))
        .crumbs(
            new Crumb(card.place().words(), "/corners/" + card.corner()),
            new Crumb("all settings", "/corners/" + card.corner() + "/adjustments"),
            new Crumb(
                "its unit and step",
                "/corners/" + card.corner() + "/adjusters/" + adjuster.adjuster()));
  }

  private static String action(Card card, Adjuster adjuster) {
    return "/corners/" + card.corner() + "/adjustments/" + adjuster.adjuster();
  }

  private static String nowIs(InForce adjuster) {
    return adjuster.setting() == null
        ? "What it is set to was never said."
        : "Set to "
            + adjuster.setting().inWords()
            + (adjuster.at() == null ? "." : " since " + Days.day(adjuster.at()) + ".");
  }

  private static String hint(SettingUnit unit) {
    return switch (unit) {
      case LENGTH -> "A length: 8 1/4, 8.25 in, 210 mm.";
      case HOLES -> "The hole, counted as you always count.";
      case TURNS -> "Turns from your mark: 2, 2.5, -1.";
      case WORDS -> "In your words.";
    };
  }

  private static String unit(SettingUnit unit, Card card) {
    return switch (unit) {
      case LENGTH -> card.details().unit().word();
      case HOLES, TURNS -> unit.words();
      case WORDS -> "";
    };
  }

  /** What the change would make stale; nothing is written yet. */
  public void wouldMove(Context ctx) {
    Card card = card(ctx);
    InForce adjuster = adjuster(ctx, card);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    var from = from(posted, adjuster, card);
    AdjustmentForm form = AdjustmentForm.read(posted, adjuster.adjuster(), card.details().unit());
    if (!(form instanceof AdjustmentForm.Accepted accepted)) {
      show(ctx, card, adjuster, posted, key);
      return;
    }
    Card then =
        AdjustmentStore.onPaper(
            histories.of(card.car()),
            card.corner(),
            new Content.Adjustment(
                card.corner(),
                adjuster.adjuster().adjuster(),
                from,
                accepted.to(),
                accepted.why(),
                null));
    List<String> moved = WouldMove.lines(card, then);
    String before = from == null ? "" : from.inWords() + " → ";
    Html.show(
        ctx,
        Html.TEMPLATES.settingWouldmove(
            frame(card, adjuster.adjuster()),
            action(card, adjuster.adjuster()),
            key,
            before + accepted.to().inWords(),
            moved,
            Map.of(
                "from", posted.text("from"),
                "to", posted.text("to"),
                "why", posted.text("why"))));
  }

  private static spindlebook.corner.Setting from(Posted posted, InForce adjuster, Card card) {
    if (adjuster.setting() != null || !posted.has("from")) {
      return adjuster.setting();
    }
    return AdjustmentForm.setting(posted, "from", adjuster.adjuster(), card.details().unit());
  }

  public void adjust(Context ctx) {
    Card card = card(ctx);
    InForce adjuster = adjuster(ctx, card);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    LengthUnit unit = card.details().unit();
    var from = from(posted, adjuster, card);
    AdjustmentForm form = AdjustmentForm.read(posted, adjuster.adjuster(), unit);
    if (!(form instanceof AdjustmentForm.Accepted accepted)) {
      show(ctx, card, adjuster, posted, key);
      return;
    }
    boolean waits =
        store.adjust(
            new Content.Adjustment(
                card.corner(),
                adjuster.adjuster().adjuster(),
                from,
                accepted.to(),
                accepted.why(),
                null),
            key,
            Who.of(ctx));
    Html.next(
        ctx,
        waits
            ? "/entries/" + key.key()
            : "/corners/" + card.corner() + "/rounds/new?again=1&change=" + key.key());
  }

  private Card card(Context ctx) {
    return histories.cornerCard(ctx.pathParam("corner")).orElseThrow(NotFoundResponse::new);
  }

  private static InForce adjuster(Context ctx, Card card) {
    return card.adjuster(ctx.pathParam("adjuster")).orElseThrow(NotFoundResponse::new);
  }
}
