package spindlebook.units;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** Whole numbers in words from zero to 999, and the words for the parts of an inch. */
final class SpokenNumber {
  private static final List<String> SMALL =
      List.of(
          "zero",
          "one",
          "two",
          "three",
          "four",
          "five",
          "six",
          "seven",
          "eight",
          "nine",
          "ten",
          "eleven",
          "twelve",
          "thirteen",
          "fourteen",
          "fifteen",
          "sixteen",
          "seventeen",
          "eighteen",
          "nineteen");
  private static final List<String> TENS =
      List.of("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety");
  private static final Map<String, String> PARTS =
      Map.ofEntries(
          Map.entry("half", "2"),
          Map.entry("halves", "2"),
          Map.entry("quarter", "4"),
          Map.entry("fourth", "4"),
          Map.entry("eighth", "8"),
          Map.entry("sixteenth", "16"),
          Map.entry("third", "3"),
          Map.entry("fifth", "5"),
          Map.entry("sixth", "6"),
          Map.entry("seventh", "7"),
          Map.entry("ninth", "9"),
          Map.entry("tenth", "10"),
          Map.entry("twelfth", "12"),
          Map.entry("hundredth", "100"),
          Map.entry("thousandth", "1000"));

  private SpokenNumber() {}

  /**
   * {@code two hundred and ten}, {@code twenty one}, {@code 8}; empty when it is no whole number.
   */
  static OptionalInt cardinal(List<String> words) {
    if (words.size() == 1 && isDigits(words.get(0))) {
      return words.get(0).length() > 3
          ? OptionalInt.empty()
          : OptionalInt.of(Integer.parseInt(words.get(0)));
    }
    int hundred = words.indexOf("hundred");
    if (hundred < 0) {
      return belowHundred(words);
    }
    int hundreds = hundred == 0 ? 1 : hundred == 1 ? hundreds(words.get(0)) : 0;
    List<String> rest = words.subList(hundred + 1, words.size());
    if (hundreds == 0 || rest.isEmpty()) {
      return hundreds == 0 ? OptionalInt.empty() : OptionalInt.of(hundreds * 100);
    }
    OptionalInt below =
        belowHundred(rest.get(0).equals("and") ? rest.subList(1, rest.size()) : rest);
    return below.orElse(0) == 0
        ? OptionalInt.empty()
        : OptionalInt.of(hundreds * 100 + below.getAsInt());
  }

  /** The denominator that a word for a part names, in digits, or null. */
  static String part(String word) {
    String one =
        word.endsWith("s") && !word.equals("halves") ? word.substring(0, word.length() - 1) : word;
    return word.startsWith("/") ? word.substring(1) : PARTS.get(one);
  }

  /** One digit, in a word or as itself, or -1. */
  static int digit(String word) {
    int at = isDigits(word) && word.length() == 1 ? word.charAt(0) - '0' : SMALL.indexOf(word);
    return at < 10 ? at : -1;
  }

  static boolean isVocabulary(String word) {
    return SMALL.contains(word)
        || TENS.contains(word)
        || word.equals("hundred")
        || part(word) != null;
  }

  static boolean isDigits(String word) {
    return !word.isEmpty() && word.chars().allMatch(c -> c >= '0' && c <= '9');
  }

  private static int hundreds(String word) {
    return word.equals("a") ? 1 : Math.max(0, digit(word));
  }

  private static OptionalInt belowHundred(List<String> words) {
    if (words.size() == 1 && SMALL.contains(words.get(0))) {
      return OptionalInt.of(SMALL.indexOf(words.get(0)));
    }
    int tens = words.isEmpty() ? -1 : TENS.indexOf(words.get(0));
    if (tens < 0 || words.size() > 2) {
      return OptionalInt.empty();
    }
    int ones = words.size() == 1 ? 0 : SMALL.indexOf(words.get(1));
    boolean fits = words.size() == 1 || (ones >= 1 && ones <= 9);
    return fits ? OptionalInt.of((tens + 2) * 10 + ones) : OptionalInt.empty();
  }
}
