package spindlebook.car;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import spindlebook.definition.Layout;
import spindlebook.definition.Place;
import spindlebook.fold.CarBook;
import spindlebook.page.Asked;
import spindlebook.page.Posted;

/** Which corners a car gets, and how their wheels are hung. */
final class CornersForm {
  private CornersForm() {}

  /** Both of an end, or the one that is missing of it. */
  record Corners(List<Place> places, Layout layout) {
    Corners {
      places = List.copyOf(places);
    }
  }

  /** Those an end of a car can be started with. A solid axle is a rear one so far: none steers. */
  private static List<Layout> layouts(boolean front) {
    List<Layout> layouts =
        new ArrayList<>(
            List.of(
                Layout.STEERED_DOUBLE_A_ARM, Layout.UNSTEERED_DOUBLE_A_ARM, Layout.TRAILING_ARM));
    if (!front) {
      layouts.add(Layout.SOLID_AXLE_END);
    }
    return layouts;
  }

  /** Both corners of one end of the car. */
  static List<Place> end(boolean front) {
    return Stream.of(Place.values()).filter(p -> p.front() == front).toList();
  }

  /** Corners the car does not have yet. */
  static List<Place> missing(CarBook car) {
    return Stream.of(Place.values()).filter(p -> car.cornerAt(p).isEmpty()).toList();
  }

  /** Corners that come later; null as long as it is not told without a fault which. */
  static Corners ask(Asked a, List<Place> missing) {
    Asked.Keys<List<Place>> ends = a.one("end", "Which");
    for (boolean front : List.of(true, false)) {
      List<Place> end = missing.stream().filter(p -> p.front() == front).toList();
      if (!end.isEmpty()) {
        String words = String.join(" and ", end.stream().map(Place::words).toList());
        ends.option(front ? "front" : "rear", end, words, "");
        ends.firstKey(end.size() == missing.size() ? front ? "front" : "rear" : null);
      }
    }
    List<Place> places = ends.needed("Say which end of the car.");
    Asked.Keys<Layout> hung = a.one("layout", "How their wheels are hung");
    Layout layout =
        hung.options(layouts(false), CornersForm::words).needed("Say how its wheels are hung.");
    if (places != null && layout == Layout.SOLID_AXLE_END) {
      if (places.get(0).front()) {
        a.wrong("layout", "A solid axle can be at the rear only, so far.");
      } else if (places.size() == 1) {
        a.wrong("layout", "A solid axle has two ends, and one of them is in the book already.");
      }
    }
    return a.ok() ? new Corners(places, layout) : null;
  }

  /** One end of a new car; null where it is left for later. */
  static Layout askEnd(Asked a, String name, String legend, Layout usual) {
    Asked.Keys<Layout> keys = a.one(name, legend);
    return keys.options(layouts(name.equals("front")), CornersForm::words)
        .option("later", null, "later", "")
        .firstKey(usual == null ? "later" : Posted.word(usual))
        .read();
  }

  private static String words(Layout layout) {
    return layout == Layout.SOLID_AXLE_END ? "solid axle" : layout.words();
  }
}
