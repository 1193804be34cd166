package spindlebook.round;

import java.util.List;
import spindlebook.page.Field;

/** A whole round on one page, to be typed from paper. */
public record SheetView(String round, List<Block> blocks) {
  /**
   * One height.
   *
   * @param open the first that is not in the book, and each with something wrong; the others are
   *     folded away behind {@code count}
   * @param selects which place it is
   * @param boxes its spindle and mark, of both ends of an axle
   * @param said what of it is in the book already; null before
   * @param others what the box of 'all others well clear' is called
   */
  public record Block(
      String title,
      String count,
      boolean open,
      List<Select> selects,
      List<Field> boxes,
      String said,
      String others,
      boolean othersClear,
      List<SteeringBlock> steerings) {}

  public record Select(String name, String label, List<Option> options) {}

  public record Option(String value, String word, boolean chosen) {}

  public record SteeringBlock(String words, boolean open, List<Cell> cells) {}

  /** One reading: a box, or what is in the book already. */
  public record Cell(Field field, String said) {}
}
