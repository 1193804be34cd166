package spindlebook.round;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spindlebook.card.Capital;
import spindlebook.card.ToReadAddress;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.Tool;
import spindlebook.corner.ToolUse;
import spindlebook.corner.Zeroing;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;
import spindlebook.web.Choice;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** Conditions and tools of a round. */
sealed interface RoundForm {
  record Accepted(Content.Round round, String who) implements RoundForm {}

  record Problems() implements RoundForm {}

  String ZEROED = "zeroed";
  double MOST_TILT_RAD = Math.toRadians(20);

  static RoundForm read(Posted posted, Card card, List<Content.ToRead> toRead) {
    String who = posted.line("who", Who.LONGEST);
    Content.Round round =
        new Content.Round(
            card.corner(),
            posted.text("spring").equals("in"),
            posted.text("bumpStop").equals("in"),
            !posted.text("wheel").equals("off"),
            posted.text("on").equals("tyres"),
            !posted.text("linked").equals("no"),
            tilt(posted, "rake"),
            tilt(posted, "roll"),
            posted.line("pressure", 40),
            posted.word("unit", LengthUnit.class, card.details().unit()),
            tool(posted, card, "tape", ToolUse.TAPE),
            gapTool(posted, card),
            tool(posted, card, "angleTool", ToolUse.ANGLES),
            toRead,
            posted.line("note", 300),
            zeroed(posted));
    return posted.ok() ? new Accepted(round, who == null ? Who.NOBODY_SAID : who) : new Problems();
  }

  /** What the form that says this would send: the other way round of {@link #read}. */
  static Map<String, List<String>> typed(Content.Round r, String who) {
    Map<String, List<String>> typed = new LinkedHashMap<>();
    put(typed, "who", who);
    put(typed, "spring", r.springIn() ? "in" : "out");
    put(typed, "bumpStop", r.bumpStopIn() ? "in" : "out");
    put(typed, "wheel", r.wheelOn() ? "on" : "off");
    put(typed, "on", r.onTyres() ? "tyres" : "stands");
    put(typed, "linked", r.steeringLinked() ? "yes" : "no");
    put(typed, "unit", Posted.word(r.unit()));
    put(typed, "rake", r.rake() == null ? null : r.rake().typed());
    put(typed, "roll", r.roll() == null ? null : r.roll().typed());
    put(typed, "pressure", r.pressure());
    put(typed, "tape", r.tape());
    put(typed, "gapTool", r.gapTool());
    put(typed, "angleTool", r.angleTool());
    put(typed, "note", r.note());
    r.zeroed().forEach(z -> put(typed, tick(z), "1"));
    if (!r.toRead().isEmpty()) {
      typed.put(ToReadAddress.NEED, r.toRead().stream().map(ToReadAddress::word).toList());
    }
    return typed;
  }

  private static void put(Map<String, List<String>> typed, String name, String text) {
    if (text != null) {
      typed.put(name, List.of(text));
    }
  }

  private static TypedAngle tilt(Posted posted, String name) {
    TypedAngle tilt = posted.angle(name);
    if (tilt != null && Math.abs(tilt.rad()) > MOST_TILT_RAD) {
      posted.wrong(
          name,
          "'" + posted.text(name).strip() + "' is more than a car is measured at: 20° at most.");
    }
    return tilt;
  }

  private static List<Zeroing> zeroed(Posted posted) {
    return Arrays.stream(Zeroing.values()).filter(z -> posted.has(tick(z))).toList();
  }

  private static String tick(Zeroing zeroing) {
    return ZEROED + "-" + Posted.word(zeroing);
  }

  /** The tool named, else the first for this use. */
  private static String tool(Posted posted, Card card, String name, ToolUse use) {
    return card.tools().stream()
        .filter(t -> t.use() == use)
        .map(Tool::tool)
        .filter(t -> t.equals(posted.text(name)))
        .findFirst()
        .or(() -> card.tools().stream().filter(t -> t.use() == use).map(Tool::tool).findFirst())
        .orElse(null);
  }

