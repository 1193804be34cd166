package spindlebook.charts;

import spindlebook.alignment.ToeRead;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.Rounded;
import spindlebook.fold.Card;
import spindlebook.measured.AlignedNote;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;

/** Toe and places along the travel, as the bump steer page writes them. */
record ToeWords(Card card, CornerChart chart) {
  static final double DEGREE = Math.toRadians(1);

  private static final double PER_MM = 100;

  Lengths lengths() {
    return new Lengths(unit());
  }

  LengthUnit unit() {
    return card.details().unit();
  }

  /** "−7 7/8 in", from the page's zero. */
  String place(double positionMm) {
    return lengths().signedText(chart.zero().from(positionMm));
  }

  /** To hundredths of an inch: a sixteenth is too coarse for toe. */
  FigureText across(Figure mm) {
    return Rounded.plain(mm, unit().mm(), unit().word());
  }

  FigureText slope(Figure radPerMm) {
    return Rounded.signed(radPerMm, DEGREE / perMm(), "° per " + (inch() ? "in" : "100 mm"));
  }

  /** One sentence's worth of it: "−0.045 ± 0.024° per in". */
  String slopeWords(Figure radPerMm) {
    return words(slope(radPerMm));
  }

  String curvatureWords(Figure radPerMm2) {
    String unit = "° per " + (inch() ? "in²" : "(100 mm)²");
    return words(Rounded.signed(radPerMm2, DEGREE / (perMm() * perMm()), unit));
  }

  private static String words(FigureText text) {
    return text.sign() + text.whole() + " ± " + text.plusMinus().whole() + text.unit();
  }

  /** A sentence more where toe's distance is the other wheel's; empty where it is its own. */
  static String acrossBorrowed(Card card) {
    return ToeRead.borrowed(card) ? " " + AlignedNote.ACROSS_BORROWED.words() : "";
  }

  private double perMm() {
    return inch() ? LengthUnit.INCH.mm() : PER_MM;
  }

  private boolean inch() {
    return unit() == LengthUnit.INCH;
  }
}
