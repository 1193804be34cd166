package spindlebook.car;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import spindlebook.definition.Layout;
import spindlebook.definition.Place;
import spindlebook.definition.Starter;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.log.Draft;
import spindlebook.log.Histories;
import spindlebook.page.FormKey;

/** Cars in the book. */
public record CarStore(Book book, Histories histories) {
  /** One car of the list. */
  public record Listed(String key, String name) {}

  /** A car with the corners it starts with, and its key; the same form again adds nothing. */
  String create(CarForm.NewCar typed, FormKey shown, String who) {
    FormKey form = shown.within(book.lastN());
    String car = form.key();
    List<Draft> drafts = new ArrayList<>();
    drafts.add(
        Bodies.draft(car, form.after(), who, new Content.Car(typed.details(), Starter.tools())));
    Optional<CarBook> like = Optional.ofNullable(typed.like()).map(histories::of);
    drafts.addAll(corners(car, CornersForm.end(true), typed.front(), like, form, who));
    drafts.addAll(corners(car, CornersForm.end(false), typed.rear(), like, form, who));
    return book.append(drafts).get(0).key();
  }

  void addCorners(String car, CornersForm.Corners typed, FormKey form, String who) {
    FormKey known = form.within(book.lastN());
    book.append(corners(car, typed.places(), typed.layout(), Optional.empty(), known, who));
  }

  /** None where the layout is null. A car's corner has one key, so that two cannot add it twice. */
  private static List<Draft> corners(
      String car,
      List<Place> places,
      Layout layout,
      Optional<CarBook> like,
      FormKey form,
      String who) {
    return layout == null
        ? List.of()
        : places.stream()
            .map(p -> Bodies.draft(key(car, p), form.after(), who, corner(car, p, layout, like)))
            .toList();
  }

  private static String key(String car, Place place) {
    return car + "-" + (place.left() ? "l" : "r") + (place.front() ? "f" : "r");
  }

  private static Content.Corner corner(
      String car, Place place, Layout layout, Optional<CarBook> like) {
    Optional<Card> of =
        like.flatMap(b -> b.cornerAt(place).map(b::card)).filter(c -> c.layout() == layout);
    return new Content.Corner(
        car,
        place,
        layout,
        of.map(Card::watchPoints).orElseGet(() -> Starter.watchPoints(layout)),
        of.map(Card::adjustersAsSet).orElseGet(() -> Starter.adjusters(layout, place)),
        of.map(Card::givenNow).orElse(List.of()),
        of.map(c -> List.copyOf(c.heldBack().values())).orElseGet(Starter::heldBack));
  }

  /** One sentence while the disk is nearly full. */
  Optional<String> littleRoom() {
    return book.littleRoom();
  }

  /** By name, each as it is called now; a car that was withdrawn is none. */
  public List<Listed> all() {
    List<String> keys =
        book.read(
            handle ->
                handle
                    .createQuery(
                        """
                        select key from entry where kind = 'car' order by kind, n
                        """)
                    .mapTo(String.class)
                    .list());
    return keys.stream()
        .flatMap(key -> histories.of(key).details().map(d -> new Listed(key, d.name())).stream())
        .sorted(Comparator.comparing(Listed::name))
        .toList();
  }
}
