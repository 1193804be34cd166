package spindlebook.fold;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import spindlebook.definition.Place;
import spindlebook.entry.Content;

/**
 * Something to do, as the book knows it.
 *
 * @param place the corner it is tied to, null for the whole car
 * @param done the entry that last said it is done; null while it is still to do
 */
public record SeenToDo(Noted entry, Content.ToDo toDo, Place place, Noted done) implements OfEntry {

  public boolean open() {
    return done == null;
  }

  /** In the book's order; the last that was said of each counts. */
  static List<SeenToDo> in(CarBook book) {
    Map<String, Noted> last = new HashMap<>();
    List<Written<Content.ToDo>> first = new ArrayList<>();
    for (Written<Content.ToDo> said : book.written(Content.ToDo.class)) {
      String of = said.content().target();
      if (of == null) {
        first.add(said);
      } else if (said.content().done()) {
        last.put(of, said.entry());
      } else {
        last.remove(of);
      }
    }
    return first.stream()
        .map(
            w -> {
              Place place = book.placeOf(w.content().corner()).orElse(null);
              return new SeenToDo(w.entry(), w.content(), place, last.get(w.key()));
            })
        .toList();
  }
}
