package spindlebook.spring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** docs/methods-springs.md, the docstrings of the formulas and their tests say one thing. */
class SpringMethodsTest {
  private static final Path TESTS = Path.of("src", "test", "java", "spindlebook", "spring");
  private static final Pattern ROW = Pattern.compile("\\| `(\\w+)` \\| ([^|]+) \\| ([^|]+) \\|");
  private static final Pattern RESULT = Pattern.compile("\\d+\\.\\d{2,}");

  @Test
  void every_formula_has_a_source_an_example_a_row_and_a_test_that_repeats_its_numbers()
      throws IOException {
    String page = Files.readString(Path.of("docs", "methods-springs.md"));
    List<String> rows = ROW.matcher(page).results().map(r -> r.group(1)).toList();
    List<String> lacking = new ArrayList<>();
    int checked = 0;
    try (Stream<Path> files = Files.list(Path.of("src", "main", "java", "spindlebook", "spring"))) {
      for (Path file : files.sorted().toList()) {
        String name = file.getFileName().toString().replace(".java", "");
        String code = Files.readString(file);
        if (code.contains("<pre>")) {
          String said =
              code.substring(0, code.indexOf(name, code.indexOf("*/")))
                  .replaceAll("\\n\\s*\\* ?", " ");
          int example = said.indexOf("Worked example");
          if (!said.contains("Source:") || example < 0 || !rows.contains(name)) {
            lacking.add(name);
            continue;
          }
          for (String number : numbers(said.substring(example))) {
            checked++;
            if (!page.contains(number) || !tests(page, name).contains(number)) {
              lacking.add(name + " " + number);
            }
          }
        }
      }
    }
    assertEquals(List.of(), lacking);
    assertTrue(checked > 8, "only " + checked);
  }

  private static List<String> numbers(String said) {
    return RESULT.matcher(said).results().map(MatchResult::group).toList();
  }

  private static String tests(String page, String name) {
    return ROW.matcher(page)
        .results()
        .filter(r -> r.group(1).equals(name))
        .flatMap(r -> Stream.of(r.group(3).split(", ")))
        .map(SpringMethodsTest::test)
        .collect(Collectors.joining());
  }

  private static String test(String name) {
    try {
      return Files.readString(TESTS.resolve(name + ".java"));
    } catch (IOException e) {
      return "";
    }
  }
}
