package spindlebook.units;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Settles what a text means once its grammar is clear: which unit, whether that unit has such
 * fractions, whether any tape is that long; more than one meaning left is asked back.
 */
final class Meanings {
  private static final double LONGEST_MM = 100_000;

  private Meanings() {}

  static TextRead<TypedLength> settle(
      String typed, List<Amount> amounts, LengthUnit bare, String rule) throws Unreadable {
    Map<Double, Amount> byMm = new LinkedHashMap<>();
    for (Amount amount : withUnits(amounts, bare)) {
      if (Math.abs(amount.mm()) <= LONGEST_MM) {
        byMm.putIfAbsent(amount.mm() + 0.0, amount);
      }
    }
    if (byMm.isEmpty()) {
      throw new Unreadable("is longer than 100 m");
    }
    List<Amount> left = List.copyOf(byMm.values());
    if (left.size() == 1) {
      return new TextRead.Value<>(typedAs(typed, left.get(0), rule));
    }
    return new TextRead.TwoMeanings<>(
        left.stream().map(amount -> typedAs(amount.spelled(), amount, TapeText.RULE)).toList());
  }

  private static TypedLength typedAs(String typed, Amount amount, String rule) {
    return new TypedLength(typed, amount.mm(), amount.unit(), rule);
  }

  private static List<Amount> withUnits(List<Amount> amounts, LengthUnit bare) throws Unreadable {
    List<Amount> all = new ArrayList<>();
    for (Amount amount : amounts) {
      boolean named = amount.unit() != null;
      LengthUnit unit = named ? amount.unit() : bare;
      if (isOnARuler(amount.count(), unit)) {
        all.add(amount.in(unit));
        if (!named && unit != LengthUnit.INCH && amount.count().isFraction()) {
          all.add(amount.in(LengthUnit.INCH));
        }
      }
    }
    if (all.isEmpty()) {
      LengthUnit named = amounts.get(0).unit();
      throw new Unreadable(
          named == null
              ? "is a fraction without a unit where bare numbers are " + bare.word()
              : "has a fraction of a " + named.word() + " other than a half");
    }
    return all;
  }

  /**
   * Metric rulers have half lines at most; a tape in inches has every fraction the grammar lets
   * through.
   */
  private static boolean isOnARuler(Count count, LengthUnit unit) {
    BigDecimal halves = count.value().add(count.value()).stripTrailingZeros();
    return unit == LengthUnit.INCH || !count.isFraction() || halves.scale() <= 0;
  }
}
