package spindlebook.drivecheck;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spindlebook.card.Zero;
import spindlebook.entry.SignedCorner;
import spindlebook.finding.Beside;
import spindlebook.finding.CornerFigure;
import spindlebook.finding.Finding;
import spindlebook.finding.Finding.Group;
import spindlebook.sheet.Cell;
import spindlebook.units.LengthUnit;

/**
 * How two copies of a car differ.
 *
 * @param rows part by part, in each corner by corner
 */
public record CopyChanges(List<Row> rows) {
  /** What differs, in the order in which it weighs. */
  public enum Part {
    /** Limits, corners and targets that are decided otherwise. */
    TURNED,
    /** A margin or a whole travel. */
    WEIGHTY,
    /** What these follow from. */
    FIGURES,
    ALIGNMENT,
    SETTINGS,
    RULES
  }

  /** One thing, then and now. */
  public record Row(Part part, String place, String name, Cell then, Cell now) {}

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
    for (SignedCorner either : all.values()) {
      SignedCorner a = before.get(either.corner());
      SignedCorner b = after.get(either.corner());
      for (Beside beside : Beside.kept(findings(a, b), findings(b, a))) {
        if (beside.changed() && weighs(beside)) {
          rows.add(
              new Row(
                  part(beside),
                  either.place().words(),
                  beside.either().title(),
                  Cell.of(beside.one(), beside.either(), zero(a), thenIn),
                  Cell.of(beside.other(), beside.either(), zero(b), nowIn)));
        }
      }
    }
    rows.sort(Comparator.comparing(Row::part));
    return new CopyChanges(rows);
  }

  private static Map<String, SignedCorner> byCorner(List<SignedCorner> corners) {
    Map<String, SignedCorner> byCorner = new LinkedHashMap<>();
    corners.forEach(c -> byCorner.putIfAbsent(c.corner(), c.withOneMinus()));
    return byCorner;
  }

  /**
   * Alignment where both hold it.
   *
   * @param corner null where the copy has no such corner
   * @param other what it is held against
   */
  private static List<Finding> findings(SignedCorner corner, SignedCorner other) {
    if (corner == null) {
      return List.of();
    }
    boolean both = other == null || other.alignment() != null;
    return SignOffCopy.findings(both ? corner : corner.withoutAlignment());
  }

  static Zero zero(SignedCorner corner) {
    return corner == null ? Zero.FRAME_MARK : new Zero(corner.zeroMm(), corner.zero());
  }

  /** Where a limit lies is told by the figures; of itself only what was decided. */
  private static boolean weighs(Beside beside) {
    Group group = beside.either().group();
    return beside.turned()
        || beside.one() == null
        || beside.other() == null
        || (group != Group.LIMIT && group != Group.MID_TRAVEL);
  }

  private static Part part(Beside beside) {
    Finding of = beside.either();
    boolean whole = of.end() == null && !of.id().equals(CornerFigure.RIDE.name());
    if (beside.turned()) {
      return Part.TURNED;
    }
    return switch (of.group()) {
      case RULES_END, LIMIT, MID_TRAVEL -> Part.TURNED;
      case MARGIN -> Part.WEIGHTY;
      case TOTAL -> whole ? Part.WEIGHTY : Part.FIGURES;
      case STOP, HELD_BACK, SPRING -> Part.FIGURES;
      case ALIGNMENT, SWIVEL -> Part.ALIGNMENT;
      case SETTING -> Part.SETTINGS;
      case RULE -> Part.RULES;
    };
  }
}
