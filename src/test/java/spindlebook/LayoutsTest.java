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

/** Corners of every layout, come by in every way; and each as it was known at an entry. */
class LayoutsTest {
  @TempDir Path folder;
  private Shop shop;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private String car(String name, Map<String, String> hung) {
    Form form = shop.get("/cars/new").is(200).form("/cars").with("name", name);
    for (Map.Entry<String, String> end : hung.entrySet()) {
      form = form.with(end.getKey(), end.getValue());
    }
    return form.keep().location().substring("/cars/".length());
  }

  @Test
  void a_car_starts_with_the_layouts_its_owner_chose() {
    String car = car("Stoat", Map.of("front", "unsteered-double-a-arm", "rear", "trailing-arm"));
    assertEquals(5, shop.entries());
    String front = shop.get("/corners/" + car + "-lf").is(200).text();
    assertTrue(front.contains("unsteered double A-arm"), front);
    assertTrue(shop.get("/corners/" + car + "-rr").is(200).text().contains("trailing arm"));
    String points = shop.get("/corners/" + car + "-rr/watch-points").is(200).text();
    for (String said :
        List.of(
            "CV joint angle",
            "keep at most 18°",
            "CV joint plunge from its middle, out +",
            "trailing arm to frame")) {
      assertTrue(points.contains(said), () -> said + " is not on: " + points);
    }
    assertFalse(
        shop.get("/cars/" + car + "/more").text().contains("More corners"), "it has all four");
  }

  @Test
  void nothing_chosen_is_two_steered_front_corners_and_neither_end_is_asked_back() {
    String car = car("Stoat", Map.of());
    assertEquals(3, shop.entries());
    String front = shop.get("/corners/" + car + "-lf").text();
    assertTrue(front.contains(" steered double A-arm"), front);
    Page none =
        shop.get("/cars/new")
            .form("/cars")
            .with("name", "Vole")
            .with("front", "later")
            .with("rear", "later")
            .send()
            .is(422);
    assertTrue(none.text().contains("A car starts with one end at least"), none.text());
    assertEquals("Vole", none.form("/cars").value("name"));
    assertEquals("later", none.form("/cars").value("front"));
    assertEquals(3, shop.entries());
    none.form("/cars").with("rear", "trailing-arm").keep();
    assertEquals(6, shop.entries());
  }

  @Test
  void corners_come_later_once_and_only_where_there_are_none() {
    String car = car("Stoat", Map.of());
    String address = "/cars/" + car + "/corners";
    assertTrue(shop.get("/cars/" + car + "/more").html().contains(address + "/new"));
    Page form = shop.get(address + "/new").is(200);
    assertFalse(form.text().contains("left front and"), form.text());
    Form chosen = form.form(address).with("end", "rear");
    Page asked = chosen.send().is(422);
    assertTrue(asked.text().contains("Say how its wheels are hung."), asked.text());
    assertEquals("rear", asked.form(address).value("end"));
    Form whole = chosen.with("layout", "unsteered-double-a-arm");
    whole.keep();
    int entries = shop.entries();
    assertEquals(5, entries);
    whole.keep();
    form.form(address).with("end", "rear").with("layout", "trailing-arm").keep();
    assertEquals(entries, shop.entries(), "sent twice, and from a second tab");
    assertTrue(shop.get("/corners/" + car + "-lr").text().contains("unsteered double A-arm"));
    assertFalse(shop.get("/cars/" + car + "/more").text().contains("More corners"));
    for (String no : List.of("leaf-spring", "")) {
      String other = car("Vole" + no, Map.of());
      String corners = "/cars/" + other + "/corners";
      shop.browser.post(corners, Map.of("end", "rear", "layout", no)).is(422);
    }
  }

