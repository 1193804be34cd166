package spindlebook.telltale;

import java.util.List;
import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.entry.Content;
import spindlebook.fold.Written;
import spindlebook.page.FormKey;
import spindlebook.page.FormPart;
import spindlebook.words.EntryWords;

/** The page of what drives left to be read at one corner. */
public record TelltaleView(String action, List<Block> blocks, List<Line> lines) {
  /** One of the forms. */
  public record Block(
      String kind, String title, String back, FormKey formKey, List<FormPart> parts) {}

  /** What was read, and what it comes to. */
  public record Line(String words, String when, String href, List<String> findings) {
    static Line of(Written<Content.Telltale> seen, EntryWords words, List<String> findings) {
      return new Line(
          Capital.of(words.withoutPlace(seen.content())),
          Days.minute(seen.at()) + " · " + seen.who(),
          "/entries/" + seen.key(),
          findings);
    }
  }
}
