package spindlebook.todo;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.SeenToDo;
import spindlebook.log.Histories;
import spindlebook.web.Crumb;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** What is to do on a car: written down, done with a tap, undone with another. */
public final class ToDoPages {
  /** So that a long life does not make a long page; all of it is in the book. */
  private static final int MOST_DONE = 30;

  private final Histories histories;
  private final ToDoStore store;

  public ToDoPages(Histories histories, ToDoStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void list(Context ctx) {
    CarBook history = history(ctx.pathParam("car"));
    String corner = ctx.queryParam("corner");
    Map<String, List<String>> start = corner == null ? Map.of() : Map.of("where", List.of(corner));
    show(ctx, history, new Posted(start), FormKey.fresh(history.n()));
  }

  private void show(Context ctx, CarBook history, Posted posted, FormKey key) {
    String car = history.car().orElseThrow();
    List<Card> corners = corners(history);
    List<ToDoLine> open = new ArrayList<>();
    List<ToDoLine> done = new ArrayList<>();
    for (SeenToDo seen : history.toDos()) {
      Card corner =
          corners.stream()
              .filter(c -> c.corner().equals(seen.toDo().corner()))
              .findFirst()
              .orElse(null);
      (seen.open() ? open : done).add(ToDoLine.of(seen, corner, history.n()));
    }
    Collections.reverse(done);
    PageFrame frame =
        PageFrame.of("To do · Spindlebook", "To do")
            .crumbs(new Crumb(history.details().orElseThrow().name(), "/cars/" + car));
    FormPage form =
        new FormPage(
            frame, "/cars/" + car + "/to-do", key, ToDoForm.parts(posted, corners), "Add it", null);
    if (!posted.ok()) {
      ctx.status(422);
    }
    Html.show(ctx, Html.TEMPLATES.todoList(form, open, done.stream().limit(MOST_DONE).toList()));
  }

  public void create(Context ctx) {
    CarBook history = history(ctx.pathParam("car"));
    String car = history.car().orElseThrow();
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(history.n()));
    if (ToDoForm.read(posted, car, corners(history)) instanceof ToDoForm.Accepted accepted) {
      store.add(accepted.toDo(), key, Who.of(ctx));
      Html.next(ctx, "/cars/" + car + "/to-do");
    } else {
      show(ctx, history, posted, key);
    }
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
    Posted posted = Html.posted(ctx);
    FormKey form = posted.formKey().orElseGet(() -> FormKey.fresh(history.n()));
    boolean done = !posted.text("done").equals("false");
    store.add(new Content.ToDo(null, null, null, null, key, done), form, Who.of(ctx));
    Html.next(ctx, "/cars/" + at.car() + "/to-do");
  }

  private List<Card> corners(CarBook history) {
    String car = history.car().orElseThrow();
    return history.corners().stream().map(c -> histories.card(car, c)).toList();
  }

  private CarBook history(String car) {
    CarBook history = histories.of(car);
    if (history.car().isEmpty()) {
      throw new NotFoundResponse();
    }
    return history;
  }
}
