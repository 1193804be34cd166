package spindlebook.definition;

import java.util.Objects;
import spindlebook.units.TypedLength;

/**
 * A thing that is set on a corner.
 *
 * @param adjuster short name, unique in its corner and the same on the mirror corner
 * @param step one hole, one turn, or the thinnest spacer that can be added; null when not known
 * @param moreShortens a higher hole or turn makes the strap (or the link) shorter
 * @param first what it was set to when it came into the book; null when not known
 */
public record Adjuster(
    String adjuster,
    AdjusterKind kind,
    String name,
    SettingUnit unit,
    TypedLength step,
    boolean moreShortens,
    Setting first)
    implements Defined {
  /** The same where it came into the book at a setting. */
  public Adjuster from(Setting setting) {
    return new Adjuster(adjuster, kind, name, unit, step, moreShortens, setting);
  }

  @Override
  public String inWords() {
    return "adjuster " + name;
  }

  public Adjuster {
    Objects.requireNonNull(adjuster, "adjuster");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(unit, "unit");
    name = name == null || name.isBlank() ? kind.words() : name;
  }
}
