package spindlebook.watch;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.EntryWords;
import spindlebook.corner.Keep;
import spindlebook.corner.Measure;
import spindlebook.corner.WatchPlace;
import spindlebook.corner.WatchPoint;
import spindlebook.log.Histories;
import spindlebook.photo.PhotoView;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;
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

/** What a corner is watched for: the list, a changed rule, a new point, a retired one. */
public final class WatchPointPages {
  private final Histories histories;
  private final DefinitionStore store;

  public WatchPointPages(Histories histories, DefinitionStore store) {
    this.histories = histories;
    this.store = store;
  }

  /** One watch point of the list. */
  public record Line(String name, String keep, String basis, String href) {}

  public void list(Context ctx) {
    Card card = card(ctx);
    PageFrame frame = frame(card, "What is watched", "/corners/" + card.corner());
    String base = "/corners/" + card.corner() + "/watch-points/";
    List<Line> lines =
        card.watchPoints().stream()
            .map(
                w ->
                    new Line(
                        w.name(), "keep " + EntryWords.keep(w.keep()), w.basis(), base + w.point()))
            .toList();
    Html.show(ctx, Html.TEMPLATES.watchList(frame, lines, base + "new", base + "copy"));
  }

  // --- one point

  public void point(Context ctx) {
    Card card = card(ctx);
    WatchPoint point = point(ctx, card);
    Map<String, List<String>> typed = new HashMap<>();
    typed.put("name", List.of(point.name()));
    put(typed, "least", point.keep().least());
    put(typed, "most", point.keep().most());
    if (point.keep().mostAngle() != null) {
      typed.put("mostAngle", List.of(point.keep().mostAngle().typed()));
    }
    showPoint(ctx, card, point, new Posted(typed), FormKey.fresh(card.lastChange()));
  }

  private static void put(Map<String, List<String>> typed, String name, TypedLength length) {
    if (length != null) {
      typed.put(name, List.of(length.typed()));
    }
  }

  private void showPoint(Context ctx, Card card, WatchPoint point, Posted posted, FormKey key) {
    String address = "/corners/" + card.corner() + "/watch-points/" + point.point();
    List<FormPart> parts = new ArrayList<>();
    parts.add(
        new FormPart.Said(
            Capital.of(point.place().words()) + ". Its rule is from: " + point.basis() + "."));
    parts.add(new FormPart.Typed(posted.fill(Field.of("name", "Called"))));
    parts.addAll(keepParts(posted, point.place().measure(), card.details().unit()));
    PageFrame frame =
        frame(card, Capital.of(point.name()), "/corners/" + card.corner() + "/watch-points");
    Html.show(
        ctx.status(posted.ok() ? 200 : 422),
        Html.TEMPLATES.watchPoint(
            new FormPage(frame, address, key, parts, "Keep this rule", null),
            FormKey.fresh(card.lastChange()),
            address + "/retire",
            PhotoView.ofPoint(histories.of(card.car()), card.corner(), point.point()),
            "/corners/" + card.corner() + "/photos?of=point." + point.point()));
  }

  private static List<FormPart> keepParts(Posted posted, Measure measure, LengthUnit unit) {
    return switch (measure) {
      case GAP ->
          List.of(
              new FormPart.Typed(
                  posted.fill(
                      Field.of("least", "Keep at least").hint("1/4, 6 mm").unit(unit.word()))));
      case ANGLE ->
          List.of(
              new FormPart.Typed(
                  posted.fill(Field.of("mostAngle", "Keep at most").hint("18, 18.5°").unit("°"))));
      case PLUNGE ->
          List.of(
              new FormPart.Typed(posted.fill(Field.of("least", "Stay above").unit(unit.word()))),
              new FormPart.Typed(posted.fill(Field.of("most", "Stay below").unit(unit.word()))));
    };
  }

  private static Keep keep(Posted posted, Measure measure, LengthUnit unit) {
    switch (measure) {
      case GAP -> {
        TypedLength least =
            posted.neededLength("least", unit, "A gap needs what it must keep, such as 1/4.");
        return least == null ? null : Keep.atLeast(least);
      }
      case ANGLE -> {
        TypedAngle most = posted.angle("mostAngle");
        if (most == null && posted.ok()) {
          posted.wrong("mostAngle", "A joint needs the angle it may reach, such as 18.");
        }
        return most == null ? null : Keep.atMost(most);
      }
      default -> {
        TypedLength least = posted.length("least", unit);
        TypedLength most = posted.length("most", unit);
        if (posted.ok() && (least == null || most == null || least.mm() >= most.mm())) {
          posted.wrong("most", "A plunge stays between two ends, the lower one typed first.");
        }
        return posted.ok() ? Keep.between(least, most) : null;
      }
    }
  }

