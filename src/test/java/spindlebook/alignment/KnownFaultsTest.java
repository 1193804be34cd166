package spindlebook.alignment;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import spindlebook.curve.Bound;
import spindlebook.curve.Node;
import spindlebook.definition.RackSide;
import spindlebook.entry.LineSide;
import spindlebook.fold.ToolError;
import spindlebook.uncertainty.Figure;

/**
 * 1,000 rigid corners (not the program's) with a known tie-rod fault, toe read against a line with
 * 1/32 in of error at both places.
 */
class KnownFaultsTest {
  private static final long SEED = 20261125;
  private static final int CORNERS = 1000;
  private static final double NOISE_MM = 25.4 / 32;
  private static final ToolError TAPE = new ToolError("tape", 0, NOISE_MM, 0);

  private int wrong;
  private int silent;
  private int opposite;
  private int large;
  private int largeCantTell;
  private int small;
  private int smallCantTell;

  @Test
  void the_fault_that_was_made_is_the_fault_that_is_named() {
    for (long seed : new long[] {SEED, SEED + 100, SEED + 200, SEED + 300}) {
      wrong = opposite = silent = large = largeCantTell = small = smallCantTell = 0;
      named(seed);
    }
  }

  private void named(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < CORNERS; i++) {
      RackSide rack = i % 2 == 0 ? RackSide.BEHIND_AXLE : RackSide.AHEAD_OF_AXLE;
      judge(random, RandomCorner.neutral(random, rack), rack, i % 3);
    }
    System.out.printf(
        "known faults, seed %d: %d corners, wrong %d, opposite %d, nothing said %d;"
            + " over three times: %d, can't tell %d; smaller: %d, can't tell %d%n",
        seed, CORNERS, wrong, opposite, silent, large, largeCantTell, small, smallCantTell);
    assertTrue(large >= 400, () -> "only " + large + " faults are large enough to ask about");
    assertTrue(wrong <= CORNERS / 100, () -> wrong + " of " + CORNERS + " named wrong");
    assertTrue(largeCantTell <= 0.05 * large, () -> largeCantTell + " of " + large + " can't tell");
  }

  @Test
  void a_rod_without_fault_is_hardly_ever_blamed() {
    Random random = new Random(SEED + 1);
    int blamed = 0;
    for (int i = 0; i < CORNERS / 2; i++) {
      RackSide rack = i % 2 == 0 ? RackSide.BEHIND_AXLE : RackSide.AHEAD_OF_AXLE;
      BumpShape shape = shape(random, RandomCorner.neutral(random, rack));
      blamed += ShapeMeaning.of(shape, rack).said().isEmpty() ? 0 : 1;
    }
    int found = blamed;
    System.out.println("no fault: 500 corners, blamed " + found);
    assertTrue(blamed <= CORNERS / 2 / 100, () -> found + " of 500 blamed");
  }

  @Test
  void an_inner_end_moved_level_is_called_too_long_or_too_short_first() {
    Random random = new Random(SEED + 2);
    int said = 0;
    int length = 0;
    int opposite = 0;
    for (int i = 0; i < CORNERS / 2; i++) {
      RackSide rack = i % 2 == 0 ? RackSide.BEHIND_AXLE : RackSide.AHEAD_OF_AXLE;
      RigidCorner neutral = RandomCorner.neutral(random, rack);
      double inward = (random.nextBoolean() ? 1 : -1) * (20 + 80 * random.nextDouble());
      RigidCorner corner =
          neutral.withRod(neutral.tieInner().add(-inward, Vector3D.PLUS_J), neutral.tieOuter());
      ShapeMeaning meaning = ShapeMeaning.of(shape(random, corner), rack);
      if (!meaning.said().isEmpty()) {
        said++;
        length += meaning.said().get(0).fault().height() ? 0 : 1;
        boolean tooLong = meaning.length().fault() == TieRodFault.TOO_LONG;
        opposite += meaning.length().sureness().said() && tooLong != (inward > 0) ? 1 : 0;
      }
    }
    System.out.printf(
        "inner end moved level: said %d, length first %d, opposite %d%n", said, length, opposite);
    assertTrue(said >= 0.9 * CORNERS / 2);
    assertTrue(length >= 0.9 * said);
    assertTrue(opposite <= CORNERS / 2 / 100);
  }

  /** Kind 0: outer end too high or low; 1: rod too long or short; 2: both. */
  private void judge(Random random, RigidCorner neutral, RackSide rack, int kind) {
    int height = kind == 1 ? 0 : random.nextBoolean() ? 1 : -1;
    int length = kind == 0 ? 0 : random.nextBoolean() ? 1 : -1;
    RigidCorner corner =
        neutral
            .outerUp(height * (4 + 16 * random.nextDouble()))
            .rodLonger(length * (20 + 80 * random.nextDouble()));
    BumpShape shape = shape(random, corner);
    ShapeMeaning meaning = ShapeMeaning.of(shape, rack);
    boolean named = true;
    for (FaultSeen seen : meaning.said()) {
      int made = seen.fault().height() ? height : length;
      int said =
          seen.fault() == TieRodFault.OUTER_TOO_HIGH || seen.fault() == TieRodFault.TOO_LONG
              ? 1
              : -1;
      named &= made == said;
      opposite += made == -said ? 1 : 0;
    }
    wrong += named ? 0 : 1;
    silent += meaning.said().isEmpty() ? 1 : 0;
    count(height, corner.slope(0), meaning.height());
    count(length, corner.curvature(0), meaning.length());
  }

  private void count(int made, double truth, FaultSeen seen) {
    if (made == 0) {
      return;
    }
    boolean said = seen.sureness().said();
    if (Math.abs(truth) > 3 * ShapeMeaning.seen(seen.figure())) {
      large++;
      largeCantTell += said ? 0 : 1;
    } else {
      small++;
      smallCantTell += said ? 0 : 1;
    }
  }

  private static BumpShape shape(Random random, RigidCorner corner) {
    double half = 90 + 40 * random.nextDouble();
    int places = 5 + random.nextInt(11);
    double spacing = 600 + 240 * random.nextDouble();
    List<Node> nodes = new ArrayList<>();
    for (int i = 0; i < places; i++) {
      double z = -half + 2 * half * i / (places - 1);
      double toe = corner.toe(z);
      Figure front = read(random, 150 - spacing / 2 * Math.sin(toe), "front " + i);
      Figure rear = read(random, 150 + spacing / 2 * Math.sin(toe), "rear " + i);
      Toe read =
          ToeReading.fromLine(
              front, rear, Figure.exact(spacing), LineSide.INBOARD, Figure.exact(0));
      Figure position = read(random, z, "height " + i);
      nodes.add(new Node(position, read.rad(), Bound.EXACT, List.of("toe " + i)));
    }
    return new BumpSteer(nodes).shape(new Window(-half - 5, half + 5), 0).orElseThrow();
  }

  private static Figure read(Random random, double truthMm, String id) {
    return TAPE.read(truthMm + NOISE_MM * (2 * random.nextDouble() - 1), id, id);
  }
}
