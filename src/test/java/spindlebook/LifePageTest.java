package spindlebook;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demo's corners over time. Figures as the demo's script has them (docs/guide). */
class LifePageTest {
  private static Shop shop;

  @BeforeAll
  static void open(@TempDir Path folder) {
    DemoBook.copyTo(folder);
    shop = new Shop(folder);
  }

  @AfterAll
  static void close() {
    shop.close();
  }

  private static Page life(String corner) {
    return shop.get("/corners/" + corner + "/life").is(200);
  }

  @Test
  void the_left_front_tells_how_its_droop_came_to_be_past_it() {
    Page page = life("marmot-lf");
    String text = page.text();
    inOrder(text, "droop", "past it", "−11/16 in ± 5/16", "since ", "bump");
    // On the drawing: what it was before, what was set and driven, who signed, what is tried.
    inOrder(
        text, "−1 3/16 in ± 3/8", "19 3/4 in", "19 1/8 in", "new pair", "drives", "1", "2", "3");
    assertTrue(text.contains("signed off, 14 open"), text);
    assertTrue(page.html().contains("f-tried"));
    assertTrue(text.contains("5 drives, nothing set"), text);
    // In words, newest first; the strap, set shorter, was to be measured again.
    inOrder(
        text.substring(text.indexOf("In words")),
        "Droop −11/16 in ± 5/16, past it",
        "Droop to measure again",
        "Limit strap from 20 in to 19 3/4 in",
        "Droop −1 3/16 in ± 3/8, past it");
  }

  @Test
  void the_right_rears_hit_stands_in_its_life_and_what_it_made_untrue_is_hatched() {
    Page page = life("marmot-rr");
    assertTrue(page.text().contains("✕ hit"), page.text());
    assertTrue(page.text().contains("5 drives, 1 hit, 2 set"), page.text());
    assertTrue(page.html().contains("f-not-current"));
    inOrder(
        page.text().substring(page.text().indexOf("In words")),
        "Droop +1 1/2 in ± 3/16",
        "Hit or bent",
        "Droop +1 7/16 in ± 3/16");
  }

  @Test
  void a_tap_leads_to_how_it_stood_and_what_tells_more_is_linked() {
    Page page = life("marmot-lf");
    assertTrue(page.html().contains("href=\"/corners/marmot-lf?at="));
    for (String way : List.of("rounds", "photos", "telltales", "fasteners", "paper", "print")) {
      String address = "/corners/marmot-lf/" + way;
      assertTrue(page.html().contains("href=\"" + address + "\""), way);
      shop.get(address).is(200);
    }
  }

  @Test
  void a_corner_that_nobody_measured_says_so_and_an_earlier_time_is_shown_as_such() {
    assertTrue(
        shop.get("/corners/marmot-rr/life?to=471").is(200).text().contains("? not measured"));
    shop.get("/corners/marmot-rr/life?to=1").is(404);
    shop.get("/corners/marmot-rr/life?to=x").is(404);
    shop.get("/corners/nobody/life").is(404);
  }

  @Test
  void what_is_saved_is_its_newest_point(@TempDir Path folder) {
    DemoBook.copyTo(folder);
    try (Shop other = new Shop(folder)) {
      String life = "/corners/marmot-lf/life";
      String before = other.get(life).is(200).text();
      assertTrue(before.contains("nothing set"), before);
      String strap = "/corners/marmot-lf/adjustments/limit-strap";
      other
          .get(strap)
          .form(strap + "/would-move")
          .with("to", "19 1/8")
          .send()
          .is(200)
          .form(strap)
          .keep();
      String after = other.get(life).is(200).text();
      inOrder(after, "droop", "needs ", "5 drives, 1 set");
    }
  }

  private static void inOrder(String text, String... parts) {
    int at = 0;
    for (String part : parts) {
      int next = text.indexOf(part, at);
      assertTrue(next >= 0, part + " after " + at + " in " + text);
      at = next + part.length();
    }
  }
}
