package spindlebook.round;

import java.util.List;
import spindlebook.web.Field;

/**
 * A whole round on one page, to be typed from paper.
 *
 * @param prefixes of the blocks still to be filled and of those begun
 */
public record SheetView(String round, List<Block> blocks, int saved, int wrong) {
  public SheetView {
    blocks = List.copyOf(blocks);
  }

  /** One height. {@code said} is what of it is in the book already; null before. */
  public record Block(
      String prefix,
      String title,
      List<NameOption> names,
      Field spindle,
      Field mark,
      String said,
      List<SteeringBlock> steerings) {}

  public record NameOption(String value, String word, boolean chosen) {}

  public record SteeringBlock(String words, boolean open, List<Cell> cells) {}

  /** One reading: a box, or what is in the book already. */
  public record Cell(Field field, String said) {}
}
