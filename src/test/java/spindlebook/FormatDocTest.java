package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.figures.Figures;

/** docs/book-format.md: its worked example by hand, and the names of what `figures` prints. */
class FormatDocTest {
  private static final Path DOC = Path.of("docs", "book-format.md");
  private static final double INCH = 25.4;

  private final List<String> told = new ArrayList<>();

  private JsonNode figures(Path book) throws Exception {
    return new ObjectMapper().readTree(Figures.of(book, told::add));
  }

  private static String section(String heading) throws Exception {
    String doc = Files.readString(DOC);
    int from = doc.indexOf(heading);
    int to = doc.indexOf("\n## ", from + 1);
    return doc.substring(from, to);
  }

  @Test
  void the_worked_example_gives_what_a_hand_works_out(@TempDir Path folder) throws Exception {
    String example = section("### A worked example");
    int from = example.indexOf("```json\n") + 8;
    String lines = example.substring(from, example.indexOf("```", from));
    assertEquals(12, lines.lines().count());
    assertFalse(lines.contains("\"n\"") || lines.contains("\"prev\""));
    JsonNode all = figures(Files.writeString(folder.resolve("mule.jsonl"), lines));
    assertFalse(all.get("sealed").asBoolean());
    assertTrue(told.get(0).contains("unsealed"), told.toString());

    // Tape of 1/16 in: g²/12; placing of ± 1/32 in: p²/3. From memory, JCGM 100, 4.3.7.
    double u2 = Math.pow(1 / 16.0, 2) / 12 + Math.pow(1 / 32.0, 2) / 3;
    double expanded = 2 * Math.sqrt(2 * u2);
    assertEquals(0.0722, expanded, 5e-5);
    JsonNode corner = all.at("/cars/0/corners/0");
    is(corner.at("/rideMm"), -4, expanded);
    is(corner.at("/asSet/mm"), 11, expanded);
    is(corner.at("/asSet/droopMm"), 6, expanded);
    is(corner.at("/asSet/bumpMm"), 5, expanded);
    is(corner.at("/droop/stopMm"), -10, expanded);
    is(corner.at("/droop/limits/0/between/keptMm"), -11, expanded);
    is(corner.at("/droop/limits/0/between/brokenMm"), -12, expanded);
    is(corner.at("/droop/marginMm"), 1, expanded);
    assertTrue(corner.at("/asItCouldBe/mm").isMissingNode());
    assertEquals("3 things first", all.at("/cars/0/driveCheck/outcome").asText());
    for (String told : List.of("| 11 | 0.0722 |", "| +1 | 0.0722 |", "`3 things first`")) {
      assertTrue(example.contains(told), told);
    }
  }

  private static void is(JsonNode figure, double inches, double expandedInches) {
    assertEquals(inches * INCH, figure.get("value").asDouble(), 1e-9);
    assertEquals(expandedInches * INCH, figure.get("U").asDouble(), 1e-9);
  }

  @Test
  void every_name_that_figures_prints_of_the_demo_is_told(@TempDir Path folder) throws Exception {
    DemoBook.copyTo(folder);
    Set<String> printed = new TreeSet<>();
    names(figures(folder.resolve("book.jsonl")), printed);
    Set<String> named = new TreeSet<>(Set.of("value", "key", "height", "name"));
    Pattern.compile("`([A-Za-z]+)`")
        .matcher(section("## What `figures` prints"))
        .results()
        .forEach(m -> named.add(m.group(1)));
    printed.removeAll(named);
    assertEquals(Set.of(), printed);
  }

  /** A sign-off's copy is told in book-bodies.md. */
  private static void names(JsonNode node, Set<String> into) {
    node.fields()
        .forEachRemaining(
            f -> {
              into.add(f.getKey());
              if (!f.getKey().equals("kept")) {
                names(f.getValue(), into);
              }
            });
    if (node.isArray()) {
      node.forEach(n -> names(n, into));
    }
  }

  @Test
  void of_the_demo_they_tell_ladder_next_reading_check_sign_off_and_its_life(@TempDir Path folder)
      throws Exception {
    DemoBook.copyTo(folder);
    JsonNode car = figures(folder.resolve("book.jsonl")).at("/cars/0");
    JsonNode left = car.at("/corners/0");
    assertEquals("short", car.at("/driveCheck/things/0/why").asText());
    assertEquals("marmot-lf", car.at("/driveCheck/things/0/corner").asText());
    assertFalse(car.at("/driveCheck/meetsRules").asBoolean());
    assertTrue(left.at("/ladders/droop/rungs").size() > 3);
    assertEquals("gap", left.at("/ladders/droop/rungs/0/acts").asText());
    assertTrue(left.get("nextReadings").size() > 0);
    assertEquals("withholds", left.at("/nextReadings/0/why").asText());
    assertEquals("sign-off-1", car.at("/signOffs/0/key").asText());
    assertTrue(car.at("/signOffs/0/sameToday").asBoolean());
    assertEquals(4, car.at("/signOffs/0/kept/corners").size());
    assertTrue(car.at("/signOffs/0/since").asInt() > 100);
    JsonNode ring = left.get("telltales").get(left.get("telltales").size() - 1);
    assertEquals("shock-ring", ring.get("what").asText());
    assertTrue(ring.at("/deepestBump/positionMm/value").isNumber());
    assertTrue(left.get("fasteners").size() > 2);
    assertEquals(3, car.get("toDo").size());
    assertEquals(5, car.get("use").size());
  }
}
