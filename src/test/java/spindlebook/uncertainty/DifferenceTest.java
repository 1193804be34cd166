package spindlebook.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** By hand, after JCGM 100:2008 eq. 13 and 16 (from memory). */
class DifferenceTest {
  private static final Source TAPE = new Source("tape", SourceKind.TOOL);

  private static Figure placed(double value, String key) {
    return Figure.of(value, new Source(key, SourceKind.PLACING), 0.458).withSource(TAPE, 0.3);
  }

  @Test
  void what_both_share_cancels_and_what_is_each_ones_own_adds_up() {
    Difference d = Difference.of(placed(12.7, "left"), placed(9.525, "right"));
    assertEquals(3.175, d.apart().value(), 1e-12);
    // 2 · √(0.458² + 0.458²); with the tape's part it would be 1.549.
    assertEquals(1.2954, d.apart().U(), 1e-4);
    assertTrue(d.beyond());
  }

  @Test
  void a_shared_error_left_in_would_hide_a_true_difference() {
    // 1.4 mm apart: beyond 1.295, not beyond 1.549.
    assertTrue(Difference.of(placed(10, "left"), placed(11.4, "right")).beyond());
    assertFalse(Difference.of(placed(10, "left"), placed(11.2, "right")).beyond());
  }

  @Test
  void exactly_as_far_apart_as_it_is_doubtful_is_not_beyond() {
    Figure half = Figure.of(1, new Source("one", SourceKind.PLACING), 0.5);
    assertFalse(Difference.of(half, Figure.exact(0)).beyond());
    assertTrue(Difference.of(half, Figure.exact(-0.001)).beyond());
  }

  @Test
  void equal_figures_never_differ_and_exact_ones_do_at_once() {
    Figure placed = placed(4, "same");
    assertFalse(Difference.of(placed, placed).beyond());
    assertEquals(0, Difference.of(placed, placed).apart().U());
    assertFalse(Difference.of(Figure.exact(1), Figure.exact(1)).beyond());
    assertTrue(Difference.of(Figure.exact(1), Figure.exact(1.0001)).beyond());
  }

  @Test
  void two_errors_of_one_name_do_not_cancel() {
    Difference d =
        Difference.of(placed(12.7, "left"), placed(9.525, "right"), s -> !s.equals(TAPE));
    // 2 · √(2 · 0.458² + 2 · 0.3²).
    assertEquals(1.5485, d.apart().U(), 1e-4);
    assertTrue(d.beyond());
    assertFalse(
        Difference.of(placed(10, "left"), placed(11.4, "right"), s -> !s.equals(TAPE)).beyond());
    assertEquals(
        Difference.of(placed(10, "left"), placed(11, "right")),
        Difference.of(placed(10, "left"), placed(11, "right"), s -> true));
  }
}
