package spindlebook.sums;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import spindlebook.page.Asked;
import spindlebook.parts.MountedWheel;
import spindlebook.parts.Tyre;
import spindlebook.parts.TyreSize;
import spindlebook.parts.Wheel;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Propagated;
import spindlebook.units.TextRead;
import spindlebook.units.TypedLength;

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

  private static final String ONE_OF_THEM = "Type one of the two: offset, or backspacing.";

  private final TyreSize size;
  private final List<Figure> figures;
  final boolean byBackspacing;
  final boolean lipTyped;
  final String loadedFrom;

  private WheelTyped(
      TyreSize size,
      List<Figure> figures,
      boolean byBackspacing,
      boolean lipTyped,
      String loadedFrom) {
    this.size = size;
    this.figures = List.copyOf(figures);
    this.byBackspacing = byBackspacing;
    this.lipTyped = lipTyped;
    this.loadedFrom = loadedFrom;
  }

  /**
   * Null as long as it is not told without a fault.
   *
   * @param which what the names of its boxes begin with; {@code words} what their labels end in
   * @param givenMm the loaded radius known already, when none is typed; null for none
   */
  static WheelTyped ask(Asked a, TypedFigures good, String which, String words, Figure givenMm) {
    String wheel = ", wheel " + words;
    TyreSize size =
        a.typed(which + "-tyre", "Tyre " + words, text -> tyre(a, which + "-tyre", text))
            .hint("Such as 35x12.50R15 or 315/70R17.")
            .needed(((TextRead.Refused<TyreSize>) TyreSize.read("")).sentence());
    TypedLength width =
        a.length(which + "-width", "Rim's width" + wheel)
            .hint("As stamped, between the bead seats.")
            .check(
                l -> l.mm() >= LEAST_WIDTH_MM && l.mm() <= MOST_MM,
                "Type the rim's width, from 2 in to 20 in.")
            .needed("Type the rim's width, such as 8.5 in.");
    TypedLength offset =
        a.signed(which + "-offset", "Offset" + wheel)
            .hint(
                "+ mounting face outboard of the rim's middle, − inboard. Stamped in mm: type"
                    + " −12 mm.")
            .check(l -> !a.has(which + "-backspacing"), ONE_OF_THEM)
            .check(
                l -> Math.abs(l.mm()) <= MOST_OFFSET_MM,
                "That is over 8 in (200 mm): type mm behind it if mm are meant, such as −12 mm.")
            .read();
    TypedLength back =
        a.length(which + "-backspacing", "or backspacing" + wheel)
            .hint("Mounting face to the inner lip's edge, the wheel laid face down.")
            .check(l -> l.mm() <= MOST_MM, "No wheel has that much: type 20 in or less.")
            .read();
    if (!a.has(which + "-offset") && !a.has(which + "-backspacing")) {
      a.demand(which + "-offset", ONE_OF_THEM);
    }
    return a.more(
        "Lip, spacer, spokes and loaded radius" + wheel,
        () -> {
          TypedLength lip =
              a.length(which + "-lip", "Lip beyond each bead seat" + wheel)
                  .hint(
                      "Empty: 1/2 in (12.7 mm) ± 1/4 assumed, a habit of the trade; real ones 3/8"
                          + " to 3/4 in.")
                  .check(
                      l -> l.mm() <= MOST_LIP_MM, "No lip is that wide: type 2 in (50 mm) or less.")
                  .read();
          TypedLength spacer =
              a.length(which + "-spacer", "Spacer" + wheel)
                  .hint("Empty: none.")
                  .check(
                      l -> l.mm() <= MOST_OFFSET_MM, "No spacer is that thick: type 8 in or less.")
                  .read();
          TypedLength spokes =
              a.signed(which + "-spokes", "Mounting face out to the back of the spokes" + wheel)
                  .hint("Where the nearest part stands; + outboard. Empty at both wheels: alike.")
                  .check(
                      l -> Math.abs(l.mm()) <= MOST_OFFSET_MM,
                      "No spokes stand that far off: type 8 in (200 mm) or less.")
                  .read();
          TypedLength loaded =
              a.length(which + "-loaded", "Loaded radius" + wheel)
                  .hint(
                      "Wheel's middle to the ground, loaded. Empty at both wheels: half the name's"
                          + " diameter.")
                  .check(
                      l ->
                          size == null
                              || (l.mm() >= LEAST_LOADED * size.freeRadiusMm()
                                  && l.mm() <= size.freeRadiusMm() * (1 + NAME_UNSURE)),
                      "Type the loaded radius, wheel's middle to the ground: half the tyre's"
                          + " height or less.")
                  .read();
          if (!a.ok() || size == null || width == null || (offset == null && back == null)) {
            return null;
          }
          Figure free = byName(size, "free radius", size.freeRadiusMm());
          boolean byGiven = loaded == null && givenMm != null;
          return new WheelTyped(
              size,
              List.of(
                  // A rim's width is a nominal number, stamped; nobody measured it.
                  Figure.exact(width.mm()),
                  good.mm(which + "-place", back != null ? back : offset),
                  lip == null
                      ? TypedFigures.assumed("lip", Wheel.USUAL_LIP_MM, LIP_UNSURE_MM)
                      : good.mm(which + "-lip", lip),
                  spacer == null ? Figure.exact(0) : good.mm(which + "-spacer", spacer),
                  spokes == null ? Figure.exact(0) : good.mm(which + "-spokes", spokes),
                  free,
                  byGiven ? givenMm : loaded == null ? free : good.mm(which + "-loaded", loaded),
                  byName(size, "section", size.widthMm())),
              back != null,
              lip != null,
              loaded != null
                  ? "as typed"
                  : byGiven
                      ? "as given for this corner"
                      : "half the name's diameter, as it stands unloaded; type it to know");
        });
  }

  private static TyreSize tyre(Asked a, String name, String text) {
    TextRead<TyreSize> read = TyreSize.read(text);
    if (read instanceof TextRead.Refused<TyreSize> refused) {
      a.wrong(name, refused.sentence());
    }
    return read.plain().orElse(null);
  }

  private static Figure byName(TyreSize size, String what, double mm) {
    return TypedFigures.assumed(what + " of " + tyreName(size), mm, NAME_UNSURE * mm);
  }

  /** However it was spaced and in whatever capitals. */
  private static String tyreName(TyreSize size) {
    return size.text().toUpperCase(Locale.ROOT).replace('×', 'X').replaceAll("\\s+", "");
  }

  boolean sameTyreAs(WheelTyped other) {
    return tyreName(size).equals(tyreName(other.size));
  }

  List<Figure> figures() {
    return figures;
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
}
