package spindlebook.use;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import spindlebook.card.Days;
import spindlebook.entry.UseUnit;
import spindlebook.fold.SeenUse;

/**
 * The drives of a car, newest first.
 *
 * @param total all of them, by what they were counted in; empty when none was counted
 */
public record UseList(List<Line> lines, String total) {
  /** One drive. */
  public record Line(String words, String when, String href) {}

  static UseList of(List<SeenUse> uses) {
    List<Line> lines = new ArrayList<>();
    Map<UseUnit, Double> sums = new EnumMap<>(UseUnit.class);
    for (SeenUse use : uses) {
      lines.add(
          0,
          new Line(use.words(), Days.day(use.at()) + " · " + use.who(), "/entries/" + use.key()));
      if (use.use() != null) {
        sums.merge(use.use().unit(), use.use().amount(), Double::sum);
      }
    }
    List<String> totals = new ArrayList<>();
    sums.forEach((unit, sum) -> totals.add(number(sum) + " " + unit.words(sum)));
    return new UseList(lines, String.join(", ", totals));
  }

  private static String number(double sum) {
    return new BigDecimal(sum).round(new MathContext(6)).stripTrailingZeros().toPlainString();
  }
}
