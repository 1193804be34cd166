package spindlebook.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
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
  void a_comma_parts_the_thousands_of_pounds() {
    assertEquals("1100 lbs", typed("1,100 lbs"));
    assertEquals("1100 ± 50 lb", typed("1,100 ± 50"));
    assertEquals("1250 lb/in", typed("1,250 lb/in", AmountUnit.LB_PER_IN));
    assertEquals("1234567 N", typed("1,234,567 N"));
    assertEquals("1100.5 lb", typed("1,100.5"));
  }

  @Test
  void a_comma_is_a_decimal_one_where_it_can_be_nothing_else() {
    assertEquals("11.5 N/mm", typed("11,5 N/mm", AmountUnit.N_PER_MM));
    assertEquals("0.250 kg", typed("0,250 kg"));
    assertEquals("520.25 kg", typed(" 520,25 kg "));
    assertEquals("62.5 ± 0.5 lb", typed("62,5 ± 0,5 lb"));
    assertEquals("1100.5 kg", typed("1.100,5 kg"));
  }

  @Test
  void a_comma_of_kilograms_and_newtons_is_asked_back_where_it_can_be_either() {
    TextRead<TypedAmount> read = TypedAmount.typed("1,250 kg", AmountUnit.POUND);
    assertEquals(
        List.of("1.250 kg", "1250 kg"),
        assertInstanceOf(TextRead.TwoMeanings.class, read).choices().stream()
            .map(amount -> ((TypedAmount) amount).typed())
            .toList());
    assertTrue(TypedAmount.typed("26,250", AmountUnit.N_PER_MM) instanceof TextRead.TwoMeanings<?>);
  }

  @Test
  void what_is_no_amount_is_refused_in_a_sentence() {
    for (String text :
        new String[] {"heavy", "1,1,1 lb", "1,10,100", "-3 lb", "26 N/mm", ",", "."}) {
      assertEquals(
          "“" + text + "” is not read here: type a number, in lb, kg or N.",
          assertInstanceOf(TextRead.Refused.class, TypedAmount.typed(text, AmountUnit.POUND), text)
              .sentence());
    }
  }

  private static String typed(String text) {
    return typed(text, AmountUnit.POUND);
  }

  private static String typed(String text, AmountUnit bare) {
    return TypedAmount.typed(text, bare).plain().orElseThrow().typed();
  }

  @Test
  void what_is_no_amount_is_none() {
    for (String text :
        new String[] {"", "lb", "heavy", "3 stone", "1,100 lb", "1 1/2 lb", "5 ± -1 lb"}) {
      assertTrue(TypedAmount.read(text, AmountUnit.POUND).isEmpty(), text);
    }
    assertTrue(TypedAmount.read("350", null).isEmpty());
    assertThrows(IllegalArgumentException.class, () -> read("350 lb").si(true));
    assertThrows(IllegalArgumentException.class, () -> read("-3 lb").si(false));
  }
}
