package spindlebook.page;

import gg.jte.models.runtime.JteModel;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import spindlebook.units.AmountUnit;
import spindlebook.units.LengthUnit;
import spindlebook.units.NumberText;
import spindlebook.units.TypedAmount;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * A form, declared once: its questions are asked in order, and asking one both puts it on the form
 * and gives its answer. While nothing was sent yet nothing is demanded and nothing is wrong; the
 * answers are then what the questions start with.
 *
 * <pre>
 *   Asked a = Asked.of(ctx, unit, card.lastChange());
 *   TypedLength ring = a.length("ring", "From the ring to the body").needed("Type how far …");
 *   a.form(ctx, frame, action, back, () -> keep what was said, go on)
 * </pre>
 */
public final class Asked {
  private final Posted posted;
  private LengthUnit unit;
  private final FormKey key;
  private final List<Part> parts = new ArrayList<>();
  private final List<Part> last = new ArrayList<>();
  private List<Part> open = parts;

  /** The box the page was opened for, so that what it is folded into stands open; or null. */
  private String cameFor;

  /** Of questions that are answered together or not at all; null outside of such. */
  private Together together;

  private record Together(List<String> names, Map<String, String> demands) {}

  /**
   * A part as it is in the end: a later question may still find what is wrong with it.
   *
   * @param answered whether what it is folded into is opened for it
   */
  private record Part(Supplier<FormPart> part, BooleanSupplier answered, BooleanSupplier wrong) {}

  private Asked(Posted posted, LengthUnit unit, FormKey key) {
    this.posted = posted;
    this.unit = unit;
    this.key = key;
  }

  /**
   * What this request sent, or a fresh form where it only asks for one.
   *
   * @param unit what a bare length is read in
   * @param after the last change the form's reader can know of, where the form does not say it
   */
  public static Asked of(Context ctx, LengthUnit unit, long after) {
    if (ctx.method().equals(HandlerType.POST)) {
      return of(Html.posted(ctx), unit, after);
    }
    Asked asked = fresh(unit, after);
    asked.cameFor = ctx.queryParam("for");
    return asked;
  }

  /** What was sent, or proposed. */
  public static Asked of(Posted posted, LengthUnit unit, long after) {
    return new Asked(posted, unit, posted.formKey().orElseGet(() -> FormKey.fresh(after)));
  }

  /** Nothing was sent yet. */
  public static Asked fresh(LengthUnit unit, long after) {
    return of(Posted.proposed(Map.of()), unit, after);
  }

  /** Whether the form was sent and nothing is wrong with it so far. */
  public boolean ok() {
    return posted.sent() && posted.ok();
  }

  public boolean sent() {
    return posted.sent();
  }

  public FormKey key() {
    return key;
  }

  /** What a bare length is read in from here on. */
  public void readIn(LengthUnit bare) {
    unit = bare;
  }

  public LengthUnit unit() {
    return unit;
  }

  /** As typed, or as the question starts with; empty when nothing is there. */
  public String text(String name) {
    return posted.text(name);
  }

  public boolean has(String name) {
    return posted.has(name);
  }

  public Posted posted() {
    return posted;
  }

  /** What is wrong, where the form was sent. */
  public void wrong(String name, String sentence) {
    posted.wrong(name, sentence);
  }

  public boolean wrong(String name) {
    return !posted.problem(name).isEmpty();
  }

  // --- questions

  /** A line of text, at most so many letters. */
  public Box<String> line(String name, String label, int longest) {
    return box(name, label, "", () -> posted.line(name, longest), t -> t);
  }

  /** A length that cannot be negative. */
  public Box<TypedLength> length(String name, String label) {
    return box(name, label, unit.word(), () -> posted.lengthFromZero(name, unit), this::asTyped);
  }

  /** A length of either sign. */
  public Box<TypedLength> signed(String name, String label) {
    return box(name, label, unit.word(), () -> posted.length(name, unit), this::asTyped);
  }

  /** A length of either sign where a bare number would be something else: it says its unit. */
  public Box<TypedLength> withUnit(String name, String label) {
    return box(name, label, "", () -> posted.length(name, unit), TypedLength::words);
  }

  /** A length above nothing. */
  public Box<TypedLength> above(String name, String label) {
    return length(name, label).check(l -> l.mm() > 0, "This length is more than 0.");
  }

