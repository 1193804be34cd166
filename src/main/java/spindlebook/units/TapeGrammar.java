package spindlebook.units;

import java.math.BigDecimal;
import java.util.List;
import spindlebook.units.Token.Kind;

/**
 * Reads a whole length: a sign, a count and its unit, or feet and inches ({@code 1' 8 1/4"}, {@code
 * 1'-8 1/4"}, {@code 1 ft 8}), or a fraction behind the mark ({@code 8" 1/4}).
 */
final class TapeGrammar {

  private TapeGrammar() {}

  static List<Amount> read(List<Token> tokens) throws Unreadable {
    Cursor cursor = new Cursor(tokens);
    boolean minus = cursor.takeSign();
    List<Amount> amounts = amounts(cursor);
    cursor.expectEnd();
    return minus ? amounts.stream().map(Amount::negated).toList() : amounts;
  }

  static boolean skipFeet(Cursor cursor) {
    return cursor.skip(Kind.FOOT_MARK) || cursor.skipWord(UnitWords.FEET);
  }

  /** The unit that stands there, or null. */
  static LengthUnit takeUnit(Cursor cursor) {
    if (cursor.skip(Kind.INCH_MARK) || cursor.skipWord(UnitWords.INCHES)) {
      return LengthUnit.INCH;
    }
    if (cursor.skipWord(UnitWords.MILLIMETRES)) {
      return LengthUnit.MM;
    }
    return cursor.skipWord(UnitWords.CENTIMETRES) ? LengthUnit.CM : null;
  }

  private static List<Amount> amounts(Cursor cursor) throws Unreadable {
    List<Count> counts = CountGrammar.read(cursor);
    if (skipFeet(cursor)) {
      return cursor.isAtEnd()
          ? counts.stream().map(Amount::ofFeet).toList()
          : feetAndInches(Count.onlyWhole(counts), cursor);
    }
    LengthUnit unit = takeUnit(cursor);
    boolean fractionFollows =
        unit == LengthUnit.INCH && counts.get(0).isWhole() && !cursor.isAtEnd();
    List<Count> all =
        fractionFollows ? fractionBehindTheMark(Count.onlyWhole(counts), cursor) : counts;
    return Amount.of(all, unit);
  }

  private static List<Amount> feetAndInches(BigDecimal feet, Cursor cursor) throws Unreadable {
    skipJoin(cursor);
    boolean fractionOnly = CountGrammar.isFractionAt(cursor, 0);
    List<Count> inches = CountGrammar.read(cursor);
    LengthUnit unit = takeUnit(cursor);
    if (unit != null && unit != LengthUnit.INCH) {
      throw new Unreadable("joins feet with " + unit.word());
    }
    return Amount.ofFeetAnd(
        feet,
        Amount.of(inches, unit),
        one -> fractionOnly && unit == null && one.count().isLessThanOne());
  }

  private static List<Count> fractionBehindTheMark(BigDecimal whole, Cursor cursor)
      throws Unreadable {
    boolean mayTakeAway = cursor.isAtSpaced(Kind.DASH);
    skipJoin(cursor);
    if (!CountGrammar.isFractionAt(cursor, 0)) {
      throw Unreadable.nonsense();
    }
    List<Count> counts = CountGrammar.beside(whole, cursor, mayTakeAway);
    takeInchMark(cursor);
    return counts;
  }

  private static void skipJoin(Cursor cursor) {
    if (!cursor.skip(Kind.DASH) && !cursor.skip(Kind.COMMA)) {
      cursor.skip(Kind.AND);
    }
  }

  private static void takeInchMark(Cursor cursor) {
    if (cursor.isAt(Kind.INCH_MARK) || cursor.isAtWord(UnitWords.INCHES)) {
      takeUnit(cursor);
    }
  }
}
