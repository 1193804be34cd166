package spindlebook.car;

import java.util.List;
import org.jdbi.v3.core.mapper.reflect.ConstructorMapper;
import spindlebook.corner.CarDetails;
import spindlebook.corner.Content;
import spindlebook.corner.Layout;
import spindlebook.corner.Place;
import spindlebook.corner.Starter;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.web.FormKey;

/** Cars in the book. */
public final class CarStore {
  /** One car of the list. */
  public record Listed(String key, String name) {}

  private final Book book;

  public CarStore(Book book) {
    this.book = book;
  }

  /** A car with its two steered front corners; the same form again adds nothing. */
  void create(CarDetails details, FormKey form, String who) {
    String car = form.key();
    book.append(
        List.of(
            Bodies.draft(car, form.after(), who, new Content.Car(details, Starter.tools())),
            Bodies.draft(car + "-lf", form.after(), who, corner(car, Place.LEFT_FRONT)),
            Bodies.draft(car + "-rf", form.after(), who, corner(car, Place.RIGHT_FRONT))));
  }

  private static Content.Corner corner(String car, Place place) {
    Layout layout = Layout.STEERED_DOUBLE_A_ARM;
    return new Content.Corner(
        car,
        place,
        layout,
        Starter.watchPoints(layout),
        Starter.adjusters(layout),
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

  List<Listed> all() {
    return book.index()
        .withHandle(
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
