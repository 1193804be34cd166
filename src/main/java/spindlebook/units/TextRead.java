package spindlebook.units;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** What came of reading a text that somebody typed. */
public sealed interface TextRead<T> {

  /** It has one meaning. */
  record Value<T>(T value) implements TextRead<T> {
    public Value {
      Objects.requireNonNull(value, "value");
    }
  }

  /**
   * It has more than one; each choice is spelled so that it reads back to its own value, whatever
   * the bare unit.
   */
  record TwoMeanings<T>(List<T> choices) implements TextRead<T> {}

  /** It has none; one sentence quotes it and says what would be accepted. */
  record Refused<T>(String sentence) implements TextRead<T> {
    public Refused {
      Objects.requireNonNull(sentence, "sentence");
    }
  }

  /** The value, when the text has exactly one meaning. */
  default Optional<T> plain() {
    return this instanceof Value<T> one ? Optional.of(one.value()) : Optional.empty();
  }
}
