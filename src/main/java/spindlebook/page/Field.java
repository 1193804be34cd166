package spindlebook.page;

import java.util.List;

/**
 * One thing to type, with what was typed and what is wrong with it.
 *
 * @param name form name; also makes the ids, so it is unique on the page
 * @param label what is asked
 * @param typed the text as it was typed, never tidied
 * @param hint how it may be written; may be empty
 * @param problem one sentence that says what would be accepted; empty when all is well
 * @param inputmode "text", "decimal", "numeric" …: which keyboard a phone shows
 * @param autofocus whether typing starts here
 * @param unit the unit a bare number takes, shown after the box; may be empty
 * @param picks keys that answer instead of typing
 */
public record Field(
    String name,
    String label,
    String typed,
    String hint,
    String problem,
    String inputmode,
    boolean autofocus,
    String unit,
    List<Pick> picks) {
  public static Field of(String name, String label) {
    return new Field(name, label, "", "", "", "text", false, "", List.of());
  }

  public Field typed(String text) {
    return new Field(name, label, text, hint, problem, inputmode, autofocus, unit, picks);
  }

  public Field hint(String line) {
    return new Field(name, label, typed, line, problem, inputmode, autofocus, unit, picks);
  }

  public Field problem(String sentence) {
    return new Field(name, label, typed, hint, sentence, inputmode, autofocus, unit, picks);
  }

  public Field inputmode(String mode) {
    return new Field(name, label, typed, hint, problem, mode, autofocus, unit, picks);
  }

  public Field focused() {
    return new Field(name, label, typed, hint, problem, inputmode, true, unit, picks);
  }

  public Field unit(String word) {
    return new Field(name, label, typed, hint, problem, inputmode, autofocus, word, picks);
  }

  public Field picks(Pick... keys) {
    return new Field(name, label, typed, hint, problem, inputmode, autofocus, unit, List.of(keys));
  }

  public String id() {
    return "f-" + name;
  }

  public boolean wrong() {
    return !problem.isEmpty();
  }

  /** The ids of the lines that describe the box, or null when there are none. */
  public String describedBy() {
    String ids =
        (hint.isEmpty() ? "" : id() + "-hint ") + (problem.isEmpty() ? "" : id() + "-problem");
    return ids.isEmpty() ? null : ids.strip();
  }
}