  /** With its unit where that is not this form's: a bare number would be read in another. */
  private String asTyped(TypedLength length) {
    return length.unit() == unit && !length.typed().isBlank() ? length.typed() : length.words();
  }

  public Box<TypedAngle> angle(String name, String label) {
    return box(name, label, "°", () -> posted.angle(name), TypedAngle::typed);
  }

  /**
   * Read by {@code read} when something was typed; it may say itself what is wrong, where it gives
   * null, and leaves it to {@link Box#needed} else.
   */
  public <T> Box<T> typed(String name, String label, Function<String, T> read) {
    return box(
        name, label, "", () -> has(name) ? read.apply(text(name).strip()) : null, String::valueOf);
  }

  /** A plain number from one to another, also with its %. */
  public Box<Double> number(String name, String label, double least, double most, String sentence) {
    return this.<Double>box(
            name,
            label,
            "",
            () ->
                has(name) ? NumberText.read(text(name).replace("%", "")).orElse(Double.NaN) : null,
            NumberText::plain)
        .check(n -> n >= least && n <= most, sentence);
  }

  /** A share in per cent. */
  public Box<Double> percent(String name, String label, int least, int most) {
    String sentence = "Type " + least + " to " + most + " per cent.";
    return number(name, label, least, most, sentence).unit("%");
  }

  /** A rate, weight or force, in {@code bare} where no unit is typed. */
  public Box<TypedAmount> amount(String name, String label, AmountUnit bare) {
    return box(name, label, bare.word(), () -> posted.amount(name, bare), TypedAmount::typed);
  }

  private <T> Box<T> box(
      String name, String label, String unitWord, Supplier<T> read, Function<T, String> words) {
    return new Box<>(Field.of(name, label).unit(unitWord), read, words);
  }

  /** One of a few keys. */
  public <T> Keys<T> one(String name, String legend) {
    return new Keys<>(name, legend);
  }

  /** One of an enumeration's values, each with its words. */
  public <E extends Enum<E>> Keys<E> one(
      String name, String legend, Class<E> type, Function<E, String> words) {
    Keys<E> keys = one(name, legend);
    return keys.options(List.of(type.getEnumConstants()), words);
  }

  /** Any of a few, as boxes to tick: those that were, or proposed while nothing was sent. */
  public <T> List<T> ticks(
      String name,
      String legend,
      String hint,
      Collection<T> all,
      Function<T, Choice.Option> option) {
    List<T> ticked = new ArrayList<>();
    List<Choice.Option> options = new ArrayList<>();
    for (T value : all) {
      Choice.Option shown = option.apply(value);
      boolean chosen = sent() ? posted.has(name + "-" + shown.value()) : shown.chosen();
      options.add(new Choice.Option(shown.value(), shown.word(), shown.note(), chosen));
      if (chosen) {
        ticked.add(value);
      }
    }
    add(() -> new FormPart.Ticks(name, legend, hint, options));
    return ticked;
  }

  private void add(Supplier<FormPart> part) {
    open.add(new Part(part, () -> false, () -> false));
  }

  public void said(String sentence) {
    add(() -> new FormPart.Said(sentence));
  }

  public void hidden(String name, String value) {
    add(() -> new FormPart.Hidden(name, value));
  }

  /** What {@code inside} asks is folded away, open where some of it is answered or wrong. */
  public <T> T more(String summary, Supplier<T> inside) {
    return folded(summary, true, inside);
  }

  /** The same, open only where something is wrong: most of it is as it was the last time. */
  public <T> T aside(String summary, Supplier<T> inside) {
    return folded(summary, false, inside);
  }

  private <T> T folded(String summary, boolean opens, Supplier<T> inside) {
    List<Part> outside = open;
    List<Part> folded = new ArrayList<>();
    open = folded;
    T answer = inside.get();
    open = outside;
    add(
        () ->
            new FormPart.More(
                summary,
                folded.stream()
                    .anyMatch(
                        p ->
                            p.wrong().getAsBoolean()
                                || (opens && p.answered().getAsBoolean())
                                || (p.part().get() instanceof FormPart.Typed typed
                                    && typed.field().name().equals(cameFor))),
                filled(folded)));
    return answer;
  }

