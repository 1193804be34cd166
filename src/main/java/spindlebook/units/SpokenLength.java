package spindlebook.units;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads a whole length in words: {@code eight and a quarter}, {@code an inch and a half}, {@code
 * three quarters of an inch}, {@code one foot eight and a half}, {@code two hundred ten
 * millimetres}.
 *
 * <p>{@code A foot and a half} is 18 in to most people and 12 1/2 in to some: it is asked back.
 */
final class SpokenLength {
  static final String RULE = "spoken-1";

  private SpokenLength() {}

  static List<Amount> read(List<Token> tokens) throws Unreadable {
    List<String> words = SpokenWords.of(tokens);
    boolean minus = SpokenWords.isMinus(words);
    List<Amount> amounts = amounts(minus ? words.subList(1, words.size()) : words);
    return minus ? amounts.stream().map(Amount::negated).toList() : amounts;
  }

  private static List<Amount> amounts(List<String> words) throws Unreadable {
    for (int i = 0; i < words.size(); i++) {
      if (UnitWords.FEET.contains(words.get(i))) {
        List<Count> feet = before(words.subList(0, i));
        List<String> after = words.subList(i + 1, words.size());
        return after.isEmpty()
            ? feet.stream().map(Amount::ofFeet).toList()
            : feetAndInches(Count.onlyWhole(feet), after);
      }
    }
    return belowFeet(words);
  }

  private static List<Amount> feetAndInches(BigDecimal feet, List<String> after) throws Unreadable {
    List<Amount> amounts = new ArrayList<>();
    for (Amount inches : belowFeet(SpokenWords.withoutAnd(after))) {
      Count count = inches.count();
      if (inches.unit() == LengthUnit.MM || inches.unit() == LengthUnit.CM) {
        throw new Unreadable("joins feet with " + inches.unit().word());
      }
      if (inches.unit() == null && isPart(count)) {
        amounts.add(Amount.ofFeet(new Count(feet.add(count.value()), Count.Form.FRACTION)));
      }
      if (Amount.isUnderAFoot(count)) {
        amounts.add(Amount.ofFeetAndInches(feet, count));
      }
    }
    if (amounts.isEmpty()) {
      throw new Unreadable("has a foot or more in inches behind its feet");
    }
    return amounts;
  }

  /**
   * A count, with its unit behind it, between its parts ({@code eight inches and a quarter}) or not
   * at all.
   */
  private static List<Amount> belowFeet(List<String> words) throws Unreadable {
    for (int i = 0; i < words.size(); i++) {
      LengthUnit unit = UnitWords.lengthUnit(words.get(i));
      if (unit != null) {
        List<Count> counts = before(words.subList(0, i));
        List<String> after = SpokenWords.withoutAnd(words.subList(i + 1, words.size()));
        boolean complete = i + 1 == words.size();
        return with(unit, complete ? counts : withPart(Count.onlyWhole(counts), after));
      }
    }
    return with(null, SpokenCount.read(words));
  }

  private static List<Count> before(List<String> words) throws Unreadable {
    if (SpokenWords.isOne(words)) {
      return List.of(new Count(BigDecimal.ONE, Count.Form.WHOLE));
    }
    return SpokenCount.read(SpokenWords.withoutOfA(words));
  }

  private static List<Count> withPart(BigDecimal whole, List<String> words) throws Unreadable {
    List<Count> counts = new ArrayList<>();
    for (Count part : SpokenCount.read(words)) {
      if (isPart(part)) {
        counts.add(new Count(whole.add(part.value()), Count.Form.FRACTION));
      }
    }
    if (counts.isEmpty()) {
      throw Unreadable.nonsense();
    }
    return counts;
  }

  private static boolean isPart(Count count) {
    return count.isFraction() && count.isLessThanOne();
  }

  private static List<Amount> with(LengthUnit unit, List<Count> counts) {
    return counts.stream().map(count -> new Amount(count, unit, false)).toList();
  }
}
