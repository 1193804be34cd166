package spindlebook.page;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import spindlebook.units.AmountUnit;
import spindlebook.units.AngleText;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeText;
import spindlebook.units.TextRead;
import spindlebook.units.TypedAmount;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * What a form sent, and what is wrong with it. Texts are kept as typed; where a field was sent
 * twice (typed in its box, then answered by a key under it) the later one, the key, counts.
 */
public final class Posted {
  private static final Pattern KEY = Pattern.compile("[A-Za-z0-9._-]{1,80}");
  private static final int LONGEST_TEXT = 2000;

  private final Map<String, List<String>> values;
  private final Map<String, String> problems = new LinkedHashMap<>();
  private final Map<String, List<String>> choices = new LinkedHashMap<>();

  private final boolean sent;

  public Posted(Map<String, List<String>> values) {
    this(values, true);
  }

  private Posted(Map<String, List<String>> values, boolean sent) {
    this.values = new LinkedHashMap<>(values);
    this.sent = sent;
  }

  /** What a form starts with before anything was sent: nothing is wrong with it. */
  public static Posted proposed(Map<String, List<String>> values) {
    return new Posted(values, false);
  }

  public boolean sent() {
    return sent;
  }

  /** What a field starts with as long as nothing was sent; null for nothing. */
  void start(String name, String text) {
    if (!sent && text != null) {
      values.putIfAbsent(name, List.of(text));
    }
  }

  /** As typed, or empty. */
  public String text(String name) {
    List<String> sent = values.getOrDefault(name, List.of());
    return sent.isEmpty() ? "" : sent.get(sent.size() - 1);
  }

  public boolean has(String name) {
    return !text(name).isBlank();
  }

  /** Every field that was filled, by its name in the form, without the form's own key. */
  public List<String> typed() {
    return values.keySet().stream()
        .filter(name -> !name.equals("key") && !name.equals("after") && has(name))
        .map(name -> name.replace('-', ' ') + ": " + text(name).strip())
        .toList();
  }

  /** A line of plain text, or null when nothing was typed; refused when it is very long. */
  public String line(String name, int longest) {
    String typed = text(name).strip();
    if (typed.length() > Math.min(longest, LONGEST_TEXT)) {
      wrong(name, "That is longer than " + longest + " letters; say it shorter.");
      return null;
    }
    return typed.isEmpty() ? null : typed;
  }

  /** The same, where something must be typed. */
  public String neededLine(String name, int longest, String sentence) {
    String line = line(name, longest);
    if (line == null && !problems.containsKey(name)) {
      wrong(name, sentence);
    }
    return line;
  }

  /** A length, or null with a problem; null without one when nothing was typed. */
  public TypedLength length(String name, LengthUnit bare) {
    return read(name, text -> TapeText.read(text, bare), TypedLength::typed);
  }

  private <T> T read(String name, Function<String, TextRead<T>> reads, Function<T, String> typed) {
    if (!has(name)) {
      return null;
    }
    TextRead<T> read = reads.apply(text(name));
    if (read instanceof TextRead.TwoMeanings<T> two) {
      ask(name, two.choices().stream().map(typed).toList());
    } else if (read instanceof TextRead.Refused<T> refused) {
      wrong(name, refused.sentence());
    }
    return read.plain().orElse(null);
  }

  /** A length that cannot be negative. */
  public TypedLength lengthFromZero(String name, LengthUnit bare) {
    TypedLength length = length(name, bare);
    if (length != null && length.mm() < 0) {
      wrong(name, "'" + text(name).strip() + "' is below nothing; this length starts at 0.");
      return null;
    }
    return length;
  }

  /** An angle, or null with a problem; null without one when nothing was typed. */
  public TypedAngle angle(String name) {
    return read(name, AngleText::read, TypedAngle::typed);
  }

  /** A rate, weight or force, or null with a problem; null without one when nothing was typed. */
  public TypedAmount amount(String name, AmountUnit bare) {
    return read(name, text -> TypedAmount.typed(text, bare), TypedAmount::typed);
  }

  /** One of an enumeration's words ({@code full-left}), or the fallback. */
  public <E extends Enum<E>> E word(String name, Class<E> type, E otherwise) {
    return named(text(name), type, otherwise);
  }

  public static <E extends Enum<E>> E named(String word, Class<E> type, E otherwise) {
    for (E value : type.getEnumConstants()) {
      if (word(value).equals(word)) {
        return value;
      }
    }
    return otherwise;
  }

  /** How an enumerated value is written in forms and addresses. */
  public static String word(Enum<?> value) {
    return value.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  /** The key the form was shown with; empty when it was tampered with, or is proposed only. */
  public Optional<FormKey> formKey() {
    if (!sent || !KEY.matcher(text("key")).matches()) {
      return Optional.empty();
    }
    try {
      return Optional.of(new FormKey(text("key"), Math.max(0, Long.parseLong(text("after")))));
    } catch (NumberFormatException e) {
      return Optional.of(new FormKey(text("key"), 0));
    }
  }

  /** Asks back which of several meanings was meant; each becomes a key under the field. */
  public void ask(String name, List<String> meanings) {
    if (!sent) {
      return;
    }
    choices.put(name, List.copyOf(meanings));
    wrong(name, "'" + text(name).strip() + "' can be read in more than one way: which is it?");
  }

  public void wrong(String name, String sentence) {
    if (sent) {
      problems.putIfAbsent(name, sentence);
    }
  }

  public boolean ok() {
    return problems.isEmpty();
  }

  public String problem(String name) {
    return problems.getOrDefault(name, "");
  }

  public List<String> problems() {
    return List.copyOf(problems.values());
  }

  /** A field with what was typed, what is wrong with it, and keys for what it may mean. */
  public Field fill(Field field) {
    List<Pick> picks = new ArrayList<>();
    for (String choice : choices.getOrDefault(field.name(), List.of())) {
      picks.add(new Pick(field.name(), choice, choice));
    }
    picks.addAll(field.picks());
    Field filled = field.typed(text(field.name())).problem(problem(field.name()));
    return filled.picks(picks.toArray(Pick[]::new));
  }
}
