package spindlebook.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import spindlebook.drawing.ChartDrawing.Words;
import spindlebook.entry.Joint;
import spindlebook.geometry.CornerSketch.Scale;
import spindlebook.geometry.CornerSketch.View;
import spindlebook.linkage.CornerText;
import spindlebook.linkage.Linkage;
import spindlebook.linkage.Pose;
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

  /** The demo's left front, as it was laid out; inches. */
  private static final String CORNER =
      """
      side,left
      units,in
      loaded_radius,14
      LF,7.625,10.875,9.9375
      LR,-8.0625,9.625,10.6875
      L,0.25,26.3125,8.75
      UF,6.125,10,21.625
      UR,-7.375,8.5625,21.0625
      U,-0.8125,24.5625,20.5625
      TI,-5.5625,10.25,13
      TO,-5.125,24.875,11.75
      W,0,30.75,14
      SU,0,14.1875,33.3125
      SL,0.25,19.6875,13.125
      KU,-0.0625,11.5625,28.875
      KL,0.3125,17.0625,13.5625
      """;

  /**
   * Low in droop the shock's and the strap's lower ends lie together: their two names may be
   * struck.
   */
  @Test
  void no_bar_runs_through_a_joints_name() {
    Linkage linkage = new Linkage(CornerText.read(CORNER).joints());
    for (int up = -8; up <= 6; up++) {
      String where = up + " in up";
      Pose pose = linkage.at(up * 25.4, 0).pose();
      Map<Joint, Vec> at = pose.places();
      Scale scale =
          Scale.around(
              View.FRONT,
              true,
              CornerSketch.extent(at, CornerSketch.wheel(pose), View.FRONT),
              356,
              250);
      CornerSketch sketch = CornerSketch.of("", at, CornerSketch.wheel(pose), scale, true);
      assertEquals(13, sketch.words().size(), where);
      List<String> struck =
          sketch.words().stream()
              .filter(
                  w ->
                      sketch.lines().stream()
                          .flatMap(CornerSketch::bars)
                          .anyMatch(CornerSketch.box(w)::intersectsLine))
              .map(Words::text)
              .toList();
      assertTrue(struck.size() <= (up < -3 ? 2 : 0), where + ": " + struck);
      for (Words name : sketch.words()) {
        Joint nearest =
            Stream.of(Joint.values())
                .filter(j -> at.containsKey(j) && !j.direction())
                .min(
                    Comparator.comparingDouble(
                        j -> CornerSketch.off(CornerSketch.box(name), scale.at(at.get(j)))))
                .orElseThrow();
        assertEquals(name.text(), nearest.key, "names what it stands beside, " + where);
      }
    }
  }
}
