package spindlebook.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FigureTest {
  private static final Source MARK = new Source("frame mark", SourceKind.MARK);
  private static final Source TAPE = new Source("tape", SourceKind.TOOL);

  @Test
  void the_worked_example_of_two_heights() {
    double u = Rectangular.u(25.4 / 32);
    Figure bump = Figure.of(671.5, placing("bump"), u).withSource(MARK, 0.4);
    Figure droop = Figure.of(288.9, placing("droop"), u).withSource(MARK, 0.4);
    Figure travel = bump.minus(droop);
    assertEquals(382.6, travel.value(), 1e-9);
    assertEquals(0.648, travel.u(), 5e-4);
    assertEquals(1.30, travel.U(), 5e-3);
    assertFalse(travel.parts().containsKey(MARK), "a shared mark cancels");
  }

  @Test
  void a_shared_source_adds_linearly_where_it_does_not_cancel() {
    Figure one = Figure.of(1, TAPE, 0.3);
    Figure other = Figure.of(2, TAPE, 0.4);
    assertEquals(0.7, one.plus(other).u(), 1e-15);
    assertEquals(0.1, other.minus(one).u(), 1e-15);
    assertEquals(1, one.correlation(other), 1e-15);
    assertEquals(-1, one.correlation(other.times(-1)), 1e-15);
  }

  @Test
  void the_same_id_of_another_kind_is_another_source() {
    Figure one = Figure.of(1, new Source("7", SourceKind.PLACING), 3);
    Figure other = Figure.of(1, new Source("7", SourceKind.RESOLUTION), 4);
    assertEquals(5, one.plus(other).u(), 1e-15);
    assertEquals(0, one.covariance(other));
  }

  @Test
  void repeats_narrow_placing_but_neither_the_scale_nor_the_tool() {
    Source scale = new Source("scale at this place", SourceKind.RESOLUTION);
    List<Figure> repeats =
        List.of(
            Figure.of(10, placing("1"), 0.6).withSource(scale, 0.4).withSource(TAPE, 0.2),
            Figure.of(11, placing("2"), 0.6).withSource(scale, 0.4).withSource(TAPE, 0.2),
            Figure.of(12, placing("3"), 0.6).withSource(scale, 0.4).withSource(TAPE, 0.2),
            Figure.of(13, placing("4"), 0.6).withSource(scale, 0.4).withSource(TAPE, 0.2));
    Figure mean = Figure.mean(repeats);
    assertEquals(11.5, mean.value(), 1e-15);
    assertEquals(Math.sqrt(0.36 / 4 + 0.16 + 0.04), mean.u(), 1e-15);
  }

  @Test
  void an_exact_number_has_no_doubt_and_no_correlation() {
    Figure exact = Figure.exact(25.4);
    assertEquals(0, exact.U());
    assertEquals(0, exact.correlation(Figure.of(1, TAPE, 1)));
    assertEquals(Figure.of(26.4, TAPE, 0.1), Figure.of(1, TAPE, 0.1).plus(25.4));
  }

  @Test
  void a_figure_cannot_be_changed_from_outside() {
    Map<Source, Double> parts = new LinkedHashMap<>(Map.of(TAPE, 0.5));
    Figure figure = Figure.of(1, parts);
    parts.put(MARK, 9.0);
    assertEquals(0.5, figure.u());
    assertThrows(UnsupportedOperationException.class, () -> figure.parts().put(MARK, 1.0));
  }

  @Test
  void what_is_no_number_is_refused() {
    assertThrows(IllegalArgumentException.class, () -> Figure.exact(Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> Figure.of(1, TAPE, -0.1));
    assertThrows(IllegalArgumentException.class, () -> Figure.of(1, TAPE, Double.NaN));
    assertThrows(IllegalArgumentException.class, () -> Figure.of(1, Map.of(TAPE, 1 / 0.0)));
    assertThrows(IllegalArgumentException.class, () -> Figure.mean(List.of()));
    assertThrows(
        IllegalArgumentException.class,
        () -> Figure.linear(1, List.of(Figure.exact(1)), new double[] {1, 2}));
  }

  /** JCGM 100:2008 eq. 13: u²(a + b) = u²(a) + u²(b) + 2 u(a, b). */
  @Test
  void variances_add_with_twice_the_covariance_whatever_is_shared() {
    Random random = new Random(20240611);
    for (int i = 0; i < 500; i++) {
      Figure a = any(random);
      Figure b = any(random);
      double sum = square(a.u()) + square(b.u()) + 2 * a.covariance(b);
      assertEquals(sum, square(a.plus(b).u()), 1e-12);
      assertEquals(a.covariance(b), b.covariance(a), 1e-15);
      assertTrue(Math.abs(a.correlation(b)) <= 1 + 1e-12);
      assertEquals(0, a.minus(a).u(), "a figure is its own twin");
    }
  }

  private static Figure any(Random random) {
    Figure figure = Figure.exact(random.nextGaussian());
    for (int s = 0; s < 6; s++) {
      if (random.nextBoolean()) {
        Source source = new Source("s" + s, SourceKind.PLACING);
        figure =
            figure.plus(Figure.of(0, source, random.nextDouble()).times(random.nextGaussian()));
      }
    }
    return figure;
  }

  private static Source placing(String reading) {
    return new Source(reading, SourceKind.PLACING);
  }

  private static double square(double number) {
    return number * number;
  }

  @Test
  void u_is_the_same_to_the_last_digit_whatever_the_sources_are_called() {
    Random random = new Random(7);
    for (int round = 0; round < 200; round++) {
      double[] parts = random.doubles(40, 1e-4, 3).toArray();
      double u = named("a", parts).u();
      assertEquals(u, named("quite another name", parts).u());
      assertEquals(u, named(String.valueOf(random.nextLong()), parts).u());
    }
  }

  private static Figure named(String name, double[] parts) {
    Figure figure = Figure.exact(1);
    for (int i = 0; i < parts.length; i++) {
      figure = figure.withSource(new Source(name + i, SourceKind.PLACING), parts[i]);
    }
    return figure;
  }
}
