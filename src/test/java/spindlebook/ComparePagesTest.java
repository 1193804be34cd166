package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two points of the book beside each other, and settings put back, through the real server. */
class ComparePagesTest {
  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;
  private String compare;
  private String putBack;
  private int before;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop).prepared().measured().measuredOn();
    compare = "/cars/" + marmot.car + "/compare";
    putBack = "/cars/" + marmot.car + "/put-back";
    before = shop.entries();
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private static String said(Page page) {
    return page.is(200).text().replaceAll("\\s+", " ");
  }

  private String signOff() {
    String signOffs = "/cars/" + marmot.car + "/sign-offs";
    Form form = shop.get(signOffs + "/new").form(signOffs).with("why", "round the yard");
    form.keep();
    return form.key();
  }

  @Test
  void a_changed_strap_differs_and_what_it_moved_needs_a_reading() {
    marmot.adjust(marmot.left, "limit-strap", "17 3/8");
    String text = said(shop.get(compare + "?one=" + before));
    assertTrue(text.contains("entry " + before), text);
    assertTrue(text.contains("Limit strap 18 3/8 in 17 3/8 in ≠ differs"), text);
    assertTrue(text.contains("Bump-stop spacer 1/2 in 1/2 in = the same"), text);
    assertTrue(text.contains("Now: needs the height 'on the strap (full droop)' again"), text);
    assertTrue(text.contains("not compared: not known, now"), text);
    assertFalse(text.contains("≠ decided otherwise"), text);
  }

  @Test
  void a_rule_made_stricter_differs_and_so_does_the_room_to_it() {
    String point = "/corners/" + marmot.left + "/watch-points/tie-rod-upper-arm";
    shop.get(point).is(200).form(point).with("least", "1/2").keep();
    String text = said(shop.get(compare + "?one=" + before));
    assertTrue(text.contains("at least 1/4 in at least 1/2 in ≠ differs"), text);
    assertTrue(text.contains("Droop: tie rod to upper arm, full right"), text);
    assertTrue(text.contains("Left front: "), text);
  }

  @Test
  void the_same_point_twice_shows_no_difference() {
    marmot.adjust(marmot.left, "limit-strap", "17 3/8");
    for (String n : List.of("now", Integer.toString(before))) {
      for (String corner : List.of("left-front", "right-front")) {
        String text = said(shop.get(compare + "?one=" + n + "&other=" + n + "&corner=" + corner));
        assertTrue(text.contains("Both are the same point of the book."), text);
        assertTrue(text.contains("nothing differs"), text);
        assertFalse(text.contains("≠"), text);
      }
    }
  }

  @Test
  void an_entry_or_a_corner_that_is_not_there_is_404() {
    for (String bad :
        List.of(
            "?one=99999",
            "?one=-1",
            "?one=x",
            "?other=1e3",
            "?one=0",
            "?beside=none",
            "?corner=middle")) {
      assertEquals(404, shop.get(compare + bad).status(), bad);
    }
    for (String bad : List.of("?at=99999", "?at=x", "?at=", "?at=-1")) {
      assertEquals(404, shop.get(putBack + bad).status(), bad);
    }
    assertEquals(404, shop.get("/cars/none/compare").status());
    assertEquals(404, shop.get("/cars/none/put-back").status());
    // An entry of before there was any corner.
    String early = said(shop.get(compare + "?one=1"));
    assertTrue(early.contains("there is no left front in the book, entry 1."), early);
  }

  @Test
  void left_is_held_against_right_with_the_lock_as_each_wheel_sees_it() {
    String text = said(shop.get(compare + "?beside=other-side"));
    assertTrue(text.contains("Differences are right front less left front, each as"), text);
    assertTrue(text.contains("Droop: tie rod to upper arm, inner lock"), text);
    assertTrue(text.contains("Right front: needs"), text);
    String sides = said(shop.get("/cars/" + marmot.car + "/sides"));
    assertTrue(sides.contains("Differences are right front less left front, each as"), sides);
    assertTrue(sides.contains("not read on the right front"), sides);
  }

  @Test
  void another_car_is_held_against_this_one_corner_by_corner() {
    Page made =
        shop.get("/cars/new")
            .is(200)
            .form("/cars")
            .with("name", "Mole")
            .with("front", "trailing-arm")
            .keep();
    String mole = made.location().substring("/cars/".length());
    String other = said(shop.get(compare + "?beside=" + mole));
    assertTrue(other.contains("Marmot"), other);
    assertTrue(other.contains("Mole"), other);
    assertTrue(
        other.contains("Not compared, two layouts: Marmot, steered double A-arm; Mole, "), other);
    Page third = shop.get("/cars/new").is(200).form("/cars").with("name", "Vole").keep();
    String vole = third.location().substring("/cars/".length());
    String alike = said(shop.get(compare + "?beside=" + vole));
    assertTrue(alike.contains("Differences are Vole less Marmot, each as"), alike);
    assertTrue(alike.contains("not compared: never said, Vole"), alike);
    // Entries are numbered through the whole file: at this one Vole was not there.
    String then = said(shop.get(compare + "?beside=" + vole + "&other=" + before));
    assertTrue(then.contains("in the book, Vole, entry " + before), then);
  }

  @Test
  void a_sign_off_is_picked_by_name_and_date_and_leads_there() {
    String key = signOff();
    marmot.adjust(marmot.left, "limit-strap", "17 3/8");
    String page = shop.get("/sign-offs/" + key).is(200).html();
    assertTrue(page.contains(compare + "?one=" + (before + 1)), page);
    assertTrue(page.contains(putBack + "?at=" + (before + 1)), page);
    Page usual = shop.get(compare).is(200);
    assertTrue(usual.html().contains("value=\"" + (before + 1) + "\" selected"), usual.html());
    assertTrue(usual.text().contains("signed off by Sam"), usual.text());
    assertTrue(said(usual).contains("Limit strap 18 3/8 in 17 3/8 in ≠ differs"), usual.text());
    // Two of one day are told by their entries.
    signOff();
    String two = said(shop.get(compare + "?one=" + (before + 1) + "&other=" + (before + 3)));
    assertTrue(
        two.contains("Differences are entry " + (before + 3) + " less entry " + (before + 1)), two);
  }

  @Test
  void the_car_and_every_entry_lead_there() {
    assertTrue(
        shop.get("/cars/" + marmot.car + "/more").html().contains("href=\"" + compare + "\""));
    String entry = shop.get("/entries/" + marmot.round).is(200).html();
    assertTrue(entry.contains(compare + "?one="), entry);
    assertTrue(entry.contains(putBack + "?at="), entry);
  }

  @Test
  void nothing_is_written_and_one_who_may_only_look_may_compare() throws IOException {
    Browser looker = shop.looker();
    byte[] book = Files.readAllBytes(shop.log());
    looker.get(compare).is(200);
    looker.get(compare + "?beside=other-side&one=9&other=now&corner=right-front").is(200);
    looker.get(putBack + "?at=5").is(200);
    org.junit.jupiter.api.Assertions.assertArrayEquals(book, Files.readAllBytes(shop.log()));
  }

  // --- put back

  @Test
  void settings_changed_since_are_prepared_in_an_order_and_say_what_they_leave_stale() {
    marmot.adjust(marmot.left, "limit-strap", "17");
    marmot.adjust(marmot.left, "upper-rod-ends", "4");
    Page page = shop.get(putBack + "?at=" + before).is(200);
    String html = page.html();
    int rods = html.indexOf("/adjustments/upper-rod-ends?to=3");
    int strap = html.indexOf("/adjustments/limit-strap?to=18+3%2F8");
    assertTrue(rods > 0 && strap > rods, html);
    String text = said(page);
    assertTrue(text.contains("Straps and stops last Only then is it known"), text);
    assertTrue(text.contains("Would be put back, not confirmed: "), text);
    String link = "/corners/" + marmot.left + "/adjustments/limit-strap?to=18+3%2F8+in&amp;why=";
    int at = html.indexOf(link);
    String filled = Page.decoded(html.substring(at, html.indexOf('"', at)));
    Page form = shop.get(filled).is(200);
    assertTrue(form.html().contains("value=\"18 3/8 in\""), form.html());
    assertTrue(form.html().contains("value=\"put back as at entry " + before), form.html());
    // Followed to the end, nothing is left to do.
    marmot.adjust(marmot.left, "upper-rod-ends", "3");
    marmot.adjust(marmot.left, "limit-strap", "18 3/8");
    String done = said(shop.get(putBack + "?at=" + before));
    assertTrue(done.contains("Nothing to do: every setting stands as it stood then."), done);
  }

  @Test
  void what_befell_the_car_and_what_was_retired_is_said_not_to_come_back() {
    String happenings = "/cars/" + marmot.car + "/happenings";
    shop.get(happenings + "/new")
        .is(200)
        .form(happenings)
        .with("what", "cut-welded-ground")
        .with("words", "new tab")
        .keep();
    String spacer = "/corners/" + marmot.left + "/adjusters/bump-stop-spacer";
    shop.get(spacer).is(200).form(spacer + "/retire").keep();
    String text = said(shop.get(putBack + "?at=" + before));
    assertTrue(text.contains("This cannot be put back"), text);
    assertTrue(text.contains("new tab no setting undoes it"), text);
    assertTrue(text.contains("was retired since; it stood at 1/2 in"), text);
    assertTrue(text.contains("Nothing to set"), text);
    String apart = said(shop.get(compare + "?one=" + before));
    assertTrue(apart.contains("1/2 in not there ≠ differs"), apart);
  }

  @Test
  void a_fresh_car_has_nothing_to_compare_or_to_put_back() {
    Page made = shop.get("/cars/new").is(200).form("/cars").with("name", "Mole").keep();
    String mole = made.location();
    assertTrue(said(shop.get(mole + "/compare")).contains("Compare"));
    assertTrue(said(shop.get(mole + "/put-back")).contains("was not in the book then"));
  }
}