  @Test
  void watch_points_are_copied_to_the_mirror_and_to_another_car_and_nowhere_else() {
    String stoat = car("Stoat", Map.of("rear", "trailing-arm"));
    String vole = car("Vole", Map.of("rear", "trailing-arm"));
    String from = stoat + "-lr";
    String points = "/corners/" + from + "/watch-points";
    Form angle = shop.get(points + "/cv-angle").form(points + "/cv-angle");
    angle.with("mostAngle", "22").keep();
    String own = "Frame rail at the jack point";
    shop.get(points + "/new")
        .form(points)
        .with("place", "trailing-arm-frame")
        .with("name", own)
        .with("least", "3/8")
        .keep();
    String retired = points + "/hose-slack";
    shop.get(retired).form(retired + "/retire").keep();

    Page page = shop.get(points + "/copy").is(200);
    assertTrue(page.text().contains("right rear 1 new, 1 changed, 6 the same"), page.text());
    assertTrue(page.text().contains("Vole, left rear 1 new"), page.text());
    assertFalse(page.html().contains(stoat + "-lf"), "a steered corner is no trailing arm");
    assertEquals(stoat + "-rr", page.form(points + "/copy").value("to"), "the mirror, in one tap");

    for (String to : List.of(stoat + "-rr", vole + "-lr")) {
      int entries = shop.entries();
      Form form = shop.get(points + "/copy").form(points + "/copy").with("to", to);
      Page there = shop.browser.follow(form.keep()).is(200);
      assertTrue(there.text().contains("keep at most 22"), there.text());
      assertTrue(there.text().contains(own), there.text());
      assertTrue(there.text().contains("slack in the brake hose"), "its own stays");
      assertEquals(entries + 2, shop.entries());
      form.keep();
      assertEquals(entries + 2, shop.entries(), "sent twice");
      Page again = shop.get(points + "/copy").is(200);
      assertTrue(again.text().contains("8 the same already") || !to.contains(stoat), again.text());
    }
    shop.browser
        .post(points + "/copy", Map.of("to", stoat + "-lf", "key", "k", "after", "0"))
        .is(422);
  }

  @Test
  void specs_allowances_and_settings_are_given_once_for_the_mirror_and_the_next_car() {
    Marmot marmot = new Marmot(shop).prepared();
    String copy = "/corners/" + marmot.left + "/watch-points/copy";
    shop.get("/corners/" + marmot.right + "/given")
        .form("/corners/" + marmot.right + "/given")
        .with("shock-open", "27")
        .keep();
    marmot.adjust(marmot.right, "upper-rod-ends", "4");
    assertTrue(shop.get("/corners/" + marmot.left + "/adjustments").html().contains(copy));
    Page asked = shop.get(copy).is(200);
    assertTrue(asked.text().contains("right front"), asked.text());
    assertTrue(asked.text().contains("5 specs, 2 allowances, 2 settings"), asked.text());
    asked.form(copy).keep();
    JsonNode right = shop.figures(marmot.right);
    assertTrue(right.toString().contains("18 3/8"), "the strap's setting");
    Form given =
        shop.get("/corners/" + marmot.right + "/given").form("/corners/" + marmot.right + "/given");
    assertEquals("27", given.value("shock-open"), "what was said there stays");
    assertEquals("13 5/8", given.value("shock-closed"));
    assertEquals("8", given.value("strap-stretch"));
    assertTrue(shop.get("/corners/" + marmot.right + "/adjustments").text().contains("4 turns"));
    assertFalse(shop.get(copy).text().contains("specs"), "all of it is there");

    String next =
        shop.get("/cars/new")
            .form("/cars")
            .with("name", "Vole")
            .with("like", marmot.car)
            .keep()
            .location()
            .substring("/cars/".length());
    String there = "/corners/" + next + "-rf/given";
    assertEquals("27", shop.get(there).form(there).value("shock-open"));
    String strap = "/corners/" + next + "-lf/adjustments";
    assertTrue(shop.get(strap).text().contains("18 3/8"), shop.get(strap).text());
    assertFalse(
        shop.get("/corners/" + next + "-lf/watch-points").text().contains("brake hose"),
        "what is not watched there is not watched here");
  }

  @Test
  void a_place_that_has_the_name_of_another_there_is_copied_under_a_name_of_its_own() {
    String car = car("Stoat", Map.of("rear", "trailing-arm"));
    for (String[] corner : new String[][] {{"-lr", "tyre-shock"}, {"-rr", "shock-frame"}}) {
      String points = "/corners/" + car + corner[0] + "/watch-points";
      shop.get(points + "/new")
          .form(points)
          .with("place", corner[1])
          .with("name", "the tight one")
          .with("least", "1/4")
          .keep();
    }
    String points = "/corners/" + car + "-lr/watch-points";
    Form form = shop.get(points + "/copy").form(points + "/copy").with("to", car + "-rr");
    Page there = shop.browser.follow(form.keep()).is(200);
    assertTrue(there.html().contains("/watch-points/the-tight-one\""), there.html());
    assertTrue(there.html().contains("/watch-points/the-tight-one-2\""), there.html());
  }

