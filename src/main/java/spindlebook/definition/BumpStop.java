package spindlebook.definition;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import spindlebook.units.TypedAmount;
import spindlebook.units.TypedLength;

/**
 * A bump stop by points typed from its chart.
 *
 * @param stop short name, unique on its corner
 * @param chart from touch on, rising
 * @param touch the wheel position, from the frame mark, at which it is first touched; null for
 *     where the stop's touch was read
 * @param ratio how much of the stop a length of wheel takes: 1 where it acts at the wheel
 * @param chartWithin per cent that the chart may be off
 * @param fitted false where it is only held against the one that is fitted
 * @param drop how high the tyre stood above the ground as it hung, for what the stop is to take
 * @param damped per cent of a landing that the shock takes, the owner's guess
 */
public record BumpStop(
    String stop,
    String name,
    Kind kind,
    List<Point> chart,
    TypedLength touch,
    Double ratio,
    Double chartWithin,
    Boolean fitted,
    TypedLength drop,
    Double damped)
    implements Defined {
  /** What it is filled with. */
  public enum Kind {
    AIR,
    HYDRAULIC,
    FOAM,
    RUBBER;

    public String words() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** Pressed together so far it pushes so hard. */
  public record Point(TypedLength crush, TypedAmount force) {
    public Point {
      Objects.requireNonNull(crush, "crush");
      Objects.requireNonNull(force, "force");
      force.si(false);
    }
  }

  public BumpStop {
    Objects.requireNonNull(stop, "stop");
    Objects.requireNonNull(kind, "kind");
    name = name == null || name.isBlank() ? kind.words() + " bump stop" : name;
    chart = chart == null ? List.of() : List.copyOf(chart);
    for (int i = 1; i < chart.size(); i++) {
      if (!(chart.get(i).crush.mm() > chart.get(i - 1).crush.mm())) {
        throw new IllegalArgumentException("the points of a stop's chart go from its touch on");
      }
    }
    if (chart.size() < 2 || chart.get(0).crush.mm() != 0) {
      throw new IllegalArgumentException("a stop's chart has a point at 0 and one more");
    }
    ratio = ratio == null ? 1 : ratio;
    chartWithin = chartWithin == null ? 0 : chartWithin;
    fitted = fitted == null || fitted;
    damped = damped == null ? 0 : damped;
    if (!(ratio > 0 && ratio <= 10) || !(chartWithin >= 0) || !(damped >= 0 && damped < 100)) {
      throw new IllegalArgumentException(
          "a stop's 'ratio' is above 0, its 'chartWithin' not below, 'damped' from 0 to under 100");
    }
    if (drop != null && drop.mm() < 0) {
      throw new IllegalArgumentException("a drop is no less than nothing");
    }
  }

  /** The same, of which nobody says where it is first touched. */
  public BumpStop touchedElsewhere() {
    return new BumpStop(stop, name, kind, chart, null, ratio, chartWithin, fitted, drop, damped);
  }

  @Override
  public String inWords() {
    return name + (fitted ? "" : ", to compare");
  }
}
