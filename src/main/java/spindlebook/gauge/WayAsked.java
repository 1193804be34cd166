package spindlebook.gauge;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import spindlebook.definition.Starter;
import spindlebook.definition.Tool;
import spindlebook.definition.ToolUse;
import spindlebook.entry.AlignmentWay;
import spindlebook.entry.Content;
import spindlebook.entry.Load;
import spindlebook.fold.Card;
import spindlebook.fold.SeenAlignment;
import spindlebook.measured.MeasuredAlignment;
import spindlebook.page.Asked;
import spindlebook.page.Posted;
import spindlebook.units.TypedAngle;

/**
 * A measurement of alignment while it is asked for: at one corner, one way, for the first time or
 * to correct one that is written.
 */
final class WayAsked {
  private static final double MOST_ANGLE_RAD = Math.toRadians(45);

  private final Asked a;
  final Card card;
  private final Optional<Card> mirror;
  private final TakenBy by;
  private final boolean again;

  /** The one that is corrected, else all before, the newest last. */
  private final List<Content.Alignment> earlier;

  /**
   * @param corrected null for a new one
   */
  WayAsked(Asked a, Card card, Optional<Card> mirror, TakenBy by, Content.Alignment corrected) {
    this.a = a;
    this.card = card;
    this.mirror = mirror;
    this.by = by;
    this.again = corrected != null;
    this.earlier =
        again
            ? List.of(corrected)
            : card.aligned().read().stream().map(SeenAlignment::alignment).toList();
  }

  /** What was written before, one way, as the questions of a form start with it. */
  record Before<W>(List<W> earlier, boolean again) {
    /** What is asked anew each time; known only to who corrects it. */
    <T> T read(Function<W, T> of) {
      return again ? kept(of) : null;
    }

    /** What stays the same from one measurement to the next, as it was last said. */
    <T> T kept(Function<W, T> of) {
      return earlier.stream()
          .map(of)
          .filter(Objects::nonNull)
          .reduce((before, last) -> last)
          .orElse(null);
    }
  }

  /** What was taken this way. */
  <W extends AlignmentWay> Before<W> before(Class<W> type) {
    return new Before<>(sameWay().map(a -> type.cast(a.way())).toList(), again);
  }

  private Stream<Content.Alignment> sameWay() {
    return earlier.stream().filter(e -> TakenBy.of(e.way()) == by);
  }

  // --- one thing to answer

  Asked.Box<TypedAngle> angle(String name, String label) {
    return a.angle(name, label)
        .check(
            x -> Math.abs(x.rad()) <= MOST_ANGLE_RAD,
            "'" + a.text(name).strip() + "' is more than 45 degrees.");
  }

  /** As a gauge was last turned round, or nothing. */
  String zeroFound() {
    return new MeasuredAlignment(card, mirror)
        .gaugeZeroRad()
        .map(z -> " Last turned round it showed " + AlignmentView.too(z) + ".")
        .orElse("");
  }

  // --- all of it

  /** Null as long as it is not told without a fault. */
  Content.Alignment ask() {
    Before<Content.Alignment> any = new Before<>(earlier, again);
    a.hidden("way", Posted.word(by));
    AlignmentWay way = by.ask(a, this);
    Boolean rolled =
        a.<Boolean>one("rolled", "Since the jack")
            .option("yes", true, "rolled and bounced", "")
            .option("no", false, "straight off the jack", "kept, but in doubt")
            .startsKey(any.read(e -> e.rolled() ? "yes" : "no"))
            .needed("Tap whether the car was rolled and bounced since the jack.");
    Load load =
        a.one("load", "In the car", Load.class, Load::words)
            .was(any.kept(Content.Alignment::load))
            .read();
    return a.aside(
        "Fuel, pressures, tools, words",
        () -> {
          String fuel =
              a.line("fuel", "Fuel", 80)
                  .hint("Half a tank, full.")
                  .was(any.kept(Content.Alignment::fuel))
                  .read();
          String pressures =
              a.line("pressures", "Tyre pressures", 80)
                  .hint("As the gauge says it: 18 psi all round.")
                  .was(any.kept(Content.Alignment::pressures))
                  .read();
          String words =
              a.line("words", "In your words", 300)
                  .hint("May be left empty.")
                  .was(any.read(Content.Alignment::words))
                  .read();
          String lengths =
              tool(
                  by.readsLengths(),
                  "length-tool",
                  "Lengths read with",
                  ToolUse.TAPE,
                  null,
                  Content.Alignment::lengthTool);
          String angles =
              tool(
                  by.readsAngles(),
                  "angle-tool",
                  "Angles read with",
                  ToolUse.ANGLES,
                  null,
                  Content.Alignment::angleTool);
          String locks =
              tool(
                  by.readsLocks(),
                  "lock-tool",
                  "Lock angles read with",
                  ToolUse.ANGLES,
                  Starter.turnPlates(),
                  Content.Alignment::lockTool);
          return a.ok()
              ? new Content.Alignment(
                  card.corner(),
                  rolled,
                  load,
                  fuel,
                  pressures,
                  lengths,
                  angles,
                  locks,
                  way,
                  null,
                  words)
              : null;
        });
  }

  /**
   * As chosen; not asked where there is nothing to choose.
   *
   * @param reads whether this way reads such a thing at all
   * @param usual what goes without being written down; null for nothing
   * @return null for that
   */
  private String tool(
      boolean reads,
      String name,
      String legend,
      ToolUse use,
      Tool usual,
      Function<Content.Alignment, String> before) {
    List<Tool> tools =
        Stream.concat(Stream.ofNullable(usual), card.tools().stream().filter(t -> t.use() == use))
            .filter(t -> reads)
            .toList();
    Tool tool = tools.isEmpty() ? null : tools.get(0);
    if (tools.size() > 1) {
      Asked.Keys<Tool> keys = a.one(name, legend);
      tools.forEach(t -> keys.option(t.tool(), t, t.name(), ""));
      tool =
          keys.firstKey(tool.tool())
              .startsKey(new Before<>(sameWay().toList(), again).kept(before))
              .read();
    }
    return tool == null || tool.equals(usual) ? null : tool.tool();
  }
}
