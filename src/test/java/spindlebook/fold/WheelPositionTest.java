package spindlebook.fold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.SplittableRandom;
import org.apache.commons.math3.geometry.euclidean.threed.Rotation;
import org.apache.commons.math3.geometry.euclidean.threed.RotationConvention;
import org.apache.commons.math3.geometry.euclidean.threed.RotationOrder;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

class WheelPositionTest {
  private static final Source SPINDLE = new Source("spindle", SourceKind.PLACING);
  private static final Source MARK = new Source("mark", SourceKind.MARK);
  private static final Source CAMBER = new Source("camber", SourceKind.PLACING);
  private static final Source ROLL = new Source("roll", SourceKind.TILT);

  private static double mm(
      double spindle,
      double mark,
      double outboard,
      double camberDeg,
      double inboard,
      int side,
      double rollDeg,
      double rakeDeg) {
    return WheelPosition.mm(
            Figure.exact(spindle),
            Figure.exact(mark),
            outboard,
            Figure.exact(Math.toRadians(camberDeg)),
            inboard,
            side,
            Figure.exact(Math.toRadians(rollDeg)),
            Math.toRadians(rakeDeg))
        .value();
  }

  @Test
  void the_worked_example_of_its_docstring() {
    assertEquals(-155.630, mm(381.0, 520.7, 152.4, -6, 0, 1, 0, 0), 0.001);
  }

  @Test
  void level_and_at_the_centre_it_is_spindle_minus_mark() {
    assertEquals(-139.7, mm(381.0, 520.7, 0, -6, 0, 1, 0, 0), 1e-12);
  }

  @Test
  void top_outward_camber_dips_the_read_point_so_the_centre_lies_higher() {
    assertTrue(mm(381, 520.7, 152.4, 3, 0, 1, 0, 0) > -139.7);
    assertTrue(mm(381, 520.7, 152.4, -3, 0, 1, 0, 0) < -139.7);
    // The same on the other side of the car: camber is counted per wheel.
    assertEquals(
        mm(381, 520.7, 152.4, 3, 0, 1, 0, 0), mm(381, 520.7, 152.4, 3, 0, -1, 0, 0), 1e-12);
  }

  @Test
  void left_side_up_lifts_a_left_spindle_that_lies_outboard_of_its_mark() {
    // 100 mm further out at 1 degree is 1.745 mm higher over the floor without having moved.
    assertEquals(-139.7 - 1.745, mm(381, 520.7, 0, 0, 100, 1, 1, 0), 0.03);
    assertEquals(-139.7 + 1.745, mm(381, 520.7, 0, 0, 100, -1, 1, 0), 0.03);
  }

  @Test
  void derivatives_agree_with_central_differences() {
    SplittableRandom random = new SplittableRandom(41);
    for (int i = 0; i < 200; i++) {
      double[] at = {
        random.nextDouble(200, 600),
        random.nextDouble(300, 700),
        random.nextDouble(-0.15, 0.15),
        random.nextDouble(-0.1, 0.1)
      };
      double outboard = random.nextDouble(0, 200);
      double inboard = random.nextDouble(0, 300);
      int side = random.nextBoolean() ? 1 : -1;
      double rake = random.nextDouble(-0.1, 0.1);
      Figure position =
          WheelPosition.mm(
              Figure.of(at[0], SPINDLE, 1),
              Figure.of(at[1], MARK, 1),
              outboard,
              Figure.of(at[2], CAMBER, 1),
              inboard,
              side,
              Figure.of(at[3], ROLL, 1),
              rake);
      Source[] sources = {SPINDLE, MARK, CAMBER, ROLL};
      for (int k = 0; k < 4; k++) {
        double step = k < 2 ? 1e-3 : 1e-6;
        double[] up = at.clone();
        up[k] += step;
        double[] down = at.clone();
        down[k] -= step;
        double slope =
            (value(up, outboard, inboard, side, rake) - value(down, outboard, inboard, side, rake))
                / (2 * step);
        assertEquals(
            slope, position.parts().getOrDefault(sources[k], 0.0), 1e-5 * Math.max(1, slope));
      }
    }
  }

