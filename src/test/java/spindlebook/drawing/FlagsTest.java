package spindlebook.drawing;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class FlagsTest {
  @Test
  void flags_with_room_hang_in_one_row_under_their_marks() {
    Flags.Set set = Flags.plant(new double[] {0, 50, 100}, new double[] {30, 30, 30}, 150, 8);
    assertArrayEquals(new double[] {0, 50, 100}, set.pole(), 1e-12);
    assertArrayEquals(new int[] {0, 0, 0}, set.row());
  }

  @Test
  void a_flag_that_would_cover_the_next_pole_hangs_a_row_lower() {
    Flags.Set set = Flags.plant(new double[] {0, 20}, new double[] {30, 30}, 150, 8);
    assertArrayEquals(new int[] {1, 0}, set.row());
  }

  @Test
  void no_pole_runs_through_a_flag_and_no_two_flags_touch() {
    Random random = new Random(21);
    for (int round = 0; round < 2000; round++) {
      int n = 1 + random.nextInt(14);
      double[] wanted =
          random.doubles(n, 0, 170).map(x -> Math.round(x / 17) * 17).sorted().toArray();
      double[] widths = random.doubles(n, 10, 150).toArray();
      Flags.Set set = Flags.plant(wanted, widths, 166, 8);
      for (int i = 0; i < n; i++) {
        double end = set.pole()[i] + widths[i];
        assertTrue(set.pole()[i] >= -1e-9 && end <= 166 + 1e-9, "inside, round " + round);
        for (int j = i + 1; j < n; j++) {
          assertTrue(set.pole()[i] <= set.pole()[j], "order, round " + round);
          boolean passesUnder = set.pole()[j] < end;
          assertTrue(!passesUnder || set.row()[i] > set.row()[j], "crossed, round " + round);
        }
      }
    }
  }
}
