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

/** A round on paper, blank, in the order of the screen. */
class PaperTest {
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
    assertEquals(List.of(), shop.told);
    shop.close();
  }

  @Test
  void a_corner_that_was_never_measured_has_a_blank_sheet_of_its_usual_round() {
    Page corner = shop.get("/corners/" + marmot.left);
    String address = "/corners/" + marmot.left + "/paper";
    assertTrue(corner.html().contains("href=\"" + address + "\""), "the corner leads to it");
    int entries = shop.entries();
    Page paper = shop.get(address).is(200);
    assertEquals(entries, shop.entries(), "looking at it writes nothing");
    assertEquals(
        List.of(
            "Zero first",
            "Strap off, hanging",
            "On the strap (full droop)",
            "In between",
            "In between",
            "Bump stop touches",
            "Full bump, stop solid",
            "Stop out, past solid",
            "Another height:"),
        paper.each("h2"));
    assertFalse(paper.html().contains("×"), "nothing is ticked");
    assertTrue(paper.text().contains("The floor is level where the wheel and the frame mark"));
    assertTrue(paper.text().contains("Tie rod to upper arm keep at least 1/4 in"), paper.text());
    List<String> captions = paper.each("caption");
    assertEquals(
        List.of("Straight", "Full left", "Full right"), captions.subList(0, 3), "as on screen");
    assertEquals(24, captions.size());
  }

  @Test
  void a_round_in_the_book_says_its_conditions_and_what_was_read_last() {
    marmot.prepared().measured();
    String round =
        marmot.startRound(
            marmot.left, Map.of("bumpStop", "out", "zeroed-floor", "1", "pressure", "18 psi"));
    Page page = shop.get("/rounds/" + round);
    assertTrue(page.html().contains("href=\"/rounds/" + round + "/paper\""));
    Page paper = shop.get("/rounds/" + round + "/paper").is(200);
    assertTrue(paper.text().contains("Bump stop in × ticked out"), paper.text());
    assertTrue(paper.text().contains("× ticked The floor is level"), paper.text());
    assertTrue(paper.text().contains("18 psi"), paper.text());
    assertEquals(2, paper.each("h2").stream().filter("In between"::equals).count());
    assertTrue(paper.each("h2").contains("Stop out, past solid"), paper.text());
    assertFalse(paper.each("h2").contains("Bump stop touches"), "there is no stop to touch");
    assertTrue(paper.text().contains("last 15 3/16"), paper.text());
    assertTrue(paper.text().contains("keep at least 1/4 in last 5/16 in"), paper.text());
  }

  @Test
  void a_round_that_set_out_to_read_little_prints_little() {
    String action = "/corners/" + marmot.left + "/rounds";
    Form form =
        shop.get(action + "/new?need=stop-touch~full-left~watch-point~tie-rod-upper-arm")
            .form(action);
    form.keep();
    Page paper = shop.get("/rounds/" + form.key() + "/paper").is(200);
    assertEquals(List.of("Zero first", "Bump stop touches"), paper.each("h2"));
    assertEquals(List.of("Full left"), paper.each("caption"));
  }

  @Test
  void what_is_no_round_and_no_corner_has_no_sheet() {
    shop.get("/rounds/none/paper").is(404);
    shop.get("/corners/none/paper").is(404);
    String round = marmot.startRound(marmot.left, Map.of());
    shop.get("/corners/" + round + "/paper").is(404);
    shop.get("/rounds/" + marmot.left + "/paper").is(404);
  }
}
