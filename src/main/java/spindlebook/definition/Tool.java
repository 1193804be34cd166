package spindlebook.definition;

import java.util.Arrays;
import java.util.Objects;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * A measuring tool and how far it can be trusted. A changed graduation counts from then on; a
 * correction of it counts backwards.
 *
 * @param graduation smallest division; lengths for TAPE and GAPS, {@code graduationAngle} for
 *     ANGLES
 * @param classHalfWidth half-width of the error shared by everything this tool reads (its hook, its
 *     class); rectangular
 * @param placingHalfWidth half-width of the error of holding it to the mark, new at each reading;
 *     rectangular
 * @param largest of GAPS, the thickest shank of the set: from there on gaps are read with the
 *     round's tape; null for 1/2 in (common practice, no source), and for every other use
 */
public record Tool(
    String tool,
    String name,
    ToolUse use,
    TypedLength graduation,
    TypedAngle graduationAngle,
    TypedLength classHalfWidth,
    TypedLength placingHalfWidth,
    TypedAngle placingHalfWidthAngle,
    TypedLength largest)
    implements Defined {
  @Override
  public String inWords() {
    return "tool " + name;
  }

  @Override
  public boolean ofCar() {
    return true;
  }

  private static final double HALF_INCH_MM = 12.7;

  /** A set of shanks to 1/2 in, or a tool for anything else. */
  public Tool(
      String tool,
      String name,
      ToolUse use,
      TypedLength graduation,
      TypedAngle graduationAngle,
      TypedLength classHalfWidth,
      TypedLength placingHalfWidth,
      TypedAngle placingHalfWidthAngle) {
    this(
        tool,
        name,
        use,
        graduation,
        graduationAngle,
        classHalfWidth,
        placingHalfWidth,
        placingHalfWidthAngle,
        null);
  }

  /** Gaps narrower than this it reads, in mm; a tape reads any. */
  public double largestMm() {
    if (use != ToolUse.GAPS) {
      return Double.POSITIVE_INFINITY;
    }
    return largest == null ? HALF_INCH_MM : largest.mm();
  }

  public Tool {
    Objects.requireNonNull(tool, "tool");
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(use, "use");
    for (TypedLength width : Arrays.asList(graduation, classHalfWidth, placingHalfWidth)) {
      if (width != null && width.mm() < 0) {
        throw new IllegalArgumentException("a graduation or half width of a tool is below nothing");
      }
    }
    for (TypedAngle width : Arrays.asList(graduationAngle, placingHalfWidthAngle)) {
      if (width != null && width.rad() < 0) {
        throw new IllegalArgumentException("a graduation or half width of a tool is below nothing");
      }
    }
    if ((use == ToolUse.ANGLES) == (graduationAngle == null)
        || (use == ToolUse.ANGLES) == (graduation != null)) {
      throw new IllegalArgumentException("a tool for " + use.words() + " needs its own graduation");
    }
  }
}
