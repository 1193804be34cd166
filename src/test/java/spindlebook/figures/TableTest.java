package spindlebook.figures;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.LongNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Against RFC 4180, section 2, from memory. */
class TableTest {
  @Test
  void the_first_line_names_all_columns_and_what_a_row_lacks_is_empty() {
    Map<String, JsonNode> one = new LinkedHashMap<>();
    one.put("corner", TextNode.valueOf("left-front"));
    one.put("mm", DoubleNode.valueOf(-403.225));
    Map<String, JsonNode> other = new LinkedHashMap<>();
    other.put("corner", TextNode.valueOf("left-rear"));
    other.put("n", LongNode.valueOf(12));
    other.put("holds", BooleanNode.TRUE);
    other.put("mm", NullNode.instance);
    assertEquals(
        "corner,mm,n,holds\r\nleft-front,-403.225,,\r\nleft-rear,,12,true\r\n",
        new Table("readings", List.of(one, other)).csv());
  }

  @Test
  void a_quotation_mark_is_doubled_and_what_holds_commas_or_line_ends_is_quoted() {
    assertEquals("\"strap off, hanging\"", cell(TextNode.valueOf("strap off, hanging")));
    assertEquals("\"spacer 1\"\"\"", cell(TextNode.valueOf("spacer 1\"")));
    assertEquals("\"one\r\ntwo\"", cell(TextNode.valueOf("one\r\ntwo")));
    assertEquals("\" edge\"", cell(TextNode.valueOf(" edge")));
  }

  @ParameterizedTest
  @CsvSource({"203.20000000000005,203.2", "-1.0E-9,0", "1.0E7,10000000", "-0.0087266463,-0.008727"})
  void numbers_are_plain_decimals(double number, String cell) {
    assertEquals(cell, cell(DoubleNode.valueOf(number)));
  }

  @Test
  void a_time_is_one_that_a_spreadsheet_knows() {
    assertEquals("2026-08-30 19:02:00", cell(TextNode.valueOf("2026-08-30T19:02:00Z")));
    assertEquals("A to Z", cell(TextNode.valueOf("A to Z")));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "=1+1",
        "+cmd|' /C calc'!A0",
        "-4 5/8",
        "@SUM(A1)",
        "=HYPERLINK(\"http://x\",\"y\")",
        "\t=1",
        "\r=1",
        "\n=1",
        "＝1+1",
        "5/8",
        "1 1/4",
        "3-4",
        "10:30",
        "1.5.26"
      })
  void what_was_typed_is_no_formula_and_no_date(String typed) {
    String cell = cell(TextNode.valueOf(typed)).replaceFirst("^\"", "");
    assertEquals("'" + typed.charAt(0), cell.substring(0, 2));
  }

  @ParameterizedTest
  @ValueSource(strings = {"5/8 in", "12", "strap, 1/2", "2 turns", "−1° to 0°"})
  void words_stay_words(String typed) {
    assertEquals(typed, cell(TextNode.valueOf(typed)).replace("\"", ""));
  }

  private static String cell(JsonNode value) {
    String csv = new Table("t", List.of(Map.of("c", value))).csv();
    return csv.substring("c\r\n".length(), csv.length() - "\r\n".length());
  }
}
