package spindlebook.units;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;

/**
 * What the tests of this package share: lines of a reference file, and what came of reading a text.
 */
public final class Readings {
  private static final Pattern ESCAPE = Pattern.compile("\\\\u([0-9A-F]{4})");

  private Readings() {}

  static List<String> lines(String resource) {
    try (InputStream in = Readings.class.getResourceAsStream(resource)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.isBlank() && !line.startsWith("#"))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The unit of a file's {@code in}, {@code mm} or {@code cm}. */
  static LengthUnit unit(String word) {
    return Arrays.stream(LengthUnit.values())
        .filter(unit -> unit.word().equals(word))
        .findFirst()
        .orElseThrow();
  }

  static String unescaped(String text) {
    return ESCAPE
        .matcher(text.replace("\\t", "\t"))
        .replaceAll(m -> String.valueOf((char) Integer.parseInt(m.group(1), 16)));
  }

  static TypedLength length(String text, LengthUnit bare) {
    TextRead<TypedLength> reading = TapeText.read(text, bare);
    if (reading instanceof TextRead.Value<TypedLength> plain) {
      return plain.value();
    }
    throw new AssertionError("'" + text + "' gave " + reading);
  }

  static List<String> choices(String text, LengthUnit bare) {
    TextRead<TypedLength> reading = TapeText.read(text, bare);
    if (reading instanceof TextRead.TwoMeanings<TypedLength> asked) {
      return asked.choices().stream().map(TypedLength::typed).toList();
    }
    throw new AssertionError("'" + text + "' gave " + reading);
  }

  static String refusal(String text, LengthUnit bare) {
    TextRead<TypedLength> reading = TapeText.read(text, bare);
    if (reading instanceof TextRead.Refused<TypedLength> refused) {
      return refused.sentence();
    }
    throw new AssertionError("'" + text + "' gave " + reading);
  }

  public static TypedAngle angle(String text) {
    TextRead<TypedAngle> reading = AngleText.read(text);
    if (reading instanceof TextRead.Value<TypedAngle> plain) {
      return plain.value();
    }
    throw new AssertionError("'" + text + "' gave " + reading);
  }

  static List<String> angleChoices(String text) {
    TextRead<TypedAngle> reading = AngleText.read(text);
    if (reading instanceof TextRead.TwoMeanings<TypedAngle> asked) {
      return asked.choices().stream().map(TypedAngle::typed).toList();
    }
    throw new AssertionError("'" + text + "' gave " + reading);
  }

  static String angleRefusal(String text) {
    TextRead<TypedAngle> reading = AngleText.read(text);
    if (reading instanceof TextRead.Refused<TypedAngle> refused) {
      return refused.sentence();
    }
    throw new AssertionError("'" + text + "' gave " + reading);
  }

  /** One sentence: it ends once, and only what was typed may have an end of its own. */
  static boolean isOneSentence(String sentence) {
    int open = sentence.indexOf('“');
    int close = sentence.lastIndexOf('”');
    String ours = open < 0 ? sentence : sentence.substring(0, open) + sentence.substring(close + 1);
    return ours.endsWith(".")
        && !ours.contains(". ")
        && !ours.contains("! ")
        && !ours.contains("? ")
        && sentence.chars().noneMatch(Character::isISOControl)
        && sentence.length() < 200;
  }
}
