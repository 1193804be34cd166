package spindlebook.card;

import java.util.ArrayList;
import java.util.List;
import spindlebook.fold.Card;
import spindlebook.page.Link;

/** Links to the heights and readings that something on a page rests on, by their numbers. */
public final class ReadingLinks {
  private ReadingLinks() {}

  public static List<Link> of(Card card, List<String> keys) {
    List<Link> links = new ArrayList<>();
    for (String key : keys) {
      card.height(key).ifPresent(h -> links.add(new Link("n " + h.n(), "/entries/" + key)));
      card.reading(key).ifPresent(r -> links.add(new Link("n " + r.n(), "/entries/" + key)));
    }
    return links;
  }
}
