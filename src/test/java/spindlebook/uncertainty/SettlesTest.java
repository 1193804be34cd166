package spindlebook.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Source: derived in docs/methods.md; no table outside. */
class SettlesTest {
  @Test
  void the_worked_example_wants_four_readings() {
    assertEquals(new Settles.Repeats(4), Settles.how(figure(11, 0.8, 0.2, 0), 10));
    assertEquals(new Settles.Repeats(4), Settles.how(figure(9, 0.8, 0.2, 0), 10));
  }

  @Test
  void a_coarse_scale_wants_a_finer_one() {
    assertEquals(new Settles.FinerTool(0.5), Settles.how(figure(11, 0.1, 0.8, 0), 10));
  }

  @Test
  void either_is_said_when_either_is_enough() {
    assertEquals(new Settles.RepeatsOrFinerTool(2, 0.5), Settles.how(figure(11, 0.4, 0.4, 0), 10));
  }

  @Test
  void both_are_asked_for_when_neither_is_enough() {
    assertEquals(
        new Settles.RepeatsWithFinerTool(3, 0.125), Settles.how(figure(11, 0.8, 0.8, 0), 10));
  }

  @Test
  void what_is_shared_cannot_be_repeated_away() {
    assertEquals(new Settles.RepeatingWillNot(), Settles.how(figure(11, 0.3, 0.2, 0.6), 10));
    assertEquals(new Settles.RepeatingWillNot(), Settles.how(figure(10, 0.3, 0.2, 0), 10));
  }

  @Test
  void a_figure_beyond_its_uncertainty_is_settled() {
    assertEquals(new Settles.Settled(), Settles.how(figure(12, 0.1, 0.1, 0.1), 10));
    assertEquals(new Settles.Settled(), Settles.how(Figure.exact(10), 10));
  }

  @Test
  void exactly_u_below_the_limit_still_asks_for_something() {
    assertEquals(new Settles.Repeats(2), Settles.how(figure(9, 0.5, 0, 0), 10));
    assertEquals(new Settles.RepeatingWillNot(), Settles.how(figure(9, 0, 0, 0.5), 10));
  }

  @Test
  void the_number_of_repeats_is_the_smallest_that_decides() {
    Random random = new Random(7);
    int repeats = 0;
    for (int i = 0; i < 1000; i++) {
      double away = random.nextDouble() * 2;
      double placing = random.nextDouble();
      double shared = random.nextDouble() * 0.5;
      Settles settles = Settles.how(figure(10 + away, placing, 0, shared), 10);
      if (settles instanceof Settles.Repeats told) {
        repeats++;
        assertTrue(told.n() >= 2 && told.n() <= Settles.MOST);
        assertTrue(away >= expanded(placing, shared, told.n()));
        assertTrue(away < expanded(placing, shared, told.n() - 1));
      }
    }
    assertTrue(repeats > 100, "the generator must reach the case: " + repeats);
  }

  @Test
  void the_steps_told_decide_and_twice_as_coarse_do_not() {
    // 2 √(0.1² + (0.8 s)²) ≤ 1 from s = 0.61 down: half of today's.
    Random random = new Random(11);
    int finer = 0;
    for (int i = 0; i < 1000; i++) {
      double away = random.nextDouble() * 2;
      double placing = random.nextDouble() * 0.5;
      double scale = random.nextDouble();
      Settles settles = Settles.how(figure(10 + away, placing, scale, 0), 10);
      if (settles instanceof Settles.FinerTool told && told.steps() > 0) {
        finer++;
        assertTrue(away >= 2 * Math.hypot(placing, scale * told.steps()));
        assertTrue(away < 2 * Math.hypot(placing, scale * 2 * told.steps()));
      }
    }
    assertTrue(finer > 50, "the generator must reach the case: " + finer);
  }

  private static double expanded(double placing, double shared, int n) {
    return 2 * Math.sqrt(placing * placing / n + shared * shared);
  }

  private static Figure figure(double value, double placing, double resolution, double shared) {
    return Figure.exact(value)
        .withSource(new Source("r", SourceKind.PLACING), placing)
        .withSource(new Source("r", SourceKind.RESOLUTION), resolution)
        .withSource(new Source("tape", SourceKind.TOOL), shared);
  }
}
