package spindlebook.spring;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.spring.SpringReference.numbers;
import static spindlebook.spring.SpringReference.rows;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import spindlebook.entry.Joint;
import spindlebook.linkage.Joints;
import spindlebook.linkage.Linkage;
import spindlebook.linkage.Vec;
import spindlebook.uncertainty.Figure;

/** springs.json: every row to the file's own tolerances, on the corner of linkage.json. */
class SpringReferenceTest {
  private static final JsonNode ALL = SpringReference.read("springs.json");
  private static final Linkage G1 = g1();
  static final ShockCurve SHOCK = ShockCurve.of(G1, -300, 300);

  private static Linkage g1() {
    JsonNode inputs = SpringReference.read("linkage.json").get("cases").get(0).get("inputs");
    Map<Joint, Vec> at = new EnumMap<>(Joint.class);
    for (Joint joint : Joint.values()) {
      if (inputs.has(joint.key)) {
        double[] xyz = numbers(inputs.get(joint.key));
        at.put(joint, new Vec(xyz[0], xyz[1], xyz[2]));
      }
    }
    return new Linkage(
        new Joints(
            true,
            at,
            Math.toRadians(inputs.get("toe_in_deg").doubleValue()),
            Math.toRadians(inputs.get("camber_deg").doubleValue()),
            inputs.get("loaded_radius").doubleValue()));
  }

  private static Figure exact(JsonNode row, String name) {
    return Figure.exact(row.get(name).doubleValue());
  }

  private static void near(JsonNode row, String name, double got, double relative) {
    double wanted = row.get(name).doubleValue();
    assertTrue(
        Math.abs(got - wanted) <= relative * Math.abs(wanted),
        () -> name + " " + wanted + " but was " + got + " in " + row);
  }

  @Test
  void wheel_rates_with_their_slope_term() {
    for (JsonNode row : rows(ALL.get("wheel_rate").get("rows"))) {
      double z = row.get("dz").doubleValue();
      Figure rate = exact(row, "spring_rate_N_per_mm");
      Coil coil = Coil.single(rate, exact(row, "shock_length_at_zero_spring_force_mm"));
      ShockCurve.Here here = SHOCK.at(z);
      near(row, "shock_length_mm", here.lengthMm().value(), 1e-9);
      near(row, "motion_ratio", here.ratio().value(), 1e-8);
      near(row, "dMR_dz_per_mm", here.bendPerMm().value(), 1e-5);
      near(row, "spring_force_N", coil.at(here.lengthMm(), Coil::forceN).value(), 1e-6);
      WheelSpring wheel = new WheelSpring(SHOCK, coil);
      near(row, "wheel_force_N", wheel.forceN(z).value(), 1e-6);
      near(row, "wheel_rate_N_per_mm", wheel.rateNPerMm(z).value(), 1e-6);
      double ratio = here.ratio().value();
      near(row, "wheel_rate_kMR2_only", rate.value() * ratio * ratio, 1e-6);
    }
  }

