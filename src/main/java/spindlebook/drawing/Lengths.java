package spindlebook.drawing;

import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeFormat;

/**
 * How lengths are shown: to the sixteenth, or to half a millimetre; U rounded up, and finer where
 * it would otherwise say that a figure beyond its U is within it.
 */
public record Lengths(LengthUnit unit) {
  private static final int SIXTEENTHS = 16;
  private static final double HALF_MM = 0.5;
  private static final double FIVE_MM = 5;

  /** The step is never finer than this part of it: the 64th. */
  private static final int FINEST = 4;

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

  /** What there is to spare, never said to be more than it is; 0 where there is none. */
  public String spare(double mm) {
    return text(Math.max(0, Math.floor(mm / stepMm(1) + 1e-9) * stepMm(1)));
  }

  /** As a person says it, without a unit: to such a part of an inch, or to five millimetres. */
  public String about(double mm, int partOfInch) {
    double fives = Math.rint(mm / FIVE_MM) * FIVE_MM;
    return switch (unit) {
      case INCH -> TapeFormat.inches(mm, partOfInch);
      case MM -> decimal(fives, 0);
      case CM -> decimal(fives / 10, 1);
    };
  }

  /** With its sign: {@code +5 3/8}. */
  public String signed(double mm) {
    return signed(bare(mm));
  }

  /** Of what is written: {@code +5 3/8}. */
  public static String signed(String bare) {
    return bare.startsWith("-") || bare.matches("0(\\.0+)?") ? bare : "+" + bare;
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
    String bare = bare(mm.value());
    return mm.U() > 0 ? within(mm, bare, "") : FigureText.of(bare, unit.word());
  }

  public FigureText signedFigure(double mm) {
    return FigureText.of(signed(mm), unit.word());
  }

  public FigureText signedFigure(Figure mm) {
    String signed = signed(mm.value());
    return mm.U() > 0
        ? within(mm, signed, mm.value() > 0 ? "+" : "")
        : FigureText.of(signed, unit.word());
  }

  private FigureText within(Figure mm, String text, String plus) {
    int finer = 1;
    while (finer < FINEST && hidden(mm, finer)) {
      finer *= 2;
    }
    return finer == 1
        ? FigureText.of(text, unit.word()).within(plusMinus(mm.U()))
        : FigureText.of(plus + finer(nearest(mm.value(), finer), finer), unit.word())
            .within(finer(up(mm.U(), finer), finer));
  }

  /** Whether what is beyond its U would be read as within it. */
  private boolean hidden(Figure mm, int finer) {
    double value = Math.abs(mm.value());
    return value > mm.U() && nearest(value, finer) <= up(mm.U(), finer) + 1e-9;
  }

  private double nearest(double mm, int finer) {
    return Math.rint(mm / stepMm(finer)) * stepMm(finer);
  }

  private double up(double mm, int finer) {
    return Math.ceil(mm / stepMm(finer) - 1e-9) * stepMm(finer);
  }

  private double stepMm(int finer) {
    return (unit == LengthUnit.INCH ? unit.mm() / SIXTEENTHS : HALF_MM) / finer;
  }

  private String finer(double mm, int finer) {
    return unit == LengthUnit.INCH
        ? TapeFormat.inches(mm, SIXTEENTHS * finer)
        : decimal(mm / unit.mm(), unit == LengthUnit.CM ? 3 : 2);
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
