package spindlebook.linkage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import spindlebook.entry.Joint;
import spindlebook.linkage.Calibration.Misfit;
import spindlebook.linkage.Coordinate.Along;
import spindlebook.linkage.Coordinate.Axis;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/** Invented readings with the errors of tape and angle finder, from corners that are known. */
class CalibrationTest {
  private static final double HALF_INCH_MM = 12.7;

  @Test
  void of_a_thousand_corners_the_intervals_hold_what_is_so() {
    int suspected = held(new Random(20261128), ReadCorner.SIX, 1);
    assertTrue(suspected <= 50, "suspected without cause: " + suspected);
  }

  /** The readings alone: nothing was laid out with a tape. */
  @Test
  void so_they_do_when_only_the_readings_tell() {
    held(new Random(7), ReadCorner.SIX.subList(2, 6), 100);
  }

  @Test
  void so_they_do_with_readings_at_lock_and_a_blunder_there_is_named() {
    int suspected = held(new Random(11), ReadCorner.SIX, 1, 60);
    assertTrue(suspected <= 50, "suspected without cause: " + suspected);
    Random random = new Random(13);
    int named = 0;
    for (int run = 0; run < 100; run++) {
      ReadCorner corner = ReadCorner.drawn(random, ReadCorner.SIX, 60);
      int camber = 30 + 2 * random.nextInt(8);
      // A sign left out: camber at lock is a few degrees.
      List<Misfit> wrong =
          Calibration.of(
                  corner.given(),
                  corner.taped(),
                  corner.with(camber, random.nextBoolean() ? 0.04 : -0.04))
              .wrong();
      named +=
          wrong.size() == 1 && wrong.get(0).key().equals(corner.readings().get(camber).key())
              ? 1
              : 0;
    }
    assertTrue(named >= 95, "named: " + named);
  }

  private static int held(Random random, List<Coordinate> coordinates, double wider) {
    return held(random, coordinates, wider, 0);
  }

  /** How often a reading was suspected that was only doubtful. */
  private static int held(
      Random random, List<Coordinate> coordinates, double wider, double lockMm) {
    int[] held = new int[coordinates.size()];
    int suspected = 0;
    for (int run = 0; run < 1000; run++) {
      ReadCorner corner = ReadCorner.drawn(random, coordinates, lockMm);
      List<CoordinateFigure> given =
          coordinates.stream()
              .map(c -> CoordinateFigure.asGiven(c, corner.given()))
              .map(p -> new CoordinateFigure(p.coordinate(), wider(p.value(), wider)))
              .toList();
      Calibration calibrated = Calibration.of(corner.given(), given, corner.readings());
      assertEquals(corner.readings().size() - held.length, calibrated.redundancy(), 2);
      for (int i = 0; i < held.length; i++) {
        CoordinateFigure placed = calibrated.coordinates().get(i);
        double off = placed.value().value() - placed.coordinate().of(corner.real());
        held[i] += Math.abs(off) <= placed.value().U() ? 1 : 0;
      }
      suspected += calibrated.wrong().isEmpty() ? 0 : 1;
    }
    for (int count : held) {
      assertTrue(count >= 930, () -> Arrays.toString(held));
    }
    return suspected;
  }

  private static Figure wider(Figure figure, double times) {
    return figure.times(times).plus((1 - times) * figure.value());
  }

  @Test
  void a_reading_half_an_inch_wrong_is_named() {
    Random random = new Random(42);
    int named = 0;
    for (int run = 0; run < 100; run++) {
      ReadCorner corner = ReadCorner.drawn(random);
      int shock = 3 * random.nextInt(10) + 2;
      double by = random.nextBoolean() ? HALF_INCH_MM : -HALF_INCH_MM;
      List<Misfit> wrong =
          Calibration.of(corner.given(), corner.taped(), corner.with(shock, by)).wrong();
      boolean this_ =
          wrong.size() == 1 && wrong.get(0).key().equals(corner.readings().get(shock).key());
      named += this_ ? 1 : 0;
    }
    assertTrue(named >= 95, "named: " + named);
  }

  /** Leaving it out and asking the others is what off says, but for the model's bend. */
  @Test
  void off_is_what_the_others_say_without_it() {
    ReadCorner corner = ReadCorner.drawn(new Random(9));
    Calibration all = Calibration.of(corner.given(), corner.taped(), corner.readings());
    for (int i = 0; i < 30; i += 4) {
      List<CornerReading> others = new ArrayList<>(corner.readings());
      CornerReading out = others.remove(i);
      Joints without = Calibration.of(corner.given(), corner.taped(), others).joints();
      Pose pose = new Linkage(without).at(out.heightMm().value(), 0).pose();
      // What the others share with it (zero, mark, height) is part of their answer: widen by u.
      double off = out.value().value() - out.quantity().of(pose);
      assertEquals(off, all.readings().get(i).off(), 2 * out.value().u(), out.key());
    }
  }

  @Test
  void exact_readings_lead_back_to_the_true_joints() {
    ReadCorner corner = ReadCorner.drawn(new Random(1));
    Linkage real = new Linkage(corner.real());
    List<CornerReading> exact = new ArrayList<>();
    for (CornerReading reading : corner.readings()) {
      double height = Math.rint(reading.heightMm().value());
      double value = reading.quantity().of(real.at(height, 0).pose());
      Source own = new Source(reading.key(), SourceKind.PLACING);
      exact.add(
          new CornerReading(
              reading.key(),
              reading.quantity(),
              Figure.exact(height),
              0,
              Figure.of(value, own, 1e-6)));
    }
    Calibration calibrated = Calibration.of(corner.given(), corner.taped(), exact);
    for (CoordinateFigure told : calibrated.coordinates()) {
      assertEquals(told.coordinate().of(corner.real()), told.value().value(), 1e-4);
    }
    for (Misfit left : calibrated.readings()) {
      assertEquals(0, left.left(), 1e-6);
    }
    assertEquals(List.of(), calibrated.wrong());
  }

