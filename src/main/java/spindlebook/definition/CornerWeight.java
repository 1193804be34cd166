package spindlebook.definition;

import java.util.Objects;
import java.util.stream.Stream;
import spindlebook.units.TypedAmount;
import spindlebook.units.TypedLength;

/**
 * What a corner weighs as the car stands at ride, and how much of it the spring does not carry.
 *
 * @param weight what the tyre presses on the ground; null of a lever
 * @param read what a bathroom scale shows under a plank on which the tyre stands, {@code bare} what
 *     it shows of the plank alone; {@code toScale} and {@code toWheel} lie that far from the edge
 *     on which the plank's other end rests
 * @param unsprung wheel, hub, brake and half of the arms; null where {@code sprung} says the rest
 */
public record CornerWeight(
    By by,
    TypedAmount weight,
    TypedAmount read,
    TypedAmount bare,
    TypedLength toScale,
    TypedLength toWheel,
    TypedAmount unsprung,
    TypedAmount sprung)
    implements Defined {
  /** How it is known. */
  public enum By {
    SCALES("by scales"),
    LEVER("by bathroom scale and plank"),
    ESTIMATE("by estimate");

    private final String words;

    By(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  public CornerWeight {
    Objects.requireNonNull(by, "by");
    Stream.of(weight, read, bare, unsprung, sprung)
        .filter(Objects::nonNull)
        .forEach(w -> w.si(false));
    boolean lever = read != null && toScale != null && toWheel != null;
    if (by == By.LEVER ? !lever : weight == null && sprung == null) {
      throw new IllegalArgumentException(
          by == By.LEVER
              ? "a lever is told by 'read', 'toScale' and 'toWheel'"
              : "a corner's weight is told by 'weight' or 'sprung'");
    }
    if (lever && !(toScale.mm() > 0 && toWheel.mm() > 0)) {
      throw new IllegalArgumentException("wheel and scale lie ahead of the plank's edge");
    }
    if (lever && bare != null && bare.si(false) >= read.si(false)) {
      throw new IllegalArgumentException("the plank alone weighs less than with the wheel on it");
    }
  }

  @Override
  public String inWords() {
    TypedAmount says = weight != null ? weight : read != null ? read : sprung;
    return "corner weight " + says.typed() + " " + by.words;
  }
}
