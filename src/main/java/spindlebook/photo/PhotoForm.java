package spindlebook.photo;

import java.util.ArrayList;
import java.util.List;
import spindlebook.card.Days;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Content;
import spindlebook.entry.PhotoSide;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Noted;
import spindlebook.page.Asked;
import spindlebook.words.EntryWords;

/**
 * What a photo is of.
 *
 * @param target the reading or change; null for none
 * @param point the watch point; null for none
 */
record PhotoForm(String target, String point, PhotoSide side, String words) {
  private static final String CORNER = "corner";
  private static final String POINT = "point.";
  private static final String ENTRY = "entry.";
  private static final int MOST_OFFERED = 8;

  static PhotoForm ask(Asked a, CarBook book, Card card) {
    String words = a.line("words", "What it shows", 200).hint("May be left empty.").read();
    return a.more(
        "What it belongs to: a watch point, a change, a reading",
        () -> {
          Asked.Keys<String> keys = a.<String>one("of", "It is of").option(CORNER, "the corner");
          for (WatchPoint w : card.watchPoints()) {
            keys.option(POINT + w.point(), w.name());
          }
          entries(keys, a.text("of"), book, card);
          String of =
              keys.first(CORNER)
                  .unknown("Choose what the photo is of: that is not in the book at this corner.")
                  .read();
          PhotoSide side =
              a.<PhotoSide>one("side", "Of a change")
                  .option("neither", null, "neither", "")
                  .option(PhotoSide.BEFORE, "before it")
                  .option(PhotoSide.AFTER, "after it")
                  .firstKey("neither")
                  .read();
          String target = of.startsWith(ENTRY) ? of.substring(ENTRY.length()) : null;
          if (side != null && !(entry(book, card, target) instanceof Content.Adjustment)) {
            a.wrong("side", "Before and after are of a change: choose the change as well.");
          }
          String point = of.startsWith(POINT) ? of.substring(POINT.length()) : null;
          return new PhotoForm(target, point, side, words);
        });
  }

  Content.Photo photo(Card card, PhotoStore.Kept kept) {
    return new Content.Photo(
        card.corner(), target, point, kept.file(), kept.widthPx(), kept.heightPx(), side, words);
  }

  /** A reading or adjustment of this corner that stands; null for anything else. */
  private static Content entry(CarBook book, Card card, String key) {
    Content content = book.standing(key).orElse(null);
    if (content instanceof Content.Adjustment a && a.corner().equals(card.corner())) {
      return a;
    }
    return content instanceof Content.Reading && card.reading(key).isPresent() ? content : null;
  }

  /** The last changes and readings of the corner, and the one that was chosen. */
  private static void entries(Asked.Keys<String> keys, String of, CarBook book, Card card) {
    EntryWords words = new EntryWords(book);
    List<Noted> changes = new ArrayList<>();
    List<Noted> readings = new ArrayList<>();
    List<Noted> entries = book.entries();
    for (int i = entries.size() - 1; i >= 0; i--) {
      Noted e = entries.get(i);
      List<Noted> list = e.content() instanceof Content.Adjustment ? changes : readings;
      boolean offered = list.size() < MOST_OFFERED || of.equals(ENTRY + e.key());
      if (offered && entry(book, card, e.key()) != null) {
        list.add(e);
      }
    }
    changes.addAll(readings);
    for (Noted e : changes) {
      String said = words.of(book.standing(e.key()).orElseThrow());
      keys.option(ENTRY + e.key(), said, Days.day(e.at()));
    }
  }
}
