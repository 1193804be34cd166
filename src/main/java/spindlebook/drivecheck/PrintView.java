package spindlebook.drivecheck;

import java.util.List;
import spindlebook.web.FigureText;
import spindlebook.web.State;

/**
 * One corner on one sheet of paper, to be read at arm's length.
 *
 * @param usableWord what the one large figure is: as it could be, as set, or why there is none
 * @param usable null where there is no total
 * @param positions what positions are counted from
 * @param settings in force, those that nobody has said left out
 * @param alignment what is known of it
 * @param first what is to see to at this corner; {@code more} is how many more there are
 */
public record PrintView(
    State state,
    String usableWord,
    FigureText usable,
    List<End> ends,
    String positions,
    List<SetTo> settings,
    List<AlignedRow> alignment,
    List<String> first,
    int more,
    String signed) {

  public record End(String name, State state, String finding, String cure, List<Row> rows) {
    public End {
      rows = List.copyOf(rows);
    }
  }

  public record Row(String name, FigureText figure) {}

  /**
   * @param state null where there is nothing to say
   */
  public record AlignedRow(String name, FigureText figure, State state) {}

  public record SetTo(String name, String to) {}

  public PrintView {
    ends = List.copyOf(ends);
    settings = List.copyOf(settings);
    alignment = List.copyOf(alignment);
    first = List.copyOf(first);
  }
}
