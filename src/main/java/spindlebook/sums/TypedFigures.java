package spindlebook.sums;

import java.math.BigDecimal;
import java.math.RoundingMode;
import spindlebook.drawing.Lengths;
import spindlebook.page.Asked;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;
import spindlebook.units.LengthUnit;
import spindlebook.units.NumberText;
import spindlebook.units.TapeFormat;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * What was typed on paper as figures: each length, each angle as good as the owner says all of them
 * are (rectangular), a source of its own.
 */
final class TypedFigures {
  private static final double LEAST_GOOD_MM = 25.4 / 4;
  private static final double LEAST_GOOD_RAD = Math.toRadians(2);
  private static final int SIXTY_FOURTHS = 64;
  private static final double USUAL_RAD = Math.toRadians(0.1);
  private static final double LEAST_SIZE_MM = 25.4;
  private static final double MOST_SIZE_MM = 60 * 25.4;
  static final String SIZED = ", from 1 in (25 mm) to 5 ft (1.5 m).";

  private final Asked a;
  private final double goodMm;
  private final double goodRad;

  /** Asks how good the rest is, at the foot of the form. */
  TypedFigures(Asked a) {
    this.a = a;
    double[] good = a.last(() -> a.more("How good what you type is", () -> good(a)));
    this.goodMm = good[0];
    this.goodRad = good[1];
  }

  private static double[] good(Asked a) {
    a.said("One ± serves every length typed here, and one every angle: type that of the roughest.");
    double usualMm = a.unit() == LengthUnit.INCH ? a.unit().mm() / 16 : 1;
    TypedLength mm =
        a.length("good", "Each length is good to ±")
            .hint("Empty: " + new Lengths(a.unit()).text(usualMm) + ".")
            .check(
                l -> l.mm() <= LEAST_GOOD_MM,
                "Lengths that rough say nothing; type 1/4 in or less.")
            .read();
    TypedAngle rad =
        a.angle("good-angle", "Each angle is good to ±")
            .hint("Empty: 0.1°.")
            .check(
                g -> g.rad() >= 0 && g.rad() <= LEAST_GOOD_RAD,
                "Type an angle from 0 to 2°, such as 0.1.")
            .read();
    return new double[] {mm == null ? usualMm : mm.mm(), rad == null ? USUAL_RAD : rad.rad()};
  }

  /** What ± on a page rests on. */
  String words() {
    return "± is U, k = 2. One ± serves all that was typed: each length is taken as good to ± "
        + exactly(goodMm)
        + ", each angle to ± "
        + decimal(Math.toDegrees(goodRad))
        + "°. What is assumed has a ± of its own.";
  }

  /** As a tape shows it where it has a line there, else in decimals: 1/100 in is not nothing. */
  private String exactly(double mm) {
    double lines = mm / LengthUnit.INCH.mm() * SIXTY_FOURTHS;
    boolean line = a.unit() == LengthUnit.INCH && Math.abs(lines - Math.rint(lines)) < 1e-6;
    String text = line ? TapeFormat.inches(mm, SIXTY_FOURTHS) : decimal(mm / a.unit().mm());
    return text + " " + a.unit().word();
  }

  private static String decimal(double value) {
    return BigDecimal.valueOf(value)
        .setScale(4, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  /** Null where nothing was typed. */
  Figure mm(String name, TypedLength length) {
    return length == null ? null : mm(name, length.mm());
  }

  Figure mm(String name, double mm) {
    return own(name, mm, Rectangular.u(goodMm));
  }

  /** Nothing typed is 0, and no more sure for it. */
  Figure rad(String name, TypedAngle angle) {
    return own(name, angle == null ? 0 : angle.rad(), Rectangular.u(goodRad));
  }

  Figure rad(String name, double rad) {
    return own(name, rad, Rectangular.u(goodRad));
  }

  private static Figure own(String name, double value, double u) {
    return u == 0
        ? Figure.exact(value)
        : Figure.of(value, new Source("typed:" + name, SourceKind.PLACING), u);
  }

  /** A number without a unit, {@code 1.5}, {@code 1 1/2} or {@code −2}. */
  Asked.Box<Double> number(String name, String label, double least, double most, String sentence) {
    return a.typed(
        name,
        label,
        text -> {
          double number = NumberText.read(text).orElse(Double.NaN);
          if (number >= least && number <= most) {
            return number;
          }
          a.wrong(name, sentence);
          return null;
        });
  }

  /** A length neither tiny nor huge; the sentence says what it is. */
  Asked.Box<TypedLength> sized(String name, String label, String sentence) {
    return a.length(name, label)
        .check(l -> l.mm() >= LEAST_SIZE_MM && l.mm() <= MOST_SIZE_MM, sentence + SIZED);
  }

  /** A number that is assumed, or taken for good, within a half-width. */
  static Figure assumed(String name, double value, double halfWidth) {
    return Rectangular.within(value, "assumed:" + name, halfWidth);
  }

  /** The same figure by a formula that may be off by a part of it. */
  static Figure byShortFormula(String name, Figure figure, double halfWidth) {
    return figure.withSource(
        new Source("short formula: " + name, SourceKind.ALLOWANCE), Rectangular.u(halfWidth));
  }
}
