package spindlebook.align;

import java.util.List;
import spindlebook.web.ChartDrawing;
import spindlebook.web.FigureText;
import spindlebook.web.State;

/**
 * A curve's page.
 *
 * @param chart null with nothing to draw
 * @param notes sentences under it
 */
public record CurveView(
    String action,
    List<Pickable> things,
    List<Pickable> steerings,
    List<Pickable> against,
    ChartDrawing chart,
    List<String> notes,
    List<Table> tables) {

  /** One entry of a list to choose from. */
  public record Pickable(String value, String word, boolean chosen) {}

  /** What was read: here, or of what it is compared with. */
  public record Table(String caption, List<Row> rows) {}

  /** One reading: where, how the steering stood, what it says, how it stands. */
  public record Row(
      String where,
      FigureText position,
      String steering,
      FigureText value,
      String typed,
      State state,
      String href) {}
}
