package spindlebook.entry;

import java.util.Objects;
import spindlebook.definition.Place;

/**
 * One thing that was left to see to when a car was signed off.
 *
 * @param why its kind in words: {@code short}
 * @param place null for the whole car
 */
public record SignedThing(String why, Place place, String words) {
  public SignedThing {
    Objects.requireNonNull(why, "why");
    Objects.requireNonNull(words, "words");
  }
}
