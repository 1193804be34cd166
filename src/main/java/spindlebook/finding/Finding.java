package spindlebook.finding;

import java.util.List;
import spindlebook.corner.AlignedFigure;
import spindlebook.corner.SettingUnit;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/**
 * One thing that is known of a corner, or is not.
 *
 * @param id the same on every card of the same thing: a limit's names the lock as its wheel sees it
 * @param figure null where it is said in words, or not known; of a limit its room
 * @param says in words what has no figure: how it is set, what is demanded, that it is not known
 * @param value what is held against another one's where there is no figure
 * @param unknown why it cannot be held against another; null where it can
 * @param bound why its figure is no more than a bound; null where it is not
 * @param verdict null where nothing is decided of it
 */
public record Finding(
    Group group,
    String id,
    String name,
    Figure figure,
    String says,
    Object value,
    String unknown,
    String bound,
    Outcome verdict,
    List<String> readings) {

  /** What it is, in the order of every page. */
  public enum Group {
    SETTING("Settings"),
    NEAREST("Figures"),
    FIGURE("Figures"),
    LIMIT("Room to each limit"),
    MID_TRAVEL("Room to each limit"),
    ALIGNMENT("Alignment"),
    RULE("Rules and numbers");

    private final String title;

    Group(String title) {
      this.title = title;
    }

    public String title() {
      return title;
    }
  }

  /** The value of a setting. */
  record SetTo(SettingUnit unit, String amount) {}

  /** Whether it is a number, known or not. */
  boolean number() {
    return group == Group.FIGURE || group == Group.ALIGNMENT;
  }

  /** Whether it is an angle, in radians; else a length in millimetres. */
  boolean angle() {
    return group == Group.ALIGNMENT && AlignedFigure.valueOf(id).angle();
  }

  /** Whether both wheels of an axle have it in common. */
  boolean ofAxle() {
    return group == Group.ALIGNMENT && AlignedFigure.valueOf(id).thing().ofAxle();
  }

  /** Whether it is known as no more than at least so much. */
  public boolean atLeast() {
    return figure != null && bound != null;
  }
}
