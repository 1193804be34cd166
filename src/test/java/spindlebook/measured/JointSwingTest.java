package spindlebook.measured;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.fold.CarLines.CAR;
import static spindlebook.fold.CarLines.LF;
import static spindlebook.fold.CarLines.R1;
import static spindlebook.fold.CarLines.gap;
import static spindlebook.fold.CarLines.height;
import static spindlebook.fold.CarLines.line;
import static spindlebook.fold.CarLines.upper;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import spindlebook.advice.ThingFirst;
import spindlebook.advice.ThingFirst.Why;
import spindlebook.definition.RackSide;
import spindlebook.drivecheck.CheckWords;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Joint;
import spindlebook.finding.Finding;
import spindlebook.finding.Findings;
import spindlebook.fold.CarBook;
import spindlebook.fold.HandBooks;
import spindlebook.fold.Noted;
import spindlebook.linkage.CornerJoints;
import spindlebook.linkage.ReferenceLinkage;
import spindlebook.linkage.Vec;
import spindlebook.uncertainty.Outcome;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeText;
import spindlebook.units.TypedLength;

/**
 * The corner of linkage.json laid out in a book, rack behind the axle: its swings are those of the
 * file's {@code artic_} columns, 100 mm each way where nothing else says how far it goes.
 */
class JointSwingTest {
  private static final double BACK_MM = 1000;

  private static CarBook book(String lowerAllows, String... more) {
    List<String> lines = new ArrayList<>(List.of(CAR, LF));
    lines.addAll(List.of(more));
    String stood = more.length == 0 ? "" : ",'at':'h'";
    lines.add(
        line(
            "{'kind':'definition','body':{'car':'car','corner':'lf','given':{'dimension':"
                + "'rack-travel','length':'60 mm'}}}"));
    for (Joint joint : Joint.values()) {
      Vec at = ReferenceLinkage.point(ReferenceLinkage.G1.get("inputs").get(joint.key));
      double size = joint.direction() ? 1000 : 1;
      String allows =
          joint == Joint.BOLT_L && lowerAllows != null ? ",'allows':'" + lowerAllows + "'" : "";
      lines.add(
          line(
              "{'kind':'joint-place','body':{'corner':'lf','joint':'%s','out':'%.5f mm',"
                      .formatted(word(joint), size * at.y())
                  + "'back':'%.5f mm','up':'%.5f mm'%s%s}}"
                      .formatted(
                          joint.direction() ? -size * at.x() : BACK_MM - at.x(),
                          size * at.z(),
                          allows,
                          stood)));
    }
    return HandBooks.of(lines);
  }

