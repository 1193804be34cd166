package spindlebook.gauge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Set;
import org.junit.jupiter.api.Test;
import spindlebook.entry.AlignmentWay;

class TakenByTest {
  @Test
  void every_way_of_measuring_has_a_name_in_the_file_and_a_form() {
    Set<Class<?>> ways = Set.of(AlignmentWay.class.getPermittedSubclasses());
    assertEquals(ways, Set.copyOf(AlignmentWay.NAMES.values()));
    for (Class<?> way : ways) {
      assertTrue(
          Arrays.stream(TakenBy.values()).anyMatch(by -> by.type() == way), way.getSimpleName());
    }
  }
}
