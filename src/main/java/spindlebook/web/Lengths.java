package spindlebook.web;

import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeFormat;

/** How lengths are shown: to the sixteenth, or to half a millimetre; U rounded up. */
public record Lengths(LengthUnit unit) {
  private static final int SIXTEENTHS = 16;
  private static final double HALF_MM = 0.5;

  /** {@code 8 1/4}, without a unit. */
  public String bare(double mm) {
    return switch (unit) {
      case INCH -> TapeFormat.inches(mm, SIXTEENTHS);
      case MM -> decimal(Math.rint(mm / HALF_MM) * HALF_MM, 1);
      case CM -> decimal(Math.rint(mm / HALF_MM) * HALF_MM / 10, 2);
    };
  }

  public String text(double mm) {
    return bare(mm).replace('-', '−') + " " + unit.word();
  }

  /** With its sign: {@code +5 3/8}. */
  public String signed(double mm) {
    String bare = bare(mm);
    return bare.startsWith("-") || bare.equals("0") || bare.equals("0.0") ? bare : "+" + bare;
  }

  /** {@code −7 7/8 in}: with its sign, as a page writes it. */
  public String signedText(double mm) {
    return signed(mm).replace('-', '−') + " " + unit.word();
  }

  /** Rounded up, so that what is said to be unsure is never said smaller. */
  public String plusMinus(double expandedMm) {
    double up =
        unit == LengthUnit.INCH
            ? TapeFormat.roundUp(expandedMm, SIXTEENTHS)
            : Math.ceil(expandedMm / HALF_MM - 1e-9) * HALF_MM;
    return bare(up);
  }

  public FigureText figure(double mm) {
    return FigureText.of(bare(mm), unit.word());
  }

  public FigureText figure(Figure mm) {
    FigureText text = FigureText.of(bare(mm.value()), unit.word());
    return mm.U() > 0 ? text.within(plusMinus(mm.U())) : text;
  }

  public FigureText signedFigure(double mm) {
    return FigureText.of(signed(mm), unit.word());
  }

  public FigureText signedFigure(Figure mm) {
    FigureText text = FigureText.of(signed(mm.value()), unit.word());
    return mm.U() > 0 ? text.within(plusMinus(mm.U())) : text;
  }

  public LengthScale scale() {
    return unit == LengthUnit.INCH ? LengthScale.INCH : LengthScale.MM;
  }

  private static String decimal(double value, int decimals) {
    return java.math.BigDecimal.valueOf(value)
        .setScale(decimals, java.math.RoundingMode.HALF_UP)
        .toPlainString();
  }
}
