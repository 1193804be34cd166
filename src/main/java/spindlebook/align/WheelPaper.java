package spindlebook.align;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.align.OnPaperView.Block;
import spindlebook.align.OnPaperView.Line;
import spindlebook.alignment.GroundAtBump;
import spindlebook.alignment.MountedWheel;
import spindlebook.alignment.Tyre;
import spindlebook.alignment.TyreSize;
import spindlebook.alignment.Wheel;
import spindlebook.alignment.WheelGap;
import spindlebook.alignment.WheelOnPaper;
import spindlebook.corner.Card;
import spindlebook.corner.Dimension;
import spindlebook.travel.CornerTravel;
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
  private final Card card;
  private final Posted typed;
  private final LengthUnit unit;
  private final Lengths lengths;
  private final List<Block> blocks = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();

  WheelPaper(Card card, Posted typed) {
    this.card = card;
    this.typed = typed;
    this.unit = card.details().unit();
    this.lengths = new Lengths(unit);
  }

  OnPaperView view() {
    if (typed.has("now-tyre") || typed.has("then-tyre")) {
      wheels();
    }
    ground();
    return new OnPaperView(
        "/corners/" + card.corner() + "/wheel", parts(), "Try it", blocks, notes);
  }

  private void wheels() {
    MountedWheel now = mounted("now");
    MountedWheel then = mounted("then");
    double camberRad = rad("camber");
    double kpiRad = rad("kpi");
    Map<WheelGap, Figure> measured = new EnumMap<>(WheelGap.class);
    for (WheelGap gap : WheelGap.values()) {
      TypedLength mm = typed.lengthFromZero(Posted.word(gap), unit);
      if (mm != null) {
        measured.put(gap, Figure.exact(mm.mm()));
      }
    }
    if (!typed.ok()) {
      return;
    }
    sizes("The wheel that is on", now);
    sizes("The wheel tried", then);
    WheelOnPaper tried = WheelOnPaper.tried(now, then, measured, camberRad, kpiRad);
    blocks.add(
        new Block(
            "What it changes",
            List.of(
                new Line(
                    "Track",
                    lengths.signedFigure(tried.change().trackMm()),
                    "both sides alike: − 2 · change of offset · cos camber",
                    null),
                new Line(
                    "Scrub",
                    lengths.signedFigure(tried.scrubMm()),
                    "− ΔE (cos γ − tan K sin γ) − (cos γ tan K + sin γ) ΔR; γ camber, K KPI, E"
                        + " offset, R loaded radius; + axis meets the ground further inboard",
                    null),
                new Line(
                    "Inner lip goes inboard",
                    lengths.signedFigure(tried.change().innerLipInboardMm()),
                    "",
                    null),
                new Line(
                    "Outer lip goes outboard",
                    lengths.signedFigure(tried.change().outerLipOutboardMm()),
                    "",
                    null))));
    List<Line> gaps = new ArrayList<>();
    tried.gapsMm().entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(g -> gaps.add(gap(g.getKey(), g.getValue())));
    if (gaps.isEmpty()) {
      notes.add("Type gaps you measured around the present wheel to see what becomes of them.");
    } else {
      blocks.add(new Block("Gaps as they will be, wheel straight", gaps));
      notes.add("At lock the tyre's gaps change by more or less than this: read them once fitted.");
    }
  }

  private Line gap(WheelGap gap, Figure mm) {
    return new Line(
        gap.words(),
        lengths.signedFigure(mm),
        mm.value() > 0 ? "" : "it touches",
        mm.value() > 0 ? null : State.SHORT);
  }

  private void sizes(String title, MountedWheel mounted) {
    Wheel wheel = mounted.wheel();
    blocks.add(
        new Block(
            title,
            List.of(
                new Line(
                    "Tyre's diameter, by its name",
                    lengths.figure(2 * mounted.tyre().freeRadiusMm().value()),
                    "the tyre itself may stand up to 3 % lower",
                    null),
                new Line("Offset", lengths.signedFigure(wheel.offsetMm()), "", null),
                new Line("Backspacing", lengths.figure(wheel.backspacingMm()), "", null))));
  }

  private MountedWheel mounted(String which) {
    TyreSize size = size(which + "-tyre");
    TypedLength width =
        typed.neededLength(which + "-width", unit, "Type the rim's width, such as 8.5 in.");
    TypedLength back = typed.lengthFromZero(which + "-backspacing", unit);
    TypedLength offset = typed.length(which + "-offset", unit);
    TypedLength lip = typed.lengthFromZero(which + "-lip", unit);
    TypedLength spacer = typed.lengthFromZero(which + "-spacer", unit);
    TypedLength loaded = typed.lengthFromZero(which + "-loaded", unit);
    if (typed.problem(which + "-offset").isEmpty()
        && typed.problem(which + "-backspacing").isEmpty()
        && (back == null) == (offset == null)) {
      typed.wrong(which + "-offset", "Type one of the two: offset, or backspacing.");
    }
    if (width != null && width.mm() == 0) {
      typed.wrong(which + "-width", "A rim is wider than nothing.");
    }
    if (!typed.ok()) {
      return null;
    }
    double lipMm = lip == null ? Wheel.USUAL_LIP_MM : lip.mm();
    Wheel wheel =
        back == null
            ? new Wheel(size.rimMm(), width.mm(), offset.mm(), lipMm)
            : Wheel.byBackspacing(size.rimMm(), width.mm(), back.mm(), lipMm);
    double radiusMm = loaded == null || loaded.mm() == 0 ? size.freeRadiusMm() : loaded.mm();
    Tyre tyre =
        new Tyre(
            Figure.exact(size.freeRadiusMm()),
            Figure.exact(radiusMm),
            Figure.exact(radiusMm),
            Figure.exact(size.widthMm()));
    return new MountedWheel(wheel, spacer == null ? 0 : spacer.mm(), 0, tyre);
  }

  private TyreSize size(String name) {
    TyreSize.Reading reading = TyreSize.read(typed.text(name));
    if (reading instanceof TyreSize.Size read) {
      return read.size();
    }
    typed.wrong(name, ((TyreSize.Refused) reading).sentence());
    return null;
  }

  private double rad(String name) {
    TypedAngle angle = typed.angle(name);
    if (angle != null && Math.abs(angle.rad()) > Math.toRadians(45)) {
      typed.wrong(name, "That leans more than 45°; no wheel does.");
    }
    return angle == null ? 0 : angle.rad();
  }

  // --- the frame at full bump

  private void ground() {
    TypedLength squashed = typed.lengthFromZero("squashed", unit);
    TypedLength wanted = typed.lengthFromZero("wanted", unit);
    Double ratio = ratio();
    if (squashed == null || !typed.ok()) {
      return;
    }
    Optional<Figure> bump = CornerTravel.of(card).bump().stop().map(s -> s.positionMm());
    Optional<Double> down = card.given(Dimension.MARK_TO_LOWEST_FRAME).map(g -> g.length().mm());
    if (bump.isEmpty() || down.isEmpty()) {
      notes.add(
          bump.isEmpty()
              ? "The frame at full bump needs to know where the stop is solid: measure that first."
              : "The frame at full bump needs the frame mark's way down to the lowest frame point,"
                  + " under what is given.");
      return;
    }
    Figure clearance =
        GroundAtBump.clearanceMm(Figure.exact(squashed.mm()), bump.get(), Figure.exact(down.get()));
    List<Line> lines = new ArrayList<>();
    lines.add(
        new Line(
            "Frame to ground, tyre squashed",
            lengths.signedFigure(clearance),
            "squashed radius − wheel position at full bump − mark to lowest frame point",
            null));
    if (wanted != null && ratio != null) {
      double stepMm = unit == LengthUnit.INCH ? 25.4 / 8 : 1;
      String spacer =
          GroundAtBump.spacer(clearance, wanted.mm(), Figure.exact(ratio), stepMm)
              .map(s -> "Add " + lengths.text(s.count() * stepMm) + " of bump-stop spacer")
              .orElse("No spacer is needed");
      lines.add(
          new Line(
              spacer,
              null,
              "for "
                  + lengths.text(wanted.mm())
                  + " surely kept, its ± counted; in steps of "
                  + lengths.text(stepMm),
              null));
    }
    blocks.add(new Block("The frame at full bump", lines));
  }

  /** How much the stop's gap closes for each of wheel travel. */
  private Double ratio() {
    if (!typed.has("ratio")) {
      return null;
    }
    try {
      double ratio = Double.parseDouble(typed.text("ratio").strip().replace(',', '.'));
      if (ratio > 0 && ratio <= 3) {
        return ratio;
      }
    } catch (NumberFormatException e) {
      // Said below, with the numbers out of range.
    }
    typed.wrong("ratio", "Type a number between 0 and 3, such as 0.6.");
    return null;
  }

  // --- what is typed

  private List<FormPart> parts() {
    List<FormPart> parts = new ArrayList<>();
    wheel(parts, "now", "that is on");
    wheel(parts, "then", "tried");
    parts.add(field("camber", "Camber", "+ top outward.", "°"));
    parts.add(field("kpi", "KPI", "+ top inboard.", "°"));
    List<FormPart> gaps = new ArrayList<>();
    boolean open = false;
    for (WheelGap gap : WheelGap.values()) {
      gaps.add(field(Posted.word(gap), spindlebook.card.Capital.of(gap.words()), "", unit.word()));
      open |= typed.has(Posted.word(gap));
    }
    parts.add(new FormPart.More("Gaps measured around the wheel that is on", open, gaps));
    parts.add(
        new FormPart.More(
            "The frame at full bump",
            typed.has("squashed"),
            List.of(
                field(
                    "squashed",
                    "Squashed radius of the tyre",
                    "Spindle to ground, flattened.",
                    unit.word()),
                field("wanted", "Frame to ground wanted", "", unit.word()),
                field("ratio", "Stop's gap closes, for 1 of wheel", "Such as 0.6.", ""))));
    return parts;
  }

  private void wheel(List<FormPart> parts, String which, String words) {
    parts.add(field(which + "-tyre", "Tyre " + words, "Such as 35x12.50R15 or 315/70R17.", ""));
    parts.add(
        field(
            which + "-width",
            "Rim's width, wheel " + words,
            "Between the bead seats.",
            unit.word()));
    parts.add(
        field(
            which + "-offset",
            "Offset, wheel " + words,
            "+ mounting face outboard of the middle.",
            unit.word()));
    parts.add(field(which + "-backspacing", "or backspacing, wheel " + words, "", unit.word()));
    parts.add(
        new FormPart.More(
            "Lip, spacer and loaded radius, wheel " + words,
            typed.has(which + "-lip")
                || typed.has(which + "-spacer")
                || typed.has(which + "-loaded"),
            List.of(
                field(
                    which + "-lip",
                    "Lip beyond each bead seat, wheel " + words,
                    "1/2 in assumed: a habit of the trade, real ones 3/8 to 3/4 in.",
                    unit.word()),
                field(which + "-spacer", "Spacer, wheel " + words, "", unit.word()),
                field(
                    which + "-loaded",
                    "Loaded radius, wheel " + words,
                    "Empty: half the diameter of the name.",
                    unit.word()))));
  }

  private FormPart field(String name, String label, String hint, String word) {
    return new FormPart.Typed(typed.fill(Field.of(name, label).hint(hint).unit(word)));
  }
}
