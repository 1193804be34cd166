package spindlebook.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import spindlebook.alignment.MeasuredAlignment;
import spindlebook.alignment.TotalToe;
import spindlebook.corner.Card;
import spindlebook.corner.LineSide;
import spindlebook.corner.Load;
import spindlebook.corner.Starter;
import spindlebook.corner.SweptBy;
import spindlebook.corner.Tool;
import spindlebook.corner.ToolUse;
import spindlebook.web.Choice;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Posted;

/** What a measuring form asks, way by way. */
final class AlignmentParts {
  private final Card card;
  private final Optional<Card> mirror;
  private final Posted posted;
  private final String unit;

  AlignmentParts(Card card, Optional<Card> mirror, Posted posted) {
    this.card = card;
    this.mirror = mirror;
    this.posted = posted;
    this.unit = card.details().unit().word();
  }

  List<FormPart> of(TakenBy by) {
    List<FormPart> parts = new ArrayList<>();
    parts.add(new FormPart.Hidden("way", Posted.word(by)));
    parts.addAll(
        switch (by) {
          case GAUGE -> gauge();
          case PLATE -> line("plate");
          case STRING -> line("rim");
          case SPOT -> spot();
          case DIAL -> dial();
          case TAPE -> tape();
          case SWEEP -> sweep();
          case JOINT -> joint();
          case ACROSS -> across();
        });
    parts.add(rolled());
    parts.add(load());
    parts.add(more(by));
    return parts;
  }

  private List<FormPart> gauge() {
    return List.of(
        degrees("read", "The gauge shows", "+ is top outward, − top inward."),
        degrees(
            "turned",
            "The gauge turned round shows",
            "Same wheel, gauge turned half a turn, its sign as it shows it: finds its zero. May be"
                + " left empty."),
        new FormPart.More(
            "Its zero is known",
            posted.has("zero"),
            List.of(
                degrees(
                    "zero",
                    "On an upright wheel it shows",
                    "Taken off what it shows. Leave it empty when the gauge was turned round."
                        + zeroFound()))));
  }

  private String zeroFound() {
    return new MeasuredAlignment(card, mirror)
        .gaugeZeroRad()
        .map(z -> " Last turned round it showed " + AlignmentViews.too(z) + ".")
        .orElse("");
  }

  private List<FormPart> line(String what) {
    return List.of(
        choice(
            "side",
            "The line runs",
            "Along the car, level with the hub.",
            option(LineSide.OUTBOARD, LineSide.OUTBOARD.words(), ""),
            option(LineSide.INBOARD, LineSide.INBOARD.words(), "")),
        length("front", "Line to the " + what + ", front", "Square to the line."),
        length("rear", "Line to the " + what + ", rear", ""),
        length(
            "spacing",
            "Front place to rear place",
            what.equals("rim") ? "The rim's edge to edge at hub height." : "Along the plate."),
        new FormPart.More(
            "The line does not run straight along the car",
            posted.has("lean-front")
                || posted.has("lean-rear")
                || posted.has("lean-apart")
                || posted.has("lean-wider"),
            List.of(
                new FormPart.Said(
                    "From the line to the car at two places, such as the hubs of both axles: how"
                        + " far it leans comes out of that."),
                choice(
                    "lean-places",
                    "The two places lie",
                    "Asked of a line inboard of the wheel; of one outboard they lie inboard.",
                    places(LineSide.OUTBOARD, "outboard of the line", "the hubs"),
                    places(LineSide.INBOARD, "inboard of the line", "marks on the frame")),
                length("lean-front", "Line to the front place", "Square to the line."),
                length("lean-rear", "Line to the rear place", ""),
                length("lean-apart", "The two places apart", "Along the car."),
                length(
                    "lean-wider",
                    "The front place is further out by",
                    "From the car's middle; of hubs half of what the front ones stand wider. − is"
                        + " further in. Empty: alike."))));
  }

  private Choice.Option places(LineSide side, String word, String note) {
    String value = Posted.word(side);
    return new Choice.Option(value, word, note, posted.text("lean-places").equals(value));
  }

  private List<FormPart> spot() {
    return List.of(
        length(
            "inward",
            "The spot falls inward by",
            "Of straight ahead of the hub, towards the car's middle. − is outward."),
        length("distance", "At this distance ahead of the wheel", ""));
  }

  private List<FormPart> dial() {
    return List.of(
        length("dial-front", "Front of the plate went outward by", "− is inward. Empty: a pivot."),
        length("dial-rear", "Rear of the plate went outward by", "− is inward. Empty: a pivot."),
        length("spacing", "Front place to rear place", "Along the plate."),
        degrees(
            "from",
            "Toe when the dials stood at zero",
            "+ is toe-in. Empty: the plate stood straight along the car."));
  }

  private List<FormPart> tape() {
    return List.of(
        new FormPart.Said(TotalToe.HIDES_SIDES),
        length("front", "In front of the axle", "Mark to mark across both tyres, at hub height."),
        length("rear", "Behind the axle", "The same marks, rolled round to the rear."),
        length("across", "Front place to rear place of one tyre", "About its diameter there."));
  }

