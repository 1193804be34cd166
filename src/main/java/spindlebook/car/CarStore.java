package spindlebook.car;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.mapper.reflect.ConstructorMapper;
import spindlebook.corner.CarDetails;
import spindlebook.corner.Content;
import spindlebook.corner.Layout;
import spindlebook.corner.Place;
import spindlebook.corner.Starter;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.log.Draft;
import spindlebook.web.FormKey;

/** Cars in the book. */
public final class CarStore {
  /** One car of the list. */
  public record Listed(String key, String name) {}

  private final Book book;

  public CarStore(Book book) {
    this.book = book;
  }

  /** A car with the corners it starts with, and its key; the same form again adds nothing. */
  String create(CarForm.Accepted typed, FormKey form, String who) {
    String car = form.key();
    List<Draft> drafts = new ArrayList<>();
    drafts.add(
        Bodies.draft(car, form.after(), who, new Content.Car(typed.details(), Starter.tools())));
    drafts.addAll(corners(car, CornersForm.end(true), typed.front(), form, who));
    drafts.addAll(corners(car, CornersForm.end(false), typed.rear(), form, who));
    return book.append(drafts).entries().get(0).key();
  }

  void addCorners(String car, CornersForm.Accepted typed, FormKey form, String who) {
    book.append(corners(car, typed.places(), typed.layout(), form, who));
  }

  /** None where the layout is null. A car's corner has one key, so that two cannot add it twice. */
  private static List<Draft> corners(
      String car, List<Place> places, Layout layout, FormKey form, String who) {
    return layout == null
        ? List.of()
        : places.stream()
            .map(p -> Bodies.draft(key(car, p), form.after(), who, corner(car, p, layout)))
            .toList();
  }

  private static String key(String car, Place place) {
    return car + "-" + (place.left() ? "l" : "r") + (place.front() ? "f" : "r");
  }

  private static Content.Corner corner(String car, Place place, Layout layout) {
    return new Content.Corner(
        car,
        place,
        layout,
        Starter.watchPoints(layout),
        Starter.adjusters(layout, place),
        List.of(),
        Starter.heldBack());
  }

  void changeDetails(String car, CarDetails details, FormKey form, String who) {
    book.append(
        Bodies.draft(
            form.key(),
            form.after(),
            who,
            new Content.Definition(car, null, details, null, null, null, null, null, null)));
  }

  /** One sentence while the disk is nearly full. */
  Optional<String> littleRoom() {
    return book.littleRoom();
  }

  public List<Listed> all() {
    return book.read(
        handle ->
            handle
                .createQuery(
                    """
                    select key, name from car order by name, n
                    """)
                .map(ConstructorMapper.of(Listed.class))
                .list());
  }
}
