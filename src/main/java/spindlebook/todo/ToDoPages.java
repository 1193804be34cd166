package spindlebook.todo;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import spindlebook.card.CornerBar;
import spindlebook.card.IntoBook;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.SeenToDo;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.FormPage;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.units.LengthUnit;

/** What is to do on a car: written down, done with a tap, undone with another. */
public record ToDoPages(Histories histories, IntoBook book) {
  /** So that a long life does not make a long page; all of it is in the book. */
  private static final int MOST_DONE = 30;

  private static final String WHOLE_CAR = "whole-car";
  private static final String NONE = "none";
  private static final String ALSO_ITS_CORNER = "Choose the corner of this watch point as well.";

  /** What is to do and done, and the form for another. */
  public void list(Context ctx) {
    CarBook history = history(ctx.pathParam("car"));
    String car = history.car().orElseThrow();
    List<Card> corners = history.corners().stream().map(c -> histories.card(car, c)).toList();
    Asked a = Asked.of(ctx, LengthUnit.INCH, history.n());
    Content.ToDo toDo = ask(a, car, corners, ctx.queryParam("corner"));
    if (a.ok()) {
      book.put(ctx, a, toDo);
      Html.next(ctx, "/cars/" + car + "/to-do");
      return;
    }
    List<SeenToDo> open = new ArrayList<>();
    List<SeenToDo> done = new ArrayList<>();
    history.toDos().forEach(seen -> (seen.open() ? open : done).add(seen));
    Collections.reverse(done);
    Function<SeenToDo, ToDoLine> line =
        seen -> ToDoLine.of(seen, of(corners, seen.toDo().corner()), history.n());
    PageFrame frame = CornerBar.under(history, "To do", "To do");
    FormPage form = a.page(frame, "/cars/" + car + "/to-do", "Add it", null);
    a.show(
        ctx,
        Html.TEMPLATES.todoList(
            form,
            open.stream().map(line).toList(),
            done.stream().limit(MOST_DONE).map(line).toList()));
  }

  /**
   * Something to do, tied to the car, a corner, or a watch point of it.
   *
   * @param at the corner it is most likely about; null for none
   */
  private static Content.ToDo ask(Asked a, String car, List<Card> corners, String at) {
    String words =
        a.line("words", "To do", 200)
            .hint("Grind tab, order spacer.")
            .needed("Say what is to do, such as 'grind tab' or 'order spacer'.");
    Asked.Keys<Card> where =
        a.<Card>one("where", "Where").option(WHOLE_CAR, null, "the whole car", "");
    Map<String, String> points = new LinkedHashMap<>();
    for (Card corner : corners) {
      where.option(corner.corner(), corner, corner.place().words(), "");
      corner.watchPoints().forEach(p -> points.putIfAbsent(p.point(), p.name()));
    }
    Card corner = where.firstKey(at == null ? WHOLE_CAR : at).read();
    String point =
        points.isEmpty()
            ? null
            : a.more(
                "At a watch point",
                () ->
                    a.<String>one("point", "Watch point")
                        .option(NONE, null, "none", "")
                        .options(points.keySet(), points::get)
                        .firstKey(NONE)
                        .unknown(ALSO_ITS_CORNER)
                        .read());
    if (point != null && (corner == null || corner.watchPoint(point).isEmpty())) {
      a.wrong("point", ALSO_ITS_CORNER);
    }
    return a.ok()
        ? new Content.ToDo(car, corner == null ? null : corner.corner(), point, words, null, null)
        : null;
  }

  private static Card of(List<Card> corners, String corner) {
    return corners.stream().filter(c -> c.corner().equals(corner)).findFirst().orElse(null);
  }

  /** Done, or to do again. */
  public void done(Context ctx) {
    String key = ctx.pathParam("todo");
    Histories.Located at =
        histories.locate(key).filter(l -> l.car() != null).orElseThrow(NotFoundResponse::new);
    CarBook history = history(at.car());
    if (history.toDos().stream().noneMatch(t -> t.key().equals(key))) {
      throw new NotFoundResponse();
    }
    Asked a = Asked.of(ctx, LengthUnit.INCH, history.n());
    boolean done = !a.text("done").equals("false");
    book.put(ctx, a, new Content.ToDo(null, null, null, null, key, done));
    Html.next(
        ctx,
        "/cars/" + at.car() + (a.text("back").equals("drive-check") ? "/drive-check" : "/to-do"));
  }

  private CarBook history(String car) {
    CarBook history = histories.of(car);
    if (history.car().isEmpty()) {
      throw new NotFoundResponse();
    }
    return history;
  }
}
