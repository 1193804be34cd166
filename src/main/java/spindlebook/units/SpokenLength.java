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
    List<Amount> behind = belowFeet(SpokenWords.withoutAnd(after));
    for (Amount inches : behind) {
      if (inches.unit() == LengthUnit.MM || inches.unit() == LengthUnit.CM) {
        throw new Unreadable("joins feet with " + inches.unit().word());
      }
    }
    return Amount.ofFeetAnd(feet, behind, one -> one.unit() == null && isPart(one.count()));
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
        return Amount.of(complete ? counts : withPart(Count.onlyWhole(counts), after), unit);
      }
    }
    return Amount.of(SpokenCount.read(words), null);
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
}
