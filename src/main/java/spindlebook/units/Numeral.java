package spindlebook.units;

import java.math.BigDecimal;
import java.util.List;

/**
 * What digits with dots and commas between them can mean: a dot is always a decimal point, a comma
 * may be either.
 */
final class Numeral {
  private Numeral() {}

  /** One value, or two for {@code 1,250}: one and a quarter, or twelve hundred and fifty. */
  static List<BigDecimal> values(String text) throws Unreadable {
    int dot = text.lastIndexOf('.');
    int comma = text.lastIndexOf(',');
    if (comma < 0) {
      return List.of(decimal(text, '.'));
    }
    if (dot >= 0) {
      return List.of(grouped(text, dot > comma ? ',' : '.'));
    }
    if (text.indexOf(',') != comma) {
      return List.of(grouped(text, ','));
    }
    return couldBeGrouped(text, ',')
        ? List.of(decimal(text, ','), grouped(text, ','))
        : List.of(decimal(text, ','));
  }

  private static BigDecimal grouped(String text, char separator) throws Unreadable {
    char point = separator == ',' ? '.' : ',';
    int end = text.indexOf(point) < 0 ? text.length() : text.indexOf(point);
    if (!couldBeGrouped(text.substring(0, end), separator)) {
      throw new Unreadable("has dots or commas where no number has them");
    }
    String whole = text.substring(0, end).replace(String.valueOf(separator), "");
    return decimal(whole + text.substring(end), point);
  }

  private static BigDecimal decimal(String text, char point) throws Unreadable {
    if (text.indexOf(point) != text.lastIndexOf(point)
        || text.indexOf(point == '.' ? ',' : '.') >= 0) {
      throw new Unreadable("has dots or commas where no number has them");
    }
    return new BigDecimal(text.replace(point, '.'));
  }

  /** Groups of three after a first group of one to three that does not begin with a zero. */
  private static boolean couldBeGrouped(String whole, char separator) {
    String[] groups = whole.split(String.valueOf(separator == '.' ? "\\." : separator), -1);
    boolean fits = !groups[0].isEmpty() && groups[0].length() <= 3 && groups[0].charAt(0) != '0';
    for (int i = 1; i < groups.length; i++) {
      fits &= groups[i].length() == 3;
    }
    return fits && groups.length > 1;
  }
}