  @Test
  void where_the_car_sits_and_how_fast_it_bounces() {
    JsonNode row = ALL.get("static_sag").get("rows").get(0);
    Figure mass = exact(row, "sprung_corner_mass_kg");
    Figure zero = exact(row, "shock_length_at_zero_spring_force_mm");
    WheelSpring wheel =
        new WheelSpring(SHOCK, Coil.single(exact(row, "spring_rate_N_per_mm"), zero));
    WheelSpring.Ride ride = wheel.ride(mass).orElseThrow();
    near(row, "static_dz", ride.positionMm().value(), 1e-6);
    near(row, "spring_compression_static_mm", ride.compressionMm().value(), 1e-6);
    double loose = SHOCK.wheelAt(zero).orElseThrow().value();
    near(row, "zero_force_dz", loose, 1e-6);
    near(row, "sag_from_zero_force_mm", ride.positionMm().value() - loose, 1e-6);
    near(row, "wheel_rate_at_static", ride.rateNPerMm().value(), 1e-6);
    near(row, "ride_frequency_Hz", ride.hz().value(), 1e-6);
    Figure kMr2 = exact(row, "wheel_rate_kMR2");
    near(row, "ride_frequency_kMR2_only_Hz", WheelSpring.hz(kMr2, mass).value(), 1e-6);
    Figure onTyre = WheelSpring.onTyre(ride.rateNPerMm(), exact(row, "tyre_rate_N_per_mm"));
    near(row, "ride_frequency_with_tyre_in_series_Hz", WheelSpring.hz(onTyre, mass).value(), 1e-6);
    Figure turn = wheel.collarToSitAt(0, mass);
    near(row, "collar_turn_down_to_sit_at_dz0_mm", turn.value(), 1e-6);
    WheelSpring turned =
        new WheelSpring(SHOCK, Coil.single(wheel.coil().mainNPerMm(), zero.plus(turn)));
    assertEquals(0, turned.ride(mass).orElseThrow().positionMm().value(), 1e-6);
  }

  @Test
  void two_springs_with_a_crossover_stop() {
    int checked = 0;
    for (JsonNode row : rows(ALL.get("dual_rate").get("cases"))) {
      // The shock's length counted from loose: zero at no force.
      Coil coil = pair(row, row.get("preload_mm").doubleValue());
      double crossover = -coil.crossoverMm().value();
      near(row, "crossover_shock_compression_mm", crossover, 1e-9);
      near(row, "force_at_crossover_N", coil.at(coil.crossoverMm(), Coil::forceN).value(), 1e-9);
      near(row, "energy_to_crossover_J", coil.at(coil.crossoverMm(), Coil::energyJ).value(), 1e-9);
      for (JsonNode at : rows(row.get("curve"))) {
        double x = at.get("x_mm").doubleValue();
        boolean there = Math.abs(x - crossover) < 1e-6;
        Figure length = there ? coil.crossoverMm() : Figure.exact(-x);
        double force = coil.at(length, Coil::forceN).value();
        near(at, "force_N", force, 1e-9);
        near(at, "rate_N_per_mm", coil.at(length, Coil::rateNPerMm).value(), 1e-9);
        double tender = Math.min(force / 26, 95);
        near(at, "tender_compression_mm", tender, 1e-9);
        near(at, "main_compression_mm", force / 44, 1e-9);
        checked++;
      }
    }
    assertEquals(24, checked);
  }

  private static Coil pair(JsonNode row, double zeroForceMm) {
    return new Coil(
        exact(row, "main_N_per_mm"),
        exact(row, "tender_N_per_mm"),
        exact(row, "stop_gap_on_tender_mm"),
        Figure.exact(zeroForceMm));
  }

  @Test
  void two_springs_on_the_corner() {
    JsonNode on = ALL.get("dual_rate").get("on_G1");
    double zero = SHOCK.at(on.get("zero_force_dz").doubleValue()).lengthMm().value();
    WheelSpring wheel =
        new WheelSpring(SHOCK, pair(ALL.get("dual_rate").get("cases").get(0), zero));
    near(on, "crossover_dz", SHOCK.wheelAt(wheel.coil().crossoverMm()).orElseThrow().value(), 1e-6);
    for (JsonNode row : rows(on.get("rows"))) {
      double z = row.get("dz").doubleValue();
      near(
          row,
          "spring_force_N",
          wheel.coil().at(SHOCK.at(z).lengthMm(), Coil::forceN).value(),
          1e-6);
      near(row, "wheel_force_N", wheel.forceN(z).value(), 1e-6);
      if (row.get("wheel_rate_N_per_mm").isNull()) {
        near(row, "wheel_rate_below_N_per_mm", wheel.rateNPerMm(z - 1e-6).value(), 1e-6);
        near(row, "wheel_rate_above_N_per_mm", wheel.rateNPerMm(z + 1e-6).value(), 1e-6);
      } else {
        near(row, "wheel_rate_N_per_mm", wheel.rateNPerMm(z).value(), 1e-6);
      }
    }
  }

