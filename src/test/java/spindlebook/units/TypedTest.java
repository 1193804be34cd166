package spindlebook.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class TypedTest {
  @Test
  void a_value_that_is_not_finite_or_a_text_that_is_missing_is_no_reading() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new TypedLength("8", Double.NaN, LengthUnit.MM, "tape-1"));
    assertThrows(
        IllegalArgumentException.class,
        () -> new TypedAngle("8", Double.POSITIVE_INFINITY, "angle-1"));
    assertThrows(
        NullPointerException.class, () -> new TypedLength(null, 8, LengthUnit.MM, "tape-1"));
    assertThrows(NullPointerException.class, () -> new TypedAngle("8", 8, null));
  }

  @Test
  void minus_zero_is_zero() {
    assertEquals(
        new TypedLength("0", 0.0, LengthUnit.MM, "tape-1"),
        new TypedLength("0", -0.0, LengthUnit.MM, "tape-1"));
  }

  @Test
  void a_unit_weighs_what_it_should() {
    assertEquals(25.4, LengthUnit.INCH.mm());
    assertEquals(1.0, LengthUnit.MM.mm());
    assertEquals(10.0, LengthUnit.CM.mm());
  }
}
