package spindlebook.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.alignment.MeasuredAlignment;
import spindlebook.alignment.TotalToe;
import spindlebook.corner.AlignmentWay;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.Dimension;
import spindlebook.corner.EntryWords;
import spindlebook.corner.LineSide;
import spindlebook.corner.Load;
import spindlebook.corner.SeenAlignment;
import spindlebook.corner.Starter;
import spindlebook.corner.SweptBy;
import spindlebook.corner.Tool;
import spindlebook.corner.ToolUse;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;
import spindlebook.web.Choice;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Posted;

/** What a measuring form asks, way by way. */
final class AlignmentParts {
  /** What stays the same from one measurement to the next, so that it need not be typed again. */
  private static final List<String> STAYS =
      List.of(
          "side",
          "spacing",
          "across",
          "distance",
          "by",
          "left-lock",
          "right-lock",
          "kpi",
          "over",
          "offset",
          "section",
          "radius",
          "load",
          "fuel",
          "pressures",
          "length-tool",
          "angle-tool",
          "lock-tool");

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

  /** What a fresh form starts with: what the last one of its kind said, where that stays. */
  static Posted fresh(TakenBy by, Card card) {
    Map<String, List<String>> texts = new LinkedHashMap<>();
    card.given(Dimension.TYRE_LOADED_RADIUS)
        .ifPresent(g -> texts.put("radius", List.of(EntryWords.typed(g.length()))));
    for (SeenAlignment earlier : card.aligned().read()) {
      Map<String, List<String>> said = texts(earlier.alignment());
      boolean same = TakenBy.of(earlier.way()) == by;
      said.keySet().retainAll(same ? STAYS : List.of("load", "fuel", "pressures"));
      texts.putAll(said);
    }
    return new Posted(texts);
  }

  /** One that was written down, as it is typed again. */
  static Map<String, List<String>> texts(Content.Alignment a) {
    Map<String, String> t = new LinkedHashMap<>();
    AlignmentWay way = a.way();
    if (way instanceof AlignmentWay.Gauge w) {
      put(t, "read", w.read());
      put(t, "turned", w.turned());
      put(t, "zero", w.zero());
    } else if (way instanceof AlignmentWay.Line w) {
      t.put("side", Posted.word(w.side()));
      put(t, "front", w.front());
      put(t, "rear", w.rear());
      put(t, "spacing", w.spacing());
    } else if (way instanceof AlignmentWay.Spot w) {
      put(t, "inward", w.inward());
      put(t, "distance", w.distance());
    } else if (way instanceof AlignmentWay.Dials w) {
      put(t, "dial-front", w.front());
      put(t, "dial-rear", w.rear());
      put(t, "spacing", w.spacing());
      put(t, "from", w.from());
    } else if (way instanceof AlignmentWay.Tape w) {
      put(t, "front", w.front());
      put(t, "rear", w.rear());
      put(t, "across", w.across());
    } else if (way instanceof AlignmentWay.Swing w) {
      swept(t, w);
    } else if (way instanceof AlignmentWay.Joint w) {
      put(t, "ahead", w.ahead());
      put(t, "inboard", w.inboard());
      put(t, "below", w.below());
      put(t, "radius", w.loadedRadius());
    } else if (way instanceof AlignmentWay.Across w) {
      t.put("over", w.outside() ? "outside" : "hub-faces");
      put(t, "length", w.length());
      put(t, "offset", w.offset());
      put(t, "section", w.section());
    }
    t.put("rolled", a.rolled() ? "yes" : "no");
    t.put("load", a.load() == null ? null : Posted.word(a.load()));
    t.put("fuel", a.fuel());
    t.put("pressures", a.pressures());
    t.put("words", a.words());
    t.put("length-tool", a.lengthTool());
    t.put("angle-tool", a.angleTool());
    t.put("lock-tool", a.lockTool());
    Map<String, List<String>> texts = new LinkedHashMap<>();
    t.forEach(
        (name, text) -> {
          if (text != null) {
            texts.put(name, List.of(text));
          }
        });
    return texts;
  }

  private static void swept(Map<String, String> t, AlignmentWay.Swing w) {
    t.put("by", Posted.word(w.by()));
    put(t, "left-lock", w.leftLock());
    put(t, "camber-left", w.camberLeft());
    put(t, "camber-straight", w.camberStraight());
    put(t, "right-lock", w.rightLock());
    put(t, "camber-right", w.camberRight());
    put(t, "kpi", w.kpi());
    put(t, "pitch-left", w.pitchLeft());
    put(t, "pitch-straight", w.pitchStraight());
    put(t, "pitch-right", w.pitchRight());
  }

  private static void put(Map<String, String> texts, String name, TypedLength length) {
    texts.put(name, length == null ? null : EntryWords.typed(length));
  }

  private static void put(Map<String, String> texts, String name, TypedAngle angle) {
    texts.put(name, angle == null ? null : angle.typed());
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
            "Straight along the car, level with the hub.",
            option(LineSide.OUTBOARD, LineSide.OUTBOARD.words(), ""),
            option(LineSide.INBOARD, LineSide.INBOARD.words(), "")),
        length("front", "Line to the " + what + ", front", "Square to the line."),
        length("rear", "Line to the " + what + ", rear", ""),
        length(
            "spacing",
            "Front place to rear place",
            what.equals("rim") ? "The rim's edge to edge at hub height." : "Along the plate."));
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
        .filter(t -> (t.use() == ToolUse.ANGLES) == angles && t.use() != ToolUse.GAPS)
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
