package spindlebook.travel;

import java.util.Random;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * What is wrong with a reading, and what the reader says of it: the truth is put out by the hand
 * and by the tool's bias, both evenly within their half widths, then rounded to the graduation.
 */
enum TapeError {
  ROUNDING(false, false),
  PLACING(true, false),
  BIAS(true, true);

  private final boolean placed;
  private final boolean biased;

  TapeError(boolean placed, boolean biased) {
    this.placed = placed;
    this.biased = biased;
  }

  /** One tool on one day: it reads long or short by the same amount all day. */
  final class Tool {
    private final String name;
    private final double graduation;
    private final double placing;
    private final double classWidth;
    private final double bias;

    Tool(String name, double graduation, double placing, double classWidth, Random random) {
      this.name = name;
      this.graduation = graduation;
      this.placing = placed ? placing : 0;
      this.classWidth = biased ? classWidth : 0;
      this.bias = spread(random, this.classWidth);
    }

    double bias() {
      return bias;
    }

    Figure read(String id, double truth, Random random) {
      return read(id, truth, random, SourceKind.PLACING);
    }

    Figure read(String id, double truth, Random random, SourceKind hand) {
      double seen = truth + bias + spread(random, placing);
      return Figure.exact(Math.rint(seen / graduation) * graduation)
          .withSource(new Source(id, SourceKind.RESOLUTION), Rectangular.resolutionU(graduation))
          .withSource(new Source(id, hand), Rectangular.u(placing))
          .withSource(new Source(name, SourceKind.TOOL), Rectangular.u(classWidth));
    }
  }

  /** To 1/16 in, placed to ± 1/32 in, true to ± 1/32 in: what a new car's book starts with. */
  Tool tape(Random random) {
    return new Tool("tape", 25.4 / 16, 25.4 / 32, 25.4 / 32, random);
  }

  /** Drills by 1/64 in, held to ± 1/64 in; a worn set by half of that. */
  Tool shanks(Random random) {
    return new Tool("shanks", 25.4 / 64, 25.4 / 64, 25.4 / 128, random);
  }

  /** To 0.1°, held to ± 0.1°, true to ± 0.1°. */
  Tool angleFinder(Random random) {
    double tenth = Math.toRadians(0.1);
    return new Tool("finder", tenth, tenth, tenth, random);
  }

  static double spread(Random random, double halfWidth) {
    return (2 * random.nextDouble() - 1) * halfWidth;
  }
}