  /** Gaps may be read with the tape as well. */
  private static String gapTool(Posted posted, Card card) {
    return card.tools().stream()
        .filter(t -> t.use() != ToolUse.ANGLES)
        .map(Tool::tool)
        .filter(t -> t.equals(posted.text("gapTool")))
        .findFirst()
        .orElseGet(() -> tool(posted, card, "gapTool", ToolUse.GAPS));
  }

  static List<FormPart> parts(Posted posted, Card card, String who) {
    String said = posted.text("who").isEmpty() ? who : posted.text("who");
    return List.of(
        two(posted, "spring", "Spring", "out", "out", "in", "in"),
        two(posted, "bumpStop", "Bump stop", "in", "in", "out", "out"),
        new FormPart.Ticks(
            ZEROED,
            "Zero first",
            "Tick what was done; nothing has to be.",
            Arrays.stream(Zeroing.values())
                .map(
                    z ->
                        new Choice.Option(
                            Posted.word(z),
                            Capital.of(z.words()),
                            z.sentence(),
                            posted.has(tick(z))))
                .toList()),
        new FormPart.More(
            "Wheel, stands, tools, tilt, who",
            !posted.ok() || posted.has("on"),
            List.of(
                two(posted, "wheel", "Wheel", "on", "on", "off", "off"),
                two(posted, "on", "The car stands on", "stands", "stands", "tyres", "its tyres"),
                two(posted, "linked", "Steering linked", "yes", "yes", "no", "no"),
                tools(posted, card, "tape", "Heights and lengths with", ToolUse.TAPE),
                tools(posted, card, "gapTool", "Gaps with", ToolUse.GAPS, ToolUse.TAPE),
                tools(posted, card, "angleTool", "Angles with", ToolUse.ANGLES),
                unit(posted, card),
                new FormPart.Typed(
                    posted.fill(
                        Field.of("rake", "Frame rake, nose down +")
                            .hint("Degrees. Empty: level."))),
                new FormPart.Typed(
                    posted.fill(
                        Field.of("roll", "Frame roll, left side up +")
                            .hint("Degrees. Empty: level."))),
                new FormPart.Typed(posted.fill(Field.of("pressure", "Tyre pressure"))),
                new FormPart.Typed(
                    Field.of("who", "Who measures").typed(said).problem(posted.problem("who"))),
                new FormPart.Typed(posted.fill(Field.of("note", "Note"))))));
  }

  private static FormPart two(
      Posted posted,
      String name,
      String legend,
      String first,
      String firstWord,
      String second,
      String secondWord) {
    boolean other = posted.text(name).equals(second);
    return new FormPart.Chosen(
        new Choice(
            name,
            legend,
            "",
            "",
            List.of(
                new Choice.Option(first, firstWord, "", !other),
                new Choice.Option(second, secondWord, "", other))));
  }

  private static FormPart tools(
      Posted posted, Card card, String name, String legend, ToolUse... uses) {
    List<Choice.Option> options = new ArrayList<>();
    for (ToolUse use : uses) {
      for (Tool tool : card.tools()) {
        if (tool.use() == use) {
          boolean chosen =
              posted.text(name).isEmpty()
                  ? options.isEmpty()
                  : posted.text(name).equals(tool.tool());
          options.add(new Choice.Option(tool.tool(), tool.name(), graduation(tool), chosen));
        }
      }
    }
    return new FormPart.Chosen(new Choice(name, legend, "", "", options));
  }

  private static String graduation(Tool tool) {
    return "to "
        + (tool.graduation() != null ? tool.graduation().typed() : tool.graduationAngle().typed());
  }

  private static FormPart unit(Posted posted, Card card) {
    LengthUnit chosen = posted.word("unit", LengthUnit.class, card.details().unit());
    return new FormPart.Chosen(
        new Choice(
            "unit",
            "A bare number means",
            "",
            "",
            Arrays.stream(LengthUnit.values())
                .map(u -> new Choice.Option(Posted.word(u), u.word(), "", u == chosen))
                .toList()));
  }
}
