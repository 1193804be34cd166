package spindlebook.units;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import spindlebook.units.Token.Kind;

/**
 * Reads a whole angle: a sign, then degrees, or degrees with minutes and seconds, or minutes with
 * seconds. The sign belongs to all of it: {@code -0° 45'} is three quarters of a degree below zero.
 */
final class AngleGrammar {
  private static final BigDecimal SIXTY = BigDecimal.valueOf(60);
  private static final BigDecimal NONE = BigDecimal.ZERO;

  private AngleGrammar() {}

  static List<AngleAmount> read(List<Token> tokens) throws Unreadable {
    Cursor cursor = new Cursor(tokens);
    boolean minus = cursor.takeSign();
    List<AngleAmount> amounts = amounts(cursor);
    cursor.expectEnd();
    return minus ? amounts.stream().map(AngleAmount::negated).toList() : amounts;
  }

  private static List<AngleAmount> amounts(Cursor cursor) throws Unreadable {
    List<Count> counts = CountGrammar.read(cursor);
    if (skipMinutes(cursor)) {
      return cursor.isAtEnd() ? minutesOnly(counts) : withSeconds(NONE, counts, cursor);
    }
    if (skipSeconds(cursor)) {
      throw new Unreadable("is in seconds alone, which could be meant for inches");
    }
    if (!skipDegrees(cursor) || cursor.isAtEnd()) {
      return each(counts, count -> new AngleAmount(false, count, NONE, NONE));
    }
    return belowDegrees(Count.onlyWhole(counts), cursor);
  }

  private static List<AngleAmount> belowDegrees(BigDecimal degrees, Cursor cursor)
      throws Unreadable {
    List<Count> counts = CountGrammar.read(cursor);
    if (skipSeconds(cursor)) {
      return each(underSixty(counts), count -> new AngleAmount(false, degrees, NONE, count));
    }
    if (skipMinutes(cursor) && !cursor.isAtEnd()) {
      return withSeconds(degrees, counts, cursor);
    }
    return each(underSixty(counts), count -> new AngleAmount(false, degrees, count, NONE));
  }

  private static List<AngleAmount> withSeconds(
      BigDecimal degrees, List<Count> counts, Cursor cursor) throws Unreadable {
    BigDecimal minutes = Count.onlyWhole(underSixty(counts));
    List<Count> seconds = CountGrammar.read(cursor);
    skipSeconds(cursor);
    return each(underSixty(seconds), count -> new AngleAmount(false, degrees, minutes, count));
  }

  private static List<AngleAmount> minutesOnly(List<Count> counts) {
    return each(counts, count -> new AngleAmount(false, NONE, count, NONE));
  }

  private static List<AngleAmount> each(
      List<Count> counts, Function<BigDecimal, AngleAmount> amount) {
    return counts.stream().map(Count::value).map(amount).toList();
  }

  private static List<Count> underSixty(List<Count> counts) throws Unreadable {
    List<Count> under = new ArrayList<>(counts);
    under.removeIf(count -> count.value().compareTo(SIXTY) >= 0);
    if (under.isEmpty()) {
      throw new Unreadable("has 60 or more minutes or seconds");
    }
    return under;
  }

  private static boolean skipDegrees(Cursor cursor) {
    return cursor.skip(Kind.DEGREE_MARK) || cursor.skipWord(UnitWords.DEGREES);
  }

  private static boolean skipMinutes(Cursor cursor) {
    return cursor.skip(Kind.FOOT_MARK) || cursor.skipWord(UnitWords.MINUTES);
  }

  private static boolean skipSeconds(Cursor cursor) {
    return cursor.skip(Kind.INCH_MARK) || cursor.skipWord(UnitWords.SECONDS);
  }
}
