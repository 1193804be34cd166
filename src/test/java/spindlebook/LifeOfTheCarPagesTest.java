package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Drives, things to do and fasteners through their pages. */
class LifeOfTheCarPagesTest {
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

  @Test
  void a_drive_goes_into_the_use_log_and_the_sum_is_told() {
    String use = "/cars/" + marmot.car + "/use";
    Form form = shop.get(use).is(200).form(use).with("amount", "4 1/2").with("words", "dunes");
    form.keep();
    form.keep();
    shop.get(use).form(use).with("amount", "2,25").keep();
    shop.get(use).form(use).with("amount", "30").with("unit", "miles").keep();
    String log = shop.get(use).is(200).text();
    assertTrue(log.contains("driven, 4 1/2 hours: dunes"), log);
    assertTrue(log.contains("In all 6.75 hours, 30 miles."), log);
    shop.reopen();
    assertEquals(log, shop.get(use).text(), "a rebuilt page says the same");
    String book = shop.get("/cars/" + marmot.car + "/book?kind=use").text();
    assertTrue(book.contains("the whole car · driven, 30 miles"), book);
  }

  @Test
  void a_drive_of_no_number_comes_back_as_typed_with_one_sentence() {
    String use = "/cars/" + marmot.car + "/use";
    int entries = shop.entries();
    for (String bad : new String[] {"", "a while", "-3", "0", "1e5", "4 ft", "81/4", "999999"}) {
      Page page = shop.get(use).form(use).with("amount", bad).with("words", "x").send().is(422);
      assertEquals(bad, page.form(use).value("amount"));
      assertEquals("x", page.form(use).value("words"));
      assertEquals(1, BadInputTest.problems(page).size(), page.text());
    }
    assertEquals(entries, shop.entries());
  }

  @Test
  void a_drive_can_be_taken_back() {
    String use = "/cars/" + marmot.car + "/use";
    Form form = shop.get(use).form(use).with("amount", "4");
    form.keep();
    String back = "/entries/" + form.key() + "/take-back";
    shop.get("/entries/" + form.key()).is(200).form(back).with("reason", "40").keep();
    assertFalse(shop.get(use).text().contains("So far"));
  }

  @Test
  void a_thing_to_do_is_done_with_a_tap_and_undone_with_another() {
    String list = "/cars/" + marmot.car + "/to-do";
    Form form =
        shop.get(list + "?corner=" + marmot.left)
            .is(200)
            .form(list)
            .with("words", "grind tab")
            .with("point", "tyre-frame");
    assertEquals(marmot.left, form.value("where"));
    form.keep();
    String done = "/to-do/" + form.key() + "/done";
    Page open = shop.get(list).is(200);
    assertTrue(open.text().contains("grind tab left front · tyre to frame · since"), open.text());
    open.form(done).with("done", "true").keep();
    Page after = shop.get(list).is(200);
    assertTrue(after.text().contains("Nothing is to do."), after.text());
    assertTrue(after.text().contains("· done 4 May 2031 · Sam"), after.text());
    after.form(done).with("done", "false").keep();
    assertFalse(shop.get(list).text().contains("Nothing is to do."));
    String book = shop.get("/cars/" + marmot.car + "/book?kind=to-do").text();
    assertTrue(book.contains("to do again: grind tab"), book);
    assertTrue(
        shop.get("/cars/" + marmot.car + "/book?corner=" + marmot.left)
            .text()
            .contains("done: grind tab"),
        "it belongs to its corner");
  }

  @Test
  void nothing_to_do_and_a_watch_point_without_its_corner_are_said_in_one_sentence() {
    String list = "/cars/" + marmot.car + "/to-do";
    Form form = shop.get(list).form(list);
    assertEquals(1, BadInputTest.problems(form.send().is(422)).size());
    Page page = form.with("words", "grind").with("point", "tyre-frame").send().is(422);
    assertEquals(1, BadInputTest.problems(page).size(), page.text());
    assertEquals("tyre-frame", page.form(list).value("point"));
    assertEquals(404, shop.browser.post("/to-do/none/done", "done=true").status());
    assertEquals(404, shop.browser.post("/to-do/" + marmot.left + "/done", "done=true").status());
  }

  @Test
  void a_change_opens_its_fastener_and_a_tap_closes_it() {
    String corner = "/corners/" + marmot.left + "/fasteners";
    String upper = corner + "/upper-rod-ends";
    assertTrue(shop.get(corner).is(200).text().contains("None open."));
    marmot.adjust(marmot.left, "upper-rod-ends", "3");
    String car = "/cars/" + marmot.car + "/fasteners";
    Page open = shop.get(car).is(200);
    assertTrue(
        open.text().contains("Upper rod ends: jam nuts touched, not said to be tight"),
        open.text());
    Page back = open.form(upper).with("how", "marked").keep();
    assertEquals(car, back.location());
    assertFalse(shop.get(corner).text().contains("touched, not said"));
    assertTrue(shop.get(corner).text().contains("tight and marked, 4 May 2031 · Sam"));
  }

  @Test
  void a_torque_figure_is_kept_as_typed_and_can_be_taken_away() {
    String upper = "/corners/" + marmot.left + "/fasteners/upper-rod-ends";
    assertEquals(422, shop.get(upper).is(200).form(upper).send().status());
    shop.get(upper).form(upper).with("torque", " 65 ft-lb, dry").keep();
    String list = shop.get("/corners/" + marmot.left + "/fasteners").text();
    assertTrue(list.contains("nobody has said · torque 65 ft-lb, dry"), list);
    Form again = shop.get(upper).form(upper);
    assertEquals("65 ft-lb, dry", again.value("torque"));
    again.with("torque", "").with("how", "not-marked").keep();
    list = shop.get("/corners/" + marmot.left + "/fasteners").text();
    assertFalse(list.contains("65 ft-lb"), list);
    assertTrue(list.contains("tight, not marked"), list);
    shop.get("/corners/" + marmot.left + "/fasteners/tyre").is(404);
    shop.get("/corners/" + marmot.left + "/fasteners/none").is(404);
  }
}
