package spindlebook.drawing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeFormat;

/**
 * One axis of a chart: what runs along it, and where its round ticks stand.
 *
 * @param words what it counts, with its unit and what a + means
 * @param size of one shown unit, in what the chart's numbers come in (25.4 for mm shown as inches)
 * @param binary halves, quarters, eighths below one, as on a tape
 * @param signed whether a number above nothing gets its +
 */
public record ChartAxis(String words, double size, boolean binary, boolean signed) {
  private static final double FINEST = 1.0 / 64;

  /**
   * @param plus what a + means, "towards bump"; empty for what has no direction
   */
  public static ChartAxis length(String words, LengthUnit unit, String plus) {
    return new ChartAxis(
        words + ", " + unit.word() + said(plus),
        unit.mm(),
        unit == LengthUnit.INCH,
        !plus.isEmpty());
  }

  public static ChartAxis degrees(String words, String plus) {
    return new ChartAxis(
        words + ", degrees" + said(plus), Math.toRadians(1), false, !plus.isEmpty());
  }

  private static String said(String plus) {
    return plus.isEmpty() ? "" : ", + " + plus;
  }

  /**
   * Round ticks around a stretch, the outer two on or outside it, with the smallest step that makes
   * no more than {@code most} of them; in the chart's own numbers.
   */
  List<Double> ticks(double low, double high, int most) {
    double from = low / size;
    double to = high / size;
    double step = step(from, to, most);
    List<Double> ticks = new ArrayList<>();
    long first = (long) Math.floor(from / step + 1e-9);
    long last = Math.max(first + 1, (long) Math.ceil(to / step - 1e-9));
    for (long i = first; i <= last; i++) {
      ticks.add(i * step * size);
    }
    return ticks;
  }

  private double step(double from, double to, int most) {
    if (binary) {
      for (double step = FINEST; step < 1; step *= 2) {
        if (count(from, to, step) <= most) {
          return step;
        }
      }
    }
    for (int power = binary ? 0 : -6; power < 12; power++) {
      for (int digit : new int[] {1, 2, 5}) {
        double step = BigDecimal.valueOf(digit).scaleByPowerOfTen(power).doubleValue();
        if (count(from, to, step) <= most) {
          return step;
        }
      }
    }
    throw new IllegalArgumentException("no chart runs from " + from + " to " + to);
  }

  private static double count(double from, double to, double step) {
    return Math.ceil(to / step - 1e-9) - Math.floor(from / step + 1e-9) + 1;
  }

  /** The number under a tick. */
  String label(double at) {
    String text =
        binary
            ? TapeFormat.inches(at, 64)
            : BigDecimal.valueOf(at / size)
                .setScale(6, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    if (text.startsWith("-")) {
      return "−" + text.substring(1);
    }
    return signed && !text.equals("0") ? "+" + text : text;
  }
}
