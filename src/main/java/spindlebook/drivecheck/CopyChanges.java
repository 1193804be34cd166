package spindlebook.drivecheck;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import spindlebook.entry.SignedCorner;
import spindlebook.units.LengthUnit;

/**
 * How two copies of a car differ.
 *
 * @param rows part by part, in each corner by corner
 */
public record CopyChanges(List<Row> rows) {
  /** A hundredth of what the finest steel rule, or an angle finder's finest step, shows. */
  private static final double SAME_MM = 1e-3;

  private static final double SAME_RAD = 1e-6;

  private static final String NOT_THERE = "–";

  /** What differs, in the order in which it weighs. */
  public enum Part {
    /** Limits, corners and targets that are decided otherwise. */
    TURNED,
    FIGURES,
    /** Its figures and targets, where both copies hold them. */
    ALIGNMENT,
    SETTINGS,
    RULES
  }

  /** One thing, then and now. */
  public record Row(Part part, String place, String name, String then, String now) {
    /** A margin or a whole travel, from which the other figures follow. */
    public boolean weighty() {
      return name.endsWith("margin") || (name.startsWith("usable") && !name.endsWith(" ride"));
    }
  }

  /**
   * One thing of a copy.
   *
   * @param says as it is shown
   * @param exact what is the same as long as this is
   * @param numbers and these lie no further apart than is the arithmetic of a machine
   */
  private record Thing(
      Part part, String id, String name, String says, Object exact, Double... numbers) {
    boolean same(Thing other, double step) {
      boolean same = Objects.equals(exact, other.exact);
      for (int i = 0; i < numbers.length; i++) {
        Double a = numbers[i];
        Double b = other.numbers[i];
        same &= a == null || b == null ? Objects.equals(a, b) : Math.abs(a - b) <= step;
      }
      return same;
    }
  }

  boolean none() {
    return rows.isEmpty();
  }

  public List<Row> of(Part part) {
    return rows.stream().filter(r -> r.part() == part).toList();
  }

  /** Without figures that are shown the same: they moved by less than a page tells. */
  CopyChanges asShown() {
    return new CopyChanges(rows.stream().filter(r -> !r.then().equals(r.now())).toList());
  }

  static CopyChanges between(
      List<SignedCorner> then, List<SignedCorner> now, LengthUnit thenIn, LengthUnit nowIn) {
    Map<String, SignedCorner> before = byCorner(then);
    Map<String, SignedCorner> after = byCorner(now);
    Map<String, SignedCorner> all = new LinkedHashMap<>(before);
    all.putAll(after);
    List<Row> rows = new ArrayList<>();
    all.forEach((key, c) -> rows(rows, c, before.get(key), after.get(key), thenIn, nowIn));
    rows.sort(Comparator.comparing(Row::part));
    return new CopyChanges(rows);
  }

  private static Map<String, SignedCorner> byCorner(List<SignedCorner> corners) {
    Map<String, SignedCorner> byCorner = new LinkedHashMap<>();
    corners.forEach(c -> byCorner.putIfAbsent(c.corner(), c.withOneMinus()));
    return byCorner;
  }

  /** By what things are of, the newer name told. */
  private static void rows(
      List<Row> into,
      SignedCorner either,
      SignedCorner then,
      SignedCorner now,
      LengthUnit thenIn,
      LengthUnit nowIn) {
    Map<String, Thing> before = things(then, now, thenIn);
    Map<String, Thing> after = things(now, then, nowIn);
    Map<String, Thing> all = new LinkedHashMap<>(before);
    all.putAll(after);
    all.forEach(
        (id, thing) -> {
          Thing a = before.get(id);
          Thing b = after.get(id);
          if (a == null
              || b == null
              || !a.same(b, thing.part() == Part.ALIGNMENT ? SAME_RAD : SAME_MM)) {
            into.add(
                new Row(
                    thing.part(),
                    either.place().words(),
                    thing.name(),
                    a == null ? NOT_THERE : a.says(),
                    b == null ? NOT_THERE : b.says()));
          }
        });
  }

  /**
   * @param corner null where the copy has no such corner
   * @param other what it is held against
   */
  private static Map<String, Thing> things(
      SignedCorner corner, SignedCorner other, LengthUnit unit) {
    Map<String, Thing> things = new LinkedHashMap<>();
    if (corner == null) {
      return things;
    }
    SignedWords words = new SignedWords(corner, unit);
    List<Thing> all = new ArrayList<>();
    all.add(said(Part.TURNED, "the corner", "the corner", corner.outcome()));
    // Where a limit lies is told by the figures; here only what was decided of it.
    corner.limits().stream()
        .map(
            l ->
                said(
                    Part.TURNED, l.end() + ": " + l.what(), l.end() + ": " + l.what(), l.outcome()))
        .forEach(all::add);
    for (SignedCorner.SetTo s : corner.settings()) {
      all.add(said(Part.SETTINGS, s.adjuster(), s.name(), words.text(s)));
    }
    for (SignedCorner.Figure f : corner.figures()) {
      all.add(
          new Thing(
              Part.FIGURES,
              f.name(),
              f.name(),
              words.text(f),
              f.atLeast(),
              f.mm(),
              f.expandedMm()));
    }
    if (corner.alignment() != null && (other == null || other.alignment() != null)) {
      corner.alignment().forEach(a -> aligned(all, a, other, words));
    }
    for (SignedCorner.Rule r : corner.rules()) {
      all.add(said(Part.RULES, r.of(), r.name(), r.says()));
    }
    all.forEach(t -> things.putIfAbsent(t.part() + " " + t.id(), t));
    return things;
  }

  private static Thing said(Part part, String id, String name, String says) {
    return new Thing(part, id, name, says, says);
  }

  /** Against its target only where both held it against one. */
  private static void aligned(
      List<Thing> into, SignedCorner.Aligned a, SignedCorner other, SignedWords words) {
    String name = a.figure().words();
    boolean both =
        other != null
            && other.alignment().stream()
                .anyMatch(o -> o.figure() == a.figure() && o.outcome() != null);
    if (a.outcome() != null && both) {
      into.add(said(Part.TURNED, name, name + " against your target", a.outcome()));
    }
    double perStep = a.figure().angle() ? 1 : SAME_RAD / SAME_MM;
    into.add(
        new Thing(
            Part.ALIGNMENT,
            name,
            name,
            words.text(a),
            a.stands() + " " + a.target(),
            a.value() == null ? null : a.value() * perStep,
            a.expanded() == null ? null : a.expanded() * perStep));
  }
}
