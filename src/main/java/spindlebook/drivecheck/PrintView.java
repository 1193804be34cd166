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
 * @param alignment what is known of it, in one sentence; empty when nothing is
 * @param first what is to see to at this corner; {@code more} is how many more there are
 */
public record PrintView(
    State state,
    String usableWord,
    FigureText usable,
    List<End> ends,
    String positions,
    List<SetTo> settings,
    String alignment,
    List<String> first,
    int more,
    String signed) {

  public record End(String name, State state, String finding, String cure, List<Row> rows) {
    public End {
      rows = List.copyOf(rows);
    }
  }

  public record Row(String name, FigureText figure) {}

  public record SetTo(String name, String to) {}

  public PrintView {
    ends = List.copyOf(ends);
    settings = List.copyOf(settings);
    first = List.copyOf(first);
  }
}
