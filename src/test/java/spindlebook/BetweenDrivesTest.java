package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Telltales after a drive and the re-check between two, through their pages. */
class BetweenDrivesTest {
  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;
  private String telltales;
  private String reCheck;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop);
    telltales = "/corners/" + marmot.left + "/telltales";
    reCheck = "/cars/" + marmot.car + "/re-check";
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private Form ring(String inches) {
    return shop.get(telltales).is(200).formWithId("ring").with("ring", inches);
  }

  private void drive() {
    String use = "/cars/" + marmot.car + "/use";
    assertEquals(reCheck, shop.get(use).form(use).with("amount", "2").keep().location());
  }

  @Test
  void a_ring_says_what_is_missing_and_then_where_the_wheel_was() {
    ring("9").keep();
    String before = shop.get(telltales).is(200).text();
    assertTrue(before.contains("Ring on the shock shaft · 9 in · 228.6 mm"), before);
    assertTrue(
        before.contains(
            "Where the wheel was is not known: needs the shock's length eye to eye as the ring"
                + " was read, or at 'on the strap (full droop)' in a round."),
        before);
    marmot.prepared().measured().measuredOn();
    // 25 5/8 on the strap less 9: 16 5/8, between 16 7/8 at −5 and 14 5/16 at −1 7/16 in; the
    // curve falls by about 0.74 there, so 0.34 in above −5; ride lies at −10 13/16.
    String after = shop.get(telltales).text();
    assertTrue(after.contains("Read before upper rod ends to 3 turns"), after);
    ring("9").keep();
    after = shop.get(telltales).text();
    assertTrue(after.contains("Deepest bump: +6 1/8 in from ride ± "), after);
    assertTrue(after.contains("short of where the stop is solid."), after);
    assertTrue(after.contains("imit of bump"), after);
    ring("12 1/2").keep();
    after = shop.get(telltales).text();
    assertTrue(after.contains("the highest at which the shock's length was read"), after);
  }

  @Test
  void a_ring_further_out_than_the_shock_s_stroke_is_asked_for_again() {
    String given = "/corners/" + marmot.left + "/given";
    shop.get(given).form(given).with("shock-open", "28 1/8").with("shock-closed", "15 1/2").keep();
    int entries = shop.entries();
    Page page = ring("15").send().is(422);
    assertTrue(page.text().contains("The shock's stroke is 12 5/8 in: read the ring"), page.text());
    assertEquals("15", page.formWithId("ring").value("ring"));
    assertEquals(entries, shop.entries());
    ring("12 3/4").keep();
  }

  @Test
  void clay_is_held_against_the_rule_of_its_watch_point() {
    Form clay =
        shop.get(telltales)
            .formWithId("mark")
            .with("mark", "clay")
            .with("thick", "3/16")
            .with("point", "tie-rod-upper-arm");
    clay.keep();
    String text = shop.get(telltales).text();
    assertTrue(text.contains("1/16 in less than its rule asks."), text);
    Form mark = shop.get(telltales).formWithId("mark").with("mark", "witness-mark");
    Page page = mark.send().is(422);
    assertEquals(1, BadInputTest.problems(page).size(), page.text());
    mark.with("mark-words", "paint gone off the stop").keep();
    assertTrue(
        shop.get(telltales).text().contains("Witness mark: paint gone off the stop"),
        shop.get(telltales).text());
  }

  @Test
  void what_cannot_be_read_comes_back_at_its_own_form() {
    int entries = shop.entries();
    Page page = ring("a lot").with("shock", "-1").send().is(422);
    assertEquals("a lot", page.formWithId("ring").value("ring"));
    assertEquals(2, BadInputTest.problems(page).size(), page.text());
    assertEquals("", page.formWithId("strap").value("strap"));
    assertEquals(422, shop.get(telltales).formWithId("strap").send().status());
    assertEquals(422, shop.get(telltales).formWithId("pressure").send().status());
    assertEquals(entries, shop.entries());
  }

  @Test
  void a_re_check_lists_what_is_to_be_looked_at_and_each_goes_into_the_book() {
    marmot.adjust(marmot.left, "upper-rod-ends", "3");
    drive();
    Page check = shop.get(reCheck + "?corner=" + marmot.left).is(200);
    assertTrue(check.text().contains("driven, 2 hours."), check.text());
    assertTrue(check.text().contains("upper rod ends to 3 turns"), check.text());
    String nut = "/corners/" + marmot.left + "/fasteners/upper-rod-ends";
    Page back = check.form(nut).with("how", "marked").keep();
    check = shop.browser.follow(back).is(200);
    assertTrue(check.text().contains("Looked at since the drive: 1."), check.text());
    back = check.formWithId("strap").with("strap", "18 1/2").keep();
    check = shop.browser.follow(back).is(200);
    check = shop.browser.follow(check.formWithId("ring").with("ring", "3").keep());
    check = shop.browser.follow(check.formWithId("pressure").with("pressure", "18 psi").keep());
    assertTrue(check.text().contains("Tyre pressure as found · 18 psi"), check.text());
    assertEquals(0, check.forms().size(), check.text());
    shop.get(reCheck + "?corner=" + marmot.right).is(200).formWithId("strap");

    // After the next drive all is to be looked at again; what was touched is told since then.
    marmot.adjust(marmot.left, "limit-strap", "18");
    drive();
    check = shop.get(reCheck + "?corner=" + marmot.left).is(200);
    assertTrue(check.text().contains("Touched since"), check.text());
    assertTrue(check.text().contains("limit strap to 18 in"), check.text());
    assertFalse(check.text().contains("upper rod ends to 3 turns"), check.text());
    assertEquals(5, check.forms().size(), "strap bolts, jam nuts, and three to read");
  }
}
