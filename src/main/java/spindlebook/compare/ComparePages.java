package spindlebook.compare;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import spindlebook.car.CarStore;
import spindlebook.card.Capital;
import spindlebook.definition.Place;
import spindlebook.fold.CarBook;
import spindlebook.log.Histories;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.Link;
import spindlebook.page.PageFrame;
import spindlebook.units.LengthUnit;

/** Two points of the book beside each other: then and now, left and right, two cars. */
public record ComparePages(Histories histories, CarStore cars) {
  public void compare(Context ctx) {
    show(ctx, Asked.read(ctx, histories));
  }

  public void sides(Context ctx) {
    show(ctx, Asked.sides(ctx, histories));
  }

  private void show(Context ctx, Asked asked) {
    String car = asked.book().car().orElseThrow();
    String name = asked.book().details().orElseThrow().name();
    List<Compared> corners = corners(asked);
    Compared here =
        corners.stream()
            .filter(c -> asked.place().map(p -> p == c.place()).orElse(c.differing() > 0))
            .findFirst()
            .orElse(corners.isEmpty() ? null : corners.get(0));
    PageFrame frame =
        PageFrame.of("Compare · " + name, "Compare")
            .sub(sub(asked, name))
            .up("the book", "/cars/" + car + "/book")
            .ownSheets("car.css")
            .caution(Cautions.FIGURES);
    Html.show(ctx, Html.TEMPLATES.compareCompare(frame, view(asked, name, corners, here)));
  }

  private static String sub(Asked asked, String name) {
    if (asked.otherSide()) {
      return name + ", left and right: " + words(asked.one(), asked.other());
    }
    return asked.otherCar()
        ? name
            + " at "
            + asked.one().words()
            + " and "
            + asked.otherBook().details().orElseThrow().name()
            + " at "
            + asked.other().words()
        : name + ", " + words(asked.one(), asked.other());
  }

  private static String words(Point one, Point other) {
    return one.equals(other) ? one.words() : one.words() + " and " + other.words();
  }

  // --- corner by corner

  private static List<Compared> corners(Asked asked) {
    CarBook one = asked.book().asOf(asked.one().n());
    CarBook other = asked.otherBook().asOf(asked.other().n());
    LengthUnit unit = asked.book().details().orElseThrow().unit();
    return Arrays.stream(Place.values())
        .filter(p -> asked.book().cornerAt(p).isPresent())
        .map(p -> Compared.of(asked, one, other, p, unit))
        .toList();
  }

  private CompareView view(Asked asked, String name, List<Compared> corners, Compared here) {
    String car = asked.book().car().orElseThrow();
    return new CompareView(
        "/cars/" + car + "/compare", asked, selects(asked, name), corners, here, links(asked, car));
  }

  private List<PointSelect> selects(Asked asked, String name) {
    List<PointSelect> selects = new ArrayList<>();
    selects.add(
        new Points(asked.book()).select("one", Capital.of(name) + ", as it stood", asked.one()));
    selects.add(new PointSelect("beside", "Beside it", besides(asked), List.of()));
    selects.add(new Points(asked.otherBook()).select("other", "As it stood", asked.other()));
    return selects;
  }

  private List<PointSelect.Option> besides(Asked asked) {
    List<PointSelect.Option> options = new ArrayList<>();
    options.add(new PointSelect.Option("", "the same corner", asked.beside().isEmpty()));
    options.add(new PointSelect.Option(Asked.OTHER_SIDE, "the other side", asked.otherSide()));
    for (CarStore.Listed car : cars.all()) {
      if (!asked.book().car().orElseThrow().equals(car.key())) {
        options.add(
            new PointSelect.Option(car.key(), car.name(), asked.beside().equals(car.key())));
      }
    }
    return options;
  }

  private static List<Link> links(Asked asked, String car) {
    List<Link> links = new ArrayList<>();
    if (asked.beside().isEmpty() && !asked.one().isNow()) {
      links.add(
          new Link(
              "Put it back as it stood at " + asked.one().words(),
              "/cars/" + car + "/put-back?at=" + asked.one().at()));
    }
    return links;
  }
}
