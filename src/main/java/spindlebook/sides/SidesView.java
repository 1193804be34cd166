package spindlebook.sides;

import java.util.List;
import spindlebook.web.FigureText;
import spindlebook.web.State;

/**
 * Left against right, of one end of the car.
 *
 * @param tabs the ends of the car that have both corners; empty when there is one
 * @param summary how many differ by more than their ±
 */
public record SidesView(List<Tab> tabs, String summary, List<Group> groups) {
  public SidesView {
    tabs = List.copyOf(tabs);
    groups = List.copyOf(groups);
  }

  public record Tab(String word, String href, boolean here) {}

  /**
   * @param folded closed until it is asked for: nothing in it differs
   * @param counted how many are in it
   */
  public record Group(String title, boolean folded, String counted, List<Row> rows) {
    public Group {
      rows = List.copyOf(rows);
    }
  }

  /**
   * One thing of both sides.
   *
   * @param apart left less right; null when it is not compared
   * @param verdict "differs", "within ±", or why it is not compared
   */
  public record Row(
      String what, Cell left, Cell right, FigureText apart, boolean differs, String verdict) {
    boolean compared() {
      return apart != null;
    }

    /** The sign beside the word, so that it is told without colour. */
    public String sign() {
      return differs ? "≠" : apart != null ? "=" : "–";
    }
  }

  /**
   * @param figure null where there is no number, with {@code word} instead
   * @param state null for what simply holds
   * @param href where it comes from; null where the page does not lead there
   */
  public record Cell(FigureText figure, String word, State state, String href) {}
}
