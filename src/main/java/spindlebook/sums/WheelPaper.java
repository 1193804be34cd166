package spindlebook.sums;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import spindlebook.definition.Dimension;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.Rounded;
import spindlebook.entry.AlignedFigure;
import spindlebook.fold.Card;
import spindlebook.measured.AlignedFinding;
import spindlebook.measured.MeasuredAlignment;
import spindlebook.page.Asked;
import spindlebook.parts.WheelOnPaper;
import spindlebook.sums.OnPaperView.Block;
import spindlebook.sums.OnPaperView.Line;
import spindlebook.travel.GivenFigures;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;

/** A wheel and tyre tried on paper: gaps, track, scrub, and the frame's way to the ground. */
final class WheelPaper {
  private static final double DEGREE = Math.toRadians(1);
  private static final double MOST_LEAN_RAD = Math.toRadians(30);

  /** Camber that nobody read; as a sweep counts it. */
  private static final Figure UPRIGHT = TypedFigures.assumed("camber", 0, 1.5 * DEGREE);

  private final Card card;
  private final MeasuredAlignment measured;
  private final Asked a;
  private final Lengths lengths;
  private final TypedFigures good;
  private final boolean told;
  private final WheelTyped now;
  private final WheelTyped then;
  private final Figure camber;
  private final Figure kpi;
  private final WheelGapPaper gaps;
  private final GroundPaper ground;
  private final List<Block> blocks = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  /**
   * @param mirror the other wheel of the axle; empty where the car has none
   */
  WheelPaper(Card card, Optional<Card> mirror, Asked a) {
    this.card = card;
    this.measured = new MeasuredAlignment(card, mirror);
    this.a = a;
    this.lengths = new Lengths(a.unit());
    this.good = new TypedFigures(a);
    a.together();
    // Half a name's diameter is held against half a name's only.
    Figure given =
        a.has("then-loaded") && !a.has("now-loaded")
            ? card.given(Dimension.TYRE_LOADED_RADIUS).map(GivenFigures::of).orElse(null)
            : null;
    this.now = WheelTyped.ask(a, good, "now", "that is on", given);
    this.then = WheelTyped.ask(a, good, "then", "tried", null);
    likewise("spokes", "Type it for both wheels, or for neither: only the change counts.");
    if (given == null) {
      likewise(
          "loaded", "Type it for both wheels, or for neither: a name's radius is no loaded one.");
    }
    this.camber =
        lean(
            "camber",
            "Camber",
            "+ top outward." + empty(AlignedFigure.CAMBER, " Empty: upright to ± 1.5°."),
            AlignedFigure.CAMBER,
            UPRIGHT);
    this.kpi =
        card.layout().steered()
            ? lean(
                "kpi",
                "KPI",
                "How far the kingpin leans, + top inboard."
                    + empty(AlignedFigure.KPI, " Empty: no scrub is told."),
                AlignedFigure.KPI,
                null)
            : null;
    this.gaps =
        a.more("Gaps measured around the wheel that is on", () -> new WheelGapPaper(a, good));
    this.told = a.end() && a.ok();
    this.ground = a.more("The frame at full bump", () -> new GroundPaper(card, a, good));
  }

  /** What is compared needs both wheels' or neither's. */
  private void likewise(String what, String sentence) {
    if (a.has("now-" + what) != a.has("then-" + what)) {
      a.wrong((a.has("now-" + what) ? "then-" : "now-") + what, sentence);
    }
  }

  OnPaperView view() {
    if (told) {
      wheels();
    }
    ground.add(blocks, notes);
    if (told && a.ok()) {
      sizes("The wheel that is on", now);
      sizes("The wheel tried", then);
    }
    if (!blocks.isEmpty()) {
      notes.add(good.words());
    }
    return new OnPaperView(
        "/corners/" + card.corner() + "/wheel", a.parts(), "Try it", blocks, notes);
  }

  private void wheels() {
    WheelTried tried = new WheelTried(now, then, camber, kpi == null ? Figure.exact(0) : kpi);
    blocks.add(new Block("What it changes", changes(tried, kpi != null)));
    gaps.add(blocks, notes, tried, a.has("now-spokes"));
    if (now.sameTyreAs(then)) {
      notes.add(
          "Both tyres have one name: taken as the same tyre, so what is unsure of the name"
              + " cancels.");
    }
    if (!now.lipTyped && !then.lipTyped) {
      notes.add("Both lips are taken as alike: type them where the two wheels differ in them.");
    }
    if (camber.equals(UPRIGHT)) {
      notes.add("Upright to ± 1.5° is assumed: camber was neither typed nor measured.");
    }
    taken("camber", AlignedFigure.CAMBER, "Camber");
    taken("kpi", AlignedFigure.KPI, "KPI");
  }

