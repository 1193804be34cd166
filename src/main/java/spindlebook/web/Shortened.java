package spindlebook.web;

import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A stylesheet or module without its comments and indentation, for a phone that waits for it. Only
 * what surely says nothing is left out: whole-line comments of a module, never one beside code.
 */
final class Shortened {
  private static final Pattern CSS_COMMENT = Pattern.compile("/\\*.*?\\*/", Pattern.DOTALL);

  private Shortened() {}

  static String css(String text) {
    String bare = CSS_COMMENT.matcher(text).replaceAll("");
    return lines(bare)
        .replace("\n", "")
        .replaceAll(" *([{};,]) *", "$1")
        .replaceAll("(?<=[a-z-]): (?=[^{}]*[;}])", ":")
        .replace(";}", "}");
  }

  static String js(String text) {
    return text.lines()
        .map(String::strip)
        .filter(l -> !l.isEmpty() && !l.startsWith("//"))
        .collect(Collectors.joining("\n"));
  }

  private static String lines(String text) {
    return text.lines()
        .map(String::strip)
        .filter(l -> !l.isEmpty())
        .collect(Collectors.joining("\n"));
  }
}
