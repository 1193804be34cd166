package spindlebook.units;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import spindlebook.units.Token.Kind;

/**
 * Turns tokens into a plain list of words, the way somebody says them. Telephones that take
 * dictation mix words and digits ({@code 8 and three quarters}, {@code 3 16ths}), so digits stay as
 * they are and a denominator becomes {@code /16}.
 */
final class SpokenWords {
  private static final Set<String> MINUS = Set.of("minus", "negative");
  private static final Set<String> ORDINALS = Set.of("th", "ths", "nd", "nds", "rd", "rds");
  private static final Set<String> OTHERS = Set.of("a", "an", "of", "point");

  private SpokenWords() {}

  /** Whether any word is more than a unit: only then is a text read as spoken. */
  static boolean isSpoken(List<Token> tokens) {
    return tokens.stream()
        .filter(token -> token.kind() == Kind.WORD)
        .map(Token::text)
        .anyMatch(
            word ->
                SpokenNumber.isVocabulary(word)
                    || MINUS.contains(word)
                    || ORDINALS.contains(word)
                    || OTHERS.contains(word));
  }

  static boolean isMinus(List<String> words) {
    return !words.isEmpty() && MINUS.contains(words.get(0));
  }

  static boolean isOne(List<String> words) {
    return words.size() == 1 && (words.get(0).equals("a") || words.get(0).equals("an"));
  }

  static List<String> withoutAnd(List<String> words) {
    return !words.isEmpty() && words.get(0).equals("and") ? words.subList(1, words.size()) : words;
  }

  /**
   * {@code three quarters of an}, {@code half an} as said before a unit: without what only leads
   * over to it.
   */
  static List<String> withoutOfA(List<String> words) {
    List<String> left = words;
    if (left.size() > 1 && isOne(left.subList(left.size() - 1, left.size()))) {
      left = left.subList(0, left.size() - 1);
    }
    return left.size() > 1 && left.get(left.size() - 1).equals("of")
        ? left.subList(0, left.size() - 1)
        : left;
  }

  static List<String> of(List<Token> tokens) throws Unreadable {
    List<String> words = new ArrayList<>();
    for (int i = 0; i < tokens.size(); i++) {
      Token token = tokens.get(i);
      Token next = i + 1 < tokens.size() ? tokens.get(i + 1) : null;
      boolean ordinal = next != null && !next.spaced() && ORDINALS.contains(next.text());
      if (token.isWholeNumber() && ordinal) {
        words.add("/" + token.text());
        i++;
      } else if (token.kind() == Kind.SLASH && isNumber(next)) {
        words.add("/" + next.text());
        i++;
      } else {
        add(words, token);
      }
    }
    return words;
  }

  private static boolean isNumber(Token token) {
    return token != null && (token.isWholeNumber() || token.kind() == Kind.LOWERED);
  }

  private static void add(List<String> words, Token token) throws Unreadable {
    switch (token.kind()) {
      case NUMBER -> words.add(whole(token));
      case RAISED -> words.add(token.text());
      case WORD -> addWord(words, token);
      case AND -> words.add("and");
      case FOOT_MARK -> words.add("ft");
      case INCH_MARK -> words.add("in");
      case DEGREE_MARK -> words.add("deg");
      case ONE_CHARACTER_FRACTION -> {
        words.add(token.text().substring(0, 1));
        words.add(token.text().substring(1));
      }
      case DASH -> addDash(words, token);
      case COMMA, DOT -> {}
      default -> throw Unreadable.nonsense();
    }
  }

  /** The ending of {@code 3/8ths} says nothing that the slash has not said. */
  private static void addWord(List<String> words, Token word) {
    boolean ending = !word.spaced() && ORDINALS.contains(word.text());
    if (!ending || words.isEmpty() || !words.get(words.size() - 1).startsWith("/")) {
      words.add(word.text());
    }
  }

  private static String whole(Token number) throws Unreadable {
    if (!number.isWholeNumber()) {
      throw new Unreadable("mixes words with a decimal number");
    }
    return number.text();
  }

  /** A first dash is a sign, one inside a word is nothing; a free-standing one could take away. */
  private static void addDash(List<String> words, Token dash) throws Unreadable {
    if (words.isEmpty()) {
      words.add("minus");
    } else if (dash.spaced()) {
      throw Unreadable.nonsense();
    }
  }
}
