package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Springs, bump stops, straps and parts through the pages, on the demo car. */
class SpringPagesTest {
  private static final String LEFT = "/corners/marmot-lf/spring";
  private static final String PARTS = "/cars/marmot/parts";

  @TempDir Path folder;
  private Shop shop;

  @BeforeEach
  void open() {
    DemoBook.copyTo(folder);
    shop = new Shop(folder);
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private static void inOrder(String text, String... parts) {
    int at = 0;
    for (String part : parts) {
      int next = text.indexOf(part, at);
      assertTrue(next >= 0, part + " after " + at + " in " + text);
      at = next + part.length();
    }
  }

  @Test
  void a_corner_says_what_carries_it_what_ends_it_softly_what_is_kept_and_how_its_strap_lasts() {
    String text = shop.get("/corners/marmot-rf/spring").is(200).text();
    inOrder(
        text,
        "What carries it",
        "Rate at the wheel, at ride",
        "lb/in ±",
        "Bounces at ride",
        "a second",
        "Coil left at full bump",
        "What ends it softly",
        "hydraulic, 2 in, fitted",
        "Bump stop pushes, landing",
        "Shock and its stroke",
        "Shock left when open",
        "How long the strap lasts",
        "Used up after",
        "19 to 33",
        "Sunlight and years weaken a strap");
    String left = shop.get(LEFT).is(200).text();
    // Two digits of the ±, rounded up, as camber has them.
    inOrder(left, "Bounces at ride", "0.74 a second ± 0.21");
    inOrder(left, "Bump stop pressed, last drive", "too far ahead to tell", "no forecast");
    assertTrue(shop.get("/corners/marmot-lf/adjustments").html().contains("href=\"" + LEFT + "\""));
  }

  @Test
  void a_strap_is_drawn_against_its_use_with_its_forecast_or_without_and_the_ratio_by_position() {
    String text = shop.get("/corners/marmot-rf/spring").text();
    inOrder(text, "Motion ratio by position", "ride", "motion ratio");
    inOrder(
        text,
        "Length against use",
        "as read, and as it grows at one pace",
        "when it is used up",
        "bars: how far a reading may be off",
        "shaded: where the next reading lies, 19 times in 20");
    String left = shop.get(LEFT).text();
    inOrder(left, "no forecast", "Length against use", "grows ever more slowly", "shaded:");
    assertFalse(left.contains("when it is used up"), left);
  }

  @Test
  void what_is_missing_is_asked_for_once_and_leads_to_where_it_is_said() {
    try (Shop other = new Shop(folder.resolve("other"))) {
      Marmot bare = new Marmot(other).prepared();
      String spring = "/corners/" + bare.left + "/spring";
      String empty = other.get(spring).is(200).text();
      assertTrue(empty.contains("Nothing is said of this corner's spring yet"), empty);
      String rate = spring + "/rate";
      other.get(rate).is(200).form(rate).with("rate", "70 lb").send().is(422);
      other.get(rate).form(rate).with("rate", "").send().is(422);
      other.get(rate).form(rate).with("rate", "70 ± 2").with("preload", "1/2").keep();
      Page page = other.get(spring).is(200);
      assertTrue(page.text().contains("? needs the shock's length at more heights"), page.text());
      assertTrue(page.html().contains("/rounds/new"));
      assertTrue(other.get(rate).text().contains("Preload"));
      assertTrue(other.get(rate).html().contains("value=\"70 ± 2 lb/in\""));
    }
  }

  @Test
  void amounts_are_read_with_the_commas_people_write_them_with() {
    String weight = "/corners/marmot-rf/spring/weight";
    shop.get(weight).form(weight).with("weight", "1,100 lbs").with("unsprung", "62,5 kg").keep();
    assertTrue(shop.get(weight).html().contains("value=\"1100 lbs\""));
    assertTrue(shop.get(weight).html().contains("value=\"62.5 kg\""));
    Page asked = shop.get(weight).form(weight).with("weight", "1,100 kg").send().is(422);
    inOrder(asked.text(), "can be read in more than one way: which is it?", "1.100 kg", "1100 kg");

    String stop = "/corners/marmot-rf/spring/stops/new";
    for (String chart :
        List.of("0 50, 12.5 mm 1,200, 25 mm 2,700 lb", "0 50; 12,5 mm 1,200; 25 mm 2700")) {
      shop.get(stop).form(stop).with("chart", chart).with("fitted", "compare").keep();
      String before = shop.get("/corners/marmot-rf/spring").html();
      String kept =
          before.replaceFirst("(?s).*href=\"([^\"]*/spring/stops/(?!new)[^\"]*)\".*", "$1");
      shop.get(kept).form(kept).keep();
      inOrder(shop.get(kept).html(), "50 lb; 12", "5 mm 1200 lb; 25 mm 2700 lb");
    }
  }

  @Test
  void a_stop_by_its_chart_and_the_weight_by_a_plank_are_kept_as_typed() {
    String fresh = LEFT + "/stops/new";
    Page wrong =
        shop.get(fresh).is(200).form(fresh).with("chart", "0 50, 2 700, 1 200").send().is(422);
    assertTrue(wrong.text().contains("'1 200' is no next point"), wrong.text());
    shop.get(fresh)
        .form(fresh)
        .with("name", "air, 4 in")
        .with("chart", "0 50, 1 1/2 200, 3 900 lb")
        .with("fitted", "compare")
        .with("longer", "1/2")
        .keep();
    String text = shop.get(LEFT).text();
    assertTrue(text.contains("air, 4 in"), text);

    String weight = LEFT + "/weight";
    shop.get(weight).form(weight).with("by", "lever").with("unsprung", "96").send().is(422);
    Form plank = shop.get(weight).form(weight).with("by", "lever").with("unsprung", "96 ± 8");
    plank = plank.with("read", "210").with("to-scale", "84").with("to-wheel", "40");
    String heavy = plank.with("bare", "240").send().is(422).text();
    assertTrue(heavy.contains("The plank alone weighs less than with the wheel on it."), heavy);
    Form guessed = plank.with("bare", "240").with("by", "estimate").with("weight", "420 ± 40");
    heavy = guessed.send().is(422).text();
    assertTrue(heavy.contains("The plank alone weighs less than with the wheel on it."), heavy);
    shop.get(weight)
        .form(weight)
        .with("by", "lever")
        .with("unsprung", "96 ± 8")
        .with("read", "210")
        .with("bare", "10")
        .with("to-scale", "84")
        .with("to-wheel", "40")
        .keep();
    // (210 − 10) · 84/40 = 420 lb
    inOrder(
        shop.get(LEFT).text(), "Corner weight on the ground", "420", "lb", "Weight on the spring");
  }

  @Test
  void another_shock_is_tried_at_both_ends_and_says_which_limit_is_next() {
    Page page = shop.get(LEFT + "/try?open=28&stroke=11.5").is(200);
    inOrder(page.text(), "This shock", "Droop", "tie rod to upper arm", "Bump");
    assertEquals(422, shop.get(LEFT + "/try?open=28").status());
  }

  @Test
  void the_split_and_bounce_that_are_wanted_say_which_spring_gives_them() {
    String rate = LEFT + "/rate";
    shop.get(rate).is(200).form(rate).with("hz", "20.5").send().is(422);
    for (String atItsEnds : List.of("0.1", "20")) {
      shop.get(rate).form(rate).with("hz", atItsEnds).keep();
    }
    shop.get(rate).is(200).form(rate).with("droop", "50").with("hz", "0.9").keep();
    inOrder(
        shop.get(LEFT).text(),
        "Collar, to sit where wanted",
        "Spring for the split and bounce you want",
        "lb/in",
        "One spring, preload");
  }

  /** The left rear's collar was turned after the right rear's ride was read: a hair lower there. */
  @Test
  void a_turned_collar_foretells_ride_at_the_other_corners_until_it_is_read() {
    String right = shop.get("/corners/marmot-rr/spring").is(200).text();
    inOrder(right, "What carries it", "Ride since springs were changed", "measure again");
    assertFalse(shop.get(LEFT).text().contains("Ride since springs were changed"));
    String collar = "/corners/marmot-lf/adjustments/preload";
    assertTrue(shop.get(collar).is(200).text().contains("preload"));
  }

  @Test
  void a_part_is_due_is_looked_at_from_the_drive_check_and_another_one_begins_anew() {
    String check = shop.get("/cars/marmot/drive-check?at=marmot-lf").is(200).text();
    assertTrue(check.contains("Look at limit strap, 20 in"), check);
    String strap = PARTS + "/part-lf-strap";
    shop.get(strap).is(200).form(strap).with("done", "looked-at").with("words", "good").keep();
    assertFalse(
        shop.get("/cars/marmot/drive-check?at=marmot-lf")
            .text()
            .contains("Look at limit strap, 20"));
    inOrder(shop.get(PARTS).text(), "To look at next", "now", "Left rear: limit strap", "now");

    String fit = PARTS + "/new";
    shop.get(fit)
        .is(200)
        .form(PARTS)
        .with("what", "limit strap, new")
        .with("where", "right-front")
        .with("look-after", "10")
        .with("kind", "limit-strap")
        .keep();
    String parts = shop.get(PARTS).text();
    assertTrue(parts.contains("Right front: limit strap, new"), parts);
    // Another strap: where it stops is not known, and its readings begin anew.
    String right = shop.get("/corners/marmot-rf/spring").text();
    assertFalse(right.contains("19 to 33"), right);
    shop.get(fit).form(PARTS).with("what", "").send().is(422);
    shop.get(fit).form(PARTS).with("what", "x").with("kind", "limit-strap").send().is(422);
  }

  @Test
  void a_strap_is_measured_under_a_pull_and_a_wrong_pull_is_said() {
    String telltales = "/corners/marmot-lr/telltales";
    // One reading alone has grown by nothing yet.
    inOrder(shop.get("/corners/marmot-lr/spring").is(200).text(), "Used up after", "no forecast");
    String strap = "17 3/8";
    Page page = shop.get(telltales).is(200);
    page.formWithId("strap").with("strap", strap).with("pull", "heavy").send().is(422);
    shop.get(telltales).formWithId("strap").with("strap", strap).with("pull", "300").keep();
    assertTrue(shop.get("/corners/marmot-lr/spring").text().contains("2 readings under one pull"));
  }

  @Test
  void two_answers_of_a_spring_or_stop_that_cannot_both_be_are_one_sentence_each() {
    int entries = shop.entries();
    String rate = LEFT + "/rate";
    Form spring = shop.get(rate).is(200).form(rate).with("rate", "350").with("preload", "1");
    String both = "Two springs need both: the upper one's rate and its crossover.";
    says(spring.with("tender", "150"), both);
    says(spring.with("crossover", "3"), both);
    says(spring.with("loose-at", "24"), "Type the preload or this, not both.");
    says(
        spring.with("free", "14").with("solid", "16"),
        "Type a solid length that is shorter than the free one.");
    String fresh = LEFT + "/stops/new";
    says(
        shop.get(fresh).is(200).form(fresh).with("chart", "0 50"),
        "A chart has two points at least, such as 0 50, 2 700.");
    assertEquals(entries, shop.entries());
  }

  private static void says(Form form, String sentence) {
    Page page = form.send().is(422);
    assertEquals(1, BadInputTest.problems(page).size(), page.text());
    assertTrue(page.text().contains(sentence), page.text());
  }
}
