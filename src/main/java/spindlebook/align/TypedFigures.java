package spindlebook.align;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeFormat;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Lengths;
import spindlebook.web.Posted;

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
  private static final String SIZED = ", from 1 in (25 mm) to 5 ft (1.5 m).";
  private static final Pattern DECIMAL =
      Pattern.compile("[+-]?\\d{1,4}(?:\\.\\d{0,6})?|[+-]?\\.\\d{1,6}");
  private static final Pattern MIXED =
      Pattern.compile("([+-]?)(?:(\\d{1,3})[ -]+)?(\\d{1,2})/([1-9]\\d?)");

  private final Posted typed;
  private final LengthUnit unit;
  private final double lengthU;
  private final double angleU;

  TypedFigures(Posted typed, LengthUnit unit) {
    this.typed = typed;
    this.unit = unit;
    this.lengthU = Rectangular.u(goodMm());
    this.angleU = Rectangular.u(goodRad());
  }

  private double goodMm() {
    TypedLength good = typed.lengthFromZero("good", unit);
    if (good != null && good.mm() > LEAST_GOOD_MM) {
      typed.wrong("good", "Lengths that rough say nothing; type 1/4 in or less.");
    }
    return good == null || !typed.problem("good").isEmpty() ? usualMm(unit) : good.mm();
  }

  private double goodRad() {
    TypedAngle good = typed.angle("good-angle");
    if (good != null && !(good.rad() >= 0 && good.rad() <= LEAST_GOOD_RAD)) {
      typed.wrong("good-angle", "Type an angle from 0 to 2°, such as 0.1.");
    }
    return good == null || !typed.problem("good-angle").isEmpty() ? USUAL_RAD : good.rad();
  }

  /** A field of the page on which all of it is typed. */
  FormPart field(String name, String label, String hint, String word) {
    return new FormPart.Typed(typed.fill(Field.of(name, label).hint(hint).unit(word)));
  }

  /** What ± on a page rests on. */
  String words() {
    return "± is U, k = 2. One ± serves all that was typed: each length is taken as good to ± "
        + exactly(goodMm())
        + ", each angle to ± "
        + decimal(Math.toDegrees(goodRad()))
        + "°. What is assumed has a ± of its own.";
  }

  /** As a tape shows it where it has a line there, else in decimals: 1/100 in is not nothing. */
  private String exactly(double mm) {
    double lines = mm / LengthUnit.INCH.mm() * SIXTY_FOURTHS;
    boolean line = unit == LengthUnit.INCH && Math.abs(lines - Math.rint(lines)) < 1e-6;
    String text = line ? TapeFormat.inches(mm, SIXTY_FOURTHS) : decimal(mm / unit.mm());
    return text + " " + unit.word();
  }

  private static String decimal(double value) {
    return BigDecimal.valueOf(value)
        .setScale(4, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  private static double usualMm(LengthUnit unit) {
    return unit == LengthUnit.INCH ? unit.mm() / 16 : 1;
  }

  Figure mm(String name, TypedLength length) {
    return own(name, length.mm(), lengthU);
  }

  /** Nothing typed is 0, and no more sure for it. */
  Figure rad(String name, TypedAngle angle) {
    return own(name, angle == null ? 0 : angle.rad(), angleU);
  }

  Figure mm(String name, double mm) {
    return own(name, mm, lengthU);
  }

  private static Figure own(String name, double value, double u) {
    return u == 0
        ? Figure.exact(value)
        : Figure.of(value, new Source("typed:" + name, SourceKind.PLACING), u);
  }

  /**
   * A number without a unit, {@code 1.5}, {@code 1 1/2} or {@code −2}; null when nothing was typed
   * or it is wrong, which is told of in its field.
   */
  Double number(String name, double least, double most, String sentence) {
    if (!typed.has(name)) {
      return null;
    }
    String plain = typed.text(name).strip().replace(',', '.').replace('−', '-');
    Matcher mixed = MIXED.matcher(plain);
    double number = Double.NaN;
    if (DECIMAL.matcher(plain).matches()) {
      number = Double.parseDouble(plain);
    } else if (mixed.matches()) {
      double whole = mixed.group(2) == null ? 0 : Double.parseDouble(mixed.group(2));
      double part = Double.parseDouble(mixed.group(3)) / Double.parseDouble(mixed.group(4));
      // 81/4 may be 8 1/4: what is no part of a whole is asked back by the sentence.
      number = part < 1 ? (mixed.group(1).equals("-") ? -1 : 1) * (whole + part) : Double.NaN;
    }
    if (number >= least && number <= most) {
      return number;
    }
    typed.wrong(name, sentence);
    return null;
  }

  /** A length that must be there, neither tiny nor huge; null where it is not. */
  TypedLength sized(String name, String sentence) {
    TypedLength length = typed.neededLength(name, unit, sentence + SIZED);
    if (length != null && !(length.mm() >= LEAST_SIZE_MM && length.mm() <= MOST_SIZE_MM)) {
      typed.wrong(name, sentence + SIZED);
    }
    return length;
  }

  /** A number that is assumed, or taken for good, within a half-width. */
  static Figure assumed(String name, double value, double halfWidth) {
    return Figure.of(
        value, new Source("assumed:" + name, SourceKind.ALLOWANCE), Rectangular.u(halfWidth));
  }

  /** The same figure by a formula that may be off by a part of it. */
  static Figure byShortFormula(String name, Figure figure, double halfWidth) {
    return figure.withSource(
        new Source("short formula: " + name, SourceKind.ALLOWANCE), Rectangular.u(halfWidth));
  }

  FormPart part() {
    return new FormPart.More(
        "How good what you type is",
        typed.has("good") || typed.has("good-angle"),
        List.of(
            new FormPart.Said(
                "One ± serves every length typed here, and one every angle: type that of the"
                    + " roughest."),
            new FormPart.Typed(
                typed.fill(
                    Field.of("good", "Each length is good to ±")
                        .hint("Empty: " + new Lengths(unit).text(usualMm(unit)) + ".")
                        .unit(unit.word()))),
            new FormPart.Typed(
                typed.fill(
                    Field.of("good-angle", "Each angle is good to ±")
                        .hint("Empty: 0.1°.")
                        .unit("°")))));
  }
}
