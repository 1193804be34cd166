package spindlebook.recheck;

import java.util.List;
import spindlebook.fastener.FastenerLine;
import spindlebook.telltale.TelltaleView;

/**
 * Ten minutes between two drives.
 *
 * @param drive the last drive in words
 * @param since since when 'touched' counts
 * @param more how many more were touched than are listed
 * @param action where a reading of the chosen corner goes; null for a car without corners
 * @param done what was read at it since the last drive, in words
 * @param blocks what is still to be read at it
 * @param nuts fasteners whose marks are to be looked at, open ones first
 * @param looked how many of its marks were looked at since the last drive
 * @param openToDos how many things are to do on the car
 */
public record ReCheckView(
    String car,
    String drive,
    String since,
    List<Touched> touched,
    int more,
    List<Tab> tabs,
    String action,
    List<String> done,
    List<TelltaleView.Block> blocks,
    List<FastenerLine> nuts,
    int looked,
    int openToDos) {
  /** A corner to choose. */
  public record Tab(String word, String href, boolean here) {}

  public record Touched(String words, String when, String href) {}
}
