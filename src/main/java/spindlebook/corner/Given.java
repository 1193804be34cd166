package spindlebook.corner;

import java.util.Objects;
import spindlebook.units.TypedLength;

/**
 * A dimension as entered.
 *
 * @param halfWidth rectangular half-width when the owner gives one (a measured crush has one)
 */
public record Given(Dimension dimension, TypedLength length, TypedLength halfWidth)
    implements Defined {
  @Override
  public String inWords() {
    return dimension.words() + " " + length.words();
  }

  public Given {
    Objects.requireNonNull(dimension, "dimension");
    Objects.requireNonNull(length, "length");
    if (halfWidth != null && halfWidth.mm() < 0) {
      throw new IllegalArgumentException(
          "the half width of " + dimension.words() + " is below nothing");
    }
  }
}
