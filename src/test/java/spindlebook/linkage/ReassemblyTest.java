package spindlebook.linkage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import spindlebook.alignment.Reference;
import spindlebook.entry.Joint;
import spindlebook.linkage.Change.Longer;
import spindlebook.linkage.Change.Moved;
import spindlebook.linkage.Change.Rod;

/** alignment.json's rod-end rows, bump_steer.json's shims, and what every reassembly keeps. */
class ReassemblyTest {
  private static final Joints G1 = ReferenceLinkage.g1();

  private static void same(Joints expected, Joints got, double mm) {
    for (Joint joint : expected.at().keySet()) {
      assertEquals(0, expected.get(joint).distance(got.get(joint)), mm, joint.key);
    }
    assertEquals(expected.camberRad(), got.camberRad(), mm / 100);
    assertEquals(expected.toeRad(), got.toeRad(), mm / 100);
  }

  @Test
  void turned_rod_ends_are_the_references_rows() {
    List<JsonNode> rows = Reference.rows(Reference.alignment().get("rod_end_turns").get("rows"));
    assertEquals(23, rows.size());
    for (JsonNode row : rows) {
      double front = row.get("lF_mm").doubleValue() - Rod.UPPER_FRONT.lengthMm(G1);
      double rear = row.get("lR_mm").doubleValue() - Rod.UPPER_REAR.lengthMm(G1);
      Joints tried =
          Reassembly.of(
              G1, List.of(new Longer(Rod.UPPER_FRONT, front), new Longer(Rod.UPPER_REAR, rear)));
      JsonNode held = row.get("hold_ride");
      Pose pose = new Linkage(tried).design(0).orElseThrow();
      assertEquals(Reference.rad(held, "camber_deg"), pose.camberRad(), 1e-10);
      assertEquals(Reference.rad(held, "toe_in_deg"), pose.toeRad(), 1e-10);
      assertEquals(Reference.rad(held, "caster_deg"), pose.casterRad(), 1e-10);
      assertEquals(Reference.rad(held, "kpi_deg"), pose.kpiRad(), 1e-10);
      assertEquals(G1.get(Joint.W).z(), tried.get(Joint.W).z(), 1e-9);
    }
  }

  @Test
  void a_shim_without_toe_set_again_steers_as_the_reference_says() {
    int shims = 0;
    for (JsonNode row : ReferenceLinkage.rows("bump_steer.json", "cases")) {
      JsonNode toe = row.get("static_toe_if_rod_length_not_reset_deg");
      if (!toe.isNull()) {
        Vec up = new Vec(0, 0, row.get("outer_dz").doubleValue());
        Joints tried = Reassembly.of(G1, List.of(new Moved(Joint.TO, up)));
        assertEquals(toe.doubleValue(), Math.toDegrees(tried.toeRad()), 1e-7);
        shims++;
      }
    }
    assertEquals(2, shims);
  }

  private static List<Change> some(Random random) {
    List<Change> changes = new ArrayList<>();
    for (Joint joint : Joint.values()) {
      if (!joint.direction() && random.nextInt(3) == 0) {
        changes.add(new Moved(joint, RandomLinkage.somewhere(random).times(12)));
      }
    }
    for (Rod rod : Rod.values()) {
      if (random.nextInt(3) == 0) {
        changes.add(new Longer(rod, 20 * random.nextDouble() - 10));
      }
    }
    return changes;
  }

  @Test
  void every_part_is_as_long_as_it_was_made_and_the_wheel_as_high_as_it_was() {
    Random random = new Random(31);
    int together = 0;
    for (int i = 0; i < 300; i++) {
      Joints today = RandomLinkage.near(random, 30);
      List<Change> changes = some(random);
      Joints made = today;
      Map<Rod, Double> lengths = new EnumMap<>(Rod.class);
      for (Rod rod : Rod.values()) {
        lengths.put(rod, rod.lengthMm(today));
      }
      for (Change change : changes) {
        if (change instanceof Moved moved) {
          made = made.with(moved.joint(), made.get(moved.joint()).plus(moved.by()));
        } else if (change instanceof Longer longer) {
          lengths.merge(longer.rod(), longer.byMm(), Double::sum);
        }
      }
      Joints tried;
      try {
        tried = Reassembly.of(today, changes);
      } catch (LinkageRefused doesNot) {
        continue;
      }
      together++;
      lengths.forEach((rod, mm) -> assertEquals(mm, rod.lengthMm(tried), 1e-9, "" + rod));
      Joint[] knuckle = {Joint.L, Joint.U, Joint.TO, Joint.W};
      for (Joint one : knuckle) {
        for (Joint other : knuckle) {
          assertEquals(
              made.get(one).distance(made.get(other)),
              tried.get(one).distance(tried.get(other)),
              1e-9);
        }
      }
      assertEquals(today.get(Joint.W).z(), tried.get(Joint.W).z(), 1e-9);
      assertEquals(
          made.get(Joint.SL).distance(today.get(Joint.L)),
          tried.get(Joint.SL).distance(tried.get(Joint.L)),
          1e-9);
      assertEquals(today.get(Joint.BOLT_L).length(), tried.get(Joint.BOLT_L).length(), 1e-11);
    }
    assertTrue(together > 280, "together: " + together);
  }

  @Test
  void nothing_changed_is_the_same_corner_and_what_is_turned_back_is_back() {
    Random random = new Random(17);
    for (int i = 0; i < 100; i++) {
      Joints today = RandomLinkage.near(random, 30);
      same(today, Reassembly.of(today, List.of()), 1e-8);
      Vec by = RandomLinkage.somewhere(random).times(10);
      List<Change> there =
          List.of(
              new Moved(Joint.UF, by), new Longer(Rod.TIE_ROD, 6), new Longer(Rod.LOWER_REAR, 4));
      List<Change> back =
          List.of(
              new Moved(Joint.UF, by.times(-1)),
              new Longer(Rod.TIE_ROD, -6),
              new Longer(Rod.LOWER_REAR, -4));
      same(today, Reassembly.of(Reassembly.of(today, there), back), 1e-6);
    }
  }

  @Test
  void parts_that_do_not_meet_are_refused() {
    assertEquals(
        "With these changes the corner does not go together.",
        assertThrows(
                LinkageRefused.class,
                () -> Reassembly.of(G1, List.of(new Longer(Rod.TIE_ROD, 400))))
            .getMessage());
  }
}
