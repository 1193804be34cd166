package spindlebook.align;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import spindlebook.align.OnPaperView.Block;
import spindlebook.align.OnPaperView.Line;
import spindlebook.alignment.MountedWheel;
import spindlebook.alignment.Propagated;
import spindlebook.alignment.WheelGap;
import spindlebook.alignment.WheelOnPaper;
import spindlebook.card.Capital;
import spindlebook.corner.Card;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Lengths;
import spindlebook.web.Posted;
import spindlebook.web.State;

/** A wheel and tyre tried on paper: gaps, track, scrub, and the frame's way to the ground. */
final class WheelPaper {
  private static final int CAMBER = 2 * WheelTyped.SIZES;
  private static final int KPI = CAMBER + 1;
  private static final int GAP = CAMBER + 2;

  private final Card card;
  private final Posted typed;
  private final LengthUnit unit;
  private final Lengths lengths;
  private final TypedFigures good;
  private final WheelTyped now;
  private final WheelTyped then;
  private final GroundPaper ground;
  private final List<Block> blocks = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  WheelPaper(Card card, Posted typed) {
    this.card = card;
    this.typed = typed;
    this.unit = card.details().unit();
    this.lengths = new Lengths(unit);
    this.good = new TypedFigures(typed, unit);
    this.now = new WheelTyped("now", "that is on", typed, unit);
    this.then = new WheelTyped("then", "tried", typed, unit);
    this.ground = new GroundPaper(card, typed, good);
  }

  OnPaperView view() {
    if (typed.has("now-tyre") || typed.has("then-tyre")) {
      wheels();
    }
    ground.add(blocks, notes);
    if (!blocks.isEmpty()) {
      notes.add(good.words());
    }
    return new OnPaperView(
        "/corners/" + card.corner() + "/wheel", parts(), "Try it", blocks, notes);
  }

  private void wheels() {
    now.read(good);
    then.read(good);
    Figure camber = lean("camber");
    Figure kpi = lean("kpi");
    Map<WheelGap, Figure> measured = measured();
    if (!typed.ok()) {
      return;
    }
    List<Figure> inputs = new ArrayList<>(now.figures());
    inputs.addAll(then.figures());
    inputs.add(camber);
    inputs.add(kpi);
    sizes("The wheel that is on", now, inputs, 0);
    sizes("The wheel tried", then, inputs, WheelTyped.SIZES);
    blocks.add(new Block("What it changes", changes(inputs)));
    if (measured.isEmpty()) {
      notes.add("Type gaps you measured around the present wheel to see what becomes of them.");
      return;
    }
    List<Line> gaps = new ArrayList<>();
    measured.forEach((gap, mm) -> gaps.add(gap(gap, mm, inputs)));
    blocks.add(new Block("Gaps as they will be, wheel straight", gaps));
    notes.add("At lock the tyre's gaps change by more or less than this: read them once fitted.");
  }

  private Map<WheelGap, Figure> measured() {
    Map<WheelGap, Figure> measured = new EnumMap<>(WheelGap.class);
    for (WheelGap gap : WheelGap.values()) {
      TypedLength mm = typed.lengthFromZero(Posted.word(gap), unit);
      if (mm != null) {
        measured.put(gap, good.mm(Posted.word(gap), mm));
      }
    }
    return measured;
  }

  // --- what comes of it

  private List<Line> changes(List<Figure> inputs) {
    return List.of(
        changed("Track", inputs, t -> t.change().trackMm(), trackWords()),
        changed(
            "Scrub",
            inputs,
            t -> t.scrubMm().value(),
            "+ kingpin meets the ground further inboard. − ΔE (cos γ − tan K sin γ) − (cos γ tan K"
                + " + sin γ) ΔR: γ camber, K KPI, E offset less spacer, R loaded radius"),
        changed("Inner lip", inputs, t -> t.change().innerLipInboardMm(), "+ goes further inboard"),
        changed(
            "Outer lip", inputs, t -> t.change().outerLipOutboardMm(), "+ goes further outboard"));
  }

  private static String trackWords() {
    return "+ wider, the same wheel on both sides: − 2 · change of offset · cos camber";
  }

