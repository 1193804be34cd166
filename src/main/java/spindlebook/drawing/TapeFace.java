package spindlebook.drawing;

import java.util.ArrayList;
import java.util.List;

/**
 * A piece of tape laid along a corner's motion, every coordinate worked out; the template prints it
 * and the page stretches it. Positions are wheel positions in millimetres from one zero, usually
 * ride height; up (bump) is positive.
 *
 * @param id unique on the page, letters, digits and hyphens: the drawing's own ids are made from it
 * @param standing upright, bump at the top; else lying, droop at the left
 * @param fromMm lower end of the tape, below {@code toMm}
 * @param toMm upper end
 * @param along its length in drawing units, a sixteenth of the reader's text size each
 * @param across its width in drawing units
 * @param scale what the ticks count
 * @param bands what each stretch of tape means; where two overlap the later one shows
 */
public record TapeFace(
    String id,
    boolean standing,
    double fromMm,
    double toMm,
    double along,
    double across,
    LengthScale scale,
    List<Band> bands) {
  private static final double CLOSEST_TICKS = 4;
  private static final double NUMERALS_APART = 34;

  public TapeFace {
    if (!(fromMm < toMm) || !Double.isFinite(fromMm) || !Double.isFinite(toMm)) {
      throw new IllegalArgumentException("a tape runs upward, not from " + fromMm + " to " + toMm);
    }
    bands = bands.stream().filter(b -> b.fromMm < b.toMm).toList();
  }

  /** A stretch of tape, millimetres from zero, up positive. */
  public record Band(double fromMm, double toMm, Kind kind) {
    /** What the stretch is for; what no band covers is out of reach. */
    public enum Kind {
      USABLE,
      HELD_BACK,
      PAST_A_LIMIT
    }
  }

  /**
   * A rectangle in drawing units, with its class.
   *
   * @param fill the pattern it is filled with; null where its class fills it
   */
  public record Area(String mark, String fill, double x, double y, double width, double height) {}

  /** A numeral, and where it stands along the tape in drawing units. */
  public record Numeral(double at, String text) {}

  /** The same tape shown from and to other places. */
  public TapeFace over(double lowMm, double highMm) {
    return over(lowMm, highMm, along, across);
  }

  TapeFace over(double lowMm, double highMm, double along, double across) {
    return new TapeFace(id, standing, lowMm, highMm, along, across, scale, bands);
  }

  public double width() {
    return standing ? across : along;
  }

  public double height() {
    return standing ? along : across;
  }

  /** Where a position lies, in drawing units: down from the top, or right from the left end. */
  public double at(double positionMm) {
    double share = (positionMm - fromMm) / (toMm - fromMm);
    return tenth(along * Math.max(0, Math.min(1, standing ? 1 - share : share)));
  }

  public List<Area> areas() {
    List<Area> areas = new ArrayList<>();
    for (Band band : bands) {
      String mark = "f-" + band.kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
      String fill =
          switch (band.kind()) {
            case USABLE -> null;
            case HELD_BACK -> "url(#" + id + "-h)";
            case PAST_A_LIMIT -> "url(#" + id + "-b)";
          };
      // Bars stand out at both sides: their outline tells them from the tape where their tone may
      // not.
      double out = band.kind() == Band.Kind.PAST_A_LIMIT ? 5 : 0;
      double one = Math.min(at(band.fromMm), at(band.toMm));
      double length = tenth(Math.abs(at(band.fromMm) - at(band.toMm)));
      areas.add(
          standing
              ? new Area(mark, fill, 0 - out, one, across + 2 * out, length)
              : new Area(mark, fill, one, 0 - out, length, across + 2 * out));
    }
    return areas;
  }

  /** The ticks on the usable stretch as one path: at both edges upright, at the lower one lying. */
  public String graduations() {
    StringBuilder path = new StringBuilder();
    int coarser = coarser();
    for (Band band : bands) {
      if (band.kind() == Band.Kind.USABLE) {
        long first = (long) Math.ceil(band.fromMm / scale.tickMm() - 1e-9);
        long last = (long) Math.floor(band.toMm / scale.tickMm() + 1e-9);
        for (long tick = first; tick <= last; tick++) {
          if (tick % coarser == 0) {
            String at = text(at(tick * scale.tickMm()));
            String length =
                text(Math.round(across * (standing ? 0.24 : 0.4) * scale.tickShare(tick)));
            path.append(
                standing
                    ? "M0 " + at + "h" + length + "M" + text(across) + " " + at + "h-" + length
                    : "M" + at + " " + text(across) + "v-" + length);
          }
        }
      }
    }
    return path.toString();
  }

  private int coarser() {
    int coarser = 1;
    while (scale.tickMm() * coarser * unitsPerMm() < CLOSEST_TICKS) {
      coarser *= 2;
    }
    return coarser;
  }

  private double unitsPerMm() {
    return along / (toMm - fromMm);
  }

  /** The numerals on the usable stretch, but none at zero and none cut by its ends. */
  public List<Numeral> numerals() {
    int everyNth = 1;
    while (scale.numeralMm() * everyNth * unitsPerMm() < NUMERALS_APART) {
      everyNth *= 2;
    }
    List<Numeral> numerals = new ArrayList<>();
    double inset = 10 / unitsPerMm();
    for (Band band : bands) {
      if (band.kind() == Band.Kind.USABLE) {
        long first = (long) Math.ceil((Math.max(band.fromMm, fromMm) + inset) / scale.tickMm());
        long last = (long) Math.floor((Math.min(band.toMm, toMm) - inset) / scale.tickMm());
        for (long tick = first; tick <= last; tick++) {
          if (tick != 0 && scale.numbered(tick, everyNth)) {
            numerals.add(new Numeral(at(tick * scale.tickMm()), scale.numeral(tick)));
          }
        }
      }
    }
    return numerals;
  }

  /** A place along it as a share of its length: "42.5%". */
  public String percent(double at) {
    return tenth(at / along * 100) + "%";
  }

  /** To a tenth of a drawing unit. */
  public static double tenth(double units) {
    return Math.round(units * 10) / 10.0;
  }

  private static String text(double units) {
    return units == Math.rint(units) ? Long.toString((long) units) : Double.toString(units);
  }
}
