package spindlebook.photo;

import java.util.ArrayList;
import java.util.List;
import spindlebook.card.Days;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.EntryWords;
import spindlebook.corner.Noted;
import spindlebook.corner.PhotoSide;
import spindlebook.corner.WatchPoint;
import spindlebook.web.Choice;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Posted;

/** What a photo is of. */
final class PhotoForm {
  private static final String CORNER = "corner";
  private static final String POINT = "point.";
  private static final String ENTRY = "entry.";
  private static final String NEITHER = "neither";
  private static final int MOST_OFFERED = 8;

  private final CarBook book;
  private final Card card;

  PhotoForm(CarBook book, Card card) {
    this.book = book;
    this.card = card;
  }

  /** What a photo is of, without the photo itself; null with a problem. */
  Content.Photo read(Posted posted, PhotoStore.Kept kept) {
    String of = posted.text("of");
    String target = of.startsWith(ENTRY) ? of.substring(ENTRY.length()) : null;
    String point = of.startsWith(POINT) ? of.substring(POINT.length()) : null;
    return new Content.Photo(
        card.corner(),
        target,
        point,
        kept.file(),
        kept.widthPx(),
        kept.heightPx(),
        posted.word("side", PhotoSide.class, null),
        posted.line("words", 200));
  }

  void check(Posted posted) {
    posted.line("words", 200);
    String of = posted.text("of");
    boolean known =
        of.isEmpty()
            || of.equals(CORNER)
            || (of.startsWith(POINT) && card.watchPoint(of.substring(POINT.length())).isPresent())
            || (of.startsWith(ENTRY) && entry(of.substring(ENTRY.length())) != null);
    if (!known) {
      posted.wrong("of", "Choose what the photo is of: that is not in the book at this corner.");
    }
    boolean adjustment =
        of.startsWith(ENTRY) && entry(of.substring(ENTRY.length())) instanceof Content.Adjustment;
    if (posted.word("side", PhotoSide.class, null) != null && !adjustment) {
      posted.wrong("side", "Before and after are of a change: choose the change as well.");
    }
  }

  /** A reading or adjustment of this corner that stands; null for anything else. */
  private Content entry(String key) {
    Content content = book.standing(key).orElse(null);
    if (content instanceof Content.Adjustment a && a.corner().equals(card.corner())) {
      return a;
    }
    return content instanceof Content.Reading && card.reading(key).isPresent() ? content : null;
  }

  List<FormPart> parts(Posted posted) {
    String of = posted.has("of") ? posted.text("of") : CORNER;
    String side = posted.has("side") ? posted.text("side") : NEITHER;
    List<Choice.Option> options = new ArrayList<>();
    options.add(new Choice.Option(CORNER, "the corner", "", of.equals(CORNER)));
    for (WatchPoint w : card.watchPoints()) {
      options.add(new Choice.Option(POINT + w.point(), w.name(), "", of.equals(POINT + w.point())));
    }
    options.addAll(entries(of));
    return List.of(
        new FormPart.Typed(
            posted.fill(Field.of("words", "What it shows").hint("May be left empty."))),
        new FormPart.More(
            "What it belongs to: a watch point, a change, a reading",
            posted.has("of") || !posted.ok(),
            List.of(
                new FormPart.Chosen(
                    new Choice("of", "It is of", "", posted.problem("of"), options)),
                new FormPart.Chosen(
                    new Choice(
                        "side",
                        "Of a change",
                        "",
                        posted.problem("side"),
                        List.of(
                            new Choice.Option(NEITHER, "neither", "", side.equals(NEITHER)),
                            new Choice.Option("before", "before it", "", side.equals("before")),
                            new Choice.Option("after", "after it", "", side.equals("after"))))))));
  }

  /** The last changes and readings of the corner, and the one that was chosen. */
  private List<Choice.Option> entries(String of) {
    EntryWords words = new EntryWords(book);
    List<Choice.Option> changes = new ArrayList<>();
    List<Choice.Option> readings = new ArrayList<>();
    List<Noted> entries = book.entries();
    for (int i = entries.size() - 1; i >= 0; i--) {
      Noted e = entries.get(i);
      String value = ENTRY + e.key();
      List<Choice.Option> list = e.content() instanceof Content.Adjustment ? changes : readings;
      if (entry(e.key()) != null && (list.size() < MOST_OFFERED || of.equals(value))) {
        list.add(
            new Choice.Option(
                value,
                words.of(book.standing(e.key()).orElseThrow()),
                Days.day(e.at()),
                of.equals(value)));
      }
    }
    changes.addAll(readings);
    return changes;
  }
}