  private Line changed(
      String name, List<Figure> inputs, ToDoubleFunction<WheelOnPaper> of, String words) {
    Figure mm = Propagated.of(inputs, v -> of.applyAsDouble(tried(v, Map.of())));
    return new Line(name, lengths.signedFigure(mm), words, null);
  }

  private WheelOnPaper tried(double[] v, Map<WheelGap, Figure> measured) {
    MountedWheel on = now.of(v, 0);
    MountedWheel planned = then.of(v, WheelTyped.SIZES);
    return WheelOnPaper.tried(on, planned, measured, v[CAMBER], v[KPI]);
  }

  private Line gap(WheelGap gap, Figure measured, List<Figure> inputs) {
    List<Figure> all = new ArrayList<>(inputs);
    all.add(measured);
    Figure mm =
        Propagated.of(
            all, v -> tried(v, Map.of(gap, Figure.exact(v[GAP]))).gapsMm().get(gap).value());
    String words = "was " + lengths.text(measured.value()) + said(mm) + assumed(gap);
    return new Line(Capital.of(gap.words()), lengths.signedFigure(mm), words, state(mm));
  }

  private static String said(Figure mm) {
    if (mm.value() <= 0) {
      return mm.value() + mm.U() <= 0 ? "; it touches" : "; it touches, unless the ± helps";
    }
    return mm.value() - mm.U() > 0 ? "" : "; within its ± it may touch";
  }

  private static State state(Figure mm) {
    if (mm.value() - mm.U() > 0) {
      return null;
    }
    return mm.value() + mm.U() <= 0 ? State.SHORT : State.CANT_TELL;
  }

  private String assumed(WheelGap gap) {
    return switch (gap) {
      case BARREL -> "; a barrel as thick and a drop centre as placed are assumed";
      case SPOKES ->
          now.spokesTyped() && then.spokesTyped()
              ? ""
              : "; spokes as far out on both wheels are assumed";
      default -> "";
    };
  }

  private void sizes(String title, WheelTyped wheel, List<Figure> inputs, int at) {
    blocks.add(
        new Block(
            title,
            List.of(
                new Line(
                    "Tyre's diameter, by its name",
                    lengths.figure(wheel.diameterMm()),
                    "the tyre itself may stand up to 3 % lower",
                    null),
                new Line(
                    "Offset",
                    lengths.signedFigure(
                        Propagated.of(inputs, v -> wheel.of(v, at).wheel().offsetMm())),
                    "backspacing − (rim's width + 2 lips) / 2",
                    null),
                new Line(
                    "Backspacing",
                    lengths.figure(
                        Propagated.of(inputs, v -> wheel.of(v, at).wheel().backspacingMm())),
                    "",
                    null))));
  }

  /** Camber or KPI; 0 where nothing was typed. */
  private Figure lean(String name) {
    TypedAngle angle = typed.angle(name);
    if (angle != null && Math.abs(angle.rad()) > Math.toRadians(45)) {
      typed.wrong(name, "That leans more than 45°; no wheel does.");
    }
    return good.rad(name, angle);
  }

  // --- what is typed

  private List<FormPart> parts() {
    List<FormPart> parts = new ArrayList<>();
    now.parts(parts);
    then.parts(parts);
    parts.add(field("camber", "Camber", "+ top outward; empty: upright.", "°"));
    parts.add(field("kpi", "KPI", "+ top inboard; empty: upright.", "°"));
    List<FormPart> gaps = new ArrayList<>();
    boolean open = false;
    for (WheelGap gap : WheelGap.values()) {
      gaps.add(field(Posted.word(gap), Capital.of(gap.words()), "", unit.word()));
      open |= typed.has(Posted.word(gap));
    }
    parts.add(new FormPart.More("Gaps measured around the wheel that is on", open, gaps));
    parts.add(ground.part());
    parts.add(good.part());
    return parts;
  }

  private FormPart field(String name, String label, String hint, String word) {
    return new FormPart.Typed(typed.fill(Field.of(name, label).hint(hint).unit(word)));
  }
}
