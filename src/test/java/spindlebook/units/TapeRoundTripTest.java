package spindlebook.units;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TapeRoundTripTest {
  private static final int SIXTY_FOURTHS_IN_100_INCHES = 6400;

  @Test
  void every_sixty_fourth_to_a_hundred_inches_reads_back_exactly_in_every_way_of_writing() {
    for (int n = -SIXTY_FOURTHS_IN_100_INCHES; n <= SIXTY_FOURTHS_IN_100_INCHES; n++) {
      double mm = exactMm(BigDecimal.valueOf(n).divide(BigDecimal.valueOf(64)));
      String inches = TapeFormat.inches(mm, 64);
      assertEquals(mm, Readings.length(inches, LengthUnit.INCH).mm(), inches);
      assertEquals(mm, Readings.length(inches + "\"", LengthUnit.MM).mm(), inches);
      String feet = TapeFormat.feetInches(mm, 64);
      assertEquals(mm, Readings.length(feet, LengthUnit.MM).mm(), feet);
      String length = TapeFormat.length(mm, LengthUnit.INCH, 64);
      assertEquals(mm, Readings.length(length, LengthUnit.CM).mm(), length);
      assertEquals(mm, TapeFormat.roundUp(mm, 64), length);
    }
  }

  @Test
  void every_tenth_of_a_millimetre_to_a_metre_reads_back_exactly() {
    for (int n = -10_000; n <= 10_000; n++) {
      double mm = BigDecimal.valueOf(n, 1).doubleValue() + 0.0;
      assertEquals(mm, Readings.length(TapeFormat.mm(mm, 1), LengthUnit.INCH).mm());
    }
  }

  static Stream<String> fractions() {
    return Readings.lines("inch-fractions.csv").stream();
  }

  /** The machinist's table; provenance in the file. */
  @ParameterizedTest
  @MethodSource("fractions")
  void a_row_of_the_shop_table_agrees_exactly_and_in_its_printed_roundings(String row) {
    String[] cells = row.split(",", -1);
    double mm = Readings.length(cells[0], LengthUnit.INCH).mm();
    assertEquals(exactMm(new BigDecimal(cells[1])), mm);
    assertEquals(mm, Readings.length(cells[1] + " in", LengthUnit.MM).mm());
    assertEquals(mm, Readings.length(cells[2], LengthUnit.INCH).mm(), 0.00005 * 25.4 + 1e-12);
    assertEquals(mm, Readings.length(cells[3], LengthUnit.INCH).mm(), 0.0005 * 25.4 + 1e-12);
    assertEquals(cells[0], TapeFormat.inches(mm, 64));
    assertEquals(cells[0], TapeFormat.inches(Readings.length(cells[2], LengthUnit.INCH).mm(), 64));
  }

  private static double exactMm(BigDecimal inches) {
    return inches.multiply(new BigDecimal("25.4")).doubleValue() + 0.0;
  }
}
