package spindlebook.todo;

import spindlebook.card.Days;
import spindlebook.fold.Card;
import spindlebook.fold.SeenToDo;
import spindlebook.page.FormKey;

/**
 * One thing to do, or done.
 *
 * @param where the corner and watch point it is tied to, and when it was written or done
 */
public record ToDoLine(String key, String words, String where, boolean open, FormKey formKey) {

  /**
   * @param corner null for the whole car
   */
  static ToDoLine of(SeenToDo seen, Card corner, long n) {
    StringBuilder where =
        new StringBuilder(corner == null ? "the whole car" : corner.place().words());
    if (corner != null && seen.toDo().point() != null) {
      String point = seen.toDo().point();
      where.append(" · ").append(corner.watchPoint(point).map(w -> w.name()).orElse(point));
    }
    if (seen.open()) {
      where.append(" · since ").append(Days.day(seen.at()));
    } else {
      where.append(" · done ").append(Days.day(seen.done().at()));
      where.append(" · ").append(seen.done().who());
    }
    return new ToDoLine(
        seen.key(), seen.toDo().words(), where.toString(), seen.open(), FormKey.fresh(n));
  }
}
