package spindlebook.watch;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import spindlebook.card.Shown;
import spindlebook.corner.Allowance;
import spindlebook.corner.Card;
import spindlebook.corner.Dimension;
import spindlebook.corner.Given;
import spindlebook.corner.HeldBack;
import spindlebook.log.Histories;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedLength;
import spindlebook.web.Crumb;
import spindlebook.web.Field;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.FormPart;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** The corner's given lengths, each with how unsure it is, and what is held back on purpose. */
public final class GivenPages {
  private final Histories histories;
  private final DefinitionStore store;

  public GivenPages(Histories histories, DefinitionStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void given(Context ctx) {
    Card card = card(ctx);
    Map<String, List<String>> typed = new HashMap<>();
    card.given()
        .forEach(
            (d, seen) -> {
              if (!seen.stands().counts()) {
                return;
              }
              Given g = seen.given();
              typed.put(Posted.word(d), List.of(g.length().typed()));
              if (g.halfWidth() != null) {
                typed.put(unsure(d), List.of(g.halfWidth().typed()));
              }
            });
    card.heldBack()
        .forEach(
            (a, h) ->
                typed.put(
                    Posted.word(a), List.of(a.share() ? plain(h.percent()) : h.length().typed())));
    show(ctx, card, new Posted(typed), FormKey.fresh(card.lastChange()));
  }

  private static String unsure(Dimension dimension) {
    return Posted.word(dimension) + "-unsure";
  }

  private static String plain(double percent) {
    return percent == Math.rint(percent)
        ? Long.toString(Math.round(percent))
        : Double.toString(percent);
  }

  private static void show(Context ctx, Card card, Posted posted, FormKey key) {
    String unit = card.details().unit().word();
    List<FormPart> parts = new ArrayList<>();
    parts.add(
        new FormPart.Said(
            "Leave empty what you do not know yet. An emptied box keeps what it had."));
    for (Dimension d : Dimension.values()) {
      parts.add(
          new FormPart.Typed(
              posted.fill(
                  Field.of(Posted.word(d), spindlebook.card.Capital.of(d.words()))
                      .hint(before(card, d) + hint(d))
                      .unit(unit))));
    }
    List<FormPart> unsure = new ArrayList<>();
    for (Dimension d : Dimension.values()) {
      unsure.add(
          new FormPart.Typed(posted.fill(Field.of(unsure(d), "± of: " + d.words()).unit(unit))));
    }
    boolean open = Arrays.stream(Dimension.values()).anyMatch(d -> posted.has(unsure(d)));
    parts.add(new FormPart.More("How unsure they are, where you measured them", open, unsure));
    for (Allowance a : Allowance.values()) {
      String basis = card.heldBack(a).map(h -> "Its number is from: " + h.basis() + ".").orElse("");
      parts.add(
          new FormPart.Typed(
              posted.fill(
                  Field.of(Posted.word(a), "Held back: " + a.words())
                      .hint(basis)
                      .unit(a.share() ? "%" : unit))));
    }
    PageFrame frame =
        PageFrame.of("Given and held back · Spindlebook", "What is given and held back")
            .sub(card.place().words())
            .plan(Shown.plan(card))
            .crumbs(new Crumb(card.place().words(), "/corners/" + card.corner()));
    FormPage page =
        new FormPage(
            frame,
            "/corners/" + card.corner() + "/given",
            key,
            parts,
            "Keep these",
            "/corners/" + card.corner());
    Html.form(ctx, posted, page);
  }

  /** What it was before its part was changed. */
  private static String before(Card card, Dimension d) {
    return card.givenBefore(d)
        .map(
            g ->
                "Measure again: it was "
                    + g.given().length().typed()
                    + " before "
                    + g.because().get(0).words()
                    + ". ")
        .orElse("");
  }

  private static String hint(Dimension d) {
    return switch (d) {
      case NEW_STRAP_LENGTH -> "Unloaded, at the setting it came with.";
      case STOP_CRUSH ->
          "From touch to solid, measured or from the drawing. A full bump read solid counts before"
              + " it.";
      case MARK_TO_LOWEST_FRAME -> "Straight down, frame level.";
      case MARK_INBOARD -> "0 or empty when the mark stands right over the spindle.";
      case READ_POINT_OUTBOARD -> "Only with camber read at each height; empty otherwise.";
      case TYRE_SQUASHED_RADIUS -> "Spindle to ground with the tyre flattened.";
      case TOE_ACROSS -> "Slot to slot of a toe plate, or rim edge to rim edge: front to rear.";
      case TOE_RANGE -> "Your limit for bump steer; nothing is assumed when it is empty.";
      default -> "";
    };
  }

  public void change(Context ctx) {
    Card card = card(ctx);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    LengthUnit unit = card.details().unit();
    List<Given> given = new ArrayList<>();
    for (Dimension d : Dimension.values()) {
      TypedLength length = posted.lengthFromZero(Posted.word(d), unit);
      TypedLength halfWidth = posted.lengthFromZero(unsure(d), unit);
      if (length == null && halfWidth != null && !posted.has(Posted.word(d))) {
        posted.wrong(unsure(d), "This ± needs the length it belongs to, above.");
      }
      if (length != null) {
        Given typed = new Given(d, length, halfWidth);
        if (!typed.equals(card.given(d).orElse(null))) {
          given.add(typed);
        }
      }
    }
    List<HeldBack> heldBack = new ArrayList<>();
    for (Allowance a : Allowance.values()) {
      heldBack(posted, card, a, unit).ifPresent(heldBack::add);
    }
    if (!posted.ok()) {
      show(ctx, card, posted, key);
      return;
    }
    store.given(card.corner(), given, heldBack, key, Who.of(ctx));
    Html.next(ctx, "/corners/" + card.corner());
  }

  /** Empty when nothing was changed. */
  private static java.util.Optional<HeldBack> heldBack(
      Posted posted, Card card, Allowance a, LengthUnit unit) {
    String name = Posted.word(a);
    HeldBack now = card.heldBack().get(a);
    if (!posted.has(name)) {
      return java.util.Optional.empty();
    }
    if (a.share()) {
      Double percent = percent(posted, name);
      boolean same = percent == null || (now != null && now.percent().equals(percent));
      return same
          ? java.util.Optional.empty()
          : java.util.Optional.of(new HeldBack(a, null, percent, null, null));
    }
    TypedLength length = posted.lengthFromZero(name, unit);
    boolean same = length == null || (now != null && now.length().mm() == length.mm());
    return same
        ? java.util.Optional.empty()
        : java.util.Optional.of(
            new HeldBack(a, length, null, now == null ? null : now.halfWidth(), null));
  }

  private static Double percent(Posted posted, String name) {
    String text = posted.text(name).strip().replace("%", "").replace(',', '.').strip();
    try {
      double percent = Double.parseDouble(text);
      if (percent >= 0 && percent <= 100) {
        return percent;
      }
    } catch (NumberFormatException e) {
      // Said below, with the numbers out of range.
    }
    posted.wrong(name, "'" + posted.text(name).strip() + "' is no share: type 0 to 100 per cent.");
    return null;
  }

  private Card card(Context ctx) {
    return histories.cornerCard(ctx.pathParam("corner")).orElseThrow(NotFoundResponse::new);
  }
}
