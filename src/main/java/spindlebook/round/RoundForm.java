package spindlebook.round;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import spindlebook.card.Capital;
import spindlebook.definition.Layout;
import spindlebook.definition.Tool;
import spindlebook.definition.ToolUse;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Quantity;
import spindlebook.entry.Zeroing;
import spindlebook.fold.Card;
import spindlebook.page.Asked;
import spindlebook.page.Choice;
import spindlebook.page.Posted;
import spindlebook.plan.JackPlan;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;
import spindlebook.web.Who;

/** Conditions and tools of a round, and who measures. */
record RoundForm(Content.Round round, String who) {
  private static final double MOST_TILT_RAD = Math.toRadians(20);

  /**
   * Spring out, stop in, wheel on, on stands; a car is at ride height on its tyres, with its
   * springs in, and a wheel goes past its bump stop with that out.
   */
  static Content.Round usual(Card card, List<Content.ToRead> toRead) {
    boolean ride = !toRead.isEmpty() && toRead.stream().allMatch(t -> t.name() == HeightName.RIDE);
    boolean stopOut = toRead.stream().anyMatch(t -> t.name() == HeightName.STOP_OUT);
    return new Content.Round(
        card.corner(),
        ride,
        !stopOut,
        true,
        ride,
        true,
        null,
        null,
        null,
        card.details().unit(),
        null,
        null,
        null,
        toRead,
        null,
        null);
  }

  /**
   * @param start what its questions start with
   */
  static RoundForm ask(Asked a, Card card, Content.Round start, String who) {
    boolean springIn = two(a, "spring", "Spring", "out", "in", start.springIn());
    boolean stopOut = two(a, "bumpStop", "Bump stop", "in", "out", !start.bumpStopIn());
    List<Content.ToRead> toRead =
        JackPlan.whole(start.toRead()) && card.layout() != Layout.SOLID_AXLE_END
            ? JackPlan.along(along(a, JackPlan.chosen(start.toRead())))
            : start.toRead();
    List<Zeroing> zeroed =
        a.ticks(
            "zeroed",
            "Zero first",
            "Tick what was done; nothing has to be.",
            Arrays.stream(Zeroing.values()).filter(z -> z.at(card.layout())).toList(),
            z ->
                new Choice.Option(
                    Posted.word(z),
                    Capital.of(z.words()),
                    z.sentence(),
                    start.zeroed().contains(z)));
    Supplier<RoundForm> rest =
        () -> {
          boolean wheelOff = two(a, "wheel", "Wheel", "on", "off", !start.wheelOn());
          boolean onTyres =
              a.<Boolean>one("on", "The car stands on")
                  .option("stands", false, "stands", "")
                  .option("tyres", true, "its tyres", "")
                  .firstKey(start.onTyres() ? "tyres" : "stands")
                  .read();
          boolean unlinked =
              card.layout().steered()
                  && two(a, "linked", "Steering linked", "yes", "no", !start.steeringLinked());
          String tape =
              tool(a, card, "tape", "Heights and lengths with", start.tape(), ToolUse.TAPE);
          String gapTool =
              tool(a, card, "gapTool", "Gaps with", start.gapTool(), ToolUse.GAPS, ToolUse.TAPE);
          String angleTool =
              tool(a, card, "angleTool", "Angles with", start.angleTool(), ToolUse.ANGLES);
          LengthUnit unit =
              a.one("unit", "A bare number means", LengthUnit.class, LengthUnit::word)
                  .first(start.unit())
                  .read();
          TypedAngle rake = tilt(a, "rake", "Frame rake, nose down +", start.rake());
          TypedAngle roll = tilt(a, "roll", "Frame roll, left side up +", start.roll());
          String pressure = a.line("pressure", "Tyre pressure", 40).was(start.pressure()).read();
          String measures = a.line("who", "Who measures", Who.LONGEST).was(who).read();
          String note = a.line("note", "Note", 300).was(start.note()).read();
          return new RoundForm(
              new Content.Round(
                  card.corner(),
                  springIn,
                  !stopOut,
                  !wheelOff,
                  onTyres,
                  !unlinked,
                  rake,
                  roll,
                  pressure,
                  unit,
                  tape,
                  gapTool,
                  angleTool,
                  toRead,
                  note,
                  zeroed),
              measures == null ? Who.NOBODY_SAID : measures);
        };
    String few = "Wheel, stands, tools, tilt, who";
    return start.onTyres() ? a.more(few, rest) : a.aside(few, rest);
  }

  /** Nothing of the travel's verdict waits for toe or camber: they are a choice. */
  private static List<Quantity> along(Asked a, Set<Quantity> chosen) {
    return a.ticks(
        "along",
        "Also read, at each height",
        "",
        List.of(Quantity.CAMBER, Quantity.TOE),
        q -> new Choice.Option(Posted.word(q), Capital.of(q.words()), "", chosen.contains(q)));
  }

  /** Whether it is the second of two. */
  private static boolean two(
      Asked a, String name, String legend, String first, String second, boolean isSecond) {
    return a.<Boolean>one(name, legend)
        .option(first, false, first, "")
        .option(second, true, second, "")
        .firstKey(isSecond ? second : first)
        .read();
  }

  private static TypedAngle tilt(Asked a, String name, String label, TypedAngle start) {
    return a.angle(name, label)
        .hint("Degrees. Empty: level.")
        .unit("")
        .was(start)
        .check(
            t -> Math.abs(t.rad()) <= MOST_TILT_RAD,
            "'" + a.text(name).strip() + "' is more than a car is measured at: 20° at most.")
        .read();
  }

  /** The first one for its first use, as long as none was chosen. */
  private static String tool(
      Asked a, Card card, String name, String legend, String start, ToolUse... uses) {
    Asked.Keys<String> keys = a.one(name, legend);
    String first = start;
    for (ToolUse use : uses) {
      for (Tool tool : card.tools()) {
        if (tool.use() == use) {
          keys.option(tool.tool(), tool.name(), graduation(tool));
          first = first == null ? tool.tool() : first;
        }
      }
    }
    return keys.first(first).read();
  }

  private static String graduation(Tool tool) {
    return "to "
        + (tool.graduation() != null ? tool.graduation().typed() : tool.graduationAngle().typed());
  }
}
