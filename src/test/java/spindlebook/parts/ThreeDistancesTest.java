package spindlebook.parts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** A joint held at three lengths. Numbers by hand: Pythagoras. */
class ThreeDistancesTest {
  private static final Vector3D A = Vector3D.ZERO;
  private static final Vector3D B = new Vector3D(3, 0, 0);
  private static final Vector3D C = new Vector3D(0, 4, 0);

  private static Vector3D meet(double ra, double rb, double rc, Vector3D near) {
    return ThreeDistances.meet(A, ra, B, rb, C, rc, near);
  }

  @Test
  void of_the_two_places_it_is_the_one_on_the_wanted_side() {
    Vector3D above = meet(3, Math.sqrt(12), 3, new Vector3D(0, 0, 1));
    assertEquals(0, above.distance(new Vector3D(1, 2, 2)), 1e-12);
    Vector3D below = meet(3, Math.sqrt(12), 3, new Vector3D(5, 5, -1));
    assertEquals(0, below.distance(new Vector3D(1, 2, -2)), 1e-12);
  }

  @Test
  void any_point_comes_back_from_its_own_three_distances() {
    Random random = new Random(8);
    for (int i = 0; i < 500; i++) {
      Vector3D a = drawn(random);
      Vector3D b = drawn(random);
      Vector3D c = drawn(random);
      Vector3D p = drawn(random);
      Vector3D found = ThreeDistances.meet(a, p.distance(a), b, p.distance(b), c, p.distance(c), p);
      assertEquals(0, found.distance(p), 1e-3);
      assertEquals(p.distance(a), found.distance(a), 1e-6);
    }
  }

  @Test
  void lengths_that_do_not_reach_and_three_joints_on_one_line_are_refused() {
    assertThrows(IllegalArgumentException.class, () -> meet(0.5, 0.5, 0.5, Vector3D.PLUS_K));
    assertThrows(
        ArithmeticException.class,
        () -> ThreeDistances.meet(A, 3, B, 3, B.scalarMultiply(2), 3, Vector3D.PLUS_K));
  }

  private static Vector3D drawn(Random random) {
    return new Vector3D(
        500 * random.nextDouble(), 500 * random.nextDouble(), 500 * random.nextDouble());
  }
}
