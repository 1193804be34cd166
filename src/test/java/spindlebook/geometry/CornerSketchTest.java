package spindlebook.geometry;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import spindlebook.linkage.Vec;

/** Where a point lies on the paper: ISO 8855, x forward, y left, z up. */
class CornerSketchTest {
  private static final Vec LEFT = new Vec(0, 700, 0);
  private static final Vec AHEAD = new Vec(300, 0, 0);

  @Test
  void from_above_the_front_is_up_and_the_left_wheel_at_the_left() {
    assertTrue(CornerSketch.View.TOP.of(LEFT, true)[0] < 0);
    assertTrue(CornerSketch.View.TOP.of(AHEAD, true)[1] < 0);
  }

  @Test
  void from_ahead_the_left_wheel_is_at_the_right() {
    assertTrue(CornerSketch.View.FRONT.of(LEFT, true)[0] > 0);
  }
}
