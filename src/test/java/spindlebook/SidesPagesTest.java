package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Marmot's left front as it was measured, and the right one read on its strap: the tie rod's gap at
 * inner lock the same, at outer lock a quarter of an inch more.
 */
class SidesPagesTest {
  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;
  private String rightOnStrap;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop).prepared().measured().measuredOn();
    String round = marmot.startRound(marmot.right, Map.of());
    rightOnStrap = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    // Inner lock of the right wheel is full right, its outer lock full left.
    marmot.readTieRod(rightOnStrap, "13/32", "5/16", "9/16");
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private String text() {
    return shop.get("/cars/" + marmot.car + "/sides").is(200).text().replaceAll("\\s+", " ");
  }

  @Test
  void what_one_side_has_not_is_not_compared_and_no_difference() {
    String text = text();
    assertTrue(text.contains("not compared: not there, right front"), text);
    assertFalse(text.contains("not there ≠ differs"), text);
  }

  @Test
  void inner_lock_is_held_against_inner_lock_and_outer_against_outer() {
    String text = text();
    assertTrue(text.contains("Marmot, left and right: now"), text);
    // 9/16 at the left's full left and at the right's full right: inner lock both. Wider than the
    // thickest shank they are the tape's, U 1/16 in each: √2/16 of the difference, shown as 1/8.
    String figure = " in ± 1/16 .{1,40}";
    assertTrue(
        text.matches(
            ".*Tie rod to upper arm, inner lock 9/16"
                + figure
                + "9/16"
                + figure
                + "0"
                + figure.replace("1/16", "1/8")
                + "= within ±.*"),
        text);
    // 5/32 at the left's full right, 13/32 at the right's full left: a quarter apart.
    assertTrue(
        text.matches(
            ".*Tie rod to upper arm, outer lock, on the strap \\(full droop\\) .{1,120}\\+1/4"
                + figure
                + "≠ differs.*"),
        text);
    assertTrue(text.contains("Upper rod end"), text);
    assertTrue(text.contains("not read on the right"), text);
    assertFalse(text.toLowerCase(java.util.Locale.ROOT).contains("safe"), text);
  }

  @Test
  void what_went_stale_stands_there_and_is_not_compared() {
    String differs = ".*outer lock, on the strap \\(full droop\\) [^≠]{1,120} ≠ differs.*";
    assertTrue(text().matches(differs), text());
    marmot.adjust(marmot.left, "tie-rod", "2");
    String text = text();
    assertTrue(text.contains("not compared: measure again"), text);
    assertFalse(text.matches(differs), text);
  }

  @Test
  void a_figure_that_one_side_lacks_is_asked_for_there() {
    String text = text();
    assertTrue(text.contains("Travel as set"), text);
    assertTrue(text.contains("– not compared: not known, right front"), text);
    assertTrue(text.contains("What rules droop tie rod to upper arm, outer lock"), text);
  }

  @Test
  void the_car_page_leads_to_it_and_names_its_worst_corner_as_the_drive_check_does() {
    Page car = shop.get("/cars/" + marmot.car).is(200);
    String more = shop.get("/cars/" + marmot.car + "/more").is(200).html();
    assertTrue(more.contains("href=\"/cars/" + marmot.car + "/sides\""), more);
    String text = car.text().replaceAll("\\s+", " ");
    int worst = text.indexOf("The car from above: left front Left front");
    assertTrue(worst > 0, text);
    assertTrue(worst < text.indexOf("The car from above: right front"), text);
    int sentence = text.indexOf("Tie rod to upper arm, full right: too close.");
    assertTrue(sentence > worst, text);
    assertEquals(sentence, text.lastIndexOf("Tie rod to upper arm, full right: too close."));
    String check = shop.get("/cars/" + marmot.car + "/drive-check").is(200).text();
    assertTrue(check.contains("too close: "), check);
    assertEquals(404, shop.get("/cars/none/sides").status());
  }

  @Test
  void beside_each_box_stands_the_mirrors_value_at_the_same_lock_of_the_wheel() {
    String inner = shop.get("/heights/" + rightOnStrap + "?steering=full-right").is(200).text();
    assertTrue(inner.replaceAll("\\s+", " ").contains("left front 9/16 in"), inner);
    assertTrue(inner.contains("at full left"), inner);
    String outer = shop.get("/heights/" + rightOnStrap + "?steering=full-left").is(200).text();
    assertTrue(outer.replaceAll("\\s+", " ").contains("left front 5/32 in"), outer);
  }

  @Test
  void a_list_to_read_again_names_its_heights_once_each_from_droop_to_bump_as_it_is_walked() {
    marmot.adjust(marmot.left, "tie-rod", "2");
    String rounds = "/corners/" + marmot.left + "/rounds";
    Page start = shop.get(rounds + "/new?again=1").is(200);
    String text = start.text();
    List<String> heights =
        Pattern.compile("(Strap off|On the strap|In between|Bump stop touches)[^:\n]*: ")
            .matcher(text.substring(text.indexOf("The heights, in order")))
            .results()
            .map(m -> m.group(1))
            .toList();
    assertEquals(
        List.of("Strap off", "On the strap", "In between", "Bump stop touches"), heights, text);
    Form form = start.form(rounds);
    form.keep();
    String guide = shop.get("/rounds/" + form.key() + "/guide").is(200).html();
    int from = 0;
    for (String height : heights) {
      int at = guide.toLowerCase(Locale.ROOT).indexOf(height.toLowerCase(Locale.ROOT), from);
      assertTrue(at >= from, height + " is not walked in its turn");
      from = at;
    }
  }
}
