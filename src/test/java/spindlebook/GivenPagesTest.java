package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Specs of parts on their page: of a part that was changed they are asked for again. */
class GivenPagesTest {
  private Shop shop;
  private Marmot marmot;
  private String given;

  @BeforeEach
  void start(@TempDir Path folder) {
    shop = new Shop(folder);
    marmot = new Marmot(shop).prepared();
    given = "/corners/" + marmot.left + "/given";
  }

  @AfterEach
  void stop() {
    shop.close();
  }

  @Test
  void another_tyre_empties_the_box_of_its_radius_and_the_same_number_fills_it_again() {
    assertEquals("15 3/4", shop.get(given).form(given).value("tyre-squashed-radius"));
    marmot.adjust(marmot.left, "tyre", "33");
    Page asked = shop.get(given).is(200);
    assertEquals("", asked.form(given).value("tyre-squashed-radius"));
    // Set by its length, as its adjuster says.
    assertEquals("18 3/8", asked.form(given).value("new-strap-length"));
    assertEquals("15 5/16", asked.form(given).value("mark-to-lowest-frame"));
    assertTrue(asked.text().contains("Measure again: it was 15 3/4 before tyre to 33."));
    assertTrue(needs().contains("the new tyre's squashed radius"), needs());

    // The form sent as it stands gives nothing of the new tyre.
    marmot.send(given, Map.of("stop-crush", "1 5/8"));
    assertEquals("", shop.get(given).form(given).value("tyre-squashed-radius"));
    marmot.send(given, Map.of("tyre-squashed-radius", "15 3/4"));
    assertEquals("15 3/4", shop.get(given).form(given).value("tyre-squashed-radius"));
    assertFalse(needs().contains("squashed"), needs());
  }

  @Test
  void another_unit_of_the_car_makes_no_given_length_a_new_one() {
    marmot.send(given, Map.of("shock-open-unsure", "1/16"));
    marmot.send("/cars/" + marmot.car + "/details", Map.of("unit", "mm"));
    assertEquals("27 1/8 in", shop.get(given).form(given).value("shock-open"));
    int entries = shop.entries();
    marmot.send(given, Map.of());
    assertEquals(entries, shop.entries(), "nothing was changed, so nothing is written");
    marmot.send(given, Map.of("shock-open-unsure", "2"));
    assertEquals(entries + 1, shop.entries());
  }

  @Test
  void what_is_missing_leads_to_its_box_and_the_fold_around_it_stands_open() {
    marmot.adjust(marmot.left, "tyre", "33");
    String box = given + "?for=tyre-squashed-radius#f-tyre-squashed-radius";
    String check = shop.get("/corners/" + marmot.left + "/limits").html();
    assertTrue(check.contains("href=\"" + box + "\""), check);
    String fold = "<summary>Held back: stretch, impact, shock, ground";
    assertTrue(shop.get(given).html().contains("<details class=\"more\">" + fold));
    String stretch = shop.get(given + "?for=strap-stretch").is(200).html();
    assertTrue(stretch.contains("<details class=\"more\" open>" + fold), stretch);
    assertTrue(stretch.contains("id=\"f-strap-stretch\""), stretch);
  }

  @Test
  void what_was_saved_is_said_where_one_goes_on_and_there_alone() {
    String corner = "/corners/" + marmot.left;
    String said = "<p class=\"notice notice-book\" role=\"status\">Saved.</p>";
    Page saved = shop.get(given).form(given).with("stop-crush", "1 5/8").keep();
    assertTrue(shop.get(saved.location()).html().contains(said));
    assertEquals(saved.location(), shop.get(given).form(given).keep().location(), "nothing new");
    assertFalse(shop.get(corner).html().contains(said), "only to who saved it");
    String car = "/cars/" + marmot.car;
    Page vole = shop.get(car + "/details").form(car + "/details").with("name", "Vole").keep();
    assertTrue(shop.get(vole.location()).html().contains(said));
  }

  /** Common practice, no source: a part compressed is shorter than the same part extended. */
  @Test
  void what_cannot_be_is_asked_back_at_its_field_and_what_was_typed_stays() {
    int entries = shop.entries();
    Page shock =
        shop.get(given)
            .form(given)
            .with("shock-closed", "41 1/4")
            .with("shock-open", "33 1/2")
            .send()
            .is(422);
    assertTrue(
        shock.text().contains("41 1/4 in must be shorter than open, 33 1/2 in. Swapped?"),
        shock.text());
    assertEquals("41 1/4", shock.form(given).value("shock-closed"));
    assertEquals("33 1/2", shock.form(given).value("shock-open"));
    Page tyre =
        shop.get(given)
            .form(given)
            .with("tyre-loaded-radius", "16")
            .with("tyre-squashed-radius", "19")
            .send()
            .is(422);
    assertTrue(tyre.text().contains("19 in must be smaller than loaded, 16 in."), tyre.text());
    assertEquals(entries, shop.entries());
  }

  private String needs() {
    return shop.figures(marmot.left).at("/bump/needs").toString();
  }
}