  /** What is asked now, but stands below all the rest. */
  public <T> T last(Supplier<T> inside) {
    List<Part> before = open;
    open = last;
    T answer = inside.get();
    open = before;
    return answer;
  }

  /** From here to {@link #end} all that is needed is so only where one box is filled. */
  public void together() {
    together = new Together(new ArrayList<>(), new LinkedHashMap<>());
  }

  /** Whether one of them is filled. */
  public boolean end() {
    Together asked = together;
    together = null;
    boolean some = asked.names().stream().anyMatch(this::has);
    if (some) {
      asked.demands().forEach(this::wrong);
    }
    return some;
  }

  /** What is wrong with leaving this out; nothing is where all of it was left out. */
  public void demand(String name, String sentence) {
    if (together == null) {
      wrong(name, sentence);
    } else {
      together.demands().putIfAbsent(name, sentence);
    }
  }

  // --- the form

  /** Everything asked so far, as answered, with what is wrong. */
  public List<FormPart> parts() {
    List<FormPart> all = new ArrayList<>(filled(parts));
    all.addAll(filled(last));
    return all;
  }

  private static List<FormPart> filled(List<Part> asked) {
    return asked.stream().map(p -> p.part().get()).toList();
  }

  /** What the form would send as it stands, by name: as an outbox keeps it. */
  public Map<String, List<String>> body() {
    Map<String, List<String>> body = new LinkedHashMap<>();
    body(parts(), body);
    return body;
  }

  private static void body(List<FormPart> parts, Map<String, List<String>> body) {
    for (FormPart part : parts) {
      if (part instanceof FormPart.More more) {
        body(more.parts(), body);
      } else if (part instanceof FormPart.Typed typed && !typed.field().typed().isEmpty()) {
        body.put(typed.field().name(), List.of(typed.field().typed()));
      } else if (part instanceof FormPart.Chosen chosen) {
        chosen.choice().options().stream()
            .filter(Choice.Option::chosen)
            .forEach(o -> body.put(chosen.choice().name(), List.of(o.value())));
      } else if (part instanceof FormPart.Ticks ticks) {
        ticks.options().stream()
            .filter(Choice.Option::chosen)
            .forEach(o -> body.put(ticks.name() + "-" + o.value(), List.of("1")));
      } else if (part instanceof FormPart.Hidden hidden) {
        body.computeIfAbsent(hidden.name(), n -> new ArrayList<>()).add(hidden.value());
      }
    }
  }

  public FormPage page(PageFrame frame, String action, String submit, String back) {
    return new FormPage(frame, action, key, parts(), submit, back);
  }

  /** A page that is this form alone: what was said is kept, and one goes on; else it is shown. */
  public void form(Context ctx, PageFrame frame, String action, String back, Runnable keep) {
    if (ok()) {
      keep.run();
    } else {
      show(ctx, frame, action, "Save", back);
    }
  }

  /** A page that is this form alone. */
  public void show(Context ctx, PageFrame frame, String action, String submit, String back) {
    show(ctx, Html.TEMPLATES.webForm(page(frame, action, submit, back)));
  }

  /** A page with this form on it. */
  public void show(Context ctx, JteModel page) {
    Html.show(ctx, posted, page);
  }

  // --- one question

  /** Something to type. The last word said of it, {@code read} or {@code needed}, answers it. */
  public final class Box<T> {
    private Field field;
    private final Supplier<T> read;
    private final Function<T, String> words;
    private final List<Predicate<T>> checks = new ArrayList<>();
    private final List<String> sentences = new ArrayList<>();

    private Box(Field field, Supplier<T> read, Function<T, String> words) {
      this.field = field;
      this.read = read;
      this.words = words;
    }

    public Box<T> hint(String line) {
      field = field.hint(line);
      return this;
    }

    /** What a bare number takes, shown after the box. */
    public Box<T> unit(String word) {
      field = field.unit(word);
      return this;
    }

    public Box<T> inputmode(String mode) {
      field = field.inputmode(mode);
      return this;
    }

    public Box<T> focused() {
      field = field.focused();
      return this;
    }

    public Box<T> picks(Pick... picks) {
      field = field.picks(picks);
      return this;
    }

    /** The text the box starts with; null for none. */
    public Box<T> starts(String text) {
      posted.start(field.name(), text);
      return this;
    }

