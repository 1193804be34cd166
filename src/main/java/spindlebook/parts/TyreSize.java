package spindlebook.parts;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import spindlebook.units.TextRead;

/**
 * Reads a tyre's size off its side: {@code 35x12.50R15} or {@code 315/70R17}.
 *
 * <pre>
 *   flotation  diameter x width R rim, all in inches
 *   metric     width mm / aspect % R rim in:   diameter = 25.4 rim + 2 width aspect / 100
 * </pre>
 *
 * <p>The name's diameter, not the tyre's: real ones stand up to 3 % lower, loaded ones lower still
 * (common practice, no source). Letters before (LT, P) and after the size are passed over; -, D and
 * x count as R. Source: the tyre trade's size names, from memory.
 *
 * <p>Worked example: 315/70R17: 25.4 · 17 + 2 · 315 · 0.7 = 872.8 mm. 35x12.50R15: 889.0 mm.
 *
 * @param text as typed
 */
public record TyreSize(String text, double diameterMm, double widthMm, double rimMm) {
  private static final double INCH_MM = 25.4;
  private static final double MOST_DIAMETER_IN = 60;
  private static final String END =
      "\\s*(?:ZR|R|-|D|B|X|×)\\s*(\\d{1,2}(?:\\.\\d)?)\\s*(?:LT|C|[A-Z0-9/ .]{0,20})";
  private static final Pattern FLOTATION =
      Pattern.compile(
          "(?:LT|P)?\\s*(\\d{2}(?:\\.\\d{1,2})?)\\s*[X×]\\s*(\\d{1,2}(?:\\.\\d{1,2})?)" + END);
  private static final Pattern METRIC =
      Pattern.compile("(?:LT|P)?\\s*(\\d{3})\\s*/\\s*(\\d{2,3})" + END);

  public static TextRead<TyreSize> read(String text) {
    String plain = text.strip().toUpperCase(Locale.ROOT);
    Matcher flotation = FLOTATION.matcher(plain);
    Matcher metric = METRIC.matcher(plain);
    TyreSize size = null;
    if (flotation.matches()) {
      size =
          new TyreSize(
              text,
              inches(flotation.group(1)),
              inches(flotation.group(2)),
              inches(flotation.group(3)));
    } else if (metric.matches()) {
      double widthMm = Double.parseDouble(metric.group(1));
      double rimMm = inches(metric.group(3));
      double sideMm = widthMm * Double.parseDouble(metric.group(2)) / 100;
      size = new TyreSize(text, rimMm + 2 * sideMm, widthMm, rimMm);
    }
    return size != null && size.sound() ? new TextRead.Value<>(size) : refused(text);
  }

  public double freeRadiusMm() {
    return diameterMm / 2;
  }

  private boolean sound() {
    return rimMm >= 8 * INCH_MM
        && diameterMm > rimMm + INCH_MM
        && diameterMm <= MOST_DIAMETER_IN * INCH_MM
        && widthMm >= 3 * INCH_MM
        && widthMm < diameterMm / 2;
  }

  private static TextRead<TyreSize> refused(String text) {
    String shown = text.strip().length() > 40 ? text.strip().substring(0, 40) + "…" : text.strip();
    return new TextRead.Refused<>(
        "'" + shown + "' is no tyre size; type it as on its side, like 35x12.50R15 or 315/70R17.");
  }

  private static double inches(String number) {
    return Double.parseDouble(number) * INCH_MM;
  }
}
