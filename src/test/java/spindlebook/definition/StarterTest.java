package spindlebook.definition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import spindlebook.entry.HeightName;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.fold.Moves;
import spindlebook.fold.Subject;
import spindlebook.fold.Where;

/** What a corner starts with. Its rules are common practice, no source. */
class StarterTest {
  private static final List<Layout> KNOWN = List.of(Layout.values());

  @Test
  void every_short_name_is_said_once_a_corner_and_every_rule_says_where_it_is_from() {
    for (Layout layout : KNOWN) {
      Set<String> points = new HashSet<>();
      for (WatchPoint point : Starter.watchPoints(layout)) {
        assertTrue(points.add(point.point()), layout + " " + point.point());
        assertEquals(Starter.COMMON, point.basis());
      }
      Set<String> adjusters = new HashSet<>();
      for (Adjuster adjuster : Starter.adjusters(layout)) {
        assertTrue(adjusters.add(adjuster.adjuster()), layout + " " + adjuster.adjuster());
      }
    }
  }

  @Test
  void every_layout_has_its_stops_and_what_changes_a_reading_of_each_of_its_watch_points() {
    for (Layout layout : KNOWN) {
      List<AdjusterKind> kinds = Starter.adjusters(layout).stream().map(Adjuster::kind).toList();
      assertTrue(kinds.contains(AdjusterKind.LIMIT_STRAP), layout.words());
      assertTrue(kinds.contains(AdjusterKind.BUMP_STOP_SPACER), layout.words());
      for (WatchPoint point : Starter.watchPoints(layout)) {
        Subject read =
            new Subject.Taken(
                Quantity.WATCH_POINT, point.place(), Steering.STRAIGHT, HeightName.IN_BETWEEN);
        assertTrue(
            kinds.stream().anyMatch(k -> Moves.by(k, Where.HERE, read)),
            layout + " " + point.name());
      }
    }
  }

  @Test
  void only_a_steered_corner_has_a_tie_rod_a_rack_and_a_steering_stop() {
    List<AdjusterKind> steering =
        List.of(
            AdjusterKind.TIE_ROD_LENGTH,
            AdjusterKind.TIE_ROD_SHIM,
            AdjusterKind.RACK_POSITION,
            AdjusterKind.STEERING_STOP);
    for (Layout layout : KNOWN) {
      for (Adjuster adjuster : Starter.adjusters(layout)) {
        assertFalse(!layout.steered() && steering.contains(adjuster.kind()), adjuster.name());
      }
      for (WatchPoint point : Starter.watchPoints(layout)) {
        assertFalse(!layout.steered() && point.place().has(Part.TIE_ROD), point.name());
      }
    }
  }

  @Test
  void a_steered_a_arm_starts_with_both_uniballs_looked_at_at_the_locks_only() {
    List<WatchPoint> points =
        Starter.watchPoints(Layout.STEERED_DOUBLE_A_ARM).stream()
            .filter(p -> p.place().has(Part.UNIBALL))
            .toList();
    assertEquals(
        List.of("upper uniball angle", "lower uniball angle"),
        points.stream().map(WatchPoint::name).toList());
    for (WatchPoint point : points) {
      assertEquals(22, Math.toDegrees(point.keep().mostAngle().rad()), 1e-12);
      assertTrue(point.place().worstAtALock() && point.place().steered());
    }
  }

  @Test
  void a_trailing_arm_starts_with_a_joint_s_angle_at_most_and_its_plunge_between_two_ends() {
    List<WatchPoint> points = Starter.watchPoints(Layout.TRAILING_ARM);
    Keep angle = points.stream().filter(p -> p.point().equals("cv-angle")).findFirst().get().keep();
    assertEquals(18, Math.toDegrees(angle.mostAngle().rad()), 1e-12);
    Keep plunge =
        points.stream().filter(p -> p.point().equals("cv-plunge")).findFirst().get().keep();
    assertEquals(-9.525, plunge.least().mm(), 1e-12);
    assertEquals(9.525, plunge.most().mm(), 1e-12);
  }

  @Test
  void what_a_solid_axle_has_once_is_set_at_its_left_end() {
    List<AdjusterKind> once = List.of(AdjusterKind.PANHARD_ROD, AdjusterKind.DRIVE_SHAFT);
    List<AdjusterKind> left = kinds(Place.LEFT_REAR);
    List<AdjusterKind> right = kinds(Place.RIGHT_REAR);
    assertTrue(left.containsAll(once));
    assertEquals(left.stream().filter(k -> !once.contains(k)).toList(), right);
    for (Layout layout : KNOWN) {
      if (layout != Layout.SOLID_AXLE_END) {
        assertEquals(Starter.adjusters(layout), Starter.adjusters(layout, Place.RIGHT_REAR));
      }
    }
  }

  private static List<AdjusterKind> kinds(Place place) {
    return Starter.adjusters(Layout.SOLID_AXLE_END, place).stream().map(Adjuster::kind).toList();
  }
}
