package spindlebook.alignment;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** docs/methods-alignment.md, the docstrings of the formulas and their tests say one thing. */
class AlignmentMethodsTest {
  private static final Path DOC = Path.of("docs", "methods-alignment.md");
  private static final Path HOUSE = Path.of("src", "main", "java", "spindlebook");
  private static final List<Path> CODE =
      Stream.of("alignment", "measured", "parts").map(HOUSE::resolve).toList();

  /** Formulas that other rooms share with alignment. */
  private static final List<Path> SHARED =
      Stream.of("fold/ToolError.java", "uncertainty/Propagated.java").map(HOUSE::resolve).toList();

  private static final Path TESTS = Path.of("src", "test", "java", "spindlebook");
  private static final Pattern DOCSTRING = Pattern.compile("/\\*\\*(.*?)\\*/", Pattern.DOTALL);
  private static final Pattern ROW = Pattern.compile("\\| `(\\w+)` \\| ([^|]+) \\| ([^|]+) \\|");
  private static final Pattern EXAMPLE =
      Pattern.compile("Worked example(.*?)(?=<p>|@param|\\n|\\z)");

  /** What a computation gave: a number to the hundredth or finer. */
  private static final Pattern RESULT = Pattern.compile("\\d+\\.\\d{2,}");

  /** A class named in the table, the section it points at, its tests. */
  private record Row(String section, List<String> tests) {}

  private static Map<String, Row> table() {
    Map<String, Row> rows = new LinkedHashMap<>();
    ROW.matcher(text(DOC))
        .results()
        .forEach(
            r -> rows.put(r.group(1), new Row(r.group(2), Arrays.asList(r.group(3).split(", ")))));
    return rows;
  }

  /** Docstrings of each class that computes: it has a formula or a worked example in one. */
  private static Map<String, String> formulas() throws IOException {
    Map<String, String> formulas = new LinkedHashMap<>();
    try (Stream<Path> files = Files.walk(HOUSE)) {
      for (Path file :
          files.filter(f -> CODE.contains(f.getParent()) || SHARED.contains(f)).sorted().toList()) {
        String said =
            DOCSTRING
                .matcher(text(file))
                .results()
                .map(r -> r.group(1).replaceAll("\\n\\s*\\* ?", " "))
                .collect(Collectors.joining("\n"));
        if (said.contains("<pre>") || said.contains("Worked example")) {
          formulas.put(file.getFileName().toString().replace(".java", ""), said);
        }
      }
    }
    return formulas;
  }

  @Test
  void every_formula_has_a_source_a_worked_example_and_a_row() throws IOException {
    Map<String, String> formulas = formulas();
    assertTrue(formulas.size() >= 34, "only " + formulas.keySet());
    List<String> lacking = new ArrayList<>();
    formulas.forEach(
        (name, said) -> {
          boolean whole = said.contains("Source:") && said.contains("Worked example");
          if (!whole) {
            lacking.add(name);
          }
        });
    assertEquals(List.of(), lacking);
    assertEquals(
        List.of(), formulas.keySet().stream().filter(f -> !table().containsKey(f)).toList());
  }

  @Test
  void what_a_docstring_computed_stands_in_the_page_and_in_its_tests() throws IOException {
    String page = text(DOC);
    Map<String, Row> table = table();
    List<String> astray = new ArrayList<>();
    int checked = 0;
    for (Map.Entry<String, String> formula : formulas().entrySet()) {
      String tests =
          table.get(formula.getKey()).tests().stream()
              .map(AlignmentMethodsTest::test)
              .collect(Collectors.joining());
      for (String number : computed(formula.getValue())) {
        checked++;
        if (!page.contains(number) || !tests.contains(number)) {
          astray.add(formula.getKey() + " " + number);
        }
      }
    }
    assertEquals(List.of(), astray);
    assertTrue(checked > 70, "only " + checked);
  }

  @Test
  void the_table_names_classes_sections_and_tests_that_are_there() {
    String page = text(DOC);
    table()
        .forEach(
            (name, row) -> {
              assertTrue(
                  CODE.stream().anyMatch(room -> Files.exists(room.resolve(name + ".java")))
                      || SHARED.stream().anyMatch(f -> f.endsWith(name + ".java")),
                  name);
              String heading = row.section().replace(" (opening)", "");
              assertTrue(page.contains("# " + heading), row.section());
              row.tests().forEach(t -> assertTrue(test(t).contains("@Test"), t));
            });
  }

  @Test
  void the_tests_named_in_brackets_are_there() {
    List<String> named =
        Pattern.compile("\\b[A-Z]\\w+Test\\b")
            .matcher(text(DOC))
            .results()
            .map(MatchResult::group)
            .distinct()
            .toList();
    assertTrue(named.size() > 15, named.toString());
    named.forEach(name -> assertTrue(test(name).contains("@Test"), name));
  }

  private static TreeSet<String> computed(String said) {
    return EXAMPLE
        .matcher(said)
        .results()
        .flatMap(e -> RESULT.matcher(e.group(1)).results())
        .map(MatchResult::group)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static String test(String name) {
    try (Stream<Path> files = Files.walk(TESTS)) {
      return files
          .filter(f -> f.getFileName().toString().equals(name + ".java"))
          .map(AlignmentMethodsTest::text)
          .findFirst()
          .orElse("");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
