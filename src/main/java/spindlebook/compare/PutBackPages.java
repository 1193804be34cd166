package spindlebook.compare;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import spindlebook.card.Capital;
import spindlebook.entry.Content.ToRead;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.ReadAgain;
import spindlebook.fold.Standing;
import spindlebook.log.Histories;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.plan.PuttingBack;

/** The settings as they stood at a point of the book: what brings them back, each prepared. */
public record PutBackPages(Histories histories) {
  /** {@code at} an entry; without one, where comparing begins too. */
  public void putBack(Context ctx) {
    CarBook book = histories.of(ctx.pathParam("car"));
    String car = book.car().orElseThrow(NotFoundResponse::new);
    Points points = new Points(book);
    String typed = ctx.queryParam("at");
    Point at =
        typed == null
            ? points.usual()
            : Point.read(book, typed.strip()).orElseThrow(NotFoundResponse::new);
    PageFrame frame =
        PageFrame.of("Put it back · Spindlebook", "Put it back")
            .sub("All settings as they stood at " + at.words() + ".")
            .up("the book", "/cars/" + car + "/book")
            .ownSheets("car.css")
            .caution(Cautions.SETTING);
    PuttingBack back = PuttingBack.to(book, at.n());
    Html.show(
        ctx,
        Html.TEMPLATES.comparePutback(
            frame,
            new PutBackView(
                car, points.select("at", "As it stood at", at), at, back, after(book, back))));
  }

  // --- once all of it is done

  private static List<PutBackView.After> after(CarBook book, PuttingBack back) {
    CarBook made = back.made(book);
    return made.corners().stream()
        .map(c -> after(book.card(c), made.card(c)))
        .filter(a -> !a.none())
        .toList();
  }

  private static PutBackView.After after(Card now, Card made) {
    Set<ToRead> already =
        now.readAgain().stream()
            .filter(r -> r.stands() == Standing.STALE)
            .map(ReadAgain::toRead)
            .collect(Collectors.toSet());
    return new PutBackView.After(
        Capital.of(made.place().words()),
        again(made, r -> r.stands() == Standing.PUT_BACK),
        again(made, r -> r.stands() == Standing.STALE && !already.contains(r.toRead())),
        again(made, r -> r.stands() == Standing.STALE && already.contains(r.toRead())));
  }

  private static PutBackView.Again again(Card card, Predicate<ReadAgain> which) {
    Map<String, Integer> things = new LinkedHashMap<>();
    card.readAgain().stream()
        .filter(which)
        .forEach(r -> things.merge(thing(card, r.toRead()), 1, Integer::sum));
    return new PutBackView.Again(
        things.values().stream().mapToInt(n -> n).sum(),
        things.entrySet().stream()
            .map(t -> t.getKey() + (t.getValue() == 1 ? "" : ", " + t.getValue() + " readings"))
            .toList());
  }

  private static String thing(Card card, ToRead read) {
    if (read.quantity() == null) {
      return "where '" + read.name().words() + "' lies";
    }
    return card.what(read);
  }
}