  // --- what comes of it

  private List<Line> changes(WheelTried tried, boolean kpiKnown) {
    List<Line> lines = new ArrayList<>();
    lines.add(
        changed(
            "Track",
            tried,
            t -> t.change().trackMm(),
            "+ wider, the same wheel on both sides: − 2 · change of offset · cos camber"));
    AlignedFinding track = measured.of(AlignedFigure.TRACK);
    if (track.counts()) {
      Figure change = tried.of(t -> t.change().trackMm());
      lines.add(
          new Line(
              "Track, wheel centres",
              lengths.figure(track.value().plus(change)),
              "was " + lengths.figure(track.value()).words() + ", as measured"));
    }
    if (card.layout().steered()) {
      scrub(lines, tried, kpiKnown);
    }
    lines.add(
        changed("Inner lip", tried, t -> t.change().innerLipInboardMm(), "+ goes further inboard"));
    lines.add(
        changed(
            "Outer lip", tried, t -> t.change().outerLipOutboardMm(), "+ goes further outboard"));
    return lines;
  }

  private void scrub(List<Line> lines, WheelTried tried, boolean kpiKnown) {
    if (!kpiKnown) {
      lines.add(new Line("Scrub", null, "needs KPI: type it below, or measure it"));
      return;
    }
    lines.add(
        changed(
            "Scrub, by the loaded radius",
            tried,
            t -> t.change().scrubByRadiusMm(),
            "− (cos camber · tan KPI + sin camber) · change of loaded radius, and no more than"
                + " that"));
    lines.add(
        changed(
            "Scrub, by the offset",
            tried,
            t -> t.change().scrubByOffsetMm(),
            "− change of offset less spacer · (cos camber − tan KPI · sin camber)"));
    lines.add(
        changed(
            "Scrub, both together",
            tried,
            t -> t.change().scrubMm(),
            "+ kingpin meets the ground further inboard"));
  }

  private Line changed(
      String name, WheelTried tried, ToDoubleFunction<WheelOnPaper> of, String words) {
    return new Line(name, lengths.signedFigure(tried.of(of)), words);
  }

  private void sizes(String title, WheelTyped wheel) {
    blocks.add(
        new Block(
            title,
            List.of(
                new Line(
                    "Tyre's diameter, by its name",
                    lengths.figure(wheel.diameterMm()),
                    "the tyre itself may stand up to 3 % lower"),
                new Line("Section width, by its name", lengths.figure(wheel.sectionMm()), ""),
                new Line("Loaded radius", lengths.figure(wheel.loadedMm()), wheel.loadedFrom),
                new Line("Offset", lengths.signedFigure(wheel.offset()), offset(wheel)),
                new Line("Backspacing", lengths.figure(wheel.backspacing()), backspacing(wheel)))));
  }

  private String offset(WheelTyped wheel) {
    String mm =
        a.unit() == LengthUnit.INCH
            ? Rounded.signed(wheel.offset(), 1, "mm", 0).words() + "; "
            : "";
    return mm
        + (wheel.byBackspacing
            ? "backspacing − (rim's width + 2 lips) / 2; " + lip(wheel)
            : "as typed");
  }

  private String backspacing(WheelTyped wheel) {
    return wheel.byBackspacing ? "as typed" : "offset + (rim's width + 2 lips) / 2; " + lip(wheel);
  }

  private String lip(WheelTyped wheel) {
    return "lip " + lengths.figure(wheel.lip()).words() + (wheel.lipTyped ? "" : ", assumed");
  }

  /** Camber or KPI as typed, else as measured, else as assumed; null where nothing is. */
  private Figure lean(
      String name, String label, String hint, AlignedFigure figure, Figure otherwise) {
    TypedAngle angle =
        a.angle(name, label)
            .hint(hint)
            .check(
                x -> Math.abs(x.rad()) <= MOST_LEAN_RAD, "That leans more than 30°; no wheel does.")
            .read();
    if (a.has(name)) {
      return good.rad(name, angle);
    }
    AlignedFinding found = measured.of(figure);
    return found.counts() ? found.value() : otherwise;
  }

  /** What was not typed but measured is said with what comes of it. */
  private void taken(String name, AlignedFigure figure, String word) {
    AlignedFinding found = measured.of(figure);
    if (!a.has(name) && found.counts()) {
      notes.add(word + " " + degrees(found) + " is taken, as measured.");
    }
  }

  private static String degrees(AlignedFinding found) {
    return Rounded.degrees(found.value()).words();
  }

  private String empty(AlignedFigure figure, String otherwise) {
    AlignedFinding found = measured.of(figure);
    return found.counts() ? " Empty: " + degrees(found) + ", as measured." : otherwise;
  }
}
