package spindlebook.spring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.spring.SpringReference.numbers;
import static spindlebook.spring.SpringReference.rows;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** strap_life.json: every fit, interval and StRD set to the file's own tolerances. */
class StrapReferenceTest {
  private static final JsonNode ALL = SpringReference.read("strap_life.json");
  private static final Map<StrapShape, String> NAMES =
      Map.of(
          StrapShape.STRAIGHT, "linear",
          StrapShape.LOG, "log_time",
          StrapShape.SETTLING, "exponential",
          StrapShape.SETTLING_AND_CREEP, "exponential_plus_creep");

  @Test
  void every_fit_and_every_interval_of_the_two_straps() {
    int checked = 0;
    for (JsonNode series : rows(ALL.get("own_series").get("series"))) {
      double allowance = series.get("allowance_used_up_at_length_mm").doubleValue();
      for (StrapShape shape : StrapShape.values()) {
        JsonNode row = series.get(NAMES.get(shape));
        if (row != null) {
          StrapFit fit =
              StrapFit.of(shape, numbers(series.get("hours")), numbers(series.get("length_mm")), 0);
          agrees(row, fit.found(), shape);
          intervals(row, fit, shape.settles ? 1e-6 : 1e-9);
          crossing(row.get("crossing"), fit.reaches(allowance), shape.settles ? 1e-5 : 1e-9);
          checked++;
        }
      }
    }
    assertEquals(6, checked);
  }

  private static void agrees(JsonNode row, LeastSquares fit, StrapShape shape) {
    double[] p = fit.parameters();
    assertEquals(row.get("dof").intValue(), fit.dof());
    near(row.get("s"), fit.sd(), shape.settles ? 1e-7 : 1e-9);
    if (!shape.settles) {
      near(row.get("b0"), p[0], 1e-9);
      near(row.get("b1"), p[1], 1e-9);
      near(row.get("se_b0"), fit.se(0), 1e-9);
      near(row.get("se_b1"), fit.se(1), 1e-9);
      return;
    }
    near(row.get("rss"), fit.rss(), 1e-7);
    // The file has the creep last, the fit the time constant.
    boolean creeps = shape == StrapShape.SETTLING_AND_CREEP;
    int[] place = creeps ? new int[] {0, 1, 3, 2} : new int[] {0, 1, 2};
    String[] named = {"L0", "a", "tau_h", "creep"};
    for (int k = 0; k < place.length; k++) {
      near(row.get("params").get(named[k]), p[place[k]], 1e-6);
      near(row.get("se").get(k), fit.se(place[k]), 1e-6);
    }
  }

  private static void intervals(JsonNode row, StrapFit fit, double tolerance) {
    row.get("pi_at")
        .fields()
        .forEachRemaining(
            at -> {
              double t = Double.parseDouble(at.getKey());
              near(at.getValue().get(0), fit.at(t) - fit.nextWithin(t), tolerance);
              near(at.getValue().get(1), fit.at(t) + fit.nextWithin(t), tolerance);
            });
  }

  private static void crossing(JsonNode row, StrapFit.Reached reached, double tolerance) {
    same(row.get("t_early"), reached.early(), tolerance);
    same(row.get("t_centre"), reached.centre(), tolerance);
    same(row.get("t_late"), reached.late(), tolerance);
  }

  private static void same(JsonNode expected, OptionalDouble got, double tolerance) {
    assertEquals(expected.isNull(), got.isEmpty());
    got.ifPresent(hours -> near(expected, hours, tolerance));
  }

  @Test
  void each_strd_set_to_the_digits_stated_for_it() {
    int checked = 0;
    for (JsonNode set : rows(ALL.get("nist_strd").get("sets"))) {
      String name = set.get("name").textValue();
      double[] x = numbers(set.get("x"));
      double[] y = numbers(set.get("y"));
      boolean curved = name.startsWith("Misra1a") || name.startsWith("BoxBOD");
      LeastSquares fit =
          curved
              ? new Settling((t, tau) -> new double[] {-Math.expm1(-t / tau)}, x, y).fit()
              : LeastSquares.of(columns(name, x), y);
      JsonNode certified = set.get(curved ? "certified_11_digits" : "certified");
      double tolerance = curved ? 1e-7 : 1e-9;
      for (int k = 0; k < fit.parameters().length; k++) {
        double p = fit.parameters()[k];
        double se = fit.se(k);
        // The sets have b2 = 1/τ, the same to first order in its error.
        boolean rate = curved && k == 1;
        double loose = name.startsWith("Pontius") && k == 2 ? 1e-7 : tolerance;
        near(certified.get("params").get(k), rate ? 1 / p : p, loose);
        near(certified.get("se").get(k), rate ? se / (p * p) : se, loose);
      }
      near(certified.get("residual_sd"), fit.sd(), tolerance);
      if (curved) {
        near(certified.get("rss"), fit.rss(), 1e-9);
      }
      checked++;
    }
    assertEquals(6, checked);
  }

  private static double[][] columns(String name, double[] x) {
    return Arrays.stream(x)
        .mapToObj(
            t ->
                name.startsWith("Norris")
                    ? new double[] {1, t}
                    : name.startsWith("Pontius") ? new double[] {1, t, t * t} : new double[] {t})
        .toArray(double[][]::new);
  }

  private static void near(JsonNode expected, double got, double relative) {
    double wanted = expected.doubleValue();
    assertTrue(
        Math.abs(got - wanted) <= relative * Math.abs(wanted), () -> wanted + " but was " + got);
  }
}
