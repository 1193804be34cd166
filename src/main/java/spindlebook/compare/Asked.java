package spindlebook.compare;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.definition.Place;
import spindlebook.fold.CarBook;
import spindlebook.log.Histories;
import spindlebook.page.Posted;

/**
 * What is held against what, as an address says it: {@code
 * ?one=23&other=now&beside=other-side&corner=left-front}.
 *
 * @param one where the car's own book is looked at
 * @param other where what is beside it is looked at
 * @param beside in words of the address: empty for the same corner, the other side, another car
 * @param otherBook the same book, or the other car's
 * @param place which corner to show; empty for the first that differs
 */
public record Asked(
    CarBook book, Point one, Point other, String beside, CarBook otherBook, Optional<Place> place) {
  static final String OTHER_SIDE = "other-side";

  /**
   * @throws NotFoundResponse for a car, an entry or a corner that is not there
   */
  static Asked read(Context ctx, Histories histories) {
    CarBook book = known(histories.of(ctx.pathParam("car")));
    String asked = text(ctx, "beside");
    String beside = asked.equals(ctx.pathParam("car")) ? "" : asked;
    boolean sameCar = beside.isEmpty() || beside.equals(OTHER_SIDE);
    CarBook otherBook = sameCar ? book : known(histories.of(beside));
    Point usual = sameCar && beside.isEmpty() ? new Points(book).usual() : Point.now(book);
    Point one = point(text(ctx, "one"), usual, book, otherBook);
    Point other = point(text(ctx, "other"), Point.now(otherBook), otherBook, book);
    String corner = text(ctx, "corner");
    Optional<Place> place =
        Arrays.stream(Place.values()).filter(p -> Posted.word(p).equals(corner)).findFirst();
    if (place.isEmpty() && !corner.isEmpty()) {
      throw new NotFoundResponse();
    }
    return new Asked(book, one, other, beside, otherBook, place);
  }

  /**
   * Left against right as they stand now, of one end of the car.
   *
   * @throws NotFoundResponse for a car that is not there
   */
  static Asked sides(Context ctx, Histories histories) {
    CarBook book = known(histories.of(ctx.pathParam("car")));
    String axle = text(ctx, "axle");
    Point now = Point.now(book);
    Optional<Place> place =
        Stream.of(Place.LEFT_FRONT, Place.LEFT_REAR)
            .filter(p -> book.cornerAt(p).isPresent() && book.cornerAt(p.mirror()).isPresent())
            .filter(p -> axle.isEmpty() || axle.equals(p.front() ? "front" : "rear"))
            .findFirst();
    return new Asked(book, now, now, OTHER_SIDE, book, place);
  }

  private static CarBook known(CarBook book) {
    if (book.car().isEmpty()) {
      throw new NotFoundResponse();
    }
    return book;
  }

  /** Entries are numbered through the whole file: one of either car's book is a point of both. */
  private static Point point(String typed, Point otherwise, CarBook own, CarBook others) {
    return typed.isEmpty()
        ? otherwise
        : Point.read(own, typed)
            .or(() -> Point.read(others, typed))
            .orElseThrow(NotFoundResponse::new);
  }

  private static String text(Context ctx, String name) {
    String text = ctx.queryParam(name);
    return text == null ? "" : text.strip();
  }

  boolean otherSide() {
    return beside.equals(OTHER_SIDE);
  }

  boolean otherCar() {
    return !beside.isEmpty() && !otherSide();
  }

  public boolean samePoint() {
    return beside.isEmpty() && one.n() == other.n();
  }
}
