package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.travel.StandardCorner.INCH;
import static spindlebook.travel.StandardCorner.bench;
import static spindlebook.travel.StandardCorner.limit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import spindlebook.definition.AdjusterKind;
import spindlebook.fold.Standing;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/**
 * What a change makes stale is not believed any more, but nothing may look better without it.
 *
 * <p>Too strong, and not asked here: a rule of which some readings hold and others went stale is
 * told by those that hold, as a curve with fewer points, which may lie to either side; of the
 * changes in the table only preload (a CV angle at ride) leaves such a rule. Where a stop itself
 * went stale nobody knows any more that the wheel gets past the last reading of a rule, so none is
 * asked for beyond it, and travel as it could be is there again, 'at least', counted to that
 * reading and no further.
 */
class NeverBetterForStaleTest {
  private static CornerBench driven(CornerBench bench) {
    return bench.line("driven", "happening", "{\"corner\":\"lf\",\"what\":\"driven\"}");
  }

  @Test
  void a_drive_holds_back_all_the_stretch_and_leaves_the_ratio_where_it_was_read() {
    // 520 at 150, 508 at 254, 435 at 400: slope 0.181159 on the strap (see WholeCornerTest); from
    // the other two alone it would be 85 / 250 = 0.34 and hold back half as much.
    CornerBench bench =
        limit(
            bench(CornerBench.exact())
                .length("strap-length", "off", 520)
                .given("new-strap-length", 502.92),
            4 * INCH);
    double ratio = 750.0 / (396 / (12.0 / 104) + 354 / 0.5);
    HeldAtWheel before = bench.travel().droop().heldBack().orElseThrow();
    assertEquals(7.493 / ratio, before.mm().value(), 1e-9);
    assertEquals(List.of(), before.because());
    HeldAtWheel after = driven(bench).travel().droop().heldBack().orElseThrow();
    assertEquals(12.573 / ratio, after.mm().value(), 1e-9);
    assertEquals(List.of("driven"), after.because());
    // Read on it again: 10.16 of 12.573 are taken up.
    EndFindings again = bench.length("strap-length", "strap", 513.08).travel().droop();
    assertEquals(2.413, again.heldBack().orElseThrow().atStopMm().value(), 1e-9);
    assertEquals(List.of(), again.heldBack().orElseThrow().because());
  }

  @Test
  void a_rule_whose_readings_went_stale_withholds_the_margin_if_it_acted_first() {
    CornerBench bench = limit(bench(CornerBench.exact()), 160);
    for (String lock : List.of("full-left", "full-right")) {
      bench
          .watch("rub", "tyre-frame", "{\"least\":\"10 mm\"}")
          .gap("rub", "off", lock, 1)
          .gap("rub", "strap", lock, 10)
          .gap("rub", "beyond", lock, 50);
    }
    bench.gap("rub", "off", 30).gap("rub", "beyond", 30);
    bench.adjuster(
        "{\"adjuster\":\"stop\",\"kind\":\"steering-stop\",\"unit\":\"turns\",\"moreShortens\":false,\"first\":\"0"
            + " turns\"}");
    assertEquals(-25.4, bench.travel().droop().marginMm().orElseThrow().value(), 1e-9);
    EndFindings after = bench.adjust("stop", "1 turn").travel().droop();
    // The arm alone would leave 228.6 − 160.
    assertTrue(after.marginMm().isEmpty(), "" + after.marginMm());
    assertTrue(after.neededStopMm().isEmpty());
    assertEquals(Outcome.NEEDS, after.outcome());
    assertEquals(
        List.of("stop to 1 turn"),
        after.needs().stream()
            .flatMap(n -> n.because().stream())
            .map(w -> w.replaceAll(" from .*? to", " to").replaceAll(".*stop", "stop"))
            .distinct()
            .toList());
  }

  // --- seeded corners, every change of the table

  private static final double[] Z = {150, 200, 254, 320, 400, 460, 500, 600};
  private static final String[] KEYS = {
    "off", "low", "strap", "mid", "ride", "touch", "bump", "beyond"
  };
  private static final String[] NAMES = {
    "strap-off",
    "in-between",
    "on-the-strap",
    "in-between",
    "ride",
    "stop-touch",
    "full-bump",
    "in-between"
  };
  private static final String[] PLACES = {
    "lower-arm-frame",
    "tie-rod-upper-arm",
    "shock-upper-arm",
    "spring-upper-arm",
    "tyre-frame",
    "spindle-wheel",
    "hose-slack",
    "drive-shaft-frame"
  };

  private static double between(Random random, double from, double to) {
    return from + (to - from) * random.nextDouble();
  }

