package spindlebook.card;

import java.util.List;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.page.Bar;
import spindlebook.page.Cautions;
import spindlebook.page.Link;
import spindlebook.page.PageFrame;

/** The places of a corner, at the foot of each of them. */
public final class CornerBar {
  private CornerBar() {}

  /** A page of a corner with the way up, its places and a heading of its own. */
  public static PageFrame page(Card card, String here, String heading) {
    String corner = Capital.of(card.place().words());
    return PageFrame.of(heading + " · " + corner + " · " + card.details().name(), heading)
        .plan(Shown.plan(card))
        .up(corner, "/corners/" + card.corner())
        .bar(of(card.corner(), here));
  }

  /** A page below a corner's, under a title of its own. */
  public static PageFrame under(Card card, String title, String heading) {
    return PageFrame.of(title + " · Spindlebook", heading)
        .sub(card.place().words())
        .plan(Shown.plan(card))
        .up(card.place().words(), "/corners/" + card.corner());
  }

  /** A page below a car's. */
  public static PageFrame under(CarBook book, String title, String heading) {
    return PageFrame.of(title + " · Spindlebook", heading)
        .up(book.details().orElseThrow().name(), "/cars/" + book.car().orElseThrow());
  }

  /** A page below a corner's that names the car. */
  public static PageFrame titled(Card card, String heading) {
    return PageFrame.of(
            heading + " · " + card.place().words() + " · " + card.details().name(), heading)
        .sub(card.details().name() + ", " + card.place().words())
        .plan(Shown.plan(card))
        .up(Capital.of(card.place().words()), "/corners/" + card.corner())
        .caution(Cautions.FIGURES);
  }

  public static Bar of(String corner, String here) {
    String at = "/corners/" + corner;
    return new Bar(
        new Link("Measure", at + "/rounds/new"),
        List.of(
            new Link("Gaps", at + "/gaps"),
            new Link("Limits", at + "/limits"),
            new Link("Settings", at + "/adjustments"),
            new Link("Align", at + "/alignment"),
            new Link("Life", at + "/life")),
        here);
  }
}
