package spindlebook.fold;

import spindlebook.definition.Adjuster;

/**
 * The fastener of one adjuster, as the book knows it.
 *
 * @param torque as the owner gave it, null when nobody did
 * @param opened the last entry that opened it; null when it was never touched
 * @param said the last entry that said how it is; null when nobody did
 * @param state what all that comes to
 */
public record SeenFastener(
    String corner, Adjuster adjuster, String torque, Noted opened, Noted said, State state) {

  /** How a fastener is known to be. */
  public enum State {
    /** Never touched as far as the book knows, and nobody said. */
    NOT_SAID("nobody has said", false),
    OPENED("touched, not said to be tight", true),
    LOOSE("found loose", true),
    NOT_MARKED("tight, not marked", true),
    MARKED("tight and marked", false);

    private final String words;
    private final boolean open;

    State(String words, boolean open) {
      this.words = words;
      this.open = open;
    }

    public String words() {
      return words;
    }
  }

  /** Whether somebody has still to say that it is tight and marked. */
  public boolean open() {
    return state.open;
  }
}
