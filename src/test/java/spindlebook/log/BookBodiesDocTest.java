package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import spindlebook.definition.Defined;
import spindlebook.entry.AlignmentWay;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.HandBooks;
import spindlebook.fold.Standing;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.Cure;
import spindlebook.travel.EndFindings;
import spindlebook.uncertainty.Outcome;

/** docs/book-bodies.md says what is so. */
class BookBodiesDocTest {
  private static final Path DOC = Path.of("docs", "book-bodies.md");

  @Test
  void every_kind_has_a_table_of_exactly_its_fields() throws IOException {
    Map<String, Set<String>> told = new LinkedHashMap<>();
    String kind = null;
    for (String line : Files.readAllLines(DOC)) {
      if (line.startsWith("## ")) {
        kind = line.substring(3);
      } else if (line.startsWith("| `")) {
        Matcher field = Pattern.compile("`(\\w+)`").matcher(line.split("\\|")[1]);
        while (field.find()) {
          told.computeIfAbsent(kind, k -> new TreeSet<>()).add(field.group(1));
        }
      }
    }
    Map<String, Set<String>> read = new LinkedHashMap<>();
    for (Class<?> type : Content.class.getPermittedSubclasses()) {
      if (type != Content.Kept.class) {
        Set<String> fields = new TreeSet<>();
        Arrays.stream(type.getRecordComponents())
            .map(RecordComponent::getName)
            .forEach(fields::add);
        read.put(kind(type), fields);
      }
    }
    read.get("correction").add("kind");
    // One of them stands in the file, under its own name.
    read.get("alignment").remove("way");
    read.get("alignment").addAll(AlignmentWay.NAMES.keySet());
    read.get("definition").remove("what");
    read.get("definition").addAll(Defined.NAMES.keySet());
    assertEquals(read, told);
  }

  /** {@code ToDo} is written {@code to-do}. */
  private static String kind(Class<?> type) {
    return type.getSimpleName().replaceAll("(?<=[a-z])(?=[A-Z])", "-").toLowerCase(Locale.ROOT);
  }

  @Test
  void the_book_written_by_hand_reads_and_says_what_stands_below_it() throws IOException {
    String doc = Files.readString(DOC);
    int from = doc.indexOf("```json\n") + 8;
    List<String> lines = doc.substring(from, doc.indexOf("```", from)).lines().toList();
    CarBook book = HandBooks.of(lines);

    EndFindings droop = CornerTravel.of(book.asOf(book.n() - 1).card("lf")).droop();
    assertEquals(-10 * 25.4, droop.stop().orElseThrow().positionMm().value(), 1e-9);
    assertEquals(25.4, droop.heldBack().orElseThrow().mm().value(), 1e-9);
    assertEquals(-3 * 25.4, droop.marginMm().orElseThrow().value(), 1e-9);
    assertEquals(Outcome.SHORT, droop.outcome());
    Cure cure = droop.cure().orElseThrow();
    // 3 in at the wheel and the margin's ±, at a ratio of 1/2.
    double expandedMm = droop.marginMm().orElseThrow().U();
    assertEquals((3 * 25.4 + expandedMm) / 2, cure.wantedMm(), 1e-9);
    assertEquals("hole 5", cure.to().inWords());

    Card after = book.card("lf");
    assertEquals(Standing.STALE, after.height("strap").orElseThrow().stop());
    assertEquals(Standing.LIVE, after.reading("tight").orElseThrow().stands());
    assertTrue(CornerTravel.of(after).droop().stop().isEmpty());
  }
}
