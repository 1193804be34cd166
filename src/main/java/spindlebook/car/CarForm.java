package spindlebook.car;

import java.util.List;
import java.util.Optional;
import spindlebook.definition.CarDetails;
import spindlebook.definition.Layout;
import spindlebook.definition.RackSide;
import spindlebook.page.Asked;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedLength;

/** What is typed of a car. */
final class CarForm {
  private static final int LONGEST_NAME = 60;

  private CarForm() {}

  /**
   * A new car.
   *
   * @param front how the front wheels are hung; null when they are left for later; likewise rear
   * @param like key of the car whose rules, specs and settings it starts with; null for the usual
   */
  record NewCar(CarDetails details, Layout front, Layout rear, String like) {}

  /** Its name, how its wheels are hung, and what few need. */
  static NewCar askNew(Asked a, List<CarStore.Listed> cars) {
    String name = name(a, Optional.empty());
    Layout front = CornersForm.askEnd(a, "front", "Front wheels", Layout.STEERED_DOUBLE_A_ARM);
    Layout rear = CornersForm.askEnd(a, "rear", "Rear wheels", null);
    if (front == null && rear == null) {
      a.wrong("rear", "A car starts with one end at least; say how its wheels are hung.");
    }
    String like = null;
    if (!cars.isEmpty()) {
      Asked.Keys<String> keys = a.one("like", "Rules, specs and settings");
      keys.option("usual", null, "the usual ones", "").firstKey("usual");
      cars.forEach(c -> keys.option(c.key(), c.key(), "as " + c.name(), ""));
      like = keys.hint("Of corners that are hung the same way.").read();
    }
    return new NewCar(details(a, name, Optional.empty()), front, rear, like);
  }

  /** The details of a car that is in the book. */
  static CarDetails ask(Asked a, CarDetails now) {
    return details(a, name(a, Optional.of(now)), Optional.of(now));
  }

  private static String name(Asked a, Optional<CarDetails> was) {
    return a.line("name", "The car's name", LONGEST_NAME)
        .focused()
        .was(was.map(CarDetails::name).orElse(null))
        .needed("A car needs a name, such as Marmot.");
  }

  /** Null as long as they are not told without a fault. */
  private static CarDetails details(Asked a, String name, Optional<CarDetails> was) {
    return a.more(
        "Units, wheelbase, track, rack",
        () -> {
          LengthUnit unit =
              a.one("unit", "A bare number means", LengthUnit.class, LengthUnit::word)
                  .first(was.map(CarDetails::unit).orElse(LengthUnit.INCH))
                  .read();
          a.readIn(unit);
          TypedLength wheelbase =
              a.length("wheelbase", "Wheelbase")
                  .was(was.map(CarDetails::wheelbase).orElse(null))
                  .read();
          TypedLength front =
              a.length("frontTrack", "Front track, wheel centre to wheel centre")
                  .was(was.map(CarDetails::frontTrack).orElse(null))
                  .read();
          TypedLength rear =
              a.length("rearTrack", "Rear track")
                  .was(was.map(CarDetails::rearTrack).orElse(null))
                  .read();
          RackSide rack =
              a.one("rack", "The steering rack lies", RackSide.class, RackSide::words)
                  .was(was.map(CarDetails::rack).orElse(null))
                  .read();
          String note =
              a.line("note", "Note", 500).was(was.map(CarDetails::note).orElse(null)).read();
          return a.ok() ? new CarDetails(name, unit, wheelbase, front, rear, rack, note) : null;
        });
  }
}
