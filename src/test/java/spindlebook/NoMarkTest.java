package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The next height that is offered, and a height without a mark. */
class NoMarkTest {
  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;
  private String round;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop);
    round = marmot.startRound(marmot.left, Map.of());
  }

  @AfterEach
  void close() {
    shop.close();
  }

  @Test
  void a_height_without_a_mark_is_asked_about_once_and_then_kept_without() {
    int entries = shop.entries();
    Form form = marmot.heightForm(round, "on-the-strap", "15 3/16");
    Page asked = form.send().is(422);
    assertTrue(asked.text().contains("No mark: its position will not be known"), asked.text());
    assertTrue(asked.html().contains("name=\"noMark\" value=\"keep\""));
    assertTrue(asked.html().contains("name=\"noMark\" value=\"read\""));
    assertEquals(entries, shop.entries());
    Form again = asked.form(form.action());
    assertEquals("15 3/16", again.value("spindle"));
    assertEquals(form.key(), again.key());
    Page typing = again.with("noMark", "read").send().is(422);
    assertTrue(typing.text().contains("Type the frame mark's height"), typing.text());
    typing.form(form.action()).with("noMark", "keep").keep();
    assertEquals(entries + 1, shop.entries());
    assertFalse(shop.figures(marmot.left).at("/heights/0").has("positionMm"));
  }

  @Test
  void a_round_is_walked_on_where_a_gap_was_read_at_a_height_without_a_mark() {
    Form form = marmot.heightForm(round, "strap-off", "14 3/16");
    Form kept = form.send().is(422).form(form.action()).with("noMark", "keep");
    String off = kept.key();
    kept.keep();
    marmot.read(off, "straight", Marmot.SHOCK_ARM, "well clear");
    marmot.read(off, "straight", Marmot.UPPER_ROD_END, "1/2");
    marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    for (String page : List.of("/guide", "/sheet", "/news?since=0", "", "/paper")) {
      shop.get("/rounds/" + round + page).is(200);
    }
    shop.get("/heights/" + off).is(200);
  }

  @Test
  void a_mark_typed_after_the_question_is_the_answer() {
    Form form = marmot.heightForm(round, "on-the-strap", "15 3/16");
    form.send().is(422).form(form.action()).with("mark", "31 5/8").keep();
    assertTrue(shop.figures(marmot.left).at("/heights/0").has("positionMm"));
  }

  @Test
  void ride_height_is_not_offered_while_the_spring_is_out() {
    String page = "/rounds/" + round;
    assertTrue(shop.get(page).text().endsWith(next("strap off, hanging")), shop.get(page).text());
    marmot.height(round, "strap-off", "14 3/16", "31 5/8");
    assertTrue(
        shop.get(page).text().endsWith(next("on the strap (full droop)")), shop.get(page).text());
    String strap = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    assertTrue(shop.get(page).text().contains("Next: in between"));
    marmot.heightAsAt(round, "in-between", "18 7/8", strap);
    assertTrue(shop.get(page).text().contains("Next: in between"));
    marmot.heightAsAt(round, "in-between", "22 3/16", strap);
    assertTrue(shop.get(page).text().contains("Next: bump stop touches"));
    Form form = shop.get(page + "/heights/new").is(200).form(page + "/heights");
    assertEquals("stop-touch", form.value("name"));
  }

  private static String next(String height) {
    return "Next: " + height + " " + spindlebook.page.Cautions.MEASURING;
  }
}
