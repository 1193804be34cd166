package spindlebook.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static spindlebook.fold.CarLines.CAR;
import static spindlebook.fold.CarLines.LF;
import static spindlebook.fold.CarLines.R1;
import static spindlebook.fold.CarLines.gap;
import static spindlebook.fold.CarLines.height;
import static spindlebook.fold.CarLines.line;
import static spindlebook.fold.CarLines.upper;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.fold.CarBook;
import spindlebook.fold.HandBooks;
import spindlebook.fold.Noted;

/** An entry told in words; millimetres by the international inch. */
class EntryWordsTest {
  private static final String H1 = height("h1", "on-the-strap", "8 1/4 in");
  private static final String G1 = gap("g1", "h1", "3/8 in");

  @Test
  void a_height_and_a_reading_say_where_what_and_how_much() {
    assertEquals(
        "left front · on the strap (full droop) · spindle 8 1/4 in · 209.6 mm"
            + " · mark 20 1/2 in · 520.7 mm",
        last(CAR, LF, R1, H1));
    assertEquals(
        "left front · on the strap (full droop) · straight · tie rod to arm · 3/8 in · 9.5 mm",
        last(CAR, LF, R1, H1, G1));
  }

  @Test
  void a_glyph_is_a_number_that_wants_its_unit() {
    assertEquals(
        "left front · ride height · spindle 8¼ in · 209.6 mm · no mark",
        last(CAR, LF, R1, typed("8¼")));
  }

  @Test
  void a_length_without_a_text_is_told_by_its_value() {
    assertEquals(
        "left front · ride height · spindle 8 1/4 in · 209.6 mm · no mark",
        last(CAR, LF, R1, typed("")));
  }

  @Test
  void what_was_added_later_has_its_name() {
    assertEquals(
        "left front · second strap to hole 2",
        last(
            CAR,
            LF,
            line(
                "{'key':'d','kind':'definition','body':{'corner':'lf','adjuster':{'adjuster':'s2',"
                    + "'name':'second strap','kind':'limit-strap','unit':'holes',"
                    + "'moreShortens':true}}}"),
            line(
                "{'key':'a','kind':'adjustment','body':{'corner':'lf','adjuster':'s2',"
                    + "'to':'hole 2'}}")));
  }

  @Test
  void what_is_retired_keeps_its_name() {
    String retired =
        line(
            "{'key':'d','kind':'definition','body':{'corner':'lf','retired':{'watchPoint':'tie'}}}");
    CarBook book = HandBooks.of(CAR, LF, R1, H1, G1, retired);
    assertEquals(
        "left front · on the strap (full droop) · straight · tie rod to arm · 3/8 in · 9.5 mm",
        new EntryWords(book).of(book.original("g1").orElseThrow()));
    assertEquals(
        "left front · retired tie rod to arm",
        new EntryWords(book).of(book.original("d").orElseThrow()));
  }

  @Test
  void a_correction_says_what_it_was() {
    assertEquals(
        "left front · upper ends to 2 turns: miscounted (was left front · upper ends to 1 turn)",
        last(
            CAR,
            LF,
            upper("a", "1 turn"),
            line(
                "{'key':'c','kind':'correction','body':{'target':'a','kind':'adjustment','body':{'corner':'lf','adjuster':'upper','to':'2"
                    + " turns'},'reason':'miscounted'}}")));
  }

  /** Only a book written by hand can hold them; its story is told all the same. */
  @Test
  void entries_that_name_themselves_or_each_other_come_to_an_end() {
    assertEquals("it is so: it is so: w", last(CAR, LF, answer("w", "w")));
    assertEquals(
        "it is so: it is so: it is so: w", last(CAR, LF, answer("w", "v"), answer("v", "w")));
    assertEquals("withdrawn: x (withdrawn: x (c))", last(CAR, LF, takenBack("c", "c")));
  }

  @Test
  void a_long_chain_is_told_no_deeper_than_four() {
    List<String> lines = new ArrayList<>(List.of(CAR, LF));
    for (int i = 1; i <= 60; i++) {
      lines.add(
          line(
              "{'key':'c"
                  + i
                  + "','kind':'correction','body':{'target':'c"
                  + (i - 1)
                  + "','kind':'answer','body':{'target':'c"
                  + (i - 1)
                  + "','itIsSo':true},'reason':''}}"));
    }
    CarBook book = HandBooks.of(lines);
    for (Noted entry : book.entries()) {
      assertEquals(true, new EntryWords(book).of(entry.content()).length() < 2_000, entry.key());
    }
  }

  private static String answer(String key, String target) {
    return line(
        "{'key':'" + key + "','kind':'answer','body':{'target':'" + target + "','itIsSo':true}}");
  }

  private static String takenBack(String key, String target) {
    return line(
        "{'key':'"
            + key
            + "','kind':'correction','body':{'target':'"
            + target
            + "','reason':'x'}}");
  }

  private static String typed(String text) {
    return line(
        "{'key':'h1','kind':'height','body':{'round':'r1','name':'ride','spindle':{'typed':'"
            + text
            + "','mm':209.55,'unit':'inch','rule':'tape-1'}}}");
  }

  private static String last(String... lines) {
    CarBook book = HandBooks.of(lines);
    return new EntryWords(book).of(book.entries().get(lines.length - 1).content());
  }
}
