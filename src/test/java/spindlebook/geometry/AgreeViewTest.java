package spindlebook.geometry;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.fold.CarLines.CAR;
import static spindlebook.fold.CarLines.LF;
import static spindlebook.fold.CarLines.R1;
import static spindlebook.fold.CarLines.line;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import spindlebook.drawing.State;
import spindlebook.entry.Joint;
import spindlebook.fold.Card;
import spindlebook.fold.HandBooks;
import spindlebook.linkage.ReferenceLinkage;
import spindlebook.linkage.Vec;
import spindlebook.measured.CornerModel;

/**
 * The corner of linkage.json, read at its heights as the file says it moves: with one joint, or one
 * reading, typed otherwise.
 */
class AgreeViewTest {
  private static final double BACK_MM = 1000;

  private static final Map<String, String> COLUMNS =
      Map.of(
          "camber", "camber_deg",
          "toe", "toe_in_deg",
          "shock-length", "shock_length_mm",
          "strap-length", "strap_length_mm");

  private final List<String> lines = new ArrayList<>(List.of(CAR, LF, R1));

  /** As the file has it, at each of its heights from −160 to 160 mm. */
  private void readAll() {
    for (int height = -160; height <= 160; height += 80) {
      height(height);
      for (String quantity : COLUMNS.keySet()) {
        read(height, quantity, reference(height, COLUMNS.get(quantity)));
      }
    }
  }

  private void height(int height) {
    lines.add(
        line(
            "{'key':'h%d','kind':'height','body':{'round':'r1','name':'in-between','label':'%d',"
                    .formatted(height, height)
                + "'spindle':'%d mm','mark':'500 mm'}}".formatted(300 + height)));
  }

  private void read(int height, String quantity, double value) {
    String as = quantity.endsWith("length") ? "'length':'%.1f mm'" : "'angle':'%.2f°'";
    String key = quantity + height;
    lines.removeIf(l -> l.contains("\"key\":\"" + key + "\""));
    lines.add(
        line(
            "{'key':'%s','kind':'reading','body':{'height':'h%d','steering':'straight','quantity':'%s','result':'number',%s}}"
                .formatted(key, height, quantity, String.format(Locale.ROOT, as, value))));
  }

  private void layOut(Joint off, double upMm) {
    for (Joint joint : Joint.values()) {
      if (!joint.direction()) {
        Vec at = ReferenceLinkage.point(ReferenceLinkage.G1.get("inputs").get(joint.key));
        double up = at.z() + (joint == off ? upMm : 0);
        lines.add(
            line(
                String.format(
                    Locale.ROOT,
                    "{'kind':'joint-place','body':{'corner':'lf','joint':'%s','out':'%.2f"
                        + " mm','back':'%.2f mm','up':'%.2f mm','at':'h0'}}",
                    joint.name().toLowerCase(Locale.ROOT),
                    at.y(),
                    BACK_MM - at.x(),
                    up)));
      }
    }
  }

  private static double reference(double height, String column) {
    for (JsonNode row : ReferenceLinkage.rows(ReferenceLinkage.G1)) {
      if (row.get("dz").doubleValue() == height && row.get("rack").doubleValue() == 0) {
        return row.get("out").get(column).doubleValue();
      }
    }
    throw new AssertionError("no such row");
  }

  private AgreeView view(String of) {
    Card card = HandBooks.of(lines).card("lf");
    CornerModel model = CornerModel.of(card, Optional.empty()).orElseThrow();
    return AgreeView.of(card, model, of, null);
  }

  private String wrong(String of) {
    AgreeView view = view(of);
    assertEquals(State.IN_DOUBT, view.state());
    assertEquals("one is wrong", view.word());
    assertEquals(1, view.wrong().size(), () -> view.wrong().toString());
    AgreeView.Wrong one = view.wrong().get(0);
    String entry = one.entry() == null ? "" : " " + one.entry().href();
    return one.sentence() + " " + one.again().href() + entry;
  }

  @Test
  void a_joint_typed_an_inch_and_a_half_too_high_is_named_with_the_way_to_it() {
    readAll();
    layOut(Joint.U, 38.1);
    assertEquals(
        "Upper ball joint, U up: off by +1 1/2 in from what all readings say."
            + " /corners/lf/linkage/u",
        wrong(null));
    AgreeView view = view(null);
    // 5 heights, camber, toe, strap and shock at each.
    assertTrue(view.verdict().startsWith("20 readings agree with the joints; "), view.verdict());
    assertEquals(
        List.of("Camber", "Toe", "Shock length", "Strap length"),
        view.things().stream().map(AgreeView.Choice::word).toList());
  }

  /**
   * At +80 mm the file's corner has camber −2.51°, toe 0.01°, a shock of 595 and a strap of 419.
   */
  @Test
  void a_reading_that_is_off_is_named_and_only_camber_of_the_other_sign_asks_for_its_minus() {
    readAll();
    layOut(null, 0);
    read(80, "camber", 2.51);
    String camber = wrong(null);
    assertTrue(camber.startsWith("Camber, in between, 80: read +2.5°, all the rest says"), camber);
    assertTrue(camber.endsWith(". Was a minus left out? " + entry("camber80")), camber);
    read(80, "camber", -2.51);
    read(80, "shock-length", 594.99 + 25.4);
    String shock = wrong("shock");
    // 620.4 mm is 24.425 in, the file's 595.0 mm 23.424 in.
    assertTrue(
        shock.startsWith(
            "Shock length, in between, 80: read 24 7/16 in, all the rest says 23 7/16 in ± "),
        shock);
    assertTrue(shock.endsWith(". " + entry("shock-length80")), shock);
    AgreeView.Row row = view("shock").rows().get(3);
    assertEquals("In between", row.where().substring(0, 10));
    assertEquals("+1 in", row.off());
  }

  private static String entry(String key) {
    return "/heights/h80?steering=straight /entries/" + key;
  }

  /** Only this camber was read, and no tape laid any out: nothing can tell it wrong. */
  @Test
  void camber_at_ride_that_was_read_alone_is_held_against_no_camber_of_nought() {
    height(0);
    layOut(null, 0);
    lines.add(
        line(
            "{'key':'hr','kind':'height','body':{'round':'r1','name':'ride','spindle':'300 mm',"
                + "'mark':'500 mm'}}"));
    lines.add(
        line(
            "{'key':'al','kind':'alignment','body':{'corner':'lf','rolled':true,"
                + "'gauge':{'read':'-3°'}}}"));
    AgreeView view = view(null);
    assertEquals(List.of(), view.wrong());
    assertEquals("they agree", view.word());
    assertEquals("1 reading agrees with the joints; 0 more than were needed.", view.verdict());
    assertEquals("Alignment at ride", view.rows().get(0).where());
  }

  /** It named the entry by its key, and the height in millimetres of the joints' own axes. */
  @Test
  void a_reading_where_the_joints_never_get_says_so_in_the_owners_words_with_the_way_to_it() {
    height(0);
    layOut(null, 0);
    assertEquals("No camber, toe, strap or shock was read along the travel.", view(null).verdict());
    height(1600);
    read(1600, "toe", 0);
    AgreeView view = view(null);
    assertEquals("no agreement", view.word());
    assertEquals("Nothing is held against the joints until that is right.", view.verdict());
    assertEquals(
        "Toe, in between, 1600: the joints as laid out do not get there.",
        view.wrong().get(0).sentence());
    assertEquals("/entries/toe1600", view.wrong().get(0).entry().href());
  }
}
