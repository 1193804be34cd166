package spindlebook.car;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import spindlebook.corner.CarBook;
import spindlebook.corner.Layout;
import spindlebook.corner.Place;
import spindlebook.web.Choice;
import spindlebook.web.FormPart;
import spindlebook.web.Posted;

/** Which corners a car gets, and how their wheels are hung. */
sealed interface CornersForm {
  record Accepted(List<Place> places, Layout layout) implements CornersForm {
    public Accepted {
      places = List.copyOf(places);
    }
  }

  record Problems(Posted posted) implements CornersForm {}

  /** What stands for an end that is left out. */
  String LATER = "later";

  /** Those an end of a car can be started with. A solid axle is a rear one so far: none steers. */
  static List<Layout> layouts(boolean front) {
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

  static CornersForm read(Posted posted, List<Place> missing) {
    String end = posted.text("end");
    List<Place> places =
        missing.stream().filter(p -> end.equals(p.front() ? "front" : "rear")).toList();
    if (places.isEmpty()) {
      posted.wrong("end", "Say which end of the car.");
    }
    Layout layout = layout(posted, "layout", false, null);
    if (layout == null) {
      posted.wrong("layout", "Say how its wheels are hung.");
    } else if (end.equals("front") && !layouts(true).contains(layout)) {
      posted.wrong("layout", "A solid axle can be at the rear only, so far.");
    } else if (layout == Layout.SOLID_AXLE_END && places.size() == 1) {
      posted.wrong("layout", "A solid axle has two ends, and one of them is in the book already.");
    }
    return posted.ok() ? new Accepted(places, layout) : new Problems(posted);
  }

  /** A layout that was chosen, of those there are; else the fallback. */
  static Layout layout(Posted posted, String name, boolean front, Layout otherwise) {
    Layout chosen = posted.word(name, Layout.class, otherwise);
    return chosen != null && layouts(front).contains(chosen) ? chosen : otherwise;
  }

  static List<FormPart> parts(Posted posted, List<Place> missing) {
    List<Choice.Option> ends = new ArrayList<>();
    for (String end : List.of("front", "rear")) {
      List<String> words =
          missing.stream().filter(p -> p.front() == end.equals("front")).map(Place::words).toList();
      if (!words.isEmpty()) {
        boolean only = missing.stream().map(Place::front).distinct().count() == 1;
        ends.add(
            new Choice.Option(
                end, String.join(" and ", words), "", only || end.equals(posted.text("end"))));
      }
    }
    return List.of(
        new FormPart.Chosen(new Choice("end", "Which", "", posted.problem("end"), ends)),
        new FormPart.Chosen(
            new Choice(
                "layout",
                "How their wheels are hung",
                "",
                posted.problem("layout"),
                options(false, posted.text("layout")))));
  }

  /** The choice of one end of a new car, which may be left for later. */
  static FormPart ofNewCar(Posted posted, String name, String legend, Layout usual) {
    String chosen =
        posted.has(name) ? posted.text(name) : usual == null ? LATER : Posted.word(usual);
    List<Choice.Option> options = new ArrayList<>(options(name.equals("front"), chosen));
    options.add(new Choice.Option(LATER, LATER, "", chosen.equals(LATER)));
    return new FormPart.Chosen(new Choice(name, legend, "", posted.problem(name), options));
  }

  private static List<Choice.Option> options(boolean front, String chosen) {
    return layouts(front).stream()
        .map(l -> new Choice.Option(Posted.word(l), words(l), "", Posted.word(l).equals(chosen)))
        .toList();
  }

  private static String words(Layout layout) {
    return layout == Layout.SOLID_AXLE_END ? "solid axle" : layout.words();
  }
}