    /** The same, of what was answered before; null where nothing was. */
    public Box<T> was(T before) {
      return starts(before == null ? null : words.apply(before));
    }

    /** What must hold of an answer, and what is said where it does not. */
    public Box<T> check(Predicate<T> holds, String sentence) {
      checks.add(holds);
      sentences.add(sentence);
      return this;
    }

    /** The answer; null where there is none, or a wrong one. */
    public T read() {
      String name = field.name();
      Field asked = field;
      if (together != null) {
        together.names().add(name);
      }
      open.add(
          new Part(
              () -> new FormPart.Typed(posted.fill(asked)), () -> has(name), () -> wrong(name)));
      T answer = read.get();
      for (int i = 0; i < checks.size() && answer != null; i++) {
        if (!checks.get(i).test(answer)) {
          wrong(name, sentences.get(i));
          answer = null;
        }
      }
      return answer;
    }

    /** The answer, which must be there. */
    public T needed(String sentence) {
      return neededIf(true, sentence);
    }

    public T neededIf(boolean must, String sentence) {
      T answer = read();
      if (must && answer == null) {
        demand(field.name(), sentence);
      }
      return answer;
    }
  }

  /** A few keys of which one is chosen. */
  public final class Keys<T> {
    private final String name;
    private final String legend;
    private String hint = "";
    private String first;
    private String unknown = "";
    private final List<T> values = new ArrayList<>();
    private final List<Choice.Option> options = new ArrayList<>();

    private Keys(String name, String legend) {
      this.name = name;
      this.legend = legend;
    }

    public Keys<T> hint(String line) {
      hint = line;
      return this;
    }

    /** An enumeration's value goes by its word, anything else by its text. */
    public Keys<T> option(T value, String word, String note) {
      return option(sentAs(value), value, word, note);
    }

    public Keys<T> option(T value, String word) {
      return option(value, word, "");
    }

    /**
     * @param value null where this key means that there is none
     */
    public Keys<T> option(String sentAs, T value, String word, String note) {
      values.add(value);
      options.add(new Choice.Option(sentAs, word, note, false));
      return this;
    }

    public Keys<T> options(Collection<T> all, Function<T, String> words) {
      all.forEach(v -> option(v, words.apply(v)));
      return this;
    }

    /** What is chosen as long as nothing was; null for nothing. */
    public Keys<T> first(T value) {
      return firstKey(value == null ? null : sentAs(value));
    }

    /** The same, by what the key sends. */
    public Keys<T> firstKey(String sentAs) {
      first = sentAs;
      return this;
    }

    /** What was tapped before; null where nothing was. */
    public Keys<T> was(T before) {
      return startsKey(before == null ? null : sentAs(before));
    }

    /** The same, by what the key sends. */
    public Keys<T> startsKey(String sentAs) {
      posted.start(name, sentAs);
      return this;
    }

    /** What is said where something else was sent; else what stands first is taken. */
    public Keys<T> unknown(String sentence) {
      unknown = sentence;
      return this;
    }

    private String sentAs(T value) {
      return value instanceof Enum<?> e ? Posted.word(e) : String.valueOf(value);
    }

    /** The answer; what stands first where none was sent, or none of these. */
    public T read() {
      open.add(
          new Part(
              () ->
                  new FormPart.Chosen(
                      new Choice(name, legend, hint, posted.problem(name), shown())),
              () -> has(name) && !text(name).equals(first),
              () -> Asked.this.wrong(name)));
      int at = at(text(name));
      if (at < 0 && has(name) && !unknown.isEmpty()) {
        Asked.this.wrong(name, unknown);
      }
      at = at < 0 ? at(first) : at;
      return at < 0 ? null : values.get(at);
    }

    /** The answer, which must be there. */
    public T needed(String sentence) {
      return neededIf(true, sentence);
    }

    public T neededIf(boolean must, String sentence) {
      T answer = read();
      if (must && answer == null) {
        Asked.this.wrong(name, sentence);
      }
      return answer;
    }

    private int at(String sentAs) {
      return options.stream().map(Choice.Option::value).toList().indexOf(sentAs);
    }

    private List<Choice.Option> shown() {
      String chosen = has(name) ? text(name) : first;
      return options.stream()
          .map(o -> new Choice.Option(o.value(), o.word(), o.note(), o.value().equals(chosen)))
          .toList();
    }
  }
}
