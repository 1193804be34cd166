package spindlebook.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Doubt through any formula. Numbers by hand. */
class PropagatedTest {
  private static final Source TAPE = new Source("tape", SourceKind.TOOL);

  @Test
  void a_square_takes_six_times_the_doubt_at_three() {
    Figure square = Propagated.of(List.of(Figure.of(3, TAPE, 0.1)), v -> v[0] * v[0]);
    assertEquals(9, square.value(), 1e-12);
    assertEquals(0.6, square.u(), 1e-12);
  }

  @Test
  void what_two_inputs_share_cancels_in_their_difference_and_what_is_exact_hands_on_nothing() {
    Figure one = Figure.of(3, TAPE, 0.1);
    Figure other = Figure.of(5, TAPE, 0.1);
    assertEquals(0, Propagated.of(List.of(one, other), v -> v[1] - v[0]).u(), 1e-12);
    assertTrue(Propagated.of(List.of(Figure.exact(3)), v -> v[0] * v[0]).parts().isEmpty());
  }
}
