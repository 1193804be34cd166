package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Camber and toe that a round read at ride, on the page of alignment. Numbers worked out beside
 * each check; tools are those a car starts with.
 */
class AlignedInRoundTest {
  private static final double DEGREE = Math.toRadians(1);
  private static final Map<String, String> AS_IT_DRIVES =
      Map.of("spring", "in", "on", "tyres", "zeroed-settled", "1");

  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop);
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private static String address(String corner) {
    return "/corners/" + corner + "/alignment";
  }

  private String text() {
    return shop.get(address(marmot.left)).is(200).text();
  }

  private String ride(String corner, Map<String, String> conditions) {
    return marmot.height(marmot.startRound(corner, conditions), "ride", "20 3/4", "31 9/16");
  }

  private String read(String corner, Map<String, String> conditions, String what, String value) {
    return marmot.read(ride(corner, conditions), "straight", "q-" + what, value);
  }

  private void target(Map<String, String> fields) {
    marmot.send(address(marmot.left) + "/targets", fields);
  }

  private void measure(String way, Map<String, String> fields) {
    String action = address(marmot.left);
    Map<String, String> all = new LinkedHashMap<>(fields);
    all.put("rolled", "yes");
    marmot.send(action + "/new?way=" + way, action, all);
  }

  private JsonNode figure(String corner, String what) {
    for (JsonNode found : shop.figures(corner).get("alignment")) {
      if (found.get("what").asText().equals(what)) {
        return found;
      }
    }
    throw new AssertionError("no " + what + " in " + shop.figures(corner).get("alignment"));
  }

  private static double degrees(JsonNode found, String which) {
    return found.at("/rad/" + which).asDouble() / DEGREE;
  }

  @Test
  void read_on_the_jack_with_the_spring_out_it_is_shown_beside_and_holds_no_target() {
    String key = read(marmot.left, Map.of(), "camber", "-0.5");
    target(Map.of("camber-from", "-1", "camber-to", "0"));
    JsonNode camber = figure(marmot.left, "camber");
    assertFalse(camber.has("outcome"), camber.toString());
    assertTrue(camber.has("needs"), camber.toString());
    assertEquals(-0.5, degrees(camber.get("readInRound"), "value"), 1e-9);
    assertEquals("live", camber.at("/readInRound/stands").asText());
    assertEquals(key, camber.at("/readInRound/from/0").asText());
    String text = text();
    assertTrue(text.contains("on stands, spring out"), text);
    assertTrue(
        text.contains("held against no target: the car stood on stands; the spring was out"), text);
    assertTrue(shop.get(address(marmot.left)).html().contains("/entries/" + key), key);
    Page check = shop.get("/cars/" + marmot.car + "/drive-check").is(200);
    assertTrue(check.text().contains("Measure camber, target "), check.text());
  }

  @Test
  void read_as_the_car_drives_it_counts_while_nothing_measured_here_does() {
    String key = read(marmot.left, AS_IT_DRIVES, "camber", "-0.5");
    target(Map.of("camber-from", "-2", "camber-to", "1"));
    JsonNode camber = figure(marmot.left, "camber");
    assertEquals(-0.5, degrees(camber, "value"), 1e-9);
    // Steps and placing of 0.1° and a zero nobody found, ± 0.2°: u = √(0.0289² + 0.0577² +
    // 0.1155²).
    assertEquals(2 * Math.sqrt(0.01 / 12 + 0.01 / 3 + 0.04 / 3), degrees(camber, "U"), 1e-9);
    assertEquals("clear", camber.get("outcome").asText());
    assertEquals(key, camber.at("/from/0").asText());
    assertFalse(camber.has("readInRound"), "one figure for one thing");
    String text = text();
    assertTrue(text.contains("it counts, as nothing measured here does"), text);
    assertTrue(text.contains("The gauge's zero is not known"), text);

    measure("gauge", Map.of("read", "-0.6", "zero", "0"));
    camber = figure(marmot.left, "camber");
    assertEquals(-0.6, degrees(camber, "value"), 1e-9);
    assertEquals(-0.5, degrees(camber.get("readInRound"), "value"), 1e-9);
    text = text();
    assertTrue(text.contains("What counts is the figure above, measured for itself."), text);
    assertTrue(text.contains("The two agree"), text);
  }

  @Test
  void a_zero_that_the_round_found_is_not_counted_as_unknown() {
    Map<String, String> zeroed = new LinkedHashMap<>(AS_IT_DRIVES);
    zeroed.put("zeroed-angle-finder", "1");
    read(marmot.left, zeroed, "camber", "-0.5");
    JsonNode camber = figure(marmot.left, "camber");
    assertEquals(2 * Math.sqrt(0.01 / 12 + 0.01 / 3), degrees(camber, "U"), 1e-9);
    assertFalse(text().contains("zero is not known"), text());
  }

  @Test
  void on_its_tyres_and_not_said_to_be_settled_it_is_beside_only() {
    read(marmot.left, Map.of("spring", "in", "on", "tyres"), "camber", "-0.5");
    assertFalse(figure(marmot.left, "camber").has("rad"));
    assertTrue(text().contains("nobody said that it was rolled and bounced"), text());
    String round = shop.get("/corners/" + marmot.left + "/rounds/new").is(200).text();
    assertTrue(round.contains("Rolled and bounced"), round);
  }

  @Test
  void what_the_round_read_and_what_was_measured_further_apart_than_their_doubt_is_told() {
    read(marmot.left, AS_IT_DRIVES, "camber", "-2.5");
    measure("gauge", Map.of("read", "-0.9", "zero", "0"));
    String text = text();
    assertTrue(text.contains("differ by more than their ±: −1.6"), text);
  }

  @Test
  void a_rod_end_makes_it_stale_and_it_says_since_what() {
    read(marmot.left, AS_IT_DRIVES, "camber", "-0.5");
    marmot.adjust(marmot.left, "upper-rod-ends", "2");
    JsonNode camber = figure(marmot.left, "camber");
    assertFalse(camber.has("rad"), camber.toString());
    assertEquals("stale", camber.at("/readInRound/stands").asText());
    String text = text();
    assertTrue(text.contains("Since then: upper rod ends"), text);
    // Read again: the newer one counts, the older one is read again since.
    read(marmot.left, AS_IT_DRIVES, "camber", "-0.8");
    camber = figure(marmot.left, "camber");
    assertEquals(-0.8, degrees(camber, "value"), 1e-9);
    assertEquals(1, camber.get("from").size());
    assertFalse(camber.has("readInRound"), camber.toString());
  }

  @Test
  void two_readings_that_hold_are_one_mean_and_toe_of_both_wheels_is_the_total() {
    read(marmot.left, AS_IT_DRIVES, "toe", "0.1°");
    read(marmot.left, AS_IT_DRIVES, "toe", "0.3°");
    read(marmot.right, AS_IT_DRIVES, "toe", "-0.4°");
    assertEquals(0.2, degrees(figure(marmot.left, "toe"), "value"), 1e-9);
    assertEquals(2, figure(marmot.left, "toe").get("from").size());
    JsonNode total = figure(marmot.left, "total-toe");
    assertEquals(-0.2, degrees(total, "value"), 1e-9);
    assertEquals(3, total.get("from").size());
  }

  @Test
  void toe_read_as_a_length_is_an_angle_once_it_is_said_across_what() {
    read(marmot.left, AS_IT_DRIVES, "toe", "3.2 mm");
    JsonNode toe = figure(marmot.left, "toe");
    assertEquals(3.2, toe.at("/readInRound/mm/value").asDouble(), 1e-9);
    assertTrue(text().contains("it is a length, and nobody gave across what"), text());
    marmot.send("/corners/" + marmot.left + "/given", Map.of("toe-across", "609.6 mm"));
    // asin 3.2/609.6 = 0.3008°, the worked example of ToeReading.
    assertEquals(0.3008, degrees(figure(marmot.left, "toe"), "value"), 5e-5);
  }

  @Test
  void steered_or_read_elsewhere_in_the_travel_it_is_no_alignment() {
    String ride = ride(marmot.left, AS_IT_DRIVES);
    marmot.read(ride, "full-left", "q-toe", "12°");
    String low =
        marmot.heightAsAt(marmot.startRound(marmot.left, AS_IT_DRIVES), "in-between", "18", ride);
    marmot.read(low, "straight", "q-camber", "-2");
    JsonNode all = shop.figures(marmot.left).get("alignment");
    assertEquals(0, all.size(), all.toString());
  }

  @Test
  void ride_with_the_spindle_only_is_alignment_where_no_wheel_position_is_needed() {
    String ride = rideWithoutMark();
    String key = marmot.read(ride, "straight", "q-camber", "-0.5");
    target(Map.of("camber-from", "-2", "camber-to", "1"));
    JsonNode camber = figure(marmot.left, "camber");
    assertEquals(-0.5, degrees(camber, "value"), 1e-9);
    assertEquals("clear", camber.get("outcome").asText());
    assertEquals(key, camber.at("/from/0").asText());
    // Along the travel it is nowhere: no curve has it.
    String curve = shop.get("/corners/" + marmot.left + "/curves?of=camber").is(200).text();
    assertTrue(curve.contains("1 reading waits for an answer or for a wheel position"), curve);

    marmot.adjust(marmot.left, "upper-rod-ends", "2");
    camber = figure(marmot.left, "camber");
    assertEquals("stale", camber.at("/readInRound/stands").asText());
    assertTrue(text().contains("Since then: upper rod ends"), text());
    marmot.read(rideWithoutMark(), "straight", "q-camber", "-0.8");
    camber = figure(marmot.left, "camber");
    assertEquals(-0.8, degrees(camber, "value"), 1e-9);
    assertEquals(1, camber.get("from").size());
    assertFalse(camber.has("readInRound"), "the older one was read again since");

    // A repeat counts again, and instead where that is said.
    String last = rideWithoutMark();
    String repeat = marmot.read(last, "straight", "q-camber", "-0.6");
    assertEquals(-0.7, degrees(figure(marmot.left, "camber"), "value"), 1e-9);
    Page saved = shop.get("/heights/" + last + "?steering=straight&saved=" + repeat).is(200);
    assertTrue(saved.text().contains("counts again, with the one before"), saved.text());
    saved.form("/entries/" + repeat + "/counts").keep();
    assertEquals(-0.6, degrees(figure(marmot.left, "camber"), "value"), 1e-9);
  }

  private String rideWithoutMark() {
    String round = marmot.startRound(marmot.left, AS_IT_DRIVES);
    Form form = marmot.heightForm(round, "ride", "20 3/4");
    form.send().is(422).form(form.action()).with("noMark", "keep").keep();
    return form.key();
  }

  @Test
  void a_ride_height_in_doubt_keeps_what_was_read_there_from_counting_and_says_so() {
    ride(marmot.left, AS_IT_DRIVES);
    String round = marmot.startRound(marmot.left, AS_IT_DRIVES);
    // Four inches from where ride was read before, and nothing was changed since.
    String doubted = marmot.height(round, "ride", "24 3/4", "31 9/16");
    marmot.read(doubted, "straight", "q-camber", "-0.5");
    JsonNode camber = figure(marmot.left, "camber");
    assertFalse(camber.has("rad"), camber.toString());
    assertEquals("in-doubt", camber.at("/readInRound/stands").asText());
    assertTrue(text().contains("The height it was read at is in doubt"), text());
  }

  @Test
  void a_mean_is_worth_no_more_than_the_worst_it_rests_on() {
    marmot.adjust(marmot.left, "upper-rod-ends", "3");
    read(marmot.left, AS_IT_DRIVES, "camber", "-0.5");
    marmot.adjust(marmot.left, "upper-rod-ends", "2");
    marmot.adjust(marmot.left, "upper-rod-ends", "3");
    String newer = read(marmot.left, AS_IT_DRIVES, "camber", "-0.7");
    assertEquals("live", figure(marmot.left, "camber").get("stands").asText());
    shop.browser.post("/entries/" + newer + "/counts", Map.of("counts", "again")).is(303);
    JsonNode camber = figure(marmot.left, "camber");
    assertEquals(-0.6, degrees(camber, "value"), 1e-9);
    assertEquals("put-back", camber.get("stands").asText());
  }

  @Test
  void toe_read_as_a_length_goes_by_what_was_given_for_the_other_wheel_and_says_so() {
    marmot.send("/corners/" + marmot.left + "/given", Map.of("toe-across", "609.6 mm"));
    read(marmot.right, AS_IT_DRIVES, "toe", "3.2 mm");
    // asin 3.2/609.6 = 0.3008°, the worked example of ToeReading.
    assertEquals(0.3008, degrees(figure(marmot.right, "toe"), "value"), 5e-5);
    read(marmot.left, AS_IT_DRIVES, "toe", "3.2 mm");
    assertEquals(0.6016, degrees(figure(marmot.right, "total-toe"), "value"), 1e-4);
    String ride = ride(marmot.right, AS_IT_DRIVES);
    String low =
        marmot.heightAsAt(marmot.startRound(marmot.right, Map.of()), "in-between", "18", ride);
    marmot.read(low, "straight", "q-toe", "6.4 mm");
    String borrowed = "was given for the other wheel: give it for this one where the two differ";
    for (String page : new String[] {"/alignment", "/curves?of=toe"}) {
      String text = shop.get("/corners/" + marmot.right + page).is(200).text();
      assertTrue(text.contains(borrowed), text);
      assertFalse(text.contains("give how far apart its two places are"), text);
    }
    // Its own rules: asin 3.2/500 = 0.3667°.
    marmot.send("/corners/" + marmot.right + "/given", Map.of("toe-across", "500 mm"));
    assertEquals(0.3667, degrees(figure(marmot.right, "toe"), "value"), 5e-5);
    String own = shop.get("/corners/" + marmot.right + "/curves?of=toe").is(200).text();
    assertFalse(own.contains(borrowed), own);
  }

  @Test
  void toe_longer_than_what_it_is_across_is_no_angle_and_says_that() {
    marmot.send("/corners/" + marmot.left + "/given", Map.of("toe-across", "2 mm"));
    read(marmot.left, AS_IT_DRIVES, "toe", "3.2 mm");
    assertTrue(text().contains("it is a length, and longer than what it is across"), text());
    assertFalse(text().contains("nobody gave"), text());
    // Just longer than the toe: nearly a right angle, and no page breaks over its ±.
    marmot.send("/corners/" + marmot.left + "/given", Map.of("toe-across", "3.3 mm"));
    assertEquals(75.86, degrees(figure(marmot.left, "toe"), "value"), 0.01);
    for (String page : new String[] {"/alignment", "/curves?of=toe"}) {
      shop.get("/corners/" + marmot.left + page).is(200);
    }
  }

  @Test
  void one_wheel_measured_and_the_other_read_in_a_round_is_said_of_the_total() {
    read(marmot.left, AS_IT_DRIVES, "toe", "0.1°");
    String right = address(marmot.right);
    marmot.send(
        right + "/new?way=spot",
        right,
        Map.of("inward", "10 mm", "distance", "2000 mm", "rolled", "yes"));
    String text = shop.get(right).is(200).text();
    String total = text.substring(text.indexOf("Total "));
    total = total.substring(0, total.indexOf("Where the axis meets the ground"));
    assertTrue(total.contains("One of the wheels was read in a round"), total);
    assertFalse(total.contains("as nothing measured here does"), total);
  }
}