  private List<FormPart> sweep() {
    return List.of(
        choice(
            "by",
            "The lock angles are",
            "The two differ by about 1 % of caster.",
            option(SweptBy.WHEEL_HEADING, "the wheel's heading", "as turn plates show it"),
            option(SweptBy.KINGPIN_TURN, "the turn about the kingpin", "of the knuckle itself")),
        degrees("left-lock", "Steered left by", "20 is usual. Left is the driver's left."),
        degrees("camber-left", "Camber there", "+ is top outward."),
        degrees("camber-straight", "Camber straight ahead", "May be left empty."),
        degrees("right-lock", "Steered right by", "Above 0."),
        degrees("camber-right", "Camber there", "With the brake held."),
        degrees("kpi", "KPI, if it is known", "From the drawing, say. Empty: the sweep finds it."),
        new FormPart.More(
            "Pitch was read too",
            posted.has("pitch-left") || posted.has("pitch-right"),
            List.of(
                new FormPart.Said(
                    "The gauge laid along the wheel, brake held, + front end up: finds KPI well."),
                degrees("pitch-left", "Pitch at left lock", ""),
                degrees("pitch-straight", "Pitch straight ahead", ""),
                degrees("pitch-right", "Pitch at right lock", ""))));
  }

  private List<FormPart> joint() {
    return List.of(
        new FormPart.Said("The lower joint's middle, seen from the wheel's centre."),
        length("ahead", "Joint ahead of the centre", "− is behind."),
        length("inboard", "Joint inboard of the centre", ""),
        length("below", "Joint below the centre", ""),
        length("radius", "Loaded radius", "Wheel's centre to the ground, in the wheel's plane."));
  }

  private List<FormPart> across() {
    return List.of(
        choice(
            "over",
            "The tape was held",
            "",
            new Choice.Option(
                "outside",
                "over the tyres",
                "at hub height",
                posted.text("over").equals("outside")),
            new Choice.Option(
                "hub-faces",
                "hub face to hub face",
                "wheels off",
                posted.text("over").equals("hub-faces"))),
        length("length", "Across the car", ""),
        length(
            "offset",
            "The wheel's offset as it sits",
            "+ face outboard of the rim's middle; spacer taken off. mm will do: -12 mm."),
        length("section", "The tyre is wide", "Needed over the tyres."));
  }

  // --- how the car stood

  private FormPart rolled() {
    String said = posted.text("rolled");
    return choice(
        "rolled",
        "Since the jack",
        "",
        new Choice.Option("yes", "rolled and bounced", "", said.equals("yes")),
        new Choice.Option("no", "straight off the jack", "kept, but in doubt", said.equals("no")));
  }

  private FormPart load() {
    return choice(
        "load",
        "In the car",
        "",
        Arrays.stream(Load.values())
            .map(l -> option(l, l.words(), ""))
            .toArray(Choice.Option[]::new));
  }

  private FormPart more(TakenBy by) {
    List<FormPart> parts = new ArrayList<>();
    parts.add(text("fuel", "Fuel", "Half a tank, full."));
    parts.add(text("pressures", "Tyre pressures", "As the gauge says it: 18 psi all round."));
    parts.add(text("words", "In your words", "May be left empty."));
    if (by.readsLengths()) {
      tool(parts, "length-tool", "Lengths read with", false, null);
    }
    if (by.readsAngles()) {
      tool(parts, "angle-tool", "Angles read with", true, null);
    }
    if (by == TakenBy.SWEEP) {
      tool(parts, "lock-tool", "Lock angles read with", true, Starter.turnPlates());
    }
    boolean open = List.of("fuel", "pressures", "words").stream().anyMatch(this::wrong);
    return new FormPart.More("Fuel, pressures, tools, words", open, parts);
  }

  private boolean wrong(String name) {
    return !posted.problem(name).isEmpty();
  }

  /** No choice where there is none. */
  private void tool(List<FormPart> parts, String name, String legend, boolean angles, Tool first) {
    List<Tool> tools = new ArrayList<>();
    if (first != null) {
      tools.add(first);
    }
    card.tools().stream()
        .filter(t -> t.use() == (angles ? ToolUse.ANGLES : ToolUse.TAPE))
        .forEach(tools::add);
    if (tools.size() > 1) {
      String sent = posted.has(name) ? posted.text(name) : tools.get(0).tool();
      parts.add(
          new FormPart.Chosen(
              new Choice(
                  name,
                  legend,
                  "",
                  "",
                  tools.stream()
                      .map(t -> new Choice.Option(t.tool(), t.name(), "", t.tool().equals(sent)))
                      .toList())));
    }
  }

  // --- one thing to answer

  private FormPart degrees(String name, String label, String hint) {
    return new FormPart.Typed(
        posted.fill(Field.of(name, label).hint(hint).unit("°").inputmode("text")));
  }

  private FormPart length(String name, String label, String hint) {
    return new FormPart.Typed(posted.fill(Field.of(name, label).hint(hint).unit(unit)));
  }

  private FormPart text(String name, String label, String hint) {
    return new FormPart.Typed(posted.fill(Field.of(name, label).hint(hint)));
  }

  private FormPart choice(String name, String legend, String hint, Choice.Option... options) {
    return new FormPart.Chosen(
        new Choice(name, legend, hint, posted.problem(name), List.of(options)));
  }

  private Choice.Option option(Enum<?> value, String word, String note) {
    String name = value instanceof LineSide ? "side" : value instanceof SweptBy ? "by" : "load";
    return new Choice.Option(
        Posted.word(value), word, note, posted.text(name).equals(Posted.word(value)));
  }
}
