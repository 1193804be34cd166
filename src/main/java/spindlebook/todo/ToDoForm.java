package spindlebook.todo;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.WatchPoint;
import spindlebook.web.Choice;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Posted;

/** Something to do, tied to the car, a corner, or a watch point of it. */
sealed interface ToDoForm {
  record Accepted(Content.ToDo toDo) implements ToDoForm {}

  record Problems() implements ToDoForm {}

  String WHOLE_CAR = "whole-car";
  String NONE = "none";

  static ToDoForm read(Posted posted, String car, List<Card> corners) {
    String words =
        posted.neededLine(
            "words", 200, "Say what is to do, such as 'grind tab' or 'order spacer'.");
    Card corner =
        corners.stream()
            .filter(c -> c.corner().equals(posted.text("where")))
            .findFirst()
            .orElse(null);
    String point = posted.has("point") ? posted.text("point") : NONE;
    if (!point.equals(NONE) && (corner == null || corner.watchPoint(point).isEmpty())) {
      posted.wrong("point", "Choose the corner of this watch point as well.");
    }
    if (!posted.ok()) {
      return new Problems();
    }
    return new Accepted(
        new Content.ToDo(
            car,
            corner == null ? null : corner.corner(),
            point.equals(NONE) ? null : point,
            words,
            null,
            null));
  }

  static List<FormPart> parts(Posted posted, List<Card> corners) {
    List<FormPart> parts = new ArrayList<>();
    parts.add(
        new FormPart.Typed(
            posted.fill(Field.of("words", "To do").hint("Grind tab, order spacer."))));
    List<Choice.Option> where = new ArrayList<>();
    String chosen = posted.has("where") ? posted.text("where") : WHOLE_CAR;
    where.add(new Choice.Option(WHOLE_CAR, "the whole car", "", chosen.equals(WHOLE_CAR)));
    Map<String, String> points = new LinkedHashMap<>();
    for (Card corner : corners) {
      where.add(
          new Choice.Option(
              corner.corner(), corner.place().words(), "", chosen.equals(corner.corner())));
      for (WatchPoint point : corner.watchPoints()) {
        points.putIfAbsent(point.point(), point.name());
      }
    }
    parts.add(new FormPart.Chosen(new Choice("where", "Where", "", "", where)));
    if (!points.isEmpty()) {
      parts.add(
          new FormPart.More(
              "At a watch point",
              posted.has("point") && !posted.text("point").equals(NONE),
              List.of(new FormPart.Chosen(points(posted, points)))));
    }
    return parts;
  }

  private static Choice points(Posted posted, Map<String, String> points) {
    List<Choice.Option> options = new ArrayList<>();
    String chosen = posted.has("point") ? posted.text("point") : NONE;
    options.add(new Choice.Option(NONE, "none", "", chosen.equals(NONE)));
    points.forEach((p, name) -> options.add(new Choice.Option(p, name, "", chosen.equals(p))));
    return new Choice("point", "Watch point", "", posted.problem("point"), options);
  }
}
