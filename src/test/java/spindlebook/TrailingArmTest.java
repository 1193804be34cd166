package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A rear trailing arm measured whole by its pages: the joint's angle at most, its plunge between
 * two ends, a gap. What is expected is worked out here by hand, in inches and degrees and by {@link
 * HandSums}; no outside source but the inch.
 */
class TrailingArmTest {
  private static final double IN = 25.4;

  // Wheel positions in inches: spindle less mark, which is at 30.
  private static final double[] AT = {-20, -17, -13, -8, -4, 0};
  private static final String[] NAMES = {
    "strap-off", "on-the-strap", "in-between", "in-between", "stop-touch", "in-between"
  };
  private static final double S = -17;
  private static final double TOUCH = -4;

  // The joint's angle is read without a sign: it falls, and past the middle it rises again.
  private static final double[] ANGLE = {23.1, 18.9, 13.2, 6.4, 5.2, 11.8};
  private static final String[] PLUNGE = {"7/16", "5/16", "1/8", "-1/16", "-1/8", "-3/16"};
  private static final double[] PLUNGE_IN = {7 / 16., 5 / 16., 1 / 8., -1 / 16., -1 / 8., -3 / 16.};

  private static final double ANGLE_LIMIT = HandSums.where(AT, ANGLE, 18, -17, -13);
  private static final double PLUNGE_LIMIT = HandSums.where(AT, PLUNGE_IN, 3 / 8., -20, -17);

  private static final double[] STRAP_AT = {-20, -17, -13, -8};
  private static final double[] STRAP = {21.25, 20.25, 18.625, 16.75};
  private static final double E_STRAP = 0.05 * 20 - (20.25 - 20);
  private static final double E = E_STRAP / -HandSums.slopeAtNode(STRAP_AT, STRAP, 1);
  private static final double NEEDED =
      HandSums.stretchedTo(ANGLE_LIMIT, STRAP_AT, STRAP, S, E_STRAP, 0.05, -8);
  private static final double SOLID =
      TOUCH
          + 1
              / -HandSums.slopeAtNode(
                  new double[] {-13, -8, TOUCH}, new double[] {4.5, 2.125, 0}, 2);
  private static final double GROUND = 14.5 - 13 - 2;

  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;
  private String rear;
  private String[] heights;

  @BeforeEach
  void measure() {
    shop = new Shop(folder);
    marmot = new Marmot(shop);
    String corners = "/cars/" + marmot.car + "/corners";
    shop.get(corners + "/new")
        .is(200)
        .form(corners)
        .with("end", "rear")
        .with("layout", "trailing-arm")
        .keep();
    rear = marmot.car + "-lr";
    for (String point : List.of("arm-pivot", "arm-frame", "shock-frame", "hose-slack")) {
      String address = "/corners/" + rear + "/watch-points/" + point;
      shop.get(address).is(200).form(address + "/retire").keep();
    }
    marmot.send(
        "/corners/" + rear + "/given",
        Map.of(
            "new-strap-length", "20",
            "stop-crush", "1",
            "shock-open", "28",
            "shock-closed", "14",
            "mark-to-lowest-frame", "13",
            "tyre-squashed-radius", "14 1/2",
            "strap-stretch", "5 %"));
    marmot.adjust(rear, "limit-strap", "20");
    marmot.adjust(rear, "bump-stop-spacer", "1/2");
    marmot.adjust(rear, "pivot-shims", "1/8");
    marmot.adjust(rear, "drive-shaft", "the short one");
    heights = new String[AT.length];
    String round = marmot.startRound(rear, Map.of());
    for (int i = 0; i < AT.length; i++) {
      if (i == AT.length - 1) {
        round = marmot.startRound(rear, Map.of("bumpStop", "out"));
      }
      String spindle = String.valueOf((int) (30 + AT[i]));
      heights[i] =
          i == 0
              ? marmot.height(round, NAMES[i], spindle, "30")
              : marmot.heightAsAt(round, NAMES[i], spindle, heights[0]);
      read(i, "p-cv-angle", ANGLE[i] + "");
      read(i, "p-cv-plunge", PLUNGE[i]);
      read(i, "p-tyre-frame", "well clear");
      read(i, "p-drive-shaft-arm", "well clear");
      if (i < STRAP.length) {
        read(i, Marmot.STRAP, STRAP[i] + "");
      }
      read(i, Marmot.SHOCK, new String[] {"27", "25.5", "23.25", "20.5", "18.5", "16.75"}[i]);
    }
    read(2, Marmot.STOP_GAP, "4 1/2");
    read(3, Marmot.STOP_GAP, "2 1/8");
  }

  private String read(int height, String row, String typed) {
    return marmot.read(heights[height], "straight", row, typed);
  }

  @AfterEach
  void close() {
    shop.close();
  }