  public void change(Context ctx) {
    Card card = card(ctx);
    WatchPoint point = point(ctx, card);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    Keep keep = keep(posted, point.place().measure(), card.details().unit());
    String name = posted.line("name", 60);
    if (!posted.ok()) {
      showPoint(ctx, card, point, posted, key);
      return;
    }
    store.watchPoint(
        card.corner(),
        new WatchPoint(point.point(), point.place(), name, keep, null),
        key,
        Who.of(ctx));
    Html.next(ctx, "/corners/" + card.corner() + "/watch-points");
  }

  public void retire(Context ctx) {
    Card card = card(ctx);
    WatchPoint point = point(ctx, card);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    store.retire(card.corner(), new Content.Retired(point.point(), null, null), key, Who.of(ctx));
    Html.next(ctx, "/corners/" + card.corner() + "/watch-points");
  }

  // --- a new point

  public void newPoint(Context ctx) {
    Card card = card(ctx);
    showNew(ctx, card, new Posted(Map.of()), FormKey.fresh(card.lastChange()));
  }

  private static void showNew(Context ctx, Card card, Posted posted, FormKey key) {
    List<Choice.Option> places = new ArrayList<>();
    for (WatchPlace place : WatchPlace.values()) {
      places.add(
          new Choice.Option(
              Posted.word(place),
              place.words(),
              "",
              Posted.word(place).equals(posted.text("place"))));
    }
    String unit = card.details().unit().word();
    FormPage page =
        new FormPage(
            frame(card, "A new watch point", "/corners/" + card.corner() + "/watch-points"),
            "/corners/" + card.corner() + "/watch-points",
            key,
            List.of(
                new FormPart.Chosen(
                    new Choice("place", "Between", "", posted.problem("place"), places)),
                new FormPart.Typed(
                    posted.fill(
                        Field.of("name", "Called")
                            .hint("Empty: as the place. Two of a kind need names that differ."))),
                new FormPart.Typed(
                    posted.fill(
                        Field.of("least", "Keep at least (a gap; the lower end of a plunge)")
                            .unit(unit))),
                new FormPart.Typed(
                    posted.fill(
                        Field.of("mostAngle", "Keep at most (the angle of a joint)").unit("°"))),
                new FormPart.Typed(
                    posted.fill(
                        Field.of("most", "Stay below (the upper end of a plunge)").unit(unit)))),
            "Watch this",
            "/corners/" + card.corner() + "/watch-points");
    Html.form(ctx, posted, page);
  }

  public void create(Context ctx) {
    Card card = card(ctx);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    WatchPlace place = posted.word("place", WatchPlace.class, null);
    if (place == null) {
      posted.wrong("place", "Say between which two parts.");
      showNew(ctx, card, posted, key);
      return;
    }
    Keep keep = keep(posted, place.measure(), card.details().unit());
    String name = posted.line("name", 60);
    String point = shortName(name == null ? place.words() : name);
    boolean sentBefore = histories.locate(key.key()).isPresent();
    if (posted.ok() && card.watchPoint(point).isPresent() && !sentBefore) {
      posted.wrong("name", "There is a watch point called that already; give it another name.");
    }
    if (!posted.ok()) {
      showNew(ctx, card, posted, key);
      return;
    }
    store.watchPoint(
        card.corner(), new WatchPoint(point, place, name, keep, null), key, Who.of(ctx));
    Html.next(ctx, "/corners/" + card.corner() + "/watch-points");
  }

  /** A name for addresses and the mirror corner: small letters, digits, hyphens. */
  private static String shortName(String words) {
    String plain =
        words.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
    return plain.isEmpty() || plain.equals("new") || plain.equals("copy")
        ? "point-" + FormKey.fresh(0).key()
        : plain;
  }

  private static PageFrame frame(Card card, String heading, String back) {
    return PageFrame.of(heading + " · Spindlebook", heading)
        .sub(card.place().words())
        .plan(Shown.plan(card))
        .crumbs(new Crumb("back", back));
  }

  private static WatchPoint point(Context ctx, Card card) {
    return card.watchPoint(ctx.pathParam("point")).orElseThrow(NotFoundResponse::new);
  }

  private Card card(Context ctx) {
    return histories.cornerCard(ctx.pathParam("corner")).orElseThrow(NotFoundResponse::new);
  }
}