  @Test
  void a_corner_can_be_looked_at_as_it_was_known_at_any_entry_and_not_changed_there() {
    Marmot marmot = new Marmot(shop).prepared().measured().measuredOn();
    String address = "/corners/" + marmot.left;
    String then = shop.get(address).is(200).text();
    int n = shop.entries();
    marmot.adjust(marmot.left, "upper-rod-ends", "4");
    String now = shop.get(address).text();
    assertFalse(now.contains("13 7/8 in ± 1/4"), "everything is stale now");

    Page as = shop.get(address + "?at=" + n).is(200);
    assertTrue(as.text().contains("Left front, as we knew it at entry " + n), as.text());
    assertTrue(as.text().contains("not how it stands now"), as.text());
    for (String figure :
        List.of("13 7/8 in ± 1/4", "11 3/8 in ± 5/16", "3 7/16 in ± 5/16 past it")) {
      assertTrue(then.contains(figure) && as.text().contains(figure), figure);
    }
    assertFalse(as.html().contains("<form"), "nothing to send");
    for (String change :
        List.of("/rounds/new", "/adjustments", "/given", "/heights/", "/correct", "/answer")) {
      assertFalse(as.html().contains(change), () -> change + " is on: " + as.html());
    }
    Page before = shop.get(address + "?at=" + (n - 1)).is(200);
    assertTrue(before.text().contains("no ride height read"), before.text());
    assertTrue(as.html().contains(address + "?at=" + (n - 1) + "\""), as.html());
    assertTrue(as.html().contains(address + "?at=" + (n + 1) + "\""), as.html());

    shop.get(address + "?at=1").is(404);
    for (String no : List.of("0", "-3", "99999", "ten", "", "1e3", "9999999999999999999")) {
      shop.get(address + "?at=" + no).is(404);
    }
    int entries = shop.entries();
    JsonNode figures = shop.figures(marmot.left);
    shop.reopen();
    assertEquals(as.text(), shop.get(address + "?at=" + n).text(), "closed and opened again");
    assertEquals(entries, shop.entries());
    assertEquals(figures, shop.figures(marmot.left));
  }

  @Test
  void each_entry_leads_to_its_corner_as_it_was_known_then() {
    Marmot marmot = new Marmot(shop).prepared();
    String round = marmot.startRound(marmot.left, Map.of());
    String height = marmot.height(round, "stop-touch", "15 3/16", "31 5/8");
    int n = shop.entries();
    String page = shop.get("/entries/" + height).is(200).html();
    assertTrue(page.contains("/corners/" + marmot.left + "?at=" + n + "\""), page);
    assertFalse(page.contains("/corners/" + marmot.right + "?at="), page);
    String own = shop.get("/entries/" + marmot.right).is(200).html();
    assertTrue(own.contains("/corners/" + marmot.right + "?at=3\""), own);
    String first = shop.get("/entries/" + marmot.car).html();
    assertFalse(first.contains("?at=") || first.contains("/compare"), "no corner yet");
  }

  @Test
  void a_corner_in_doubt_then_shows_the_doubt_then_and_no_key_to_answer_it() {
    Marmot marmot = new Marmot(shop);
    String round = marmot.startRound(marmot.left, Map.of());
    marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    String touch = marmot.height(round, "stop-touch", "14 1/2", "31 5/8");
    int n = shop.entries();
    String answer = "/entries/" + touch + "/answer";
    shop.get("/entries/" + touch).form(answer).with("answer", "so").keep();
    String address = "/corners/" + marmot.left;
    assertFalse(shop.get(address).text().contains("Check this"));
    Page then = shop.get(address + "?at=" + n).is(200);
    assertTrue(then.text().contains("Check this"), then.text());
    assertTrue(then.html().contains("/entries/" + touch + "\""), then.html());
    assertFalse(then.html().contains(">Answer<"), then.html());
  }
}
