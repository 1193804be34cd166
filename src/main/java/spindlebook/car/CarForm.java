package spindlebook.car;

import java.util.Arrays;
import java.util.List;
import spindlebook.corner.CarDetails;
import spindlebook.corner.Layout;
import spindlebook.corner.RackSide;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedLength;
import spindlebook.web.Choice;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Posted;

/** What is typed of a car. */
sealed interface CarForm {
  /**
   * @param front how the front wheels are hung; null when they are left for later; likewise rear
   */
  record Accepted(CarDetails details, Layout front, Layout rear) implements CarForm {}

  record Problems(Posted posted) implements CarForm {}

  int LONGEST_NAME = 60;

  static CarForm read(Posted posted) {
    String name = posted.neededLine("name", LONGEST_NAME, "A car needs a name, such as Marmot.");
    LengthUnit unit = posted.word("unit", LengthUnit.class, LengthUnit.INCH);
    CarDetails details =
        new CarDetails(
            name == null ? "" : name,
            unit,
            posted.lengthFromZero("wheelbase", unit),
            posted.lengthFromZero("frontTrack", unit),
            posted.lengthFromZero("rearTrack", unit),
            posted.word("rack", RackSide.class, null),
            posted.line("note", 500));
    Layout front =
        posted.text("front").equals(CornersForm.LATER)
            ? null
            : CornersForm.layout(posted, "front", true, Layout.STEERED_DOUBLE_A_ARM);
    Layout rear = CornersForm.layout(posted, "rear", false, null);
    if (front == null && rear == null) {
      posted.wrong("rear", "A car starts with one end at least; say how its wheels are hung.");
    }
    return posted.ok() ? new Accepted(details, front, rear) : new Problems(posted);
  }

  /** What a car's details were typed as, so that they can be changed. */
  static Posted typed(CarDetails details) {
    java.util.Map<String, List<String>> values = new java.util.HashMap<>();
    values.put("name", List.of(details.name()));
    values.put("unit", List.of(Posted.word(details.unit())));
    put(values, "wheelbase", details.wheelbase());
    put(values, "frontTrack", details.frontTrack());
    put(values, "rearTrack", details.rearTrack());
    if (details.rack() != null) {
      values.put("rack", List.of(Posted.word(details.rack())));
    }
    if (details.note() != null) {
      values.put("note", List.of(details.note()));
    }
    return new Posted(values);
  }

  private static void put(
      java.util.Map<String, List<String>> values, String name, TypedLength length) {
    if (length != null) {
      values.put(name, List.of(length.typed()));
    }
  }

  /** The form of a new car: its name, how its wheels are hung, and what few need. */
  static List<FormPart> newCar(Posted posted) {
    List<FormPart> details = parts(posted);
    return List.of(
        details.get(0),
        CornersForm.ofNewCar(posted, "front", "Front wheels", Layout.STEERED_DOUBLE_A_ARM),
        CornersForm.ofNewCar(posted, "rear", "Rear wheels", null),
        details.get(1));
  }

  /** The details, filled with what was posted. */
  static List<FormPart> parts(Posted posted) {
    boolean open =
        posted.has("wheelbase")
            || posted.has("frontTrack")
            || posted.has("rearTrack")
            || posted.has("rack")
            || posted.has("note")
            || !posted.ok();
    String unit = posted.word("unit", LengthUnit.class, LengthUnit.INCH).word();
    return List.of(
        new FormPart.Typed(posted.fill(Field.of("name", "The car's name").focused())),
        new FormPart.More(
            "Units, wheelbase, track, rack",
            open,
            List.of(
                new FormPart.Chosen(unitChoice(posted)),
                length(posted, "wheelbase", "Wheelbase", unit),
                length(posted, "frontTrack", "Front track, wheel centre to wheel centre", unit),
                length(posted, "rearTrack", "Rear track", unit),
                new FormPart.Chosen(rackChoice(posted)),
                new FormPart.Typed(posted.fill(Field.of("note", "Note"))))));
  }

  private static FormPart length(Posted posted, String name, String label, String unit) {
    return new FormPart.Typed(posted.fill(Field.of(name, label).unit(unit)));
  }

  private static Choice unitChoice(Posted posted) {
    LengthUnit chosen = posted.word("unit", LengthUnit.class, LengthUnit.INCH);
    return new Choice(
        "unit",
        "A bare number means",
        "",
        "",
        Arrays.stream(LengthUnit.values())
            .map(u -> new Choice.Option(Posted.word(u), u.word(), "", u == chosen))
            .toList());
  }

  private static Choice rackChoice(Posted posted) {
    return new Choice(
        "rack",
        "The steering rack lies",
        "",
        "",
        Arrays.stream(RackSide.values())
            .map(
                r ->
                    new Choice.Option(
                        Posted.word(r), r.words(), "", Posted.word(r).equals(posted.text("rack"))))
            .toList());
  }
}
