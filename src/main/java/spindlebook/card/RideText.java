package spindlebook.card;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import spindlebook.drawing.ChartAxis;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.Rounded;
import spindlebook.entry.SpringFigure;
import spindlebook.uncertainty.Figure;
import spindlebook.units.AmountUnit;
import spindlebook.units.LengthUnit;

/**
 * Figures of springs, stops and straps as every page shows them: pounds and inches where the page
 * counts inches, newtons and millimetres where it does not. Three figures where nobody said how
 * sure.
 *
 * @param use what use is counted in: {@code hours}
 */
public record RideText(LengthUnit unit, String use) {
  private static final double FOOT_POUND_J = 1.3558179483314;

  public FigureText of(SpringFigure.Unit of, Figure value) {
    boolean inch = unit == LengthUnit.INCH;
    return switch (of) {
      case LENGTH -> new Lengths(unit).signedFigure(value);
      case RATE -> amount(value, rate());
      case FORCE -> amount(value, force());
      case WEIGHT -> amount(value.times(1 / AmountUnit.kg(1)), weight());
      case ENERGY -> text(value, inch ? FOOT_POUND_J : 1, inch ? "ft-lb" : "J");
      case HERTZ -> text(value, 1, "a second");
      case RATIO -> text(value, 1, "");
      case PER_CENT -> text(value, 1, "%");
      case USE -> text(value, 1, use);
    };
  }

  /** In which a page asks for and shows weights. */
  public AmountUnit weight() {
    return unit == LengthUnit.INCH ? AmountUnit.POUND : AmountUnit.KILOGRAM;
  }

  public AmountUnit rate() {
    return unit == LengthUnit.INCH ? AmountUnit.LB_PER_IN : AmountUnit.N_PER_MM;
  }

  public AmountUnit force() {
    return unit == LengthUnit.INCH ? AmountUnit.POUND : AmountUnit.NEWTON;
  }

  /** Of forces. */
  public ChartAxis axis(String words) {
    return new ChartAxis(words + ", " + force().word(), 1 / force().of(1), false, false);
  }

  private static FigureText amount(Figure si, AmountUnit unit) {
    return text(si, 1 / unit.of(1), unit.word());
  }

  private static FigureText text(Figure si, double size, String unit) {
    if (si.U() > 0) {
      return Rounded.plain(si, size, unit);
    }
    BigDecimal three =
        BigDecimal.valueOf(si.value() / size).round(new MathContext(3, RoundingMode.HALF_UP));
    return FigureText.of(
        three.setScale(Math.max(0, three.scale()), RoundingMode.HALF_UP).toPlainString(), unit);
  }
}
