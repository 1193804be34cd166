package spindlebook.setting;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import spindlebook.card.Addressed;
import spindlebook.card.Capital;
import spindlebook.card.CornerBar;
import spindlebook.card.Days;
import spindlebook.card.TravelWords;
import spindlebook.definition.Adjuster;
import spindlebook.definition.Setting;
import spindlebook.definition.SettingUnit;
import spindlebook.drawing.FigureText;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.InForce;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.Cautions;
import spindlebook.page.FormPage;
import spindlebook.page.FormPart;
import spindlebook.page.Html;
import spindlebook.page.Link;
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;
import spindlebook.page.SettingRow;
import spindlebook.plan.OnPaper;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.EndFindings;
import spindlebook.travel.TravelFindings;
import spindlebook.web.Who;

/** Changing a setting: what it is now, what it becomes, and what that makes stale. */
public record AdjustmentPages(Histories histories, AdjustmentStore store) {
  /** All adjusters of a car, corner by corner. */
  public void ofCar(Context ctx) {
    CarBook history = Addressed.car(ctx, histories);
    String car = ctx.pathParam("car");
    List<SettingsOfCorner> corners =
        history.corners().stream().map(c -> settings(histories.card(car, c))).toList();
    PageFrame frame =
        CornerBar.under(history, "Settings", "Change a setting")
            .sub("Tap what was changed.")
            .caution(Cautions.SETTING);
    Html.show(ctx, Html.TEMPLATES.settingSettings(frame, corners));
  }

  public void ofCorner(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    PageFrame frame = CornerBar.page(card, "Settings", "Settings").caution(Cautions.SETTING);
    Html.show(ctx, Html.TEMPLATES.settingSettings(frame, List.of(settings(card))));
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
    String corner = "/corners/" + card.corner();
    return new SettingsOfCorner(
        Capital.of(card.place().words()),
        rows,
        List.of(
            new Link("Springs and stops", corner + "/spring"),
            new Link("Try it first", corner + "/trial"),
            new Link("Specs and allowances", corner + "/given"),
            new Link("Watch points", corner + "/watch-points"),
            new Link("Copy to another corner", corner + "/watch-points/copy"),
            new Link("Fasteners", corner + "/fasteners"),
            new Link("Rod ends on paper", corner + "/rod-ends"),
            new Link("Wheel on paper", corner + "/wheel"),
            new Link("Another adjuster", corner + "/adjusters/new"),
            new Link("Something happened", "/cars/" + card.car() + "/happenings/new")));
  }

  /** Its address may say what it becomes, and why. */
  public void adjuster(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    InForce adjuster = adjuster(ctx, card);
    Posted proposed = Posted.proposed(ctx.queryParamMap());
    Asked a = Asked.of(proposed, card.details().unit(), card.lastChange());
    ask(a, card, adjuster);
    show(ctx, card, adjuster, a);
  }

  /** Null as long as it is not told without a fault. */
  private static Content.Adjustment ask(Asked a, Card card, InForce now) {
    Adjuster adjuster = now.adjuster();
    Setting from =
        now.setting() != null
            ? now.setting()
            : setting(a, "from", "It was set to, if you know", adjuster).read();
    Setting to =
        setting(a, "to", "It is now set to", adjuster)
            .focused()
            .needed(AdjustmentForm.needed(adjuster));
    String why = a.line("why", "Why", 300).hint("May be left empty.").read();
    return a.ok()
        ? new Content.Adjustment(card.corner(), adjuster.adjuster(), from, to, why, null)
        : null;
  }

  private static Asked.Box<Setting> setting(Asked a, String name, String label, Adjuster adjuster) {
    SettingUnit unit = adjuster.unit();
    return a.typed(name, label, t -> AdjustmentForm.setting(a.posted(), name, adjuster, a.unit()))
        .hint(hint(unit))
        .unit(
            switch (unit) {
              case LENGTH -> a.unit().word();
              case HOLES, TURNS -> unit.words();
              case WORDS -> "";
            });
  }

  private void show(Context ctx, Card card, InForce now, Asked a) {
    Adjuster adjuster = now.adjuster();
    List<FormPart> parts = new ArrayList<>();
    parts.add(new FormPart.Said(nowIs(now)));
    TravelFindings travel = CornerTravel.of(card);
    for (EndFindings end : List.of(travel.droop(), travel.bump())) {
      if (end.cure().filter(c -> c.adjuster().equals(adjuster.adjuster())).isPresent()) {
        parts.add(new FormPart.Said(new TravelWords(card, travel).cure(end)));
      }
    }
    parts.addAll(a.parts());
    parts.add(
        new FormPart.Said(
            "Before anything is kept you see what is to be measured again. " + Cautions.SETTING));
    parts.add(
        new FormPart.Way(
            new Link(
                "Its unit and step",
                "/corners/" + card.corner() + "/adjusters/" + adjuster.adjuster())));
    FormPage page =
        new FormPage(
            frame(card, adjuster),
            action(card, adjuster) + "/would-move",
            a.key(),
            parts,
            "What would it move?",
            "/corners/" + card.corner());
    a.show(ctx, Html.TEMPLATES.webForm(page));
  }

  private static PageFrame frame(Card card, Adjuster adjuster) {
    return CornerBar.under(card, adjuster.name(), spindlebook.card.Capital.of(adjuster.name()))
        .up("settings", "/corners/" + card.corner() + "/adjustments");
  }

  private static String action(Card card, Adjuster adjuster) {
    return "/corners/" + card.corner() + "/adjustments/" + adjuster.adjuster();
  }

  private static String nowIs(InForce adjuster) {
    return adjuster.setting() == null
        ? "What it is set to is not known yet."
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

  /** What the change would make stale; nothing is written yet. */
  public void wouldMove(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    InForce adjuster = adjuster(ctx, card);
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    Content.Adjustment typed = ask(a, card, adjuster);
    if (!a.ok()) {
      show(ctx, card, adjuster, a);
      return;
    }
    Card then = OnPaper.with(histories.of(card.car()), List.of(typed)).card(card.corner());
    String before = typed.from() == null ? "" : typed.from().inWords() + " → ";
    Html.show(
        ctx,
        Html.TEMPLATES.settingWouldmove(
            frame(card, adjuster.adjuster()),
            action(card, adjuster.adjuster()),
            a.key(),
            before + typed.to().inWords(),
            WouldMove.lines(card, then),
            Map.of("from", a.text("from"), "to", a.text("to"), "why", a.text("why"))));
  }

  public void adjust(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    InForce adjuster = adjuster(ctx, card);
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    Content.Adjustment typed = ask(a, card, adjuster);
    if (!a.ok()) {
      show(ctx, card, adjuster, a);
      return;
    }
    boolean waits = store.adjust(typed, a.key(), Who.of(ctx));
    Html.next(
        ctx,
        waits
            ? "/entries/" + a.key().key()
            : "/corners/" + card.corner() + "/rounds/new?again=1&change=" + a.key().key());
  }

  private static InForce adjuster(Context ctx, Card card) {
    return card.adjuster(ctx.pathParam("adjuster")).orElseThrow(NotFoundResponse::new);
  }
}
