package spindlebook.units;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import spindlebook.units.Token.Kind;

/**
 * Reads how many of a unit: {@code 8}, {@code 8.25}, {@code 11/16}, {@code 8 1/4}, {@code 8-1/4},
 * {@code 8 & 1/4}, {@code 8¼}.
 *
 * <p>A dash that touches the whole number joins ({@code 8-1/4}); with a space before it ({@code 8 -
 * 1/4}) it may take away as well, and both are offered.
 */
final class CountGrammar {
  private CountGrammar() {}

  static List<Count> read(Cursor cursor) throws Unreadable {
    if (isFractionAt(cursor, 0)) {
      return fraction(cursor);
    }
    if (!cursor.isAt(Kind.NUMBER)) {
      throw Unreadable.nonsense();
    }
    Token first = cursor.take();
    boolean joined = isFractionAt(cursor, 1) && (cursor.isAt(Kind.AND) || cursor.isAt(Kind.DASH));
    if (!joined && !isFractionAt(cursor, 0)) {
      return numeral(first);
    }
    if (!first.isWholeNumber()) {
      throw new Unreadable("has a decimal number beside a fraction");
    }
    boolean mayTakeAway = joined && cursor.isAtSpaced(Kind.DASH);
    if (joined) {
      cursor.take();
    }
    return beside(new BigDecimal(first.text()), cursor, mayTakeAway);
  }

  /** Whether a fraction starts there. */
  static boolean isFractionAt(Cursor cursor, int ahead) {
    return cursor.isAt(ahead, Kind.ONE_CHARACTER_FRACTION)
        || ((cursor.isAt(ahead, Kind.NUMBER) || cursor.isAt(ahead, Kind.RAISED))
            && cursor.isAt(ahead + 1, Kind.SLASH));
  }

  /** A fraction and the whole number that stands before it. */
  static List<Count> beside(BigDecimal whole, Cursor cursor, boolean mayTakeAway)
      throws Unreadable {
    String[] parts = parts(cursor);
    Count added = Fractions.of(whole, parts[0], Fractions.denominator(parts[1]));
    List<Count> meanings = new ArrayList<>(List.of(added));
    if (mayTakeAway && whole.signum() == 0) {
      throw Unreadable.nonsense(); // "0 -1/4": a quarter, or one below nothing?
    }
    if (mayTakeAway) {
      meanings.add(new Count(whole.add(whole).subtract(added.value()), Count.Form.FRACTION));
    }
    return meanings;
  }

  private static List<Count> fraction(Cursor cursor) throws Unreadable {
    String[] parts = parts(cursor);
    return Fractions.alone(parts[0], Fractions.denominator(parts[1]));
  }

  private static String[] parts(Cursor cursor) throws Unreadable {
    Token numerator = cursor.take();
    if (numerator.kind() == Kind.ONE_CHARACTER_FRACTION) {
      return numerator.text().split("/");
    }
    cursor.take(); // the slash
    boolean below = cursor.isAt(Kind.LOWERED) || cursor.isAt(Kind.NUMBER);
    if (!below || (numerator.kind() == Kind.NUMBER && !numerator.isWholeNumber())) {
      throw Unreadable.nonsense();
    }
    Token denominator = cursor.take();
    if (denominator.kind() == Kind.NUMBER && !denominator.isWholeNumber()) {
      throw Unreadable.nonsense();
    }
    return new String[] {numerator.text(), denominator.text()};
  }

  private static List<Count> numeral(Token number) throws Unreadable {
    List<Count> meanings = new ArrayList<>();
    for (BigDecimal value : Numeral.values(number.text())) {
      meanings.add(Count.of(value, number.isWholeNumber()));
    }
    return meanings;
  }
}
