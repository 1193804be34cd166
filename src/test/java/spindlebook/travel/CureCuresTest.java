package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.travel.StandardCorner.bench;
import static spindlebook.travel.StandardCorner.limit;

import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * A cure put on paper: the stop is set as advised, stands where it is said to, and the margin is
 * computed again. The strap hangs between two points of a swinging arm, so its ratio changes along
 * the travel (derived here from the law of cosines; invented corners, seeded).
 */
class CureCuresTest {
  private static final int CORNERS = 300;

  /** λ² = a² + b² − 2ab cos(φ − α), sin α = (z − z0) / R: the angle at the arm's pivot opens. */
  private record Strap(double aMm, double bMm, double apartRad, double armMm, double levelMm) {
    static Strap any(Random random) {
      return new Strap(
          between(random, 350, 600),
          between(random, 250, 450),
          between(random, 1.0, 1.5),
          between(random, 450, 700),
          between(random, 350, 450));
    }

    double lengthMm(double z) {
      double alpha = Math.asin((z - levelMm) / armMm);
      return Math.sqrt(aMm * aMm + bMm * bMm - 2 * aMm * bMm * Math.cos(apartRad - alpha));
    }
  }

  private static double between(Random random, double from, double to) {
    return from + (to - from) * random.nextDouble();
  }

  private static CornerBench strapped(Strap strap, int heights, double share, double limitMm) {
    CornerBench bench =
        CornerBench.exact()
            .watch("arm", "lower-arm-frame", "{\"least\":\"6 mm\"}")
            .stretch(share)
            .given("new-strap-length", strap.lengthMm(254))
            .given("shock-open", 700)
            .given("shock-closed", 300)
            .held("shock-open-reserve", 12.7)
            .held("shock-closed-reserve", 12.7)
            .given("tyre-squashed-radius", 1000)
            .given("mark-to-lowest-frame", 100)
            .held("ground-clearance", 50)
            .held("impact-reserve", 6.35)
            .height("off", "strap-off", 150)
            .height("strap", "on-the-strap", 254)
            .height("ride", "ride", 400)
            .height("bump", "full-bump", 500)
            .height("beyond", "in-between", 600)
            .length("shock-length", "off", 625)
            .length("shock-length", "strap", 573)
            .length("shock-length", "beyond", 400);
    // A mount-to-mount length off the strap is a distance of its mounts: it holds.
    if (heights > 3) {
      bench.length("strap-length", "off", strap.lengthMm(150));
    }
    if (heights > 2) {
      bench.length("strap-length", "bump", strap.lengthMm(500));
    }
    return limit(
        bench
            .length("strap-length", "strap", strap.lengthMm(254))
            .length("strap-length", "ride", strap.lengthMm(400)),
        limitMm);
  }

  @Test
  void a_strap_set_as_advised_leaves_no_shortfall() {
    Random random = new Random(20261125);
    int cured = 0;
    double least = Double.MAX_VALUE;
    for (int i = 0; i < CORNERS; i++) {
      Strap strap = Strap.any(random);
      double limitMm = between(random, 225, 340);
      double share = between(random, 0, 12);
      CornerBench bench =
          strapped(strap, 2 + random.nextInt(3), share, limitMm)
              .adjuster(
                  "{\"adjuster\":\"strap\",\"kind\":\"limit-strap\",\"unit\":\"length\",\"step\":\"%s\",\"moreShortens\":false}"
                      .formatted(random.nextBoolean() ? "1/64 in" : "1/4 in"))
              .adjust("strap", "%.9f mm".formatted(strap.lengthMm(254)))
              .height("strap1", "on-the-strap", 254)
              .length("strap-length", "strap1", strap.lengthMm(254));
      EndFindings before = bench.travel().droop();
      if (before.cure().isEmpty()) {
        assertTrue(before.marginMm().orElseThrow().value() >= -1e-9, "corner " + i);
        continue;
      }
      Cure cure = before.cure().get();
      double stopMm = 254 + cure.atWheelMm();
      EndFindings after =
          bench
              .adjust("strap", "%.9f mm".formatted(cure.to().amount()))
              .height("strap2", "on-the-strap", stopMm)
              .length("strap-length", "strap2", strap.lengthMm(254) - cure.setMm())
              .travel()
              .droop();
      double margin = after.marginMm().orElseThrow().value();
      least = Math.min(least, margin);
      cured++;
    }
    assertTrue(cured > CORNERS / 2, "only " + cured + " were short");
    assertTrue(least > -1e-3, "margin " + least);
  }

  /** g(z) = c (T − z) + q (T − z)²: the gap of a stop whose ratio changes. */
  @Test
  void a_spacer_set_as_advised_leaves_no_shortfall() {
    Random random = new Random(20261126);
    int cured = 0;
    double least = Double.MAX_VALUE;
    for (int i = 0; i < CORNERS; i++) {
      double touchMm = between(random, 440, 480);
      double slope = between(random, 0.7, 1.3);
      double bend = between(random, -0.002, 0.002);
      double groundMm = between(random, 430, 500);
      CornerBench bench =
          limit(bench(CornerBench.exact()), 200)
              .given("tyre-squashed-radius", 150 + groundMm)
              .height("touch", "stop-touch", touchMm);
      for (double z : new double[] {touchMm - 120, touchMm - 80, touchMm - 40}) {
        String key = "gap" + Math.round(touchMm - z);
        bench.height(key, "in-between", z);
        bench.length("stop-gap", key, slope * (touchMm - z) + bend * square(touchMm - z));
      }
      bench.adjuster(
          "{\"adjuster\":\"spacer\",\"kind\":\"bump-stop-spacer\",\"unit\":\"length\",\"step\":\"1/64"
              + " in\",\"moreShortens\":false,\"first\":\"25 mm\"}");
      EndFindings before = bench.travel().bump();
      if (before.cure().isEmpty()) {
        continue;
      }
      Cure cure = before.cure().get();
      cured++;
      // What closes at B with the new spacer: the gap there without it, by the true curve.
      double solidGapMm = -(500 - touchMm) * slope;
      double needMm = before.neededStopMm().orElseThrow().value();
      double openMm =
          needMm >= touchMm
              ? -(needMm - touchMm) * slope
              : slope * (touchMm - needMm) + bend * square(touchMm - needMm);
      least = Math.min(least, cure.setMm() - (openMm - solidGapMm));
    }
    assertTrue(cured > CORNERS / 2);
    // The curve through the gaps differs from the parabola by h e / 4, h = 40 mm between readings,
    // e
    // the slopes' error there: harmonic for arithmetic mean, at most 0.02 (docs/methods-travel.md).
    assertTrue(least > -0.2, "too thin by " + least);
  }

  private static double square(double x) {
    return x * x;
  }
}
