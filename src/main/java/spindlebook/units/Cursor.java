package spindlebook.units;

import java.util.List;
import java.util.Set;
import spindlebook.units.Token.Kind;

/** A place in a list of tokens that only moves forward. */
final class Cursor {
  private final List<Token> tokens;
  private int at;

  Cursor(List<Token> tokens) {
    this.tokens = tokens;
  }

  boolean isAt(Kind kind) {
    return isAt(0, kind);
  }

  boolean isAt(int ahead, Kind kind) {
    return at + ahead < tokens.size() && tokens.get(at + ahead).kind() == kind;
  }

  boolean isAtSpaced(Kind kind) {
    return isAt(kind) && tokens.get(at).spaced();
  }

  boolean isAtWord(Set<String> words) {
    return isAt(Kind.WORD) && words.contains(tokens.get(at).text());
  }

  boolean isAtEnd() {
    return at == tokens.size();
  }

  Token take() {
    return tokens.get(at++);
  }

  boolean skip(Kind kind) {
    boolean there = isAt(kind);
    if (there) {
      at++;
    }
    return there;
  }

  /** Takes a word if it is one of these, with the full stop of an abbreviation. */
  boolean skipWord(Set<String> words) {
    boolean there = isAtWord(words);
    if (there) {
      at++;
      skip(Kind.DOT);
    }
    return there;
  }

  /** Takes a sign; a minus is true. */
  boolean takeSign() {
    boolean minus = skip(Kind.DASH);
    if (!minus && isAt(Kind.AND) && tokens.get(at).text().equals("+")) {
      at++;
    }
    return minus;
  }

  void expectEnd() throws Unreadable {
    if (isAtEnd()) {
      return;
    }
    boolean twoNumbers = isAt(Kind.NUMBER) && at > 0 && tokens.get(at - 1).kind() == Kind.NUMBER;
    throw twoNumbers
        ? new Unreadable("is two numbers with nothing to join them")
        : Unreadable.nonsense();
  }
}