  /** F = 60 d + 0.02 d³ typed every quarter of a millimetre. */
  static StopChart stop() {
    double[] crush = new double[601];
    double[] force = new double[601];
    for (int i = 0; i < crush.length; i++) {
      crush[i] = i / 4.0;
      force[i] = 60 * crush[i] + 0.02 * Math.pow(crush[i], 3);
    }
    return new StopChart(crush, force);
  }

  @Test
  void drops_onto_a_bump_stop() {
    JsonNode sag = ALL.get("static_sag").get("rows").get(0);
    WheelSpring wheel =
        new WheelSpring(
            SHOCK,
            Coil.single(
                exact(sag, "spring_rate_N_per_mm"),
                exact(sag, "shock_length_at_zero_spring_force_mm")));
    int checked = 0;
    for (JsonNode row : rows(ALL.get("bump_stop_energy").get("rows"))) {
      Drop drop =
          new Drop(
              wheel,
              stop(),
              Figure.exact(1),
              Figure.exact(170),
              Figure.exact(-250),
              Figure.exact(520),
              exact(row, "drop_height_mm"),
              exact(row, "damping_fraction"));
      Drop.Energy at = drop.energyAt(Figure.exact(250));
      double brought = at.broughtJ().value();
      double left = at.leftToStopJ().value();
      double takes = at.stopTakesJ().value();
      near(row, "energy_in_J", brought, 1e-7);
      near(row, "spring_energy_J", brought - left, 1e-7);
      near(row, "bump_stop_energy_needed_at_full_bump_J", left, 1e-7);
      near(row, "stop_energy_capacity_at_full_bump_J", takes, 1e-7);
      assertEquals(row.get("bottoms").booleanValue(), left > takes);
      Drop.Rest rest = drop.rest().orElseThrow();
      near(row, "resting_dz_of_first_stop", rest.positionMm().value(), 1e-7);
      near(row, "stop_compression_mm", rest.crushMm().value(), 1e-7);
      near(row, "peak_stop_force_N", rest.stopN().value(), 1e-7);
      near(row, "peak_wheel_force_N", rest.wheelN().value(), 1e-7);
      checked++;
    }
    assertEquals(10, checked);
  }

  @Test
  void stroke_that_a_travel_needs() {
    for (JsonNode row : rows(ALL.get("shock_stroke").get("rows"))) {
      double droop = row.get("droop").doubleValue();
      double bump = row.get("bump").doubleValue();
      Figure atDroop = SHOCK.at(droop).lengthMm();
      Figure atBump = SHOCK.at(bump).lengthMm();
      within(row, "shock_length_droop_mm", atDroop);
      within(row, "shock_length_bump_mm", atBump);
      within(row, "stroke_used_mm", atDroop.minus(atBump));
      JsonNode margins = row.get("with_margins");
      double open = margins.get("top_out_margin_mm").doubleValue();
      double closed = margins.get("bump_margin_mm").doubleValue();
      Figure needsOpen = atDroop.plus(open);
      Figure needsClosed = atBump.plus(-closed);
      within(margins, "extended_length_min_mm", needsOpen);
      within(margins, "collapsed_length_max_mm", needsClosed);
      within(margins, "required_stroke_mm", needsOpen.minus(needsClosed));
      Figure atRide = SHOCK.at(0).ratio().times(bump - droop);
      within(row, "naive_MR_at_ride_times_travel_mm", atRide);
      within(row, "naive_error_mm", atRide.minus(atDroop.minus(atBump)));
    }
  }

  private static void within(JsonNode row, String name, Figure got) {
    assertEquals(row.get(name).doubleValue(), got.value(), 1e-6, name);
  }
}
