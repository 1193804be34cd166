package spindlebook.align;

import java.util.ArrayList;
import java.util.List;
import spindlebook.alignment.MountedWheel;
import spindlebook.alignment.Tyre;
import spindlebook.alignment.TyreSize;
import spindlebook.alignment.Wheel;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedLength;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Posted;

/**
 * A wheel and tyre as typed: its sizes as figures, and the wheel that any such sizes make, so that
 * what is computed from it can be asked how it moves with each of them.
 */
final class WheelTyped {
  /** How many sizes {@link #figures} gives. */
  static final int SIZES = 8;

  /** Real lips run from 3/8 to 3/4 in: common practice, no source. */
  private static final double LIP_UNSURE_MM = 25.4 / 4;

  /** A tyre stands up to 3 % lower than its name says: common practice, no source. */
  private static final double NAME_UNSURE = 0.03;

  private static final double LEAST_WIDTH_MM = 50.8;

  private final String which;
  private final String words;
  private final Posted typed;
  private final LengthUnit unit;
  private TyreSize size;
  private boolean byBackspacing;
  private final List<Figure> figures = new ArrayList<>();

  WheelTyped(String which, String words, Posted typed, LengthUnit unit) {
    this.which = which;
    this.words = words;
    this.typed = typed;
    this.unit = unit;
  }

  /** Reads the fields; what is wrong is told of in them. */
  void read(TypedFigures good) {
    size = size();
    TypedLength width =
        typed.neededLength(name("width"), unit, "Type the rim's width, such as 8.5 in.");
    TypedLength back = typed.lengthFromZero(name("backspacing"), unit);
    TypedLength offset = typed.length(name("offset"), unit);
    TypedLength lip = typed.lengthFromZero(name("lip"), unit);
    TypedLength spacer = typed.lengthFromZero(name("spacer"), unit);
    TypedLength spokes = typed.length(name("spokes"), unit);
    TypedLength loaded = typed.lengthFromZero(name("loaded"), unit);
    if (typed.problem(name("offset")).isEmpty()
        && typed.problem(name("backspacing")).isEmpty()
        && (back == null) == (offset == null)) {
      typed.wrong(name("offset"), "Type one of the two: offset, or backspacing.");
    }
    if (width != null && width.mm() < LEAST_WIDTH_MM) {
      typed.wrong(name("width"), "A rim that narrow is not known here: type 2 in or more.");
    }
    if (!typed.ok()) {
      return;
    }
    byBackspacing = back != null;
    // A rim's width is a nominal number, stamped; nobody measured it.
    figures.add(Figure.exact(width.mm()));
    figures.add(good.mm(name("place"), byBackspacing ? back : offset));
    figures.add(
        lip == null
            ? TypedFigures.assumed(name("lip"), Wheel.USUAL_LIP_MM, LIP_UNSURE_MM)
            : good.mm(name("lip"), lip));
    figures.add(spacer == null ? Figure.exact(0) : good.mm(name("spacer"), spacer));
    figures.add(spokes == null ? Figure.exact(0) : good.mm(name("spokes"), spokes));
    Figure free = byName("free radius", size.freeRadiusMm());
    figures.add(free);
    figures.add(loaded == null || loaded.mm() == 0 ? free : good.mm(name("loaded"), loaded));
    figures.add(byName("section", size.widthMm()));
  }

  private Figure byName(String what, double mm) {
    return TypedFigures.assumed(name(what), mm, NAME_UNSURE * mm);
  }

  private TyreSize size() {
    TyreSize.Reading reading = TyreSize.read(typed.text(name("tyre")));
    if (reading instanceof TyreSize.Size read) {
      return read.size();
    }
    typed.wrong(name("tyre"), ((TyreSize.Refused) reading).sentence());
    return null;
  }

  List<Figure> figures() {
    return List.copyOf(figures);
  }

  Figure diameterMm() {
    return figures.get(5).times(2);
  }

  boolean spokesTyped() {
    return typed.has(name("spokes"));
  }

  /** The wheel that these sizes make, from place {@code at} on; none below nothing. */
  MountedWheel of(double[] sizes, int at) {
    double widthMm = sizes[at];
    double lipMm = Math.max(0, sizes[at + 2]);
    Wheel wheel =
        byBackspacing
            ? Wheel.byBackspacing(size.rimMm(), widthMm, sizes[at + 1], lipMm)
            : new Wheel(size.rimMm(), widthMm, sizes[at + 1], lipMm);
    Figure loaded = Figure.exact(sizes[at + 6]);
    Tyre tyre = new Tyre(Figure.exact(sizes[at + 5]), loaded, loaded, Figure.exact(sizes[at + 7]));
    return new MountedWheel(wheel, Math.max(0, sizes[at + 3]), sizes[at + 4], tyre);
  }

  void parts(List<FormPart> parts) {
    parts.add(field("tyre", "Tyre " + words, "Such as 35x12.50R15 or 315/70R17.", ""));
    parts.add(field("width", "Rim's width, wheel " + words, "Between the bead seats.", word()));
    parts.add(
        field(
            "offset", "Offset, wheel " + words, "+ mounting face outboard of the middle.", word()));
    parts.add(
        field(
            "backspacing",
            "or backspacing, wheel " + words,
            "Mounting face to the inner lip's edge.",
            word()));
    parts.add(
        new FormPart.More(
            "Lip, spacer, spokes and loaded radius, wheel " + words,
            typed.has(name("lip"))
                || typed.has(name("spacer"))
                || typed.has(name("spokes"))
                || typed.has(name("loaded")),
            List.of(
                field(
                    "lip",
                    "Lip beyond each bead seat, wheel " + words,
                    "1/2 in assumed, ± 1/4: a habit of the trade, real ones 3/8 to 3/4 in.",
                    word()),
                field("spacer", "Spacer, wheel " + words, "Empty: none.", word()),
                field(
                    "spokes",
                    "Mounting face out to the back of the spokes, wheel " + words,
                    "Where the nearest part stands; + outboard. Empty at both: alike.",
                    word()),
                field(
                    "loaded",
                    "Loaded radius, wheel " + words,
                    "Empty: half the diameter of the name.",
                    word()))));
  }

  private FormPart field(String what, String label, String hint, String unitWord) {
    return new FormPart.Typed(typed.fill(Field.of(name(what), label).hint(hint).unit(unitWord)));
  }

  private String word() {
    return unit.word();
  }

  private String name(String what) {
    return which + "-" + what;
  }
}
