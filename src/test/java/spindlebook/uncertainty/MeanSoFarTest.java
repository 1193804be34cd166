package spindlebook.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class MeanSoFarTest {

  /** By hand: u of each 0.45, of the mean of two 0.318, of the difference 0.551: U 1.10. */
  @Test
  void within_means_no_further_than_the_U_of_the_difference() {
    MeanSoFar mean = new MeanSoFar();
    mean.add(own("a", -100));
    mean.add(own("b", -99));
    assertTrue(mean.within(own("c", -98.41)));
    assertFalse(mean.within(own("c", -98.39)));
  }

  /** A mark that all share cancels: only the placing is left. */
  @Test
  void what_is_shared_cancels() {
    Source mark = new Source("mark", SourceKind.PLACING);
    MeanSoFar mean = new MeanSoFar();
    mean.add(own("a", -100).withSource(mark, 5));
    mean.add(own("b", -99).withSource(mark, 5));
    assertTrue(mean.within(own("c", -98.41).withSource(mark, 5)));
    assertFalse(mean.within(own("c", -98.39).withSource(mark, 5)));
  }

  /** Against the mean worked out whole, by {@link Figure#mean} and {@link Figure#minus}. */
  @Test
  void says_what_the_mean_of_all_says() {
    SplittableRandom random = new SplittableRandom(31);
    int within = 0;
    for (int book = 0; book < 500; book++) {
      List<Figure> all = new ArrayList<>();
      MeanSoFar mean = new MeanSoFar();
      for (int i = 0; i < 12; i++) {
        Figure next = own("own " + i, random.nextDouble(0, 3));
        for (int s = 0; s < random.nextInt(3); s++) {
          next = next.withSource(new Source("s" + s, SourceKind.RESOLUTION), random.nextDouble());
        }
        if (!all.isEmpty()) {
          Figure apart = next.minus(Figure.mean(all));
          boolean expected = Math.abs(apart.value()) <= apart.U();
          assertEquals(expected, mean.within(next));
          within += expected ? 1 : 0;
        }
        all.add(next);
        mean.add(next);
      }
    }
    assertTrue(within > 1000 && within < 5000, within + " of 5500");
  }

  private static Figure own(String id, double value) {
    return Figure.of(value, new Source(id, SourceKind.PLACING), 0.45);
  }
}
