package spindlebook.ride;

import java.util.List;
import spindlebook.entry.SpringFigure;
import spindlebook.entry.UseUnit;
import spindlebook.fold.Standing;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/**
 * One figure of what carries a corner and ends its motion.
 *
 * @param of the bump stop's short name, and {@code called} its name; null for what is not of one
 * @param value null together with a {@code need}
 * @param outcome null where nothing is decided of it
 * @param counted what a use is counted in; null of any other figure
 * @param stands null where what it rests on simply holds
 */
public record RideFinding(
    SpringFigure figure,
    String of,
    String called,
    Figure value,
    RideNeed need,
    Outcome outcome,
    Standing stands,
    UseUnit counted,
    List<String> readings) {

  /** The same for the same thing on another card. */
  public String id() {
    String name = counted == null ? figure.name() : figure.name() + " " + counted.words();
    return of == null ? name : name + " " + of;
  }

  public String words() {
    return of == null ? figure.words() : figure.words() + ", " + called;
  }
}
