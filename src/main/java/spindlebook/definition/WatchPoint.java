package spindlebook.definition;

import java.util.Objects;

/**
 * A named place between two parts that must keep its rule. A changed rule is a new version under
 * the same short name; a changed place is a new watch point.
 *
 * @param point short name, unique in its corner and the same on the mirror corner
 * @param basis where the rule comes from, in words
 */
public record WatchPoint(String point, WatchPlace place, String name, Keep keep, String basis)
    implements Defined {
  @Override
  public String inWords() {
    return "watch point " + name + ", " + keep.inWords();
  }

  public WatchPoint {
    Objects.requireNonNull(point, "point");
    Objects.requireNonNull(place, "place");
    Objects.requireNonNull(keep, "keep");
    boolean angle = place.measure() == Measure.ANGLE;
    if (angle == (keep.mostAngle() == null)
        || (angle && (keep.least() != null || keep.most() != null))) {
      throw new IllegalArgumentException(
          "the rule of '"
              + place.words()
              + (angle ? "' is an angle that is kept at most" : "' is a length, not an angle"));
    }
    name = name == null || name.isBlank() ? place.words() : name;
    basis = basis == null ? "the owner's" : basis;
  }
}
