package spindlebook.finding;

import java.util.List;
import spindlebook.definition.Measure;
import spindlebook.definition.SettingUnit;
import spindlebook.entry.AlignedFigure;
import spindlebook.entry.SpringFigure;
import spindlebook.fold.Standing;
import spindlebook.travel.End;
import spindlebook.travel.MidTravel;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/**
 * One thing that is known of a corner, or is not: what it is, how much, where on the travel, how it
 * stands against what its owner demands, and which readings it rests on.
 *
 * @param end the end of the travel that it is about; null for any other thing
 * @param id the same on every card of the same thing: a limit's names the lock as its wheel sees it
 * @param name in words, without its end: {@code tie rod to upper arm, full right}
 * @param figure mm or rad, of springs and stops what their figure is counted in; null where it is
 *     said in words, or not known. Of a stop its place, of a limit the room from where the stop
 *     lets the wheel go, negative past it; of a margin negative past it
 * @param position wheel position in mm, + towards bump, from the zero of spindle minus frame mark:
 *     where it is on the travel; of what is held back where that lets the wheel go in the end, of a
 *     margin where the stop would have to be, in mid-travel where it begins towards droop. Null
 *     where it has no place or none is known
 * @param verdict null where nothing is decided of it
 * @param stands the worst of what it rests on; null where that simply holds, or is not known
 * @param readings keys of the entries that were read for it, each once; none where it was typed
 * @param of the finding that it is taken from, with all there is to it: {@code Limit}, {@code
 *     EndFindings}, {@code MidTravel}, {@code AlignedFinding}, {@code RideFinding}, {@code
 *     InForce}, {@code TravelFindings}; null for what was typed, or kept
 * @param says in words what has no figure: how it is set, what is demanded, that it is not known
 * @param value what is held against another one's where there is no figure
 * @param unknown why it cannot be held against another; null where it can
 * @param bound why its figure is no more than a bound; null where it is not
 */
public record Finding(
    Group group,
    End end,
    String id,
    String name,
    Figure figure,
    Figure position,
    Outcome verdict,
    Standing stands,
    List<String> readings,
    Object of,
    String says,
    Object value,
    String unknown,
    String bound) {

  /** What it is, in the order of every page. */
  public enum Group {
    /** Where the strap, and the bump stop, ends the motion. */
    STOP("Stops"),
    HELD_BACK("Held back"),
    /** Which limit of an end comes first. */
    RULES_END("Margins"),
    MARGIN("Margins"),
    LIMIT("Room to each limit"),
    /** A rule broken, or not surely kept, between the ends. */
    MID_TRAVEL("Room to each limit"),
    TOTAL("Travel"),
    SETTING("Settings"),
    /** What is demanded, held back, given and aimed at, as its owner typed it. */
    RULE("Rules and numbers"),
    ALIGNMENT("Alignment"),
    /** How far rod ends and uniballs swing, as the linkage makes it. */
    SWIVEL("Rod ends and uniballs"),
    /** What carries it, what ends its motion softly, how its strap lasts. */
    SPRING("Springs and stops");

    private final String title;

    Group(String title) {
      this.title = title;
    }

    public String title() {
      return title;
    }
  }

  /** Nothing known of it yet. */
  public static Finding of(Group group, End end, String id, String name) {
    return new Finding(
        group, end, id, name, null, null, null, null, List.of(), null, "", null, null, null);
  }

  public Finding figure(Figure mm, Figure at) {
    return new Finding(
        group, end, id, name, mm, at, verdict, stands, readings, of, says, value, unknown, bound);
  }

  public Finding decided(Outcome outcome, Standing worst) {
    return new Finding(
        group, end, id, name, figure, position, outcome, worst, readings, of, says, value, unknown,
        bound);
  }

  Finding from(List<String> keys, Object finding) {
    return new Finding(
        group, end, id, name, figure, position, verdict, stands, keys, finding, says, value,
        unknown, bound);
  }

  public Finding says(String words, Object amount) {
    return new Finding(
        group, end, id, name, figure, position, verdict, stands, readings, of, words, amount,
        unknown, bound);
  }

  /** Why it cannot be held against another, and why its figure is no more than a bound. */
  public Finding unsure(String why, String atMost) {
    return new Finding(
        group, end, id, name, figure, position, verdict, stands, readings, of, says, value, why,
        atMost);
  }

  /** With its end, where the name alone does not tell it: {@code droop: tie rod to upper arm}. */
  public String title() {
    return switch (group) {
      case LIMIT -> end.words() + ": " + name;
      case MID_TRAVEL -> "mid-travel: " + name;
      default -> name;
    };
  }

  /**
   * Its verdict in a word, or what it is worth where that does not hold; empty without either. The
   * one table of these words.
   */
  public String word() {
    if (stands != null) {
      return stands.words();
    }
    if (verdict == null) {
      return "";
    }
    boolean room = group == Group.LIMIT || group == Group.MARGIN || group == Group.RULES_END;
    boolean angle =
        group == Group.ALIGNMENT
            || group == Group.SWIVEL
            || (of instanceof MidTravel m && m.point().place().measure() == Measure.ANGLE);
    return switch (verdict) {
      case SHORT ->
          room
              ? "past it"
              : group == Group.SPRING ? "too little" : angle ? "too much" : "too close";
      case CANT_TELL -> "can't tell";
      case NEEDS -> "not measured";
      case CLEAR -> room ? "to spare" : "clear";
    };
  }

  /** The value of a setting. */
  record SetTo(SettingUnit unit, String amount) {}

  /** Whether it is a number, known or not. */
  boolean number() {
    return switch (group) {
      case STOP, HELD_BACK, MARGIN, TOTAL, ALIGNMENT, SWIVEL, SPRING -> true;
      case RULES_END, LIMIT, MID_TRAVEL, SETTING, RULE -> false;
    };
  }

  /** Whether it is an angle, in radians; else a length in millimetres. */
  boolean angle() {
    return group == Group.SWIVEL || (group == Group.ALIGNMENT && AlignedFigure.valueOf(id).angle());
  }

  /** Whether both wheels of an axle have it in common. */
  boolean ofAxle() {
    return group == Group.ALIGNMENT && AlignedFigure.valueOf(id).thing().ofAxle();
  }

  /** Whether its figure is a wheel position, to be shown from the zero of its page. */
  public boolean isPlace() {
    return group == Group.STOP;
  }

  /** Whether it rests on where the frame mark of its corner is. */
  boolean ofMark() {
    return isPlace()
        || id.equals(CornerFigure.RIDE.name())
        || (group == Group.SPRING && id.equals(SpringFigure.SITS_AT.name()));
  }

  /** Whether it is known as no more than at least so much. */
  public boolean atLeast() {
    return figure != null && bound != null;
  }
}