  private static double value(double[] at, double outboard, double inboard, int side, double rake) {
    return WheelPosition.mm(
            Figure.exact(at[0]),
            Figure.exact(at[1]),
            outboard,
            Figure.exact(at[2]),
            inboard,
            side,
            Figure.exact(at[3]),
            rake)
        .value();
  }

  /**
   * Independent: a corner is built in the car's axes (x forward, y left, z up), the car is turned
   * as a whole with Commons Math, the two heights are read off, and the wheel position must come
   * back. Roll is what an angle finder laid across the frame shows, rake one laid along it. Where
   * both are there at once the formula's cos φ cos θ stands for the exact √(1 − sin²φ − sin²θ).
   */
  @Test
  void a_turned_car_gives_back_the_position_it_had_when_level() {
    SplittableRandom random = new SplittableRandom(42);
    for (int i = 0; i < 500; i++) {
      int side = random.nextBoolean() ? 1 : -1;
      double z = random.nextDouble(-350, 50);
      double inboard = random.nextDouble(0, 300);
      double outboard = random.nextDouble(0, 200);
      double camberOfFrame = Math.toRadians(random.nextDouble(-8, 8));
      double tiltX = Math.toRadians(random.nextDouble(-4, 4));
      double tiltY = Math.toRadians(random.nextDouble(-4, 4));

      Vector3D mark = new Vector3D(1400, side * 500.0, 900);
      Vector3D centre = mark.add(new Vector3D(0, side * inboard, z));
      // The axis points outboard and dips by the camber (+ top outward).
      Vector3D axis = new Vector3D(0, side * Math.cos(camberOfFrame), -Math.sin(camberOfFrame));
      Vector3D read = centre.add(outboard, axis);
      // A turn about x with +angle lifts what lies to the left; about y with +angle dips the nose.
      Rotation turn =
          new Rotation(RotationOrder.YXZ, RotationConvention.VECTOR_OPERATOR, tiltY, tiltX, 0);

      double roll = Math.asin(turn.applyTo(Vector3D.PLUS_J).getZ());
      double rake = -Math.asin(turn.applyTo(Vector3D.PLUS_I).getZ());
      assertEquals(Math.signum(tiltX), Math.signum(roll), 0.0);
      assertEquals(Math.signum(tiltY), Math.signum(rake), 0.0);
      double camberRead = -Math.asin(turn.applyTo(axis).getZ());

      Figure back =
          WheelPosition.mm(
              Figure.exact(turn.applyTo(read).getZ()),
              Figure.exact(turn.applyTo(mark).getZ()),
              outboard,
              Figure.exact(camberRead),
              inboard,
              side,
              Figure.exact(roll),
              rake);
      double crossTerm = Math.abs(z) * square(Math.sin(roll) * Math.sin(rake));
      assertEquals(z, back.value(), 1e-9 + crossTerm);
    }
  }

  private static double square(double x) {
    return x * x;
  }

  @Test
  void a_mark_that_two_heights_share_is_gone_from_their_difference() {
    Figure mark = Figure.of(520.7, MARK, 0.5);
    Figure low = at(Figure.of(209.55, new Source("a", SourceKind.PLACING), 0.4), mark);
    Figure high = at(Figure.of(381.0, new Source("b", SourceKind.PLACING), 0.4), mark);
    Figure travel = high.minus(low);
    assertEquals(171.45, travel.value(), 1e-9);
    assertEquals(
        Map.of(new Source("a", SourceKind.PLACING), -0.4, new Source("b", SourceKind.PLACING), 0.4),
        travel.parts());
  }

  private static Figure at(Figure spindle, Figure mark) {
    return WheelPosition.mm(spindle, mark, 0, Figure.exact(0), 0, 1, Figure.exact(0), 0);
  }
}
