package spindlebook.align;

import java.util.List;
import spindlebook.web.ChartDrawing;
import spindlebook.web.FigureText;
import spindlebook.web.Link;
import spindlebook.web.State;

/**
 * A curve's page.
 *
 * @param drawn what it is a curve of
 * @param told what must be known to read the chart at all, above it
 * @param chart null with nothing to draw
 * @param notes sentences under it
 * @param reading what a table's last column counts and what a + of it means
 * @param states what the marks in the tables mean, those that are there
 */
public record CurveView(
    String action,
    String drawn,
    List<Pickable> things,
    List<Pickable> steerings,
    List<Pickable> against,
    List<Told> told,
    ChartDrawing chart,
    List<String> notes,
    String reading,
    List<Table> tables,
    List<StateSaid> states) {

  /** One entry of a list to choose from. */
  public record Pickable(String value, String word, boolean chosen) {}

  /**
   * @param link what to do about it; null where there is nothing to do
   */
  public record Told(String words, Link link) {}

  /**
   * What was read: here, or of what it is compared with.
   *
   * @param from what its positions are counted from: "from ride"
   */
  public record Table(String caption, String from, List<Group> groups) {}

  /**
   * @param name how the steering stood, or an axle's ends; empty where the caption says it
   */
  public record Group(String name, List<Row> rows) {}

  /**
   * One reading.
   *
   * @param where the height, by the owner's own words for it where there are any
   * @param more what that does not say of the height; may be empty
   * @param values the same reading in each unit it is said in; empty where it is no number
   */
  public record Row(
      String where,
      String more,
      FigureText position,
      List<FigureText> values,
      String typed,
      State state,
      String href) {}

  public record StateSaid(State state, String words) {}
}
