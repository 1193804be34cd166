package spindlebook.watch;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import spindlebook.card.Addressed;
import spindlebook.card.Capital;
import spindlebook.card.CornerBar;
import spindlebook.card.IntoBook;
import spindlebook.definition.Keep;
import spindlebook.definition.Measure;
import spindlebook.definition.Retired;
import spindlebook.definition.WatchPlace;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Content;
import spindlebook.fold.Card;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.FormKey;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.photo.PhotoView;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/** What a corner is watched for: the list, a changed rule, a new point, a retired one. */
public record WatchPointPages(Histories histories, IntoBook book) {
  /** One watch point of the list. */
  public record Line(String name, String keep, String basis, String href) {}

  public void list(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    PageFrame frame = frame(card, "Watch points", "/corners/" + card.corner());
    String base = points(card) + "/";
    List<Line> lines =
        card.watchPoints().stream()
            .map(w -> new Line(w.name(), "keep " + w.keep().inWords(), w.basis(), base + w.point()))
            .toList();
    Html.show(ctx, Html.TEMPLATES.watchList(frame, lines, base + "new", base + "copy"));
  }

  /** One point, and its rule changed. */
  public void point(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    WatchPoint point = point(ctx, card);
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    a.said(Capital.of(point.place().words()) + ". Its rule is from: " + point.basis() + ".");
    String name = a.line("name", "Called", 60).was(point.name()).read();
    Keep keep = keep(a, point);
    if (a.ok()) {
      keep(ctx, a, card, new WatchPoint(point.point(), point.place(), name, keep, null));
      return;
    }
    String address = points(card) + "/" + point.point();
    a.show(
        ctx,
        Html.TEMPLATES.watchPoint(
            a.page(frame(card, Capital.of(point.name()), points(card)), address, "Save", null),
            FormKey.fresh(card.lastChange()),
            address + "/retire",
            PhotoView.ofPoint(histories.of(card.car()), card.corner(), point.point()),
            "/corners/" + card.corner() + "/photos?of=point." + point.point()));
  }

  private static Keep keep(Asked a, WatchPoint point) {
    Measure measure = point.place().measure();
    Keep was = point.keep();
    TypedLength least =
        switch (measure) {
          case GAP -> a.length("least", "Keep at least").hint("1/4, 6 mm").was(was.least()).read();
          case PLUNGE -> a.signed("least", "Stay above").was(was.least()).read();
          case ANGLE -> null;
        };
    TypedAngle mostAngle =
        measure != Measure.ANGLE
            ? null
            : a.angle("mostAngle", "Keep at most").hint("18, 18.5°").was(was.mostAngle()).read();
    TypedLength most =
        measure != Measure.PLUNGE ? null : a.signed("most", "Stay below").was(was.most()).read();
    return keep(a, measure, least, mostAngle, most);
  }

  /** The rule that is asked of such a place; null where it is not told. */
  private static Keep keep(
      Asked a, Measure measure, TypedLength least, TypedAngle mostAngle, TypedLength most) {
    switch (measure) {
      case GAP -> {
        if (least == null) {
          a.wrong("least", "A gap needs what it must keep, such as 1/4.");
        }
        return a.ok() ? Keep.atLeast(least) : null;
      }
      case ANGLE -> {
        if (mostAngle == null && a.ok()) {
          a.wrong("mostAngle", "A joint needs the angle it may reach, such as 18.");
        }
        return a.ok() ? Keep.atMost(mostAngle) : null;
      }
      default -> {
        if (a.ok() && (least == null || most == null || least.mm() >= most.mm())) {
          a.wrong("most", "A plunge stays between two ends, the lower one typed first.");
        }
        return a.ok() ? Keep.between(least, most) : null;
      }
    }
  }

  public void retire(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    Supplier<Retired> retired = () -> new Retired(point(ctx, card).point(), null, null);
    book.once(ctx, a, () -> Content.Definition.of(card.corner(), retired.get()), points(card));
  }

  /** A new point. */
  public void create(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    WatchPlace place =
        a.one("place", "Between", WatchPlace.class, WatchPlace::words)
            .needed("Say between which two parts.");
    String name =
        a.line("name", "Called", 60)
            .hint("Empty: as the place. Two of a kind need names that differ.")
            .read();
    boolean gap = place != null && place.measure() == Measure.GAP;
    String leastOf = "Keep at least (a gap; the lower end of a plunge)";
    TypedLength least = (gap ? a.length("least", leastOf) : a.signed("least", leastOf)).read();
    TypedAngle mostAngle = a.angle("mostAngle", "Keep at most (the angle of a joint)").read();
    TypedLength most = a.signed("most", "Stay below (the upper end of a plunge)").read();
    if (place != null) {
      Keep keep = keep(a, place.measure(), least, mostAngle, most);
      String point = shortName(name == null ? place.words() : name);
      boolean sentBefore = histories.locate(a.key().key()).isPresent();
      if (a.ok() && card.watchPoint(point).isPresent() && !sentBefore) {
        a.wrong("name", "There is a watch point called that already; give it another name.");
      }
      if (a.ok()) {
        keep(ctx, a, card, new WatchPoint(point, place, name, keep, null));
        return;
      }
    }
    a.show(
        ctx,
        frame(card, "A new watch point", points(card)),
        points(card),
        "Watch this",
        points(card));
  }

  private void keep(Context ctx, Asked a, Card card, WatchPoint point) {
    book.put(ctx, a, Content.Definition.of(card.corner(), point), points(card));
  }

  /** A name for addresses and the mirror corner: small letters, digits, hyphens. */
  private static String shortName(String words) {
    String plain =
        words.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
    return plain.isEmpty() || plain.equals("new") || plain.equals("copy")
        ? "point-" + FormKey.fresh(0).key()
        : plain;
  }

  private static String points(Card card) {
    return "/corners/" + card.corner() + "/watch-points";
  }

  private static PageFrame frame(Card card, String heading, String back) {
    return CornerBar.under(card, heading, heading).up("back", back);
  }

  private static WatchPoint point(Context ctx, Card card) {
    return card.watchPoint(ctx.pathParam("point")).orElseThrow(NotFoundResponse::new);
  }
}
