package spindlebook.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class TextWidthTest {
  @Test
  void short_words_stay_on_one_line() {
    assertEquals(List.of("tie rod"), TextWidth.wrap("tie rod", 14, false, 120, 2));
  }

  @Test
  void lines_break_at_spaces_and_lose_no_word() {
    List<String> lines = TextWidth.wrap("Tie rod to upper arm, full right", 14, false, 120, 5);
    assertTrue(lines.size() > 1);
    assertEquals("Tie rod to upper arm, full right", String.join(" ", lines));
  }

  @Test
  void every_line_fits_even_one_endless_word() {
    for (String line : TextWidth.wrap("W".repeat(200) + " 🏁".repeat(40), 14, true, 120, 3)) {
      assertTrue(TextWidth.of(line, 14, true) <= 120, line);
    }
  }

  @Test
  void what_does_not_fit_ends_in_an_ellipsis() {
    List<String> lines = TextWidth.wrap("one two three four five six seven", 14, false, 50, 2);
    assertEquals(2, lines.size());
    assertTrue(lines.get(1).endsWith("…"));
  }

  @Test
  void no_words_make_no_lines() {
    assertEquals(List.of(), TextWidth.wrap("", 14, false, 50, 2));
  }
}
