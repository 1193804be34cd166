package spindlebook.units;

import java.math.BigDecimal;
import java.util.List;

/**
 * Reads an angle in words, in degrees only: {@code one and a half degrees}, {@code minus a quarter
 * of a degree}.
 */
final class SpokenAngle {
  static final String RULE = "spoken-1";

  private SpokenAngle() {}

  static List<AngleAmount> read(List<Token> tokens) throws Unreadable {
    List<String> words = SpokenWords.of(tokens);
    boolean minus = SpokenWords.isMinus(words);
    List<String> left = minus ? words.subList(1, words.size()) : words;
    int last = left.size() - 1;
    boolean named = last >= 0 && UnitWords.DEGREES.contains(left.get(last));
    List<String> count = named ? left.subList(0, last) : left;
    if (named && SpokenWords.isOne(count)) {
      return List.of(new AngleAmount(minus, BigDecimal.ONE, BigDecimal.ZERO, BigDecimal.ZERO));
    }
    return SpokenCount.read(named ? SpokenWords.withoutOfA(count) : count).stream()
        .map(meaning -> new AngleAmount(minus, meaning.value(), BigDecimal.ZERO, BigDecimal.ZERO))
        .toList();
  }
}
