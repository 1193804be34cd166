package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
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
            "1 Strap off",
            "2 On the strap",
            "3 In between",
            "4 In between",
            "5 Bump stop touches",
            "6 Full bump",
            "7 Stop out",
            "8 Another"),
        columns(paper));
    assertFalse(paper.html().contains("×"), "nothing is ticked");
    assertTrue(paper.text().contains("The floor is level where the wheel and the frame mark"));
    assertTrue(paper.text().contains("Tie rod to upper arm keep at least 1/4 in"), paper.text());
    assertEquals(
        List.of("Above the floor", "Straight", "Full left", "Full right"),
        groups(paper),
        "as on screen");
    assertTrue(
        paper.text().contains("7 Stop out, past solid : jack on, 1/2 in past"), paper.text());
    assertTrue(paper.text().contains("First: Take the bump stop out now."), paper.text());
  }

  private static List<String> columns(Page paper) {
    return paper.each("th").stream().filter(h -> h.matches("\\d.*")).toList();
  }

  private static List<String> groups(Page paper) {
    List<String> all = List.of("Above the floor", "Straight", "Full left", "Full right");
    return paper.each("th").stream().filter(all::contains).toList();
  }

  /** How a row's boxes stand, from the first height on: asked or shaded, and as read last. */
  private static List<String> boxes(Page paper, int group, String row) {
    String body = paper.html().split("<tbody>")[group];
    String from = body.substring(body.indexOf(row));
    return Pattern.compile("<td( class=\"blank-off\")?>(?:<small>([^<]*)</small>)?</td>")
        .matcher(from.substring(0, from.indexOf("</tr>")))
        .results()
        .map(
            m ->
                (m.group(1) == null ? "asked" : "shaded")
                    + (m.group(2) == null ? "" : " " + m.group(2)))
        .toList();
  }

  @Test
  void only_what_the_jack_plan_asks_is_open_and_is_typed_back_in_the_same_order() {
    Page paper = shop.get("/corners/" + marmot.left + "/paper").is(200);
    String gap = "shaded";
    String open = "asked";
    assertEquals(
        List.of(open, open, open, gap, gap, gap, gap, open),
        boxes(paper, 3, "Tie rod to upper arm"),
        "at a lock, and of another height all");
    assertEquals(
        List.of(gap, gap, gap, gap, gap, gap, gap, open),
        boxes(paper, 2, "Spindle parts to the wheel"),
        "never tight: seen in the one look");
    assertEquals(
        List.of(open, gap, open, open, gap, gap, open, open),
        boxes(paper, 5, "All others well clear"));

    String round = marmot.startRound(marmot.left, Map.of());
    String typed = shop.get("/rounds/" + round + "/sheet").is(200).html();
    String block = typed.split("<details class=\"more paper-height\"")[1];
    List<String> boxes =
        Pattern.compile("<label for=\"f-h0-[^\"]*\">([^<]*)</label>")
            .matcher(block)
            .results()
            .map(m -> m.group(1).replace(" above the floor", ""))
            .map(label -> Character.toUpperCase(label.charAt(0)) + label.substring(1))
            .toList();
    List<String> rows =
        Pattern.compile("<th scope=\"row\">([^<]*)")
            .matcher(shop.get("/rounds/" + round + "/paper").html())
            .results()
            .map(m -> m.group(1))
            .toList();
    // A length nobody asked for at a lock has a box to type it, and no row to print.
    assertEquals(boxes.stream().distinct().toList(), rows.stream().distinct().limit(17).toList());
    assertEquals(rows.get(rows.size() - 1), "All others well clear");
    assertTrue(block.contains("All others well clear"), block);
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
    assertEquals(
        List.of(
            "1 Strap off",
            "2 On the strap",
            "3 In between",
            "4 In between",
            "5 Stop out",
            "6 Another"),
        columns(paper),
        "there is no stop to touch");
    assertEquals("asked 15 3/16", boxes(paper, 1, "Spindle").get(1));
    assertTrue(boxes(paper, 3, "Tie rod to upper arm").get(1).endsWith(" 9/16 in"), paper.text());
  }

  @Test
  void a_round_that_set_out_to_read_little_prints_little() {
    String action = "/corners/" + marmot.left + "/rounds";
    Form form =
        shop.get(action + "/new?need=stop-touch~full-left~watch-point~tie-rod-upper-arm")
            .form(action);
    form.keep();
    Page paper = shop.get("/rounds/" + form.key() + "/paper").is(200);
    assertEquals(List.of("1 Bump stop touches"), columns(paper));
    assertEquals(List.of("Above the floor", "Full left"), groups(paper));
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