  private static String word(Enum<?> kind) {
    return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static CornerBench any(Random random) {
    CornerBench bench = random.nextBoolean() ? CornerBench.realTools() : CornerBench.exact();
    if (random.nextBoolean()) {
      bench.oneMark();
    }
    for (AdjusterKind kind : AdjusterKind.values()) {
      bench.adjuster(
          "{\"adjuster\":\"%s\",\"kind\":\"%s\",\"unit\":\"turns\",\"step\":\"1/16 in\",\"moreShortens\":true,\"first\":\"2 turns\"}"
              .formatted(word(kind), word(kind)));
    }
    double bend = between(random, -0.0007, 0.0007);
    double newMm = 508 - between(random, -4, 14);
    bench
        .given("new-strap-length", newMm, random.nextBoolean() ? 1.0 : null)
        .stretch(between(random, 0, 8))
        .given("shock-open", between(random, 600, 660))
        .given("shock-closed", between(random, 380, 440))
        .held("shock-open-reserve", 12.7)
        .held("shock-closed-reserve", 12.7)
        .given("tyre-squashed-radius", between(random, 600, 800))
        .given("mark-to-lowest-frame", 100)
        .held("ground-clearance", 50)
        .held("impact-reserve", 6.35)
        .given("stop-crush", between(random, 15, 60), random.nextBoolean() ? 2.0 : null);
    boolean solidRead = random.nextBoolean();
    for (int i = 0; i < Z.length; i++) {
      if (i == 6 && !solidRead) {
        continue;
      }
      bench.height(KEYS[i], NAMES[i], Z[i]);
      if (i == 2 || random.nextInt(3) > 0) {
        double away = Z[i] - 254;
        bench.length("strap-length", KEYS[i], 508 - away / 2 + bend * away * away);
      }
      if (random.nextInt(3) > 0) {
        bench.length("shock-length", KEYS[i], 700 - Z[i] / 2);
      }
      if (Z[i] < 460 && random.nextBoolean()) {
        bench.length("stop-gap", KEYS[i], 1.2 * (460 - Z[i]));
      }
    }
    for (String place : PLACES) {
      if (random.nextInt(3) == 0) {
        continue;
      }
      bench.watch(place, place, "{\"least\":\"6 mm\"}");
      boolean swung = random.nextBoolean();
      for (String steering : List.of("straight", "full-left", "full-right")) {
        double low = between(random, 120, 270);
        double high = between(random, 480, 650);
        double slope = between(random, 0.1, 0.6);
        for (int i = 0; i < Z.length; i++) {
          boolean there = i != 6 || solidRead;
          if (there && (steering.equals("straight") || swung) && random.nextInt(3) > 0) {
            double gap = Math.min(slope * (Z[i] - low), slope * (high - Z[i])) + 6;
            bench.gap(place, KEYS[i], steering, Math.max(0, gap));
          }
        }
      }
    }
    return bench;
  }

  private static int notBetter(Optional<Figure> before, Optional<Figure> after, String what) {
    if (after.isEmpty()) {
      return 0;
    }
    assertTrue(before.isPresent(), what + " is there only since");
    double rise = after.get().value() - before.get().value();
    assertTrue(rise <= 1e-9, what + " rose by " + rise);
    return 1;
  }

  private static int notBetter(TravelFindings before, TravelFindings after, String what) {
    int shown = notBetter(before.droop().marginMm(), after.droop().marginMm(), what + ": droop");
    shown += notBetter(before.bump().marginMm(), after.bump().marginMm(), what + ": bump");
    boolean toTheLastReading =
        after.asItCouldBe().atLeast()
            && (after.droop().stop().isEmpty() || after.bump().stop().isEmpty());
    if (before.asItCouldBe().mm().isPresent() || !toTheLastReading) {
      shown += notBetter(before.asItCouldBe().mm(), after.asItCouldBe().mm(), what + ": could be");
    }
    for (boolean droop : new boolean[] {true, false}) {
      Outcome then = droop ? before.droop().outcome() : before.bump().outcome();
      Outcome now = droop ? after.droop().outcome() : after.bump().outcome();
      assertTrue(now != Outcome.CLEAR || then == Outcome.CLEAR, what + ": " + then + " to clear");
    }
    return shown;
  }

  private static boolean madeStale(CornerBench bench) {
    var card = bench.card();
    return card.readings().stream().anyMatch(r -> r.stands() == Standing.STALE)
        || card.heights().stream().anyMatch(h -> h.stop() == Standing.STALE);
  }

  @Test
  void no_change_of_the_table_makes_a_margin_or_the_usable_travel_look_better() {
    Random random = new Random(20261128);
    int shown = 0;
    int stale = 0;
    for (int i = 0; i < 150; i++) {
      long seed = random.nextLong();
      TravelFindings before = any(new Random(seed)).travel();
      AdjusterKind kind = AdjusterKind.values()[i % AdjusterKind.values().length];
      CornerBench changed = any(new Random(seed)).adjust(word(kind), "3 turns");
      stale += madeStale(changed) ? 1 : 0;
      TravelFindings after = changed.travel();
      shown += notBetter(before, after, "corner " + i + ", " + word(kind));
      notBetter(before.asSet().mm(), after.asSet().mm(), "corner " + i + ", as set");
    }
    assertTrue(stale > 100, "only " + stale + " changes made anything stale");
    assertTrue(shown > 100, "only " + shown + " figures were left");
  }

  @Test
  void no_drive_makes_a_margin_look_better_or_surer() {
    Random random = new Random(20261129);
    List<Double> lost = new ArrayList<>();
    for (int i = 0; i < 150; i++) {
      long seed = random.nextLong();
      TravelFindings before = any(new Random(seed)).travel();
      TravelFindings after = driven(any(new Random(seed))).travel();
      notBetter(before, after, "corner " + i);
      notBetter(before.asSet().mm(), after.asSet().mm(), "corner " + i + ", as set");
      if (after.droop().marginMm().isPresent()) {
        Figure then = before.droop().marginMm().orElseThrow();
        Figure now = after.droop().marginMm().get();
        assertTrue(
            now.value() - now.U() <= then.value() - then.U() + 1e-9,
            "corner " + i + ": " + then + " to " + now);
        lost.add(then.value() - now.value());
      }
    }
    assertTrue(lost.size() > 50, "only " + lost.size() + " margins");
    assertTrue(lost.stream().anyMatch(l -> l > 1), "no growth was ever given up");
  }
}
