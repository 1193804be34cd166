package spindlebook.advice;

import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import spindlebook.card.TravelWords;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.HeightName;
import spindlebook.entry.Quantity;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.travel.CornerBench;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Limit;
import spindlebook.travel.Need;
import spindlebook.travel.StandardCorner;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Settles;

/**
 * Somebody with a half-read corner does what is to be read next, with what a simple corner would
 * really read, until nothing more is asked: then both ends are decided, or it is said why not.
 *
 * <p>A longer walk: {@code mvn -q test -Dtest=FollowAdviceTest -Dadvice.corners=2000}.
 */
class FollowAdviceTest {
  private static final int CORNERS = Integer.getInteger("advice.corners", 30);
  private static final int MOST_STEPS = 60;
  private static final double SIXTEENTH_MM = 25.4 / 16;

  /** The corner of {@link StandardCorner} with an arm and a shaft, each met at one place. */
  private static final class Walk {
    private final Random random;
    private final Map<HeightName, Double> places = new EnumMap<>(HeightName.class);
    private final double armMm;
    private final double shaftMm;
    private final double slope;
    private final CornerBench bench;
    private final Map<Need, Integer> taken = new HashMap<>();
    private int next;

    Walk(long seed) {
      random = new Random(seed);
      places.put(HeightName.STRAP_OFF, 150.0);
      places.put(HeightName.ON_THE_STRAP, 254 + spread(20));
      places.put(HeightName.RIDE, 400.0);
      // The gap to the pad closes by 0.6 per mm of wheel; 24 mm of crush are 40 at the wheel.
      places.put(HeightName.STOP_TOUCH, 460 + spread(10));
      places.put(HeightName.FULL_BUMP, places.get(HeightName.STOP_TOUCH) + 40);
      armMm = 200 + spread(70);
      shaftMm = 560 + spread(70);
      slope = 0.1 + 0.3 * random.nextDouble();
      bench =
          StandardCorner.chosen(CornerBench.realTools().oneMark())
              .given("stop-crush", 24)
              .watch("shaft", "drive-shaft-frame", "{\"least\":\"10 mm\"}");
      for (HeightName name : places.keySet()) {
        if (random.nextInt(3) > 0) {
          String key = height(name, places.get(name));
          for (String what : List.of("arm", "shaft", "strap-length", "shock-length")) {
            if (random.nextInt(3) > 0) {
              read(what, key, places.get(name));
            }
          }
        }
      }
    }

    private double spread(double halfMm) {
      return halfMm * (2 * random.nextDouble() - 1);
    }

    private String height(HeightName name, double mm) {
      String key = "h" + next++;
      bench.height(key, word(name), tape(mm));
      return key;
    }