  private static String word(Joint joint) {
    return joint.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static JointSwing swing(CarBook book, Joint joint) {
    return JointSwing.of(book.card("lf"), Optional.empty()).stream()
        .filter(s -> s.joint() == joint)
        .findFirst()
        .orElseThrow();
  }

  private static double reference(double height, double rack, String column) {
    for (JsonNode row : ReferenceLinkage.rows(ReferenceLinkage.G1)) {
      if (row.get("dz").doubleValue() == height && row.get("rack").doubleValue() == rack) {
        return Math.abs(row.get("out").get(column).doubleValue());
      }
    }
    throw new AssertionError("no such row");
  }

  @Test
  void the_nine_places_are_those_of_the_file() {
    CarBook book = book(null);
    assertEquals(RackSide.BEHIND_AXLE, CornerJoints.rack(book.card("lf")));
    Joint[] joints = {Joint.BOLT_L, Joint.BOLT_U, Joint.STUD_TO, Joint.STUD_TI};
    String[] columns = {"lower_uniball", "upper_uniball", "tie_outer", "tie_inner"};
    double[] heights = {-100, 0, 100};
    // A rack behind the axle goes to the right for a lock to the left.
    double[] racks = {-60, 0, 60};
    for (int j = 0; j < joints.length; j++) {
      List<List<Double>> at = swing(book, joints[j]).atPlaces();
      for (int h = 0; h < heights.length; h++) {
        for (int r = 0; r < racks.length; r++) {
          // The file holds the wheel's height at that rack, the book the jack's: up to 7 mm apart.
          double within = racks[r] == 0 ? 1e-4 : 0.8;
          String what = joints[j] + " " + heights[h] + " " + racks[r];
          double expected = reference(heights[h], racks[r], "artic_" + columns[j] + "_deg");
          assertEquals(expected, Math.toDegrees(at.get(h).get(r)), within, what);
        }
      }
    }
  }

  @Test
  void the_worst_is_judged_against_what_its_hardware_allows() {
    JointSwing unsaid = swing(book(null), Joint.BOLT_L);
    assertEquals(25, Math.toDegrees(unsaid.worst().value()), 0.5);
    assertEquals(-100, unsaid.heightMm(), 1e-9);
    assertTrue(unsaid.rackMm() > 0, "it leans most at right lock");
    assertEquals(null, unsaid.outcome());
    double expanded = Math.toDegrees(unsaid.worst().U());
    assertTrue(expanded > 1 && expanded < 5, "± " + expanded);
    assertEquals(Outcome.SHORT, swing(book("18°"), Joint.BOLT_L).outcome());
    assertEquals(Outcome.CANT_TELL, swing(book("26°"), Joint.BOLT_L).outcome());
    assertEquals(Outcome.CLEAR, swing(book("35°"), Joint.BOLT_L).outcome());
  }

  /** linkage.json's columns, between whose heights it lies; those at lock up to 7 mm apart. */
  @Test
  void where_its_hardware_is_met_is_between_the_references_heights() {
    JointSwing swing = swing(book("20°"), Joint.BOLT_L);
    assertEquals(60, swing.rackMm(), 1e-9);
    String column = "artic_lower_uniball_deg";
    double above = 0;
    double below = 0;
    for (double height = 0; height >= -100; height -= 20) {
      if (reference(height, 60, column) < 20) {
        above = height;
      } else if (below == 0) {
        below = height;
      }
    }
    double share =
        (20 - reference(above, 60, column))
            / (reference(below, 60, column) - reference(above, 60, column));
    assertEquals(above + share * (below - above), swing.meetsMm().value(), 8);
    // 7° from there to the worst, or so: as unsure in degrees at either.
    double perMm = (reference(below, 60, column) - reference(above, 60, column)) / 20;
    double expected = Math.toDegrees(swing.worst().U()) / perMm;
    assertEquals(expected, swing.meetsMm().U(), 0.3 * expected);
    assertEquals(null, swing(book("35°"), Joint.BOLT_L).meetsMm(), "not within its travel");
    assertEquals(null, swing(book("2°"), Joint.BOLT_L).meetsMm(), "past it as laid out");
    assertEquals(null, swing(book(null), Joint.BOLT_L).meetsMm());
  }

  private static String read(String quantity, String steering, double rack, String column) {
    for (JsonNode row : ReferenceLinkage.rows(ReferenceLinkage.G1)) {
      if (row.get("dz").doubleValue() == 0 && row.get("rack").doubleValue() == rack) {
        return line(
            "{'key':'%s-%s','kind':'reading','body':{'height':'h','steering':'%s','quantity':'%s',"
                    .formatted(quantity, steering, steering, quantity)
                + "'result':'number','angle':'%.2f°'}}"
                    .formatted(row.get("out").get(column).doubleValue()));
      }
    }
    throw new AssertionError("no such row");
  }

  private static CornerModel agreement(double leftRackMm) {
    return model(agreed(leftRackMm));
  }

  private static CornerModel model(CarBook book) {
    return CornerModel.of(book.card("lf"), Optional.empty()).orElseThrow();
  }

  private static CarBook agreed(double leftRackMm) {
    String toe = "toe_in_deg";
    String camber = "camber_deg";
    return book(
        null,
        R1,
        height("h", "ride", "12 in"),
        read("toe", "straight", 0, toe),
        read("toe", "full-left", leftRackMm, toe),
        read("toe", "full-right", -leftRackMm, toe),
        read("camber", "full-left", leftRackMm, camber),
        read("camber", "full-right", -leftRackMm, camber));
  }

  @Test
  void what_is_saved_and_tells_the_joints_nothing_leaves_their_agreement_as_worked_out() {
    CarBook book = agreed(-60);
    CarBook higher = book.with(jacked(book, "12 in"));
    assertEquals(2, higher.card("lf").heights().size());
    assertSame(model(book).all(), model(higher).all());
    CarBook again =
        higher.with(
            noted(higher, book.standing("toe-straight", Content.Reading.class).orElseThrow()));
    assertEquals(6, model(again).readings().size());
    assertNotSame(model(book).all(), model(again).all());
  }

  @Test
  void that_readings_lead_to_no_corner_is_found_once_too() {
    CarBook book = agreed(-60);
    CarBook far = book.with(jacked(book, "90 in"));
    String there = far.entries().get(far.entries().size() - 1).key();
    Content.Reading toe = book.standing("toe-straight", Content.Reading.class).orElseThrow();
    CarBook refused =
        far.with(
            noted(
                far,
                new Content.Reading(
                    there,
                    toe.steering(),
                    toe.quantity(),
                    null,
                    toe.result(),
                    toe.typed(),
                    null,
                    toe.angle(),
                    null,
                    null,
                    null,
                    null,
                    null,
                    null)));
    assertTrue(model(refused).refused() != null);
    CarBook later = refused.with(jacked(refused, "13 in"));
    assertSame(model(refused).refused(), model(later).refused());
  }

  private static Noted jacked(CarBook book, String spindle) {
    Content.Height at = book.standing("h", Content.Height.class).orElseThrow();
    TypedLength up = TapeText.plain(spindle, LengthUnit.INCH).orElseThrow();
    return noted(
        book,
        new Content.Height(
            at.round(),
            HeightName.IN_BETWEEN,
            "jack",
            up,
            at.mark(),
            null,
            null,
            null,
            null,
            null));
  }

  private static Noted noted(CarBook after, Content content) {
    long n = after.n() + 1;
    return new Noted(n, "later-" + n, Instant.EPOCH, "Ada", after.n(), content);
  }

  @Test
  void readings_at_lock_agree_at_the_lock_they_were_read_and_not_at_the_other() {
    CornerModel model = agreement(-60);
    assertEquals(
        List.of(0L, -60L, 60L, -60L, 60L),
        model.readings().stream().map(r -> Math.round(r.rackMm())).toList());
    assertEquals(List.of(), model.wrong());
    // 1/16 in of rack is 0.6° of toe here: more than any angle finder.
    assertTrue(Math.toDegrees(model.readings().get(1).value().U()) > 0.6);
    CornerModel swapped = agreement(60);
    assertTrue(swapped.refused() != null || !swapped.wrong().isEmpty(), "" + swapped.wrong());
  }

  @Test
  void it_stands_among_the_findings_and_before_a_drive() {
    CarBook book = book("18°");
    List<Finding> swivel =
        Findings.of(book.card("lf"), Optional.empty(), false).all(Finding.Group.SWIVEL);
    assertEquals(4, swivel.size());
    assertEquals("lower uniball, most it swings", swivel.get(0).title());
    assertEquals("too much", swivel.get(0).word());
    assertEquals("allows 18°", swivel.get(0).says());
    assertEquals("needs what its hardware allows", swivel.get(1).says());
    assertEquals(
        List.of(ThingFirst.Why.SHORT),
        AlignedCheck.of(book).things().stream()
            .filter(ThingFirst.SwingsTooFar.class::isInstance)
            .map(ThingFirst::why)
            .toList());
  }

  /**
   * What is short before a loose nut, that before what is in doubt, that before what is missing.
   */
  @Test
  void before_a_drive_it_says_which_joint_swings_too_far_and_what_its_hardware_allows() {
    assertEquals(
        List.of(
            "Lower uniball: it swings more than its hardware allows, by the linkage."
                + " Its hardware allows 18°. /corners/lf/linkage/moves",
            "Make room lower uniball, allows 18°"),
        swinging(book("18°")));
    assertEquals(
        List.of(
            "Lower uniball: too close to what its hardware allows to tell."
                + " Its hardware allows 26°. /corners/lf/linkage/moves",
            "Look at lower uniball, allows 26°"),
        swinging(book("26°")));
    assertEquals(List.of(), swinging(book("35°")));
    CarBook doubted =
        book(
            "18°",
            R1,
            height("h", "ride", "12 in"),
            gap("thin", "h", "1/8 in").replace("}}", ",\"doubt\":\"far off\"}}"),
            upper("turned", "2 turns"));
    List<ThingFirst> things = AlignedCheck.of(doubted).things();
    assertInstanceOf(ThingFirst.SwingsTooFar.class, things.get(0));
    assertEquals(
        List.of(Why.SHORT, Why.OPENED, Why.IN_DOUBT, Why.MISSING, Why.MISSING),
        things.stream().map(ThingFirst::why).toList());
  }

  private static List<String> swinging(CarBook book) {
    return CheckWords.of(book, AlignedCheck.of(book)).stream()
        .filter(t -> t.thing() instanceof ThingFirst.SwingsTooFar)
        .flatMap(t -> Stream.of(t.words() + " " + t.more() + " " + t.href(), t.job()))
        .toList();
  }
}
