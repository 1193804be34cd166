package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import spindlebook.curve.Bound;
import spindlebook.curve.Node;
import spindlebook.curve.Rule;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * Does value ± U of a limit hold the true limit in at least 95 of 100 corners? Corners are
 * invented: slope and bend of the true gap as in the gap table of the reference corner (0.39 to
 * 0.65 per mm, second derivative about −0.0009 per mm), and up to half as much again, bent either
 * way. Each is read at 4 to 7 heights with a tape to 1/16 in, placed to ± 1/32 in, with a mark read
 * once and tools that read long or short all day.
 */
class LimitCoverageTest {
  private static final double SIXTEENTH = 25.4 / 16;
  private static final double PLACING = 25.4 / 32;
  private static final double TAPE_CLASS = 0.8;
  private static final double GAP_TOOL_CLASS = 0.3;
  private static final double LIMIT = 12.7;

  @Test
  void the_stated_uncertainty_of_a_limit_covers_the_truth_in_95_of_100_corners() {
    Random random = new Random(20250101);
    int corners = 500;
    int covered = 0;
    double width = 0;
    for (int i = 0; i < corners; i++) {
      Corner corner = Corner.any(random);
      EndLimit.Crosses found = limit(corner, random);
      assertEquals(EndLimit.How.CUBIC, found.how());
      Figure limit = found.positionMm();
      width += 2 * limit.U() / corners;
      covered += Math.abs(limit.value() - corner.limitMm) <= limit.U() ? 1 : 0;
    }
    System.out.printf(
        "limit covered in %.1f %% of %d corners, mean width %.1f mm%n",
        100.0 * covered / corners, corners, width);
    assertTrue(covered >= 0.95 * corners, covered + " of " + corners);
    assertTrue(width < 20, "an interval that covers everything says nothing: " + width);
  }

  private static EndLimit.Crosses limit(Corner corner, Random random) {
    while (true) {
      Along along = RuleAlongTravel.along(readings(corner, random), new Rule.AtLeast(LIMIT));
      // Noise can hide a limit next to the last reading; such a corner is read again.
      if (along.droop() instanceof EndLimit.Crosses droop) {
        return droop;
      }
    }
  }

  private static List<Node> readings(Corner corner, Random random) {
    double tapeBias = spread(random, TAPE_CLASS);
    double toolBias = spread(random, GAP_TOOL_CLASS);
    Figure mark = taped("mark", 820, tapeBias, random, SourceKind.MARK);
    List<Node> nodes = new ArrayList<>();
    for (double height : corner.heightsMm) {
      Figure spindle = taped("h" + height, 820 + height, tapeBias, random, SourceKind.PLACING);
      double gap = corner.gap.applyAsDouble(height) + toolBias + spread(random, PLACING);
      Figure value =
          read("gap at " + height, gap)
              .withSource(new Source("gap tool", SourceKind.TOOL), Rectangular.u(GAP_TOOL_CLASS));
      nodes.add(new Node(spindle.minus(mark), value, Bound.EXACT, List.of("@" + height)));
    }
    return nodes;
  }

  private static Figure taped(
      String id, double trueMm, double bias, Random random, SourceKind placing) {
    return Figure.exact(rounded(trueMm + bias + spread(random, PLACING)))
        .withSource(new Source(id, placing), Rectangular.u(PLACING))
        .withSource(new Source(id, SourceKind.RESOLUTION), Rectangular.resolutionU(SIXTEENTH))
        .withSource(new Source("tape", SourceKind.TOOL), Rectangular.u(TAPE_CLASS));
  }

  private static Figure read(String id, double placedMm) {
    return Figure.exact(rounded(placedMm))
        .withSource(new Source(id, SourceKind.PLACING), Rectangular.u(PLACING))
        .withSource(new Source(id, SourceKind.RESOLUTION), Rectangular.resolutionU(SIXTEENTH));
  }

  private static double rounded(double mm) {
    return Math.rint(mm / SIXTEENTH) * SIXTEENTH;
  }

  private static double spread(Random random, double halfWidth) {
    return (2 * random.nextDouble() - 1) * halfWidth;
  }

  /**
   * A true gap that opens towards bump, its heights from droop to bump, and where it meets 12.7.
   */
  private record Corner(DoubleUnaryOperator gap, List<Double> heightsMm, double limitMm) {
    static Corner any(Random random) {
      while (true) {
        double slope = 0.35 + 0.35 * random.nextDouble();
        double bend = spread(random, 0.0014);
        double third = spread(random, 4e-6);
        double[] heights = new double[4 + random.nextInt(4)];
        double from = -280 + 40 * random.nextDouble();
        double step = (280 + 60 * random.nextDouble()) / (heights.length - 1);
        for (int i = 0; i < heights.length; i++) {
          heights[i] = from + step * (i + spread(random, 0.2));
        }
        double last = heights[heights.length - 1];
        double limit = heights[0] + (last - heights[0]) * (0.05 + 0.9 * random.nextDouble());
        DoubleUnaryOperator gap =
            x -> {
              double d = x - limit;
              return LIMIT + d * (slope + d * (bend / 2 + d * third / 6));
            };
        if (opens(gap, heights[0], last)) {
          return new Corner(gap, Arrays.stream(heights).boxed().toList(), limit);
        }
      }
    }

    private static boolean opens(DoubleUnaryOperator gap, double from, double to) {
      for (double x = from; x < to; x += 2) {
        if (gap.applyAsDouble(x + 2) - gap.applyAsDouble(x) < 0.1) {
          return false;
        }
      }
      return true;
    }
  }
}
