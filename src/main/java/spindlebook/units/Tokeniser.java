package spindlebook.units;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.IntUnaryOperator;
import spindlebook.units.Token.Kind;

/** Cuts typed text into tokens in one pass, never looking back further than one character. */
final class Tokeniser {
  private static final int NUMERATOR_ONE = '⅟';

  private final int[] glyphs;
  private final List<Token> tokens = new ArrayList<>();
  private int at;
  private boolean spaced;

  private Tokeniser(String text) {
    glyphs = text.codePoints().filter(c -> !Glyph.isInvisible(c)).map(Glyph::plain).toArray();
  }

  static List<Token> cut(String text) {
    return new Tokeniser(text).cut();
  }

  /** Whether there is nothing to see. */
  static boolean isBlank(String text) {
    return text.codePoints().allMatch(c -> Glyph.isInvisible(c) || Glyph.plain(c) == ' ');
  }

  private List<Token> cut() {
    while (at < glyphs.length) {
      if (glyphs[at] == ' ') {
        spaced = true;
        at++;
      } else {
        next(glyphs[at]);
      }
    }
    return List.copyOf(tokens);
  }

  private void next(int c) {
    if (isDigit(c) || (c == '.' && isDigit(peek(1)))) {
      number();
    } else if (c >= 'a' && c <= 'z') {
      word();
    } else if (Glyph.raisedDigit(c) >= 0) {
      run(Kind.RAISED, Glyph::raisedDigit);
    } else if (Glyph.loweredDigit(c) >= 0) {
      run(Kind.LOWERED, Glyph::loweredDigit);
    } else if (c == NUMERATOR_ONE) {
      add(Kind.RAISED, "1", 0);
      add(Kind.SLASH, "/", 1);
    } else if (Glyph.fraction(c) != null) {
      add(Kind.ONE_CHARACTER_FRACTION, Glyph.fraction(c), 1);
    } else if (c == '\'' && peek(1) == '\'') {
      add(Kind.INCH_MARK, "\"", 2);
    } else {
      add(kindOfMark(c), Character.toString(c), 1);
    }
  }

  /** Digits with dots and commas between them; what those mean is for {@link Numeral} to say. */
  private void number() {
    StringBuilder text = new StringBuilder();
    int end = at;
    while (end < glyphs.length
        && (isDigit(glyphs[end])
            || (isPoint(glyphs[end]) && end + 1 < glyphs.length && isDigit(glyphs[end + 1])))) {
      text.appendCodePoint(glyphs[end++]);
    }
    add(Kind.NUMBER, text.toString(), end - at);
  }

  private void word() {
    String text = collect(c -> c >= 'a' && c <= 'z');
    add(text.equals("and") ? Kind.AND : Kind.WORD, text, text.length());
  }

  private void run(Kind kind, IntUnaryOperator digit) {
    String raw = collect(c -> digit.applyAsInt(c) >= 0);
    StringBuilder digits = new StringBuilder();
    raw.chars().forEach(c -> digits.append(digit.applyAsInt(c)));
    add(kind, digits.toString(), raw.length());
  }

  private String collect(IntPredicate belongs) {
    StringBuilder text = new StringBuilder();
    for (int end = at; end < glyphs.length && belongs.test(glyphs[end]); end++) {
      text.appendCodePoint(glyphs[end]);
    }
    return text.toString();
  }

  private void add(Kind kind, String text, int length) {
    tokens.add(new Token(kind, text, spaced));
    spaced = false;
    at += length;
  }

  private int peek(int ahead) {
    return at + ahead < glyphs.length ? glyphs[at + ahead] : -1;
  }

  private static boolean isDigit(int c) {
    return c >= '0' && c <= '9';
  }

  private static boolean isPoint(int c) {
    return c == '.' || c == ',';
  }

  private static Kind kindOfMark(int c) {
    return switch (c) {
      case '/' -> Kind.SLASH;
      case '-' -> Kind.DASH;
      case ',' -> Kind.COMMA;
      case '.' -> Kind.DOT;
      case '&', '+' -> Kind.AND;
      case '\'' -> Kind.FOOT_MARK;
      case '"' -> Kind.INCH_MARK;
      case '°' -> Kind.DEGREE_MARK;
      default -> Kind.OTHER;
    };
  }
}
