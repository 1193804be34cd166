package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A change tried on paper, through the pages. */
class TrialTest {
  @TempDir Path folder;
  private Shop shop;
  private String trial;
  private java.util.List<String> lines;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    Marmot marmot = new Marmot(shop).prepared().measured();
    trial = "/corners/" + marmot.left + "/trial";
    lines = shop.lines();
  }

  @AfterEach
  void nothing_was_written() {
    assertEquals(lines, shop.lines());
    shop.close();
  }

  @Test
  void a_shorter_strap_says_where_it_would_stop_the_wheel_and_what_becomes_stale() {
    String text = shop.get(trial + "?adjuster=limit-strap&to=17+3%2F8").is(200).text();
    assertTrue(text.contains("Predicted: the strap would stop the wheel at"), text);
    assertTrue(text.contains("Predicted margin in droop"), text);
    assertTrue(text.contains("where 'on the strap (full droop)' lies"), text);
    assertFalse(text.contains("stale tie rod to upper arm"), text);
  }

  /** Its mark for the strap goes stale on paper, but where it would be is known. */
  @Test
  void a_margin_that_can_be_foretold_is_not_said_to_be_unknown() {
    String text = shop.get(trial + "?adjuster=limit-strap&to=17+3%2F8").is(200).text();
    assertTrue(text.matches("(?s).*Margin in droop .{1,80} foretold\\s+−7/8 in ± 5/16.*"), text);
  }

  @Test
  void bad_input_is_kept_with_one_sentence() {
    Page page = shop.get(trial + "?adjuster=limit-strap&to=long");
    assertEquals(422, page.status());
    assertTrue(page.html().contains("value=\"long\""), page.html());
    shop.get(trial + "?adjuster=limit-strap&to=").is(422);
    shop.get(trial + "?adjuster=none&to=3").is(200);
    shop.get(trial + "?happening=none").is(200);
    shop.get("/corners/none/trial").is(404);
  }

  @Test
  void a_hit_corner_is_tried_too_and_a_device_that_may_only_look_may_try() {
    shop.get(trial + "?happening=hit-or-bent").is(200);
    assertEquals(200, shop.looker().get(trial + "?adjuster=limit-strap&to=17").status());
  }
}
