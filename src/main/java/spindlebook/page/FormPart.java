package spindlebook.page;

import java.util.List;

/** One part of a form, top to bottom. */
public sealed interface FormPart {
  record Typed(Field field) implements FormPart {}

  record Chosen(Choice choice) implements FormPart {}

  /** Any of a few, as boxes to tick; each is sent under {@code name-value}. */
  record Ticks(String name, String legend, String hint, List<Choice.Option> options)
      implements FormPart {}

  record Said(String sentence) implements FormPart {}

  /** Something near by that is told on a page of its own. */
  record Way(Link link) implements FormPart {}

  record Hidden(String name, String value) implements FormPart {}

  /** Parts that few need, folded away; open when one of them is filled or wrong. */
  record More(String summary, boolean open, List<FormPart> parts) implements FormPart {}

  /** Whether something of it was typed that is not understood. */
  static boolean wrong(List<FormPart> parts) {
    return parts.stream()
        .anyMatch(
            part ->
                part instanceof Typed typed && typed.field().wrong()
                    || part instanceof Chosen chosen && !chosen.choice().problem().isEmpty()
                    || part instanceof More more && wrong(more.parts()));
  }
}
