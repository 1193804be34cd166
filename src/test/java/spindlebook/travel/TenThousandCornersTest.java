package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.function.BiConsumer;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/**
 * Do the book's intervals hold what they promise? 10,000 corners whose true curves are known are
 * read under three models of what is wrong with a tape, and everything is judged as the book judges
 * it. What is printed is kept in docs/methods-travel.md. Another seed: {@code
 * -Dspindlebook.seed=…}; nothing here is chosen to suit one.
 */
class TenThousandCornersTest {
  private static final int CORNERS = 10_000;
  private static final long SEED = Long.getLong("spindlebook.seed", 20261125L);

  @ParameterizedTest
  @EnumSource(TapeError.class)
  void a_limit_lies_in_its_interval(TapeError error) {
    Tally covered = new Tally();
    Map<String, Tally> byCurve = new ConcurrentSkipListMap<>();
    Mean width = new Mean();
    Mean known = new Mean();
    each(
        1,
        (corner, random) -> {
          SimulatedCorner.Sitting sitting = corner.sitting(error, random);
          if (sitting.limit() instanceof EndLimit.Crosses found) {
            double off = Math.abs(found.positionMm().value() - corner.limitMm());
            boolean holds = off <= found.positionMm().U();
            covered.count(holds);
            byCurve.computeIfAbsent(corner.curve().of(), c -> new Tally()).count(holds);
            width.add(2 * found.positionMm().U());
            known.add(KnownCurve.widthMm(corner, sitting.nodes));
          }
        });
    System.out.printf(
        "%s, seed %d: limit covered in %s, mean width %s, knowing the curve %s; by curve %s%n",
        error, SEED, covered, width, known, byCurve);
    assertTrue(covered.percent() >= 95, "covered " + covered);
  }

  @ParameterizedTest
  @EnumSource(TapeError.class)
  void a_stop_truly_at_a_rule_is_hardly_ever_called_clear(TapeError error) {
    Tally elsewhere = new Tally();
    Tally there = new Tally();
    Tally bracket = new Tally();
    each(
        2,
        (corner, random) -> {
          SimulatedCorner readThere = corner.readAtItsLimit();
          elsewhere.count(clear(corner, corner.sitting(error, random)));
          there.count(clear(readThere, readThere.sitting(error, random)));
          bracket.count(clear(readThere, readThere.sitting(error, random).onlyTouching()));
        });
    System.out.printf(
        "%s, seed %d: at its rule called clear in %s, with a reading just there %s, and no number"
            + " past it %s%n",
        error, SEED, elsewhere, there, bracket);
    assertTrue(elsewhere.percent() <= 2.5, "clear " + elsewhere);
    assertTrue(there.percent() <= 2.5, "clear " + there);
    assertTrue(bracket.percent() <= 2.5, "clear " + bracket);
  }

  private static boolean clear(SimulatedCorner corner, SimulatedCorner.Sitting sitting) {
    return sitting.judged(corner.limitMm()).outcome() == Outcome.CLEAR;
  }

  /** u is that of one sitting; another sitting has to decide. */
  @ParameterizedTest
  @EnumSource(TapeError.class)
  void a_margin_of_4_u_is_nearly_always_decided(TapeError error) {
    Tally decided = new Tally();
    Tally wrong = new Tally();
    each(
        3,
        (corner, random) -> {
          SimulatedCorner.Sitting first = corner.sitting(error, random);
          if (first.limit() instanceof EndLimit.Crosses found) {
            Figure room =
                Judged.room(corner.end(), first.stop(corner.limitMm()), found.positionMm());
            boolean inside = random.nextBoolean();
            double out = corner.end().outward() * (inside ? -1 : 1);
            double stopMm = corner.limitMm() + out * 4 * room.u();
            Outcome outcome = corner.sitting(error, random).judged(stopMm).outcome();
            decided.count(outcome == Outcome.CLEAR || outcome == Outcome.SHORT);
            wrong.count(outcome == (inside ? Outcome.SHORT : Outcome.CLEAR));
          }
        });
    System.out.printf(
        "%s, seed %d: at 4 u decided in %s, wrongly in %s%n", error, SEED, decided, wrong);
    assertTrue(decided.percent() >= 90, "decided " + decided);
  }

  @ParameterizedTest
  @EnumSource(TapeError.class)
  void advice_on_a_strap_is_right_within_its_stated_doubt(TapeError error) {
    for (int heights : List.of(2, 3, 4, 5)) {
      Tally change = new Tally();
      Tally wheel = new Tally();
      Tally ratio = new Tally();
      Mean width = new Mean();
      IntStream.range(0, CORNERS / 4)
          .parallel()
          .forEach(
              i -> {
                SimulatedStrap strap = SimulatedStrap.any(heights, error, chance(heights + 10, i));
                change.count(strap.changeHeld());
                wheel.count(strap.wheelHeld());
                ratio.count(strap.ratioHeld());
                width.add(2 * strap.advice().changeMm().U());
              });
      System.out.printf(
          "%s, seed %d, strap read at %d heights: change within its U in %s, mean width %s; at the"
              + " wheel %s; ratio %s%n",
          error, SEED, heights, change, width, wheel, ratio);
      assertTrue(change.percent() >= 95, heights + " heights: " + change);
      assertTrue(wheel.percent() >= 95, heights + " heights: " + wheel);
      assertTrue(ratio.percent() >= 95, heights + " heights: " + ratio);
    }
  }

  private static void each(int test, BiConsumer<SimulatedCorner, Random> corner) {
    IntStream.range(0, CORNERS)
        .parallel()
        .forEach(
            i -> {
              Random random = chance(test, i);
              corner.accept(SimulatedCorner.any(random), random);
            });
  }

  /** Every corner has its own, so that they can be read side by side in any order. */
  private static Random chance(int test, int corner) {
    return new Random(
        new SplittableRandom(SEED * 10_000_019L + test * 100_003L + corner).nextLong());
  }
}