    private static String word(Enum<?> name) {
      return name.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** As a tape in sixteenths would say it. */
    private static double tape(double mm) {
      return Math.rint(mm / SIXTEENTH_MM) * SIXTEENTH_MM;
    }

    private void read(String what, String height, double mm) {
      switch (what) {
        case "arm" -> gap(what, height, 6 + slope * (mm - armMm));
        case "shaft" -> gap(what, height, 10 + slope * (shaftMm - mm));
        case "stop-gap" ->
            bench.length(
                what, height, tape(0.6 * Math.max(0, places.get(HeightName.STOP_TOUCH) - mm)));
        case "strap-length" -> bench.length(what, height, tape(635 - mm / 2));
        default -> bench.length(what, height, tape(700 - mm / 2));
      }
    }

    private void gap(String point, String height, double mm) {
      if (mm < 0) {
        bench.looked(point, height, "touches");
      } else {
        bench.gap(point, height, tape(mm));
      }
    }

    /** The first that is to be had with this tape and an evening's patience. */
    Optional<NextReading> advised(Card card) {
      return NextReading.ranked(card, CornerTravel.of(card)).stream()
          .filter(n -> n.settles() == null || !tooMuch(n.settles()))
          .findFirst();
    }

    /** A finer tool is not at hand, and nobody reads one place more than five times. */
    static boolean tooMuch(Settles settles) {
      return settles instanceof Settles.FinerTool
          || settles instanceof Settles.RepeatsWithFinerTool
          || times(settles) > 5;
    }

    private static int times(Settles settles) {
      return settles instanceof Settles.Repeats repeats
          ? repeats.n()
          : settles instanceof Settles.RepeatsOrFinerTool either ? either.n() : 2;
    }

    void take(Card card, NextReading advice) {
      ToRead read = advice.need().toRead();
      assertTrue(read != null, "everything is given: " + advice);
      int before = taken.merge(advice.need(), 1, Integer::sum);
      assertTrue(before <= Settles.MOST, "asked for again and again: " + advice);
      if (read.quantity() == null) {
        height(read.name(), places.get(read.name()));
        return;
      }
      String what = read.quantity() == Quantity.WATCH_POINT ? read.point() : word(read.quantity());
      int more = advice.settles() == null ? 1 : times(advice.settles()) - 1;
      if (advice.nearMm() != null) {
        boolean beyond = advice.need().noHigherThanMm() != null;
        double mm = advice.nearMm() + (beyond ? 2 * SIXTEENTH_MM * advice.end().outward() : 0);
        String near = height(HeightName.IN_BETWEEN, mm);
        for (int i = 0; i < more; i++) {
          read(what, near, tape(mm));
        }
        return;
      }
      SeenHeight there = there(card, read).orElse(null);
      double mm =
          there != null ? there.positionMm().value() : places.getOrDefault(read.name(), 330.0);
      String key = there != null ? there.key() : height(read.name(), mm);
      for (int i = 0; i < more; i++) {
        read(what, key, mm);
      }
    }

    /** Where it was read before; else the last height of that name, but for any in between. */
    private static Optional<SeenHeight> there(Card card, ToRead read) {
      Optional<SeenHeight> before =
          card.readings().stream()
              .filter(r -> ReadingsToTake.toRead(r).equals(read))
              .map(SeenReading::height)
              .reduce((first, last) -> last);
      return before.or(
          () ->
              card.heights().stream()
                  .filter(h -> h.name() == read.name() && h.name() != HeightName.IN_BETWEEN)
                  .reduce((first, last) -> last));
    }
  }

  @Test
  void who_follows_the_advice_gets_both_ends_decided_or_is_told_why_not() {
    int decided = 0;
    int steps = 0;
    for (long seed = 1; seed <= CORNERS; seed++) {
      Walk walk = new Walk(seed);
      List<String> done = new ArrayList<>();
      Card card = walk.bench.card();
      for (Optional<NextReading> advice = walk.advised(card);
          advice.isPresent();
          advice = walk.advised(card)) {
        done.add(advice.get().why() + " " + advice.get().need() + " near " + advice.get().nearMm());
        assertTrue(done.size() <= MOST_STEPS, "seed " + seed + " does not end: " + done);
        walk.take(card, advice.get());
        card = walk.bench.card();
      }
      steps += done.size();
      decided += ended(seed, card, done) ? 1 : 0;
    }
    // With a tape in sixteenths some limits lie too near to their stop to tell.
    assertTrue(decided >= 0.8 * CORNERS, decided + " of " + CORNERS + " in " + steps + " steps");
  }

  /**
   * Whether all is decided; what is not is asked for with a finer tool or patience, or said to stay
   * open.
   */
  private static boolean ended(long seed, Card card, List<String> done) {
    TravelFindings travel = CornerTravel.of(card);
    TravelWords words = new TravelWords(card, travel);
    String walk = "seed " + seed + " after " + done;
    assertTrue(travel.asItCouldBe().mm().isPresent(), walk + " needs " + travel.asItCouldBe());
    int left = 0;
    for (EndFindings end : List.of(travel.droop(), travel.bump())) {
      assertNotEquals(Outcome.NEEDS, end.outcome(), walk + " needs " + end.needs());
      for (Limit limit : end.limits()) {
        if (limit.outcome() == Outcome.CANT_TELL) {
          boolean asked =
              words.next().stream()
                  .anyMatch(
                      n -> n.about(limit) && n.settles() != null && Walk.tooMuch(n.settles()));
          left += asked ? 0 : 1;
        }
      }
    }
    long mid = travel.midTravel().stream().filter(m -> m.outcome() == Outcome.CANT_TELL).count();
    assertTrue(words.leftOpen().size() >= left, walk + " says " + words.leftOpen());
    return travel.outcome() != Outcome.CANT_TELL || left + mid == 0;
  }
}
