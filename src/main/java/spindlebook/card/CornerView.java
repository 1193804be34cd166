package spindlebook.card;

import java.util.List;
import spindlebook.web.BladeDrawing;
import spindlebook.web.FigureText;
import spindlebook.web.GapSheet;
import spindlebook.web.Link;
import spindlebook.web.SettingRow;
import spindlebook.web.State;

/**
 * One corner's page.
 *
 * @param corner its key; null on a page from which nothing is done
 * @param blade null before the first height with a known position
 * @param positions what positions are counted from, one sentence
 * @param stale null when all holds
 * @param gaps one block a height, from the highest down
 */
public record CornerView(
    String corner,
    BladeDrawing blade,
    Usable asSet,
    Usable asItCouldBe,
    List<EndView> ends,
    List<MidTravelView> midTravel,
    List<GapBlock> gaps,
    List<SettingRow> settings,
    StaleList stale,
    List<DoubtRow> doubts,
    List<HeightRow> heights,
    List<Link> more,
    String raw,
    String positions) {

  /** The same to look at: nothing on it starts a change, and its heights are the book's entries. */
  CornerView toLookAt(List<Link> instead) {
    return new CornerView(
        null,
        blade,
        asSet,
        asItCouldBe,
        ends.stream().map(EndView::toLookAt).toList(),
        midTravel,
        gaps,
        settings.stream().map(s -> new SettingRow(s.what(), s.now(), s.since(), null)).toList(),
        stale,
        doubts.stream().map(d -> new DoubtRow(d.key(), d.what(), d.doubt(), null)).toList(),
        heights.stream().map(HeightRow::toLookAt).toList(),
        instead,
        raw,
        positions);
  }

  /** A rule in mid-travel, in one sentence. */
  public record MidTravelView(State state, String words) {}

  /**
   * The gaps of one height, folded away unless one of them is short.
   *
   * @param counts how many are in each state, worst first
   */
  public record GapBlock(
      String name, FigureText position, List<Count> counts, boolean open, GapSheet sheet) {}

  public record Count(State state, int of) {}

  /**
   * Usable travel, whole and split about ride.
   *
   * @param figure null with {@code needs} said instead
   */
  public record Usable(
      String title,
      FigureText figure,
      String note,
      FigureText droop,
      FigureText bump,
      String needs) {}

  /**
   * One end: what it comes to, and the lines it is made of.
   *
   * @param cureHref where that change is prepared, as far as it is known; null without a cure
   */
  public record EndView(
      String title,
      State state,
      String finding,
      String cure,
      String cureHref,
      List<LineView> lines,
      List<NeedView> needs,
      String needsHref) {
    EndView toLookAt() {
      List<NeedView> said = needs.stream().map(n -> new NeedView(n.words(), null)).toList();
      return new EndView(title, state, finding, cure, null, lines, said, null);
    }
  }

  /**
   * One term of an end's sum.
   *
   * @param readings what it rests on, each with its own page
   */
  public record LineView(String words, FigureText figure, State state, List<Link> readings) {}

  /**
   * @param href where it is given or read; null where that is only told
   */
  public record NeedView(String words, String href) {}

  /** What is to be read again; {@code open} while it is short. */
  public record StaleList(List<StaleRow> rows, boolean open) {}

  /** A reading, or a named height, that no longer holds. */
  public record StaleRow(String what, State state, String because) {}

  /**
   * An entry that waits for an answer.
   *
   * @param answerHref null where that is only told
   */
  public record DoubtRow(String key, String what, String doubt, String answerHref) {}

  public record HeightRow(
      String key, String name, FigureText position, State state, String detail, String href) {
    HeightRow toLookAt() {
      return new HeightRow(key, name, position, state, detail, "/entries/" + key);
    }
  }
}
