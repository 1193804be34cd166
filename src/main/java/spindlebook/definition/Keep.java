package spindlebook.definition;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * What the owner demands of a watch point: a gap at least, an angle at most, or a plunge between
 * two ends. Absent ends are null.
 */
public record Keep(TypedLength least, TypedLength most, TypedAngle mostAngle) {
  public Keep {
    if (least == null && most == null && mostAngle == null) {
      throw new IllegalArgumentException("a rule needs a number to keep");
    }
  }

  public static Keep atLeast(TypedLength least) {
    return new Keep(least, null, null);
  }

  public static Keep atMost(TypedAngle most) {
    return new Keep(null, null, most);
  }

  public static Keep between(TypedLength least, TypedLength most) {
    return new Keep(least, most, null);
  }

  /** As it is told in the book: {@code at least 1/4 in and at most 1 in}. */
  public String inWords() {
    return inWords(TypedLength::words);
  }

  /** With its lengths written another way: in the unit of a page, say. */
  public String inWords(Function<TypedLength, String> length) {
    List<String> parts = new ArrayList<>();
    if (least != null) {
      parts.add("at least " + length.apply(least));
    }
    if (most != null) {
      parts.add("at most " + length.apply(most));
    }
    if (mostAngle != null) {
      parts.add("at most " + mostAngle.typed());
    }
    return String.join(" and ", parts);
  }
}
