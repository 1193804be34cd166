package spindlebook.definition;

import java.util.Objects;
import spindlebook.units.TypedLength;

/**
 * One allowance as chosen: a length, or per cent. A chosen number has no uncertainty of its own
 * unless the owner gives one.
 *
 * @param halfWidth rectangular half-width of a length the owner is unsure of; null for a choice
 */
public record HeldBack(
    Allowance allowance, TypedLength length, Double percent, TypedLength halfWidth, String basis)
    implements Defined {
  @Override
  public String inWords() {
    String much = allowance.share() ? percent + " %" : length.words();
    return "held back: " + allowance.words() + " " + much;
  }

  public HeldBack {
    Objects.requireNonNull(allowance, "allowance");
    if (allowance.share() ? percent == null : length == null) {
      throw new IllegalArgumentException(allowance.words() + " needs a number");
    }
    if (halfWidth != null && halfWidth.mm() < 0) {
      throw new IllegalArgumentException(
          "the half width of " + allowance.words() + " is below nothing");
    }
    basis = basis == null ? "the owner's" : basis;
  }
}
