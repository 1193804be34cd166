package spindlebook.watch;

import io.javalin.http.Context;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spindlebook.card.Addressed;
import spindlebook.card.CornerBar;
import spindlebook.card.IntoBook;
import spindlebook.definition.Defined;
import spindlebook.entry.Content;
import spindlebook.fold.Card;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.PageFrame;

/** A corner's rules, specs and settings, copied to its mirror or to a corner of another car. */
public record CopyPages(Histories histories, CornerList corners, IntoBook book) {
  public void copy(Context ctx) {
    Card from = Addressed.corner(ctx, histories);
    String back = "/corners/" + from.corner() + "/watch-points";
    Asked a = Asked.of(ctx, from.details().unit(), from.lastChange());
    List<Card> others = others(from);
    Asked.Keys<Card> keys = a.one("to", "Copy to");
    for (Card to : others) {
      String car = to.car().equals(from.car()) ? "" : to.details().name() + ", ";
      keys.option(to.corner(), to, car + to.place().words(), Copied.of(from, to).words());
    }
    Card to =
        keys.hint(
                others.isEmpty()
                    ? "No other corner in the book is a "
                        + from.layout().words()
                        + ", as this one is."
                    : "Rules and allowances become as here; what only the other corner is watched"
                        + " for stays. Specs and settings fill in what it lacks.")
            .firstKey(histories.of(from.car()).cornerAt(from.place().mirror()).orElse(null))
            .unknown("Say which corner it is copied to.")
            .needed("Say which corner it is copied to.");
    if (a.ok()) {
      Map<String, Content.Definition> copied = new LinkedHashMap<>();
      for (Defined what : Copied.of(from, to).all()) {
        copied.put(Integer.toString(copied.size()), Content.Definition.of(to.corner(), what));
      }
      book.put(ctx, a, copied, "/corners/" + to.corner() + "/watch-points");
      return;
    }
    PageFrame frame =
        CornerBar.under(from, "Copy this corner", "Copy this corner").up("back", back);
    a.show(ctx, frame, back + "/copy", "Copy", back);
  }

  /** Corners hung the same way, the mirror first, then this car's, then the others'. */
  private List<Card> others(Card from) {
    return corners.keys().stream()
        .flatMap(corner -> histories.cornerCard(corner).stream())
        .filter(to -> !to.corner().equals(from.corner()) && to.layout() == from.layout())
        .sorted(
            Comparator.comparing((Card to) -> !to.car().equals(from.car()))
                .thenComparing(
                    to -> to.car().equals(from.car()) && to.place() != from.place().mirror()))
        .toList();
  }
}
