package spindlebook.units;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import spindlebook.units.Count.Form;

/**
 * Reads how many of a unit in words: {@code eight}, {@code eight and a quarter}, {@code eleven
 * sixteenths}, {@code eight point two five}. Nobody hears where the whole number ends, so every
 * place is tried: {@code twenty one sixteenths} is 20 1/16 or 21/16, and both are offered.
 */
final class SpokenCount {
  private SpokenCount() {}

  static List<Count> read(List<String> words) throws Unreadable {
    int point = words.indexOf("point");
    if (point >= 0) {
      return List.of(decimal(words.subList(0, point), words.subList(point + 1, words.size())));
    }
    String last = words.isEmpty() ? "" : words.get(words.size() - 1);
    String before = words.size() < 2 ? "" : words.get(words.size() - 2);
    if (before.equals("thirty") && (last.equals("second") || last.equals("seconds"))) {
      return fractions(words.subList(0, words.size() - 2), 32, false);
    }
    if (before.equals("sixty") && (last.equals("fourth") || last.equals("fourths"))) {
      return fractions(words.subList(0, words.size() - 2), 64, false);
    }
    if (SpokenNumber.part(last) != null) {
      int den = Fractions.denominator(SpokenNumber.part(last));
      return fractions(
          words.subList(0, words.size() - 1), den, last.equals("half") || last.equals("quarter"));
    }
    return List.of(new Count(BigDecimal.valueOf(whole(words)), Form.WHOLE));
  }

  private static int whole(List<String> words) throws Unreadable {
    return SpokenNumber.cardinal(words).orElseThrow(Unreadable::nonsense);
  }

  private static Count decimal(List<String> before, List<String> after) throws Unreadable {
    StringBuilder text =
        new StringBuilder().append(before.isEmpty() ? 0 : whole(before)).append('.');
    for (String word : after) {
      int digit = SpokenNumber.digit(word);
      if (digit < 0) {
        throw Unreadable.nonsense();
      }
      text.append(digit);
    }
    if (after.isEmpty()) {
      throw Unreadable.nonsense();
    }
    return new Count(new BigDecimal(text.toString()), Form.DECIMAL);
  }

  /** Every way to cut the words before the part into a whole number and a numerator. */
  private static List<Count> fractions(List<String> body, int den, boolean numberless)
      throws Unreadable {
    List<Count> meanings = new ArrayList<>(alone(body, den, numberless));
    for (int cut = 1; cut <= body.size(); cut++) {
      OptionalInt whole = SpokenNumber.cardinal(body.subList(0, cut));
      if (whole.isPresent()) {
        OptionalInt numerator =
            numerator(body.subList(cut, body.size()), whole.getAsInt(), den, numberless);
        if (numerator.isPresent() && numerator.getAsInt() < den) {
          meanings.add(
              Fractions.of(BigDecimal.valueOf(whole.getAsInt()), "" + numerator.getAsInt(), den));
        }
      }
    }
    if (meanings.isEmpty()) {
      throw Unreadable.nonsense();
    }
    return meanings;
  }

  private static List<Count> alone(List<String> body, int den, boolean numberless) {
    if ((body.isEmpty() && numberless) || SpokenWords.isOne(body)) {
      return Fractions.alone("1", den);
    }
    OptionalInt numerator = SpokenNumber.cardinal(body);
    if (numerator.isEmpty()) {
      return List.of();
    }
    boolean digits = SpokenNumber.isDigits(body.get(0));
    return digits
        ? Fractions.alone(body.get(0), den)
        : List.of(Fractions.spoken(numerator.getAsInt(), den));
  }

  /**
   * {@code and a}, {@code and three}, {@code three}; {@code eight half} leaves it out, {@code three
   * quarters} does not.
   */
  private static OptionalInt numerator(List<String> words, int whole, int den, boolean numberless) {
    List<String> left = SpokenWords.withoutAnd(words);
    if (SpokenWords.isOne(left)) {
      return OptionalInt.of(1);
    }
    if (left.isEmpty()) {
      boolean may = numberless && (words.size() == 1 || whole >= den);
      return may ? OptionalInt.of(1) : OptionalInt.empty();
    }
    return SpokenNumber.cardinal(left);
  }
}
