package spindlebook.drawing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SpreadTest {
  @Test
  void two_labels_that_want_one_place_share_the_push() {
    assertArrayEquals(
        new double[] {-1, 1},
        Spread.apart(new double[] {0, 0}, new double[] {2, 2}, -10, 10),
        1e-12);
  }

  @Test
  void labels_that_have_room_stay_where_they_belong() {
    assertArrayEquals(
        new double[] {1, 5, 9},
        Spread.apart(new double[] {1, 5, 9}, new double[] {2, 2, 2}, 0, 10),
        1e-12);
  }

  @Test
  void a_label_at_the_edge_is_held_inside() {
    assertArrayEquals(
        new double[] {1, 9},
        Spread.apart(new double[] {-4, 20}, new double[] {2, 2}, 0, 10),
        1e-12);
  }

  @Test
  void too_many_labels_are_refused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> Spread.apart(new double[] {0, 0}, new double[] {6, 6}, 0, 10));
  }

  @Test
  void no_other_arrangement_moves_the_labels_less() {
    Random random = new Random(20);
    for (int round = 0; round < 300; round++) {
      int n = 1 + random.nextInt(7);
      double[] wanted = random.doubles(n, -10, 110).sorted().toArray();
      double[] extents = random.doubles(n, 1, 100.0 / n).toArray();
      double[] centres = Spread.apart(wanted, extents, 0, 100);
      double cost = cost(wanted, centres);
      for (int other = 0; other < 40; other++) {
        double[] tried = feasible(random, extents, 100);
        assertTrue(cost <= cost(wanted, tried) + 1e-9, Arrays.toString(wanted));
        double share = random.nextDouble();
        double[] nearer = new double[n];
        for (int i = 0; i < n; i++) {
          nearer[i] = centres[i] + share * 0.05 * (tried[i] - centres[i]);
        }
        assertTrue(cost <= cost(wanted, nearer) + 1e-9, Arrays.toString(wanted));
      }
    }
  }

  private static double[] feasible(Random random, double[] extents, double room) {
    double free = room - Arrays.stream(extents).sum();
    double[] cuts = random.doubles(extents.length, 0, Math.max(1e-9, free)).sorted().toArray();
    double[] centres = new double[extents.length];
    double before = 0;
    for (int i = 0; i < centres.length; i++) {
      centres[i] = cuts[i] + before + extents[i] / 2;
      before += extents[i];
    }
    return centres;
  }

  private static double cost(double[] wanted, double[] centres) {
    double sum = 0;
    for (int i = 0; i < wanted.length; i++) {
      sum += (wanted[i] - centres[i]) * (wanted[i] - centres[i]);
    }
    return sum;
  }
}
