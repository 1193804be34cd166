package spindlebook.round;

import java.util.List;
import spindlebook.web.Field;

/** A whole round on one page, to be typed from paper. */
public record SheetView(String round, List<Block> blocks, int saved, int wrong) {
  public SheetView {
    blocks = List.copyOf(blocks);
  }

  /**
   * One height.
   *
   * @param open the first that is not in the book, and each with something wrong; the others are
   *     folded away behind {@code count}
   * @param said what of it is in the book already; null before
   */
  public record Block(
      String prefix,
      String title,
      String count,
      boolean open,
      List<NameOption> names,
      Field spindle,
      Field mark,
      String said,
      List<SteeringBlock> steerings) {
    Block opened() {
      return new Block(prefix, title, count, true, names, spindle, mark, said, steerings);
    }
  }

  public record NameOption(String value, String word, boolean chosen) {}

  public record SteeringBlock(String words, boolean open, List<Cell> cells) {}

  /** One reading: a box, or what is in the book already. */
  public record Cell(Field field, String said) {}
}
