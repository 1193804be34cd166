package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A whole round typed on one page from paper. */
class SheetTest {
  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;
  private String action;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop);
    action = "/rounds/" + marmot.startRound(marmot.left, Map.of()) + "/sheet";
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private Form paper() {
    return shop.get(action)
        .is(200)
        .form(action)
        .with("h0-name", "strap-off")
        .with("h0-spindle", "11 7/8")
        .with("h0-mark", "31 5/8")
        .with("h0-full-right-" + Marmot.TIE_ROD, "touches")
        .with("h0-straight-" + Marmot.STRAP, "20")
        .with("h1-name", "on-the-strap")
        .with("h1-spindle", "15 3/16")
        .with("h1-mark", "same")
        .with("h1-full-left-" + Marmot.TIE_ROD, "9/16")
        .with("h1-straight-" + Marmot.STRAP, "18 11/16");
  }

  @Test
  void a_whole_round_goes_into_the_book_at_once() {
    int entries = shop.entries();
    Form paper = paper();
    Page round = shop.browser.follow(paper.keep()).is(200);
    assertTrue(round.text().contains("Saved."), round.text());
    assertEquals(entries + 6, shop.entries());
    JsonNode corner = shop.figures(marmot.left);
    assertEquals("strap-off", corner.at("/heights/0/name").asText());
    assertEquals("on-the-strap", corner.at("/heights/1/name").asText());
    double apart = (15 + 3 / 16.0 - (11 + 7 / 8.0)) * 25.4;
    assertEquals(apart, corner.at("/rawMm/value").asDouble(), 1e-9, "one mark for both");
    assertEquals("touches", corner.at("/readings/1/result").asText());
    paper.keep();
    assertEquals(entries + 6, shop.entries(), "pressed twice");
  }

  @Test
  void what_cannot_be_read_comes_back_as_typed_and_the_rest_is_in_the_book_once() {
    int entries = shop.entries();
    Page page =
        paper()
            .with("h1-full-left-" + Marmot.TIE_ROD, "9/61")
            .with("h1-straight-" + Marmot.SHOCK, "25 5/8 or so")
            .with("h2-spindle", "18 7/8")
            .with("h2-mark", "nearly the same")
            .with("h2-straight-" + Marmot.STRAP, "17 1/8")
            .send()
            .is(422);
    assertEquals(entries + 5, shop.entries(), "two heights, and three readings");
    assertEquals(3, BadInputTest.problems(page).size(), page.text());
    Form again = page.form(action);
    assertEquals("9/61", again.value("h1-full-left-" + Marmot.TIE_ROD));
    assertEquals("25 5/8 or so", again.value("h1-straight-" + Marmot.SHOCK));
    assertEquals("nearly the same", again.value("h2-mark"));
    assertEquals("18 7/8", again.value("h2-spindle"));
    assertEquals("17 1/8", again.value("h2-straight-" + Marmot.STRAP));
    assertFalse(again.values().containsKey("h0-spindle"), "what is in the book is not asked again");

    again
        .with("h1-full-left-" + Marmot.TIE_ROD, "9/16")
        .with("h1-straight-" + Marmot.SHOCK, "25 5/8")
        .with("h2-mark", "same")
        .keep();
    assertEquals(entries + 9, shop.entries());
    JsonNode corner = shop.figures(marmot.left);
    assertEquals(3, corner.get("heights").size());
    assertEquals(6, corner.get("readings").size());
    assertEquals(
        (18 + 7 / 8.0 - (31 + 5 / 8.0)) * 25.4,
        corner.at("/heights/2/positionMm/value").asDouble(),
        1e-9);
  }

  @Test
  void a_mark_is_not_taken_from_a_height_that_is_not_in_the_book() {
    Page page = paper().with("h0-spindle", "eleven or so").send().is(422);
    assertEquals(2, BadInputTest.problems(page).size(), page.text());
    assertEquals("same", page.form(action).value("h1-mark"));
    assertEquals(0, shop.figures(marmot.left).get("heights").size());
    page.form(action).with("h0-spindle", "11 7/8").keep();
    JsonNode corner = shop.figures(marmot.left);
    assertEquals(2, corner.get("heights").size());
    for (JsonNode height : corner.get("heights")) {
      assertTrue(height.has("positionMm"), height.toString());
    }
  }

  @Test
  void the_mark_of_the_last_height_filled_in_is_taken_over_an_empty_one() {
    paper().with("h3-spindle", "20 3/4").with("h3-mark", "Same").keep();
    for (JsonNode height : shop.figures(marmot.left).get("heights")) {
      assertTrue(height.has("positionMm"), height.toString());
    }
  }

  @Test
  void all_others_well_clear_is_one_tick_a_height_and_counts_for_what_was_left_empty() {
    paper().with("h0-others", "1").keep();
    List<String> clear = new ArrayList<>();
    for (JsonNode reading : shop.figures(marmot.left).get("readings")) {
      if (reading.path("result").asText().equals("well-clear")) {
        assertEquals("strap off, hanging", reading.get("heightWords").asText());
        clear.add(reading.get("steering").asText() + " " + reading.get("what").asText());
      }
    }
    // Eight gaps straight ahead and seven that steering moves at each lock, less the one typed.
    assertEquals(8 + 7 + 7 - 1, clear.stream().distinct().count(), clear.toString());
    assertEquals(8 + 7 + 7 - 1, clear.size(), clear.toString());
    assertFalse(clear.contains("full-right tie rod to upper arm"), "it touches there");
  }

  @Test
  void readings_without_their_height_are_asked_for_it() {
    int entries = shop.entries();
    Page page =
        shop.get(action).form(action).with("h0-straight-" + Marmot.STRAP, "20").send().is(422);
    assertEquals(entries, shop.entries());
    assertTrue(page.text().contains("1 height has no spindle yet"), page.text());
    assertFalse(page.text().contains("could not be read"), page.text());
    assertEquals("20", page.form(action).value("h0-straight-" + Marmot.STRAP));
    assertEquals(List.of(), shop.told);
  }

  @Test
  void a_height_taken_back_meanwhile_is_said_not_broken_on() {
    Form paper = paper();
    paper.keep();
    String height = shop.figures(marmot.left).at("/heights/0/key").asText();
    shop.get("/entries/" + height).form("/entries/" + height + "/take-back").keep();
    Page page = paper.send().is(422);
    assertTrue(page.text().contains("withdrawn"), page.text());
  }

  @Test
  void same_in_the_first_block_reaches_a_mark_read_in_the_round_before() {
    String round = action.split("/")[2];
    Form first = shop.get(action).form(action).with("h0-spindle", "15 3/16");
    Page page = first.with("h0-mark", "same").send().is(422);
    assertTrue(page.text().contains("There is no height before this one"), page.text());

    String strap = marmot.height(round, "strap-off", "11 7/8", "31 5/8");
    marmot.heightAsAt(round, "on-the-strap", "15 3/16", strap);
    Form paper = shop.get(action).form(action);
    assertEquals("in-between", paper.value("h0-name"), "the round has its strap already");
    paper.with("h0-spindle", "18 7/8").with("h0-mark", "same").keep();
    assertEquals(
        (18 + 7 / 8.0 - (31 + 5 / 8.0)) * 25.4,
        shop.figures(marmot.left).at("/heights/2/positionMm/value").asDouble(),
        1e-9);
  }

  @Test
  void a_round_that_lacks_nothing_has_room_for_two_heights_besides() {
    String round = action.split("/")[2];
    marmot.height(round, "strap-off", "11 7/8", "31 5/8");
    marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    for (String at : List.of("18", "20")) {
      marmot.height(round, "in-between", at, "31 5/8");
    }
    marmot.height(round, "stop-touch", "25", "31 5/8");
    marmot.height(round, "full-bump", "27", "31 5/8");
    assertEquals("stop-out", shop.get(action).form(action).value("h0-name"));
    assertEquals("in-between", shop.get(action).form(action).value("h7-name"));
    marmot.height(round, "stop-out", "28", "31 5/8");
    Form paper = shop.get(action).form(action);
    assertEquals("in-between", paper.value("h1-name"));
    assertEquals("", paper.value("h2-name"));
  }

  @Test
  void only_the_first_block_not_in_the_book_is_open_and_the_others_say_what_is_in_them() {
    assertEquals(List.of(0), openBlocks(shop.get(action)));
    Page page =
        paper()
            .with("h3-spindle", "20 3/4")
            .with("h3-mark", "nearly the same")
            .with("h3-straight-" + Marmot.STRAP, "17 1/8")
            .send()
            .is(422);
    assertEquals(List.of(2, 3), openBlocks(page), "the next one, and the one with a problem");
    assertTrue(page.text().contains("Height 1 · strap off, hanging in the book, 2 readings"));
    assertTrue(page.text().contains("Height 3 · in between empty"), page.text());
    assertTrue(page.text().contains("1 reading typed"), page.text());
  }

  private static List<Integer> openBlocks(Page page) {
    List<String> blocks =
        Pattern.compile("<details class=\"more paper-height\"( open)?>")
            .matcher(page.html())
            .results()
            .map(m -> m.group())
            .toList();
    assertEquals(8, blocks.size());
    return IntStream.range(0, 8).filter(i -> blocks.get(i).contains(" open")).boxed().toList();
  }
}
