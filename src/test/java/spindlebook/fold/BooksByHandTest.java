package spindlebook.fold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Each small book beside its expectation: what every height and every reading of a corner is worth,
 * as of some entry. Worked out by hand from design.md §3, not by the program.
 */
class BooksByHandTest {

  static List<String> books() {
    return HandBooks.names().stream()
        .filter(n -> Files.exists(HandBooks.folder().resolve(n + ".expect")))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("books")
  void every_height_and_reading_is_worth_what_its_book_says(String name) throws IOException {
    CarBook book = HandBooks.named(name);
    Map<String, List<String>> expected = new LinkedHashMap<>();
    long asOf = book.n();
    String corner = null;
    for (String line : Files.readAllLines(HandBooks.folder().resolve(name + ".expect"))) {
      if (line.startsWith("asof ")) {
        asOf = Long.parseLong(line.substring(5));
      } else if (line.startsWith("corner ")) {
        corner = asOf + " " + line.substring(7);
        expected.put(corner, new ArrayList<>());
      } else if (!line.startsWith("#") && !line.isBlank()) {
        expected.get(corner).add(line);
      }
    }
    assertTrue(!expected.isEmpty(), name + " expects nothing");

    expected.forEach(
        (where, lines) -> {
          String[] at = where.split(" ");
          Card card = book.asOf(Long.parseLong(at[0])).card(at[1]);
          assertEquals(
              String.join("\n", lines.stream().sorted().toList()),
              String.join("\n", worth(card, lines)),
              name + " as of " + where);
        });
  }

  @Test
  void what_was_read_past_a_stop_is_read_again_within_half_an_inch_of_it() {
    List<String> lines =
        List.of(
            CarLines.CAR,
            CarLines.LF,
            CarLines.R1,
            CarLines.height("h1", "stop-out", "26 in"),
            CarLines.gap("g1", "h1", "3/8 in"),
            CarLines.upper("a1", "1 turn"));
    assertEquals(1, HandBooks.of(lines).card("lf").toReadAgain().size());
    List<String> again = new ArrayList<>(lines);
    again.add(CarLines.height("h2", "stop-out", "26 1/4 in"));
    again.add(CarLines.gap("g2", "h2", "1/4 in"));
    assertEquals(List.of(), HandBooks.of(again).card("lf").toReadAgain());
  }

  @Test
  void what_is_to_be_read_again_leaves_out_what_holds_from_another_reading() {
    assertEquals(List.of("IN_BETWEEN FULL_LEFT"), again(HandBooks.named("in-between")));
    CarBook late = HandBooks.named("late-phone");
    assertEquals(List.of("ON_THE_STRAP STRAIGHT", "ON_THE_STRAP STRAIGHT"), again(late.asOf(8)));
    assertEquals(List.of(), again(late));
    assertEquals(List.of(), again(HandBooks.named("late-phone-after")));
  }

  private static List<String> again(CarBook book) {
    return book.card("lf").toReadAgain().stream().map(r -> r.name() + " " + r.steering()).toList();
  }

  /** As the expectation writes it, with wheel positions only where it asks for them. */
  private static List<String> worth(Card card, List<String> asked) {
    List<String> worth = new ArrayList<>();
    for (SeenHeight h : card.heights()) {
      boolean position =
          asked.stream().anyMatch(l -> l.startsWith(h.key() + " ") && l.endsWith("mm"));
      worth.add(
          h.key()
              + " "
              + word(h.stands())
              + ", place "
              + word(h.stop())
              + (position ? ", " + mm(h.positionMm().value()) : ""));
    }
    for (SeenReading r : card.readings()) {
      boolean position =
          asked.stream().anyMatch(l -> l.startsWith(r.key() + " ") && l.endsWith("mm"));
      worth.add(
          r.key()
              + " "
              + word(r.stands())
              + (position ? ", at " + mm(r.height().positionMm().value()) : ""));
    }
    return worth.stream().sorted().toList();
  }

  private static String word(Standing standing) {
    return standing.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private static String mm(double mm) {
    return (Math.round(mm * 100) / 100.0 + " mm").replace(".0 mm", " mm");
  }
}
