package spindlebook.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** Pounds and inches: international yard and pound agreement, 1959; gravity: 3rd CGPM, 1901. */
class TypedAmountTest {
  private static TypedAmount read(String text) {
    return TypedAmount.read(text, AmountUnit.POUND).orElseThrow();
  }

  @Test
  void rates_and_weights_in_both_systems() {
    assertEquals(0.45359237 * 9.80665 / 25.4 * 350, read("350 lb/in").si(true), 1e-12);
    assertEquals(26, read("26N/mm").si(true));
    assertEquals(0.45359237 * 9.80665 * 1146, read("1146 lbs").si(false), 1e-9);
    assertEquals(520 * 9.80665, read("520 kg").si(false), 1e-9);
    assertEquals(520, AmountUnit.kg(read("520 kg").si(false)), 1e-12);
    assertEquals(2450.25, read("2450.25 N").si(false));
    assertEquals("100 lb", read("100").typed());
    assertEquals(100, AmountUnit.POUND.of(read("100").si(false)), 1e-12);
  }

  @Test
  void with_its_half_width() {
    assertEquals(20 * 0.45359237 * 9.80665, read("1146 ± 20 lb").siWithin(), 1e-12);
    assertEquals(10, read("350 +/- 10 N/mm").siWithin());
    assertEquals(0, read("350 lb/in").siWithin());
  }

  @Test
  void what_is_no_amount_is_none() {
    for (String text : new String[] {"", "lb", "heavy", "3 stone", "1 1/2 lb", "5 ± -1 lb"}) {
      assertTrue(TypedAmount.read(text, AmountUnit.POUND).isEmpty(), text);
    }
    assertTrue(TypedAmount.read("350", null).isEmpty());
    assertThrows(IllegalArgumentException.class, () -> read("350 lb").si(true));
    assertThrows(IllegalArgumentException.class, () -> read("-3 lb").si(false));
  }
}
