package spindlebook.definition;

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

  /** Whether it gives the same length and the same doubt, in whatever unit they were typed. */
  public boolean same(Given other) {
    return other != null
        && dimension == other.dimension
        && length.mm() == other.length.mm()
        && Objects.equals(halfWidthMm(), other.halfWidthMm());
  }

  private Double halfWidthMm() {
    return halfWidth == null ? null : halfWidth.mm();
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
