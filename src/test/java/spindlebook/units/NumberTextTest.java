package spindlebook.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class NumberTextTest {
  @Test
  void reads_what_a_person_writes_for_a_number() {
    Map.of(
            "3", 3.0, "2.5", 2.5, "2,5", 2.5, "0,125", .125, "-1", -1.0, "−1.25", -1.25, "+4", 4.0,
            ".5", 0.5, "2 1/2", 2.5, "-2 1/2", -2.5)
        .forEach((text, number) -> assertEquals(number, read(text), text));
    Map.of("4-1/2", 4.5, "1/4", 0.25, "½", 0.5, "2½", 2.5, "3 ¾", 3.75, "7.", 7.0)
        .forEach((text, number) -> assertEquals(number, read(text), text));
  }

  private static double read(String text) {
    return NumberText.read(text).orElseThrow();
  }

  @Test
  void refuses_what_is_none_or_may_be_two() {
    for (String text :
        List.of(
            "", " ", "1,200", "81/4", "5/4", "1/0", "1e3", "0x1", "NaN", "3 in", "--2", "1 2",
            "1.2.3")) {
      assertTrue(NumberText.read(text).isEmpty(), text);
    }
  }
}
