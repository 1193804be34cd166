package spindlebook.align;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import spindlebook.alignment.MountedWheel;
import spindlebook.alignment.Propagated;
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

  private static final int LIP = 2;
  private static final int FREE = 5;
  private static final int LOADED = 6;
  private static final int SECTION = 7;
  private static final List<String> FIELDS =
      List.of("tyre", "width", "offset", "backspacing", "lip", "spacer", "spokes", "loaded");

  /**
   * Real lips run from 3/8 to 3/4 in: common practice, no source. Where neither wheel's was typed
   * both are taken as alike, as far off before and after.
   */
  private static final double LIP_UNSURE_MM = 25.4 / 4;

  /**
   * A tyre stands up to 3 % lower than its name says: common practice, no source. Two of one name
   * are taken as the same tyre, as far off both times.
   */
  private static final double NAME_UNSURE = 0.03;

  private static final double LEAST_WIDTH_MM = 50.8;
  private static final double MOST_MM = 20 * 25.4;
  private static final double MOST_OFFSET_MM = 8 * 25.4;
  private static final double MOST_LIP_MM = 50.8;
  private static final double LEAST_LOADED = 0.6;

  private final String which;
  private final String words;
  private final Posted typed;
  private final LengthUnit unit;
  private TyreSize size;
  private boolean byBackspacing;
  private boolean byGiven;
  private final List<Figure> figures = new ArrayList<>();

  WheelTyped(String which, String words, Posted typed, LengthUnit unit) {
    this.which = which;
    this.words = words;
    this.typed = typed;
    this.unit = unit;
  }

  /**
   * Reads the fields; what is wrong is told of in them.
   *
   * @param givenMm the loaded radius known already, when none is typed; null for none
   */
  void read(TypedFigures good, Figure givenMm) {
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
    within("width", width, LEAST_WIDTH_MM, MOST_MM, "Type the rim's width, from 2 in to 20 in.");
    within("backspacing", back, 0, MOST_MM, "No wheel has that much: type 20 in or less.");
    within(
        "offset",
        offset,
        -MOST_OFFSET_MM,
        MOST_OFFSET_MM,
        "That is over 8 in (200 mm): type mm behind it if mm are meant, such as −12 mm.");
    within("lip", lip, 0, MOST_LIP_MM, "No lip is that wide: type 2 in (50 mm) or less.");
    within("spacer", spacer, 0, MOST_OFFSET_MM, "No spacer is that thick: type 8 in or less.");
    within(
        "spokes",
        spokes,
        -MOST_OFFSET_MM,
        MOST_OFFSET_MM,
        "No spokes stand that far off: type 8 in (200 mm) or less.");
    if (size != null) {
      within(
          "loaded",
          loaded,
          LEAST_LOADED * size.freeRadiusMm(),
          size.freeRadiusMm() * (1 + NAME_UNSURE),
          "Type the loaded radius, wheel's middle to the ground: half the tyre's height or less.");
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
            ? TypedFigures.assumed("lip", Wheel.USUAL_LIP_MM, LIP_UNSURE_MM)
            : good.mm(name("lip"), lip));
    figures.add(spacer == null ? Figure.exact(0) : good.mm(name("spacer"), spacer));
    figures.add(spokes == null ? Figure.exact(0) : good.mm(name("spokes"), spokes));
    Figure free = byName("free radius", size.freeRadiusMm());
    figures.add(free);
    byGiven = loaded == null && givenMm != null;
    figures.add(byGiven ? givenMm : loaded == null ? free : good.mm(name("loaded"), loaded));
    figures.add(byName("section", size.widthMm()));
  }

  private void within(
      String what, TypedLength length, double leastMm, double mostMm, String sentence) {
    if (length != null && !(length.mm() >= leastMm && length.mm() <= mostMm)) {
      typed.wrong(name(what), sentence);
    }
  }

  private Figure byName(String what, double mm) {
    return TypedFigures.assumed(what + " of " + tyreName(), mm, NAME_UNSURE * mm);
  }

  /** However it was spaced and in whatever capitals. */
  private String tyreName() {
    return size.text().toUpperCase(Locale.ROOT).replace('×', 'X').replaceAll("\\s+", "");
  }

  boolean sameTyreAs(WheelTyped other) {
    return tyreName().equals(other.tyreName());
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
    return figures.get(FREE).times(2);
  }

  Figure loadedMm() {
    return figures.get(LOADED);
  }

  Figure sectionMm() {
    return figures.get(SECTION);
  }

  /** Whether one of the fields of this wheel was filled. */
  boolean asked() {
    return FIELDS.stream().anyMatch(this::has);
  }

  boolean has(String what) {
    return typed.has(name(what));
  }

  /** What is compared needs both wheels' or neither's. */
  void likewise(WheelTyped other, String what, String sentence) {
    if (has(what) != other.has(what)) {
      typed.wrong((has(what) ? other : this).name(what), sentence);
    }
  }

  boolean byGiven() {
    return byGiven;
  }

  boolean byBackspacing() {
    return byBackspacing;
  }

  Figure lip() {
    return figures.get(LIP);
  }

  Figure offset() {
    return of(Wheel::offsetMm);
  }

  Figure backspacing() {
    return of(Wheel::backspacingMm);
  }

  private Figure of(ToDoubleFunction<Wheel> size) {
    return Propagated.of(figures, v -> size.applyAsDouble(of(v, 0).wheel()));
  }

  /** The wheel that these sizes make, from place {@code at} on; none below nothing. */
  MountedWheel of(double[] sizes, int at) {
    double widthMm = sizes[at];
    double lipMm = Math.max(0, sizes[at + LIP]);
    Wheel wheel =
        byBackspacing
            ? Wheel.byBackspacing(size.rimMm(), widthMm, sizes[at + 1], lipMm)
            : new Wheel(size.rimMm(), widthMm, sizes[at + 1], lipMm);
    Figure loaded = Figure.exact(sizes[at + LOADED]);
    Tyre tyre =
        new Tyre(Figure.exact(sizes[at + FREE]), loaded, loaded, Figure.exact(sizes[at + SECTION]));
    return new MountedWheel(wheel, Math.max(0, sizes[at + 3]), sizes[at + 4], tyre);
  }

  void parts(List<FormPart> parts) {
    parts.add(field("tyre", "Tyre " + words, "Such as 35x12.50R15 or 315/70R17.", ""));
    parts.add(
        field(
            "width", "Rim's width, wheel " + words, "As stamped, between the bead seats.", word()));
    parts.add(
        field(
            "offset",
            "Offset, wheel " + words,
            "+ mounting face outboard of the rim's middle, − inboard. Stamped in mm: type −12 mm.",
            word()));
    parts.add(
        field(
            "backspacing",
            "or backspacing, wheel " + words,
            "Mounting face to the inner lip's edge, the wheel laid face down.",
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
                    "Empty: 1/2 in (12.7 mm) ± 1/4 assumed, a habit of the trade; real ones 3/8 to"
                        + " 3/4 in.",
                    word()),
                field("spacer", "Spacer, wheel " + words, "Empty: none.", word()),
                field(
                    "spokes",
                    "Mounting face out to the back of the spokes, wheel " + words,
                    "Where the nearest part stands; + outboard. Empty at both wheels: alike.",
                    word()),
                field(
                    "loaded",
                    "Loaded radius, wheel " + words,
                    "Wheel's middle to the ground, loaded. Empty at both wheels: half the name's"
                        + " diameter.",
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
