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
public record SidesView(List<Tab> tabs, String summary, List<Group> groups, String compareHref) {
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
   * @param apart left less right; null where there are no two numbers
   * @param verdict "differs", "within ±", or why it is not compared
   */
  public record Row(
      String what, Cell left, Cell right, FigureText apart, Found found, String verdict) {
    public boolean differs() {
      return found == Found.DIFFERS;
    }

    boolean measured() {
      return apart != null;
    }
  }

  /** What comparing came to. */
  public enum Found {
    DIFFERS("≠"),
    SAME("="),
    NOT_COMPARED("–");

    private final String sign;

    Found(String sign) {
      this.sign = sign;
    }

    /** Beside the word, so that it is told without colour. */
    public String sign() {
      return sign;
    }
  }

  /**
   * @param figure null where there is no number, with {@code word} instead
   * @param state null for what simply holds
   * @param href where it comes from; null where the page does not lead there
   */
  public record Cell(FigureText figure, String word, State state, String href) {}
}