  @Test
  void the_joint_s_angle_rules_droop_and_its_plunge_comes_next() {
    JsonNode corner = shop.figures(rear);
    JsonNode droop = corner.get("droop");
    mm(S, droop, "stopMm");
    mm(E, droop, "heldBackMm");
    assertEquals("CV joint angle", droop.at("/limits/0/what").asText());
    mm(ANGLE_LIMIT, droop.get("limits").get(0), "positionMm");
    assertEquals("CV joint plunge from its middle, out +", droop.at("/limits/1/what").asText());
    mm(PLUNGE_LIMIT, droop.get("limits").get(1), "positionMm");
    mm(NEEDED, droop, "neededStopMm");
    mm(S - E - ANGLE_LIMIT, droop, "marginMm");
    assertEquals("short", droop.get("outcome").asText());
    JsonNode bump = corner.get("bump");
    mm(SOLID, bump, "stopMm");
    mm(GROUND - 1 / 4., bump, "neededStopMm");
    mm(GROUND - 1 / 4. - SOLID, bump, "marginMm");
    assertEquals("clear", bump.get("outcome").asText());
    mm(SOLID - S, corner.get("asSet"), "mm");
    mm(GROUND - 1 / 4. - NEEDED, corner.get("asItCouldBe"), "mm");
    assertFalse(corner.get("rideMm") != null && corner.get("rideMm").has("value"), "no ride read");
  }

  @Test
  void the_page_speaks_of_degrees_and_of_no_steering() {
    String page =
        shop.get("/corners/" + rear).is(200).text()
            + shop.get("/corners/" + rear + "/gaps").is(200).text();
    for (String said :
        List.of("trailing arm", "CV joint angle is reached", "18.9°", "at most 18", "23.1°")) {
      assertTrue(page.contains(said), () -> said + " is not on: " + page);
    }
    String height = shop.get("/heights/" + heights[1] + "?all=1").is(200).text();
    assertTrue(height.contains("CV joint plunge from its middle, out +"), height);
    for (String steered : List.of("full left", "Full left", "tie rod", "Steering")) {
      assertFalse(page.contains(steered), () -> steered + " is on: " + page);
      assertFalse(height.contains(steered), () -> steered + " is on: " + height);
    }
  }

  @Test
  void nothing_is_asked_or_kept_at_a_lock_it_does_not_have() {
    String address = "/heights/" + heights[1] + "?all=1&steering=full-left";
    assertFalse(shop.get(address).is(200).html().contains("name=\"v-"), "nothing to type");
    int entries = shop.entries();
    Form form = marmot.readingForm(heights[1], "straight", "p-cv-angle");
    form.with("steering", "full-left").with("v-p-cv-angle", "17").send().is(404);
    assertEquals(entries, shop.entries());
  }

  @Test
  void a_joint_past_its_angle_at_bump_limits_bump() {
    read(5, "p-cv-angle", "20.4");
    Page height = shop.get("/heights/" + heights[5] + "?all=1");
    assertTrue(height.text().contains("check this"), "8.6 degrees off the last one");
    String doubted = shop.figures(rear).at("/inDoubt/0/key").asText();
    String answer = "/entries/" + doubted + "/answer";
    shop.get("/entries/" + doubted).is(200).form(answer).with("answer", "so").keep();
    // Both count: their mean is 16.1, and the rule is kept after all.
    JsonNode bump = shop.figures(rear).get("bump");
    mm(GROUND - 1 / 4., bump, "neededStopMm");
    String point = "/corners/" + rear + "/watch-points/cv-angle";
    marmot.send(point, Map.of("mostAngle", "12"));
    double[] angle = ANGLE.clone();
    angle[5] = (11.8 + 20.4) / 2;
    double limit = HandSums.where(AT, angle, 12, -4, 0);
    bump = shop.figures(rear).get("bump");
    mm(limit, bump.get("limits").get(0), "positionMm");
    mm(limit - 1 / 4. - SOLID, bump, "marginMm");
  }

  @Test
  void a_plunge_is_kept_from_both_of_its_ends() {
    // The inner end, −1/8: passed between −8 and touch on the way up.
    String point = "/corners/" + rear + "/watch-points/cv-plunge";
    marmot.send(point, Map.of("least", "-3/32", "most", "3/8"));
    double inner = HandSums.where(AT, PLUNGE_IN, -3 / 32., -8, -4);
    JsonNode corner = shop.figures(rear);
    mm(inner, limit(corner.get("bump"), "CV joint plunge from its middle, out +"), "positionMm");
    mm(
        PLUNGE_LIMIT,
        limit(corner.get("droop"), "CV joint plunge from its middle, out +"),
        "positionMm");
    assertEquals("short", corner.at("/bump/outcome").asText());
  }

  @Test
  void a_drive_shaft_moves_its_joint_and_nothing_else_the_pivots_move_everything() {
    marmot.adjust(rear, "drive-shaft", "the long one");
    for (JsonNode reading : shop.figures(rear).get("readings")) {
      String what = reading.get("what").asText();
      boolean shaft = what.startsWith("CV joint") || what.startsWith("drive shaft");
      assertEquals(shaft ? "stale" : "live", reading.get("stands").asText(), what);
    }
    marmot.adjust(rear, "pivot-shims", "3/16");
    for (JsonNode reading : shop.figures(rear).get("readings")) {
      assertEquals("stale", reading.get("stands").asText());
    }
    marmot.adjust(rear, "pivot-shims", "1/8");
    for (JsonNode reading : shop.figures(rear).get("readings")) {
      assertFalse(reading.get("stands").asText().equals("live"));
    }
  }

  private static JsonNode limit(JsonNode end, String what) {
    for (JsonNode limit : end.get("limits")) {
      if (limit.get("what").asText().equals(what) && limit.has("positionMm")) {
        return limit;
      }
    }
    throw new AssertionError(what + " is not in " + end);
  }

  private static void mm(double inches, JsonNode node, String name) {
    assertEquals(inches * IN, node.at("/" + name + "/value").asDouble(), 1e-6, name);
  }
}