  @Test
  void what_the_readings_cannot_tell_stays_as_given_and_is_named() {
    ReadCorner corner = ReadCorner.drawn(new Random(3));
    Coordinate strap = new Along(Joint.KU, Axis.Z);
    Coordinate pivot = new Along(Joint.LF, Axis.X);
    List<Coordinate> chosen = new ArrayList<>(ReadCorner.SIX);
    chosen.add(strap);
    chosen.add(pivot);
    Calibration calibrated =
        Calibration.of(corner.given(), corner.taped(chosen), corner.readings());
    assertTrue(calibrated.untold().containsAll(List.of(strap, pivot)), "" + calibrated.untold());
    assertEquals(corner.given().get(Joint.KU), calibrated.joints().get(Joint.KU));
    assertEquals(12.7, calibrated.coordinates().get(6).value().U(), 1e-9);
    Calibration few =
        Calibration.of(corner.given(), corner.taped(), corner.readings().subList(0, 2));
    assertTrue(few.untold().size() >= 4, "" + few.untold());
    assertTrue(few.redundancy() < 2, "" + few.redundancy());
    assertEquals(List.of(), few.wrong());
  }

  /** A mount nobody measured, and two readings of it: they disagree, and no third one says who. */
  @Test
  void what_cannot_be_told_apart_is_named_together() {
    ReadCorner corner = ReadCorner.drawn(new Random(4));
    Coordinate mount = new Along(Joint.SU, Axis.Z);
    CoordinateFigure anywhere =
        new CoordinateFigure(
            mount,
            Figure.of(mount.of(corner.real()), new Source("anywhere", SourceKind.PLACING), 1000));
    List<CornerReading> spoilt = corner.with(2, HALF_INCH_MM);
    Calibration calibrated =
        Calibration.of(corner.real(), List.of(anywhere), List.of(spoilt.get(2), spoilt.get(5)));
    assertEquals(1, calibrated.redundancy(), 1e-3);
    assertEquals(
        List.of("SHOCK 0", "SHOCK 1"), calibrated.wrong().stream().map(Misfit::key).toList());
  }

  @Test
  void a_joint_taped_two_inches_off_is_named() {
    ReadCorner corner = ReadCorner.drawn(new Random(12));
    Joints off = ReadCorner.SIX.get(5).moved(corner.given(), 50.8);
    List<CoordinateFigure> taped =
        ReadCorner.SIX.stream().map(c -> CoordinateFigure.asGiven(c, off)).toList();
    Calibration calibrated = Calibration.of(off, taped, corner.readings());
    assertEquals(List.of("SU up"), calibrated.wrong().stream().map(Misfit::key).toList());
  }

  @Test
  void two_coordinates_told_only_together_say_so_by_their_correlation() {
    ReadCorner corner = ReadCorner.drawn(new Random(6));
    Calibration calibrated = Calibration.of(corner.given(), corner.taped(), corner.readings());
    double together =
        calibrated
            .coordinates()
            .get(0)
            .value()
            .correlation(calibrated.coordinates().get(1).value());
    assertTrue(together > 0.5 && together < 1, "inner and outer end of the tie rod: " + together);
  }

  @Test
  void steered_readings_keep_the_arm_of_their_jack_setting() {
    Joints real = ReferenceLinkage.g1();
    Linkage linkage = new Linkage(real);
    Coordinate inner = new Along(Joint.TI, Axis.X);
    List<CornerReading> readings = new ArrayList<>();
    for (double rack : new double[] {-50, 0, 50}) {
      Pose pose = linkage.steered(linkage.at(-100, 0).pose(), rack).pose();
      Source own = new Source("toe " + rack, SourceKind.PLACING);
      readings.add(
          new CornerReading(
              own.id(),
              Quantity.TOE,
              Figure.exact(-100),
              rack,
              Figure.of(pose.toeRad(), own, 1e-6)));
    }
    Calibration calibrated = of(inner.moved(real, 6), inner, readings);
    assertEquals(-152, calibrated.coordinates().get(0).value().value(), 1e-3);
  }

  @Test
  void a_height_out_of_reach_and_a_reading_without_doubt_are_refused() {
    ReadCorner corner = ReadCorner.drawn(new Random(8));
    CornerReading one = corner.readings().get(0);
    CornerReading far =
        new CornerReading("camber far down", one.quantity(), Figure.exact(-900), 0, one.value());
    assertEquals(
        "camber far down: It stops assembling at −376.90 mm: at rack 0.0 mm the wheel comes no"
            + " lower.",
        refused(corner.given(), far));
    CornerReading exact =
        new CornerReading(one.key(), one.quantity(), Figure.exact(0), 0, Figure.exact(0));
    assertEquals(
        "A reading has no doubt of its own, so nothing can be weighed.",
        refused(corner.given(), exact));
  }

  private static Calibration of(Joints given, Coordinate coordinate, List<CornerReading> readings) {
    return Calibration.of(given, List.of(CoordinateFigure.asGiven(coordinate, given)), readings);
  }

  private static String refused(Joints given, CornerReading reading) {
    return assertThrows(
            LinkageRefused.class, () -> of(given, ReadCorner.SIX.get(0), List.of(reading)))
        .getMessage();
  }
}
