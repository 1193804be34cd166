package spindlebook.parts;

/**
 * A wheel's sizes: offset and backspacing turned into each other.
 *
 * <pre>
 *   overall width  w = W + 2 l
 *   backspacing    b = E + w / 2          front spacing = w − b
 * </pre>
 *
 * W rim width between the bead seats, mm, > 0; l the lip (flange) outside each bead seat, mm, ≥ 0,
 * assumed {@link #USUAL_LIP_MM} unless it was measured; E offset, mm, + mounting face outboard of
 * the middle of the rim; b from mounting face to inner lip, mm. Source: common practice, no source;
 * 1/2 in a lip is a habit of the trade, real ones run from 3/8 to 3/4 in.
 *
 * <p>Worked example: 8.5 in wide, offset −12 mm: backspacing 108.65 mm (4.278 in).
 */
public record Wheel(double rimDiameterMm, double rimWidthMm, double offsetMm, double lipMm) {
  /** 1/2 in: common practice, no source; the owner's to change. */
  public static final double USUAL_LIP_MM = 12.7;

  public Wheel {
    if (!(rimDiameterMm > 0 && rimWidthMm > 0 && lipMm >= 0) || !Double.isFinite(offsetMm)) {
      throw new IllegalArgumentException(
          "no wheel has diameter "
              + rimDiameterMm
              + ", width "
              + rimWidthMm
              + ", offset "
              + offsetMm
              + " and lip "
              + lipMm);
    }
  }

  public static Wheel byBackspacing(
      double rimDiameterMm, double rimWidthMm, double backspacingMm, double lipMm) {
    return new Wheel(
        rimDiameterMm, rimWidthMm, backspacingMm - (rimWidthMm + 2 * lipMm) / 2, lipMm);
  }

  public double overallWidthMm() {
    return rimWidthMm + 2 * lipMm;
  }

  public double backspacingMm() {
    return offsetMm + overallWidthMm() / 2;
  }

  public double frontSpacingMm() {
    return overallWidthMm() - backspacingMm();
  }

  /** The same wheel as it sits on a spacer: less offset by the spacer's thickness. */
  public Wheel onSpacer(double spacerMm) {
    return new Wheel(rimDiameterMm, rimWidthMm, offsetMm - spacerMm, lipMm);
  }
}
