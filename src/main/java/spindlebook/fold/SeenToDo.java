package spindlebook.fold;

import java.time.Instant;
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
public record SeenToDo(
    String key, long n, Instant at, String who, Content.ToDo toDo, Place place, Noted done) {

  public boolean open() {
    return done == null;
  }

  /** In the book's order; the last that was said of each counts. */
  static List<SeenToDo> in(CarBook book) {
    Map<String, Noted> last = new HashMap<>();
    List<Noted> first = new ArrayList<>();
    for (Noted entry : book.entries()) {
      if (book.standing(entry.key()).orElse(null) instanceof Content.ToDo toDo) {
        if (toDo.target() == null) {
          first.add(entry);
        } else if (toDo.done()) {
          last.put(toDo.target(), entry);
        } else {
          last.remove(toDo.target());
        }
      }
    }
    return first.stream()
        .map(
            e -> {
              Content.ToDo toDo = (Content.ToDo) book.standing(e.key()).orElseThrow();
              return new SeenToDo(
                  e.key(),
                  e.n(),
                  e.at(),
                  e.who(),
                  toDo,
                  book.placeOf(toDo.corner()).orElse(null),
                  last.get(e.key()));
            })
        .toList();
  }
}
