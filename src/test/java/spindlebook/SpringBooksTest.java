package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.figures.Figures;
import spindlebook.fold.CarBook;
import spindlebook.log.BookFile;
import spindlebook.log.CarsOfFile;
import spindlebook.ride.CornerRide;
import spindlebook.uncertainty.Figure;

/**
 * springs.json and strap_life.json as books written by hand, through the real reader into {@code
 * figures}: every row to its file's own tolerances.
 */
class SpringBooksTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final JsonNode SPRINGS = reference("springs.json");
  private static final JsonNode STRAPS = reference("strap_life.json");

  @TempDir Path folder;

  private final List<String> lines = new ArrayList<>();

  private static JsonNode reference(String name) {
    try (InputStream in = SpringBooksTest.class.getResourceAsStream("/reference/" + name)) {
      return JSON.readTree(in);
    } catch (IOException e) {
      throw new IllegalStateException(name, e);
    }
  }

  private static Iterable<JsonNode> rows(JsonNode array) {
    return StreamSupport.stream(array.spliterator(), false).toList();
  }

  // --- a book by hand

  private void line(String kind, String key, String body) {
    String named = key == null ? "" : "\"key\":\"" + key + "\",";
    lines.add("{\"kind\":\"" + kind + "\"," + named + "\"body\":" + body.replace('\'', '"') + "}");
  }

  /** Typed to the last digit of a double. */
  private static String mm(double value) {
    return "{'typed':'" + value + " mm','mm':" + value + ",'unit':'mm','rule':'tape-1'}";
  }

  private void corner(String more) {
    line("car", "car", "{'details':{'name':'Mule','unit':'mm'}}");
    line(
        "corner",
        "lf",
        "{'car':'car','place':'left-front','layout':'steered-double-a-arm'" + more + "}");
    line(
        "round",
        "r",
        "{'corner':'lf','springIn':true,'bumpStopIn':true,'wheelOn':false,'onTyres':false,"
            + "'steeringLinked':true}");
  }

  private void height(String key, String name, double positionMm) {
    line(
        "height",
        key,
        "{'round':'r','name':'"
            + name
            + "','spindle':"
            + mm(positionMm + 500)
            + ",'mark':"
            + mm(500)
            + "}");
  }

  private void shock(String height, double mm) {
    line(
        "reading",
        null,
        "{'height':'"
            + height
            + "','steering':'straight','quantity':'shock-length','result':'number','length':"
            + mm(mm)
            + "}");
  }

  private void define(String what) {
    line("definition", null, "{'corner':'lf'," + what + "}");
  }

  private JsonNode springs() throws IOException {
    Path file = folder.resolve("book.jsonl");
    Files.write(file, lines);
    lines.clear();
    JsonNode corner = JSON.readTree(Figures.of(file, told -> {})).at("/cars/0/corners/0");
    assertTrue(corner.path("notWorkedOut").isMissingNode(), () -> corner.path("notWorkedOut") + "");
    assertNotNull(corner.get("springs"));
    return corner.get("springs");
  }

  private static double value(JsonNode node, String pointer) {
    JsonNode at = node.at(pointer);
    assertTrue(!at.isMissingNode(), () -> pointer + " is not in " + node.toPrettyString());
    return at.isObject() ? at.get("value").doubleValue() : at.doubleValue();
  }

  private static void near(
      JsonNode row, String name, JsonNode springs, String pointer, double relative) {
    double wanted = row.get(name).doubleValue();
    double got = value(springs, pointer);
    assertTrue(
        Math.abs(got - wanted) <= relative * Math.max(1e-9, Math.abs(wanted)),
        () -> name + " " + wanted + " but was " + got);
  }

  private static JsonNode along(JsonNode springs, double positionMm) {
    for (JsonNode each : springs.get("along")) {
      if (Math.abs(each.get("positionMm").doubleValue() - positionMm) < 1e-9) {
        return each;
      }
    }
    throw new AssertionError(positionMm + " is not in " + springs.get("along"));
  }

  private static JsonNode found(JsonNode findings, String what) {
    for (JsonNode each : findings) {
      if (each.get("what").asText().equals(what)) {
        return each.get("is");
      }
    }
    throw new AssertionError(what + " is not in " + findings);
  }

  // --- the rows

  @Test
  void two_springs_along_their_travel() throws IOException {
    for (JsonNode row : rows(SPRINGS.get("dual_rate").get("cases"))) {
      corner(",'given':[{'dimension':'shock-open','length':'900 mm'}]");
      int i = 0;
      double crossover = row.get("crossover_shock_compression_mm").doubleValue();
      for (JsonNode at : rows(row.get("curve"))) {
        double x = at.get("x_mm").doubleValue();
        // A hair on the near side of the jump, where the row says what it is at it.
        double hair = Math.abs(x - crossover) < 1e-6 ? 1e-9 : 0;
        height("h" + i, "in-between", x - 300);
        shock("h" + i++, 900 - x + hair);
      }
      define(
          "'spring':{'rate':'"
              + row.get("main_N_per_mm")
              + " N/mm','tender':'"
              + row.get("tender_N_per_mm")
              + " N/mm','crossover':"
              + mm(row.get("stop_gap_on_tender_mm").doubleValue())
              + ",'preload':"
              + mm(row.get("preload_mm").doubleValue())
              + "}");
      JsonNode springs = springs();
      near(row, "series_rate", springs, "/coil/seriesNPerMm", 1e-9);
      near(row, "crossover_shock_compression_mm", springs, "/coil/crossover/fromOpenMm", 1e-9);
      near(row, "force_at_crossover_N", springs, "/coil/crossover/forceN", 1e-9);
      near(row, "energy_to_crossover_J", springs, "/coil/crossover/energyJ", 1e-9);
      for (JsonNode at : rows(row.get("curve"))) {
        JsonNode here = along(springs, at.get("x_mm").doubleValue() - 300);
        near(at, "force_N", here, "/springN", 1e-9);
        near(at, "rate_N_per_mm", here, "/springNPerMm", 1e-9);
        near(at, "tender_compression_mm", here, "/tenderMm", 1e-9);
        near(at, "main_compression_mm", here, "/mainMm", 1e-9);
        if (!at.get("mode").asText().equals("at crossover")) {
          assertEquals(at.get("mode").asText(), here.get("acts").asText());
        }
      }
    }
  }

  @Test
  void the_stroke_a_shock_uses_and_needs() throws IOException {
    for (JsonNode row : rows(SPRINGS.get("shock_stroke").get("rows"))) {
      JsonNode kept = row.get("with_margins");
      corner(
          ",'heldBack':[{'allowance':'shock-open-reserve','length':"
              + mm(kept.get("top_out_margin_mm").doubleValue())
              + "},{'allowance':'shock-closed-reserve','length':"
              + mm(kept.get("bump_margin_mm").doubleValue())
              + "}]");
      height("s", "on-the-strap", row.get("droop").doubleValue());
      shock("s", row.get("shock_length_droop_mm").doubleValue());
      height("b", "full-bump", row.get("bump").doubleValue());
      shock("b", row.get("shock_length_bump_mm").doubleValue());
      define("'spring':{'rate':'30 N/mm'}");
      JsonNode findings = springs().get("findings");
      double used = found(findings, "stroke-used").get("value").doubleValue();
      assertEquals(row.get("stroke_used_mm").doubleValue(), used, 1e-6);
      double needed = found(findings, "stroke-needed").get("value").doubleValue();
      assertEquals(kept.get("required_stroke_mm").doubleValue(), needed, 1e-6);
    }
  }

  private static String angle(double degrees) {
    double rad = Math.toRadians(degrees);
    return "{'typed':'" + degrees + "°','rad':" + rad + ",'rule':'angle-1'}";
  }

  /** The corner of linkage.json, laid out at ride, where spindle and mark are level. */
  private void laidOut(String more) {
    JsonNode inputs = reference("linkage.json").get("cases").get(0).get("inputs");
    corner(
        ",'given':[{'dimension':'tyre-loaded-radius','length':"
            + mm(inputs.get("loaded_radius").doubleValue())
            + "}]"
            + more);
    height("ride", "ride", 0);
    for (String each : List.of("camber", "toe_in")) {
      line(
          "reading",
          null,
          "{'height':'ride','steering':'straight','quantity':'"
              + each.replace("_in", "")
              + "','result':'number','angle':"
              + angle(inputs.get(each + "_deg").doubleValue())
              + "}");
    }
    for (String joint : "LF LR L UF UR U TI TO W SU SL".split(" ")) {
      JsonNode xyz = inputs.get(joint);
      line(
          "joint-place",
          null,
          "{'corner':'lf','joint':'"
              + joint.toLowerCase(Locale.ROOT)
              + "','out':"
              + mm(xyz.get(1).doubleValue())
              + ",'back':"
              + mm(-xyz.get(0).doubleValue())
              + ",'up':"
              + mm(xyz.get(2).doubleValue())
              + ",'at':'ride'}");
    }
  }

  private static double number(JsonNode row, String name) {
    return row.get(name).doubleValue();
  }

  private void spring(JsonNode row, String more) {
    define(
        "'spring':{'rate':'"
            + number(row, "spring_rate_N_per_mm")
            + " N/mm','looseAt':"
            + mm(number(row, "shock_length_at_zero_spring_force_mm"))
            + more
            + "}");
  }

  @Test
  void wheel_rates_on_the_linkage() throws IOException {
    for (JsonNode row : rows(SPRINGS.get("wheel_rate").get("rows"))) {
      double z = number(row, "dz");
      laidOut("");
      height("there", "in-between", z);
      spring(row, "");
      JsonNode here = along(springs(), z);
      near(row, "shock_length_mm", here, "/shockMm", 1e-9);
      near(row, "motion_ratio", here, "/ratio", 1e-6);
      near(row, "dMR_dz_per_mm", here, "/bendPerMm", 1e-5);
      near(row, "spring_force_N", here, "/springN", 1e-6);
      near(row, "wheel_force_N", here, "/wheelN", 1e-6);
      near(row, "wheel_rate_N_per_mm", here, "/wheelNPerMm", 1e-6);
      near(row, "wheel_rate_kMR2_only", here, "/byRatioNPerMm", 1e-6);
      near(row, "geometric_term_N_per_mm", here, "/slopeTermNPerMm", 1e-5);
    }
  }

  @Test
  void where_the_car_sits_on_the_linkage() throws IOException {
    for (JsonNode row : rows(SPRINGS.get("static_sag").get("rows"))) {
      laidOut("");
      spring(
          row,
          ",'tyre':'"
              + number(row, "tyre_rate_N_per_mm")
              + " N/mm','sitAt':"
              + mm(0)
              + ",'hz':1.1");
      weight(number(row, "sprung_corner_mass_kg"));
      JsonNode ride = springs().get("ride");
      near(row, "zero_force_dz", ride, "/looseAtMm", 1e-6);
      near(row, "static_dz", ride, "/positionMm", 1e-6);
      near(row, "spring_compression_static_mm", ride, "/compressionMm", 1e-6);
      near(row, "sag_from_zero_force_mm", ride, "/sagMm", 1e-6);
      near(row, "wheel_rate_at_static", ride, "/rateNPerMm", 1e-6);
      near(row, "wheel_rate_kMR2", ride, "/byRatioNPerMm", 1e-6);
      near(row, "ride_frequency_Hz", ride, "/hz", 1e-6);
      near(row, "ride_frequency_kMR2_only_Hz", ride, "/byRatioHz", 1e-6);
      near(row, "ride_frequency_from_static_deflection_only_Hz", ride, "/bySagHz", 1e-6);
      near(row, "ride_frequency_with_tyre_in_series_Hz", ride, "/onTyreHz", 1e-6);
      near(row, "collar_turn_down_to_sit_at_dz0_mm", ride, "/collarMm", 1e-6);
    }
  }

  private void weight(double kg) {
    define("'cornerWeight':{'by':'estimate','sprung':'" + kg + " kg'}");
  }

  @Test
  void two_springs_on_the_linkage() throws IOException {
    JsonNode on = SPRINGS.get("dual_rate").get("on_G1");
    JsonNode of = SPRINGS.get("dual_rate").get("cases").get(0);
    laidOut("");
    int i = 0;
    for (JsonNode row : rows(on.get("rows"))) {
      height("h" + i++, "in-between", number(row, "dz"));
    }
    height("loose", "in-between", number(on, "zero_force_dz"));
    define("'bumpStop':" + STOP.replace("NN", "0") + "}");
    double loose = value(along(springs(), number(on, "zero_force_dz")), "/shockMm");
    laidOut("");
    i = 0;
    for (JsonNode row : rows(on.get("rows"))) {
      height("h" + i++, "in-between", number(row, "dz"));
    }
    define(
        "'spring':{'rate':'"
            + of.get("main_N_per_mm")
            + " N/mm','tender':'"
            + of.get("tender_N_per_mm")
            + " N/mm','crossover':"
            + mm(number(of, "stop_gap_on_tender_mm"))
            + ",'looseAt':"
            + mm(loose)
            + "}");
    JsonNode springs = springs();
    near(on, "crossover_dz", springs, "/coil/crossover/positionMm", 1e-6);
    for (JsonNode row : rows(on.get("rows"))) {
      JsonNode here = along(springs, number(row, "dz"));
      near(row, "spring_force_N", here, "/springN", 1e-6);
      near(row, "wheel_force_N", here, "/wheelN", 1e-6);
      if (row.get("wheel_rate_N_per_mm").isNull()) {
        JsonNode at = springs.at("/coil/crossover/atWheel");
        near(row, "wheel_rate_below_N_per_mm", at, "/rateBelowNPerMm", 1e-6);
        near(row, "wheel_rate_above_N_per_mm", at, "/rateAboveNPerMm", 1e-6);
      } else {
        near(row, "wheel_rate_N_per_mm", here, "/wheelNPerMm", 1e-6);
      }
    }
  }

  /** F = 60 d + 0.02 d³ typed every quarter of a millimetre; NN for what else is said of it. */
  private static final String STOP = stop();

  private static String stop() {
    StringBuilder chart = new StringBuilder();
    for (int i = 0; i <= 600; i++) {
      double d = i / 4.0;
      chart.append(i == 0 ? "" : ",");
      chart.append("{'crush':").append(mm(d)).append(",'force':'");
      chart.append(60 * d + 0.02 * Math.pow(d, 3));
      chart.append(" N'}");
    }
    return "{'stop':'s','kind':'foam','touch':" + mm(170) + ",'damped':NN,'chart':[" + chart + "]";
  }

  @Test
  void drops_onto_a_bump_stop_on_the_linkage() throws IOException {
    JsonNode sag = SPRINGS.get("static_sag").get("rows").get(0);
    for (JsonNode row : rows(SPRINGS.get("bump_stop_energy").get("rows"))) {
      laidOut("");
      height("s", "on-the-strap", -250);
      height("b", "full-bump", 250);
      spring(sag, "");
      weight(520);
      define(
          "'bumpStop':"
              + STOP.replace("NN", Double.toString(100 * number(row, "damping_fraction")))
              + ",'drop':"
              + mm(number(row, "drop_height_mm"))
              + "}");
      JsonNode stop = springs().at("/stops/0");
      near(row, "energy_in_J", stop, "/broughtJ", 1e-7);
      near(row, "spring_energy_J", stop, "/coilJ", 1e-7);
      near(row, "bump_stop_energy_needed_at_full_bump_J", stop, "/leftToStopJ", 1e-7);
      near(row, "stop_energy_capacity_at_full_bump_J", stop, "/stopTakesJ", 1e-7);
      assertEquals(row.get("bottoms").asBoolean(), stop.get("bottoms").asBoolean());
      near(row, "resting_dz_of_first_stop", stop, "/restsAtMm", 1e-7);
      double crush = value(stop, "/crushMm");
      assertEquals(number(row, "stop_compression_mm"), crush, 1e-7 * Math.max(1, crush));
      near(row, "peak_stop_force_N", stop, "/stopN", 1e-7);
      near(row, "peak_wheel_force_N", stop, "/wheelN", 1e-7);
    }
  }

  @Test
  void straps_by_their_readings() throws IOException {
    for (JsonNode series : rows(STRAPS.get("own_series").get("series"))) {
      double gone = series.get("allowance_used_up_at_length_mm").doubleValue();
      corner(
          ",'given':[{'dimension':'new-strap-length','length':'500 mm'}],"
              + "'heldBack':[{'allowance':'strap-stretch','percent':"
              + (gone / 5 - 100)
              + "}]");
      line(
          "definition",
          null,
          "{'car':'car','tool':{'tool':'tape','name':'steel rule','use':'tape',"
              + "'graduation':'0.1 mm','placingHalfWidth':'0.1 mm'}}");
      double before = 0;
      for (int i = 0; i < series.get("hours").size(); i++) {
        double hours = series.get("hours").get(i).doubleValue();
        if (hours > before) {
          line("use", null, "{'car':'car','unit':'hours','amount':" + (hours - before) + "}");
        }
        before = hours;
        line(
            "telltale",
            null,
            "{'corner':'lf','what':'strap-length','length':"
                + mm(series.get("length_mm").get(i).doubleValue())
                + ",'pull':'200 lb'}");
      }
      JsonNode strap = springs().get("strap");
      assertEquals(gone, value(strap, "/goneAtMm"), 1e-9);
      line(series, strap, "linear", "straight", 1e-9);
      line(series, strap, "log_time", "log", 1e-9);
      settled(series.get("exponential"), fit(strap, "settling"));
      if (series.has("exponential_plus_creep")) {
        settled(series.get("exponential_plus_creep"), fit(strap, "settling-and-creep"));
      }
    }
  }

  /**
   * A corner of 0.5 shock for wheel whose weight rests on two springs in series just at their
   * crossover, and a little to either side of it. By hand: 20 and 30 N/mm make 12 N/mm; the tender
   * of 20 closes by 60 mm under 1200 N, both then pressed 100 mm; the wheel carries half, 600 N or
   * 61.183 kg, at 12/4 N/mm below and 30/4 above.
   */
  @Test
  void a_car_that_sits_just_at_the_crossover_has_the_rate_of_the_side_it_is_on()
      throws IOException {
    double kg = 600 / 9.80665;
    double[][] rows = {{kg - 0.5, 3}, {kg + 0.5, 7.5}};
    for (double[] row : rows) {
      straight();
      define(
          "'spring':{'rate':'30 N/mm','tender':'20 N/mm','crossover':"
              + mm(60)
              + ",'looseAt':"
              + mm(600)
              + "}");
      weight(row[0]);
      JsonNode springs = springs();
      assertEquals(12, value(springs, "/coil/seriesNPerMm"), 1e-9);
      assertEquals(100, value(springs, "/coil/crossover/compressionMm"), 1e-9);
      assertEquals(1200, value(springs, "/coil/crossover/forceN"), 1e-9);
      // Half the square of the force by 12 N/mm: 60 J.
      assertEquals(60, value(springs, "/coil/crossover/energyJ"), 1e-9);
      assertEquals(0, value(springs, "/coil/crossover/positionMm"), 1e-6);
      assertEquals(row[1], value(springs, "/ride/rateNPerMm"), 1e-6);
      double off = (row[0] - kg) * 9.80665 / row[1];
      assertEquals(off, value(springs, "/ride/positionMm"), 1e-6);
    }
  }

  /** L = 500 − z/2 from −200 to 200 mm, the strap at −200, full bump at 200. */
  private void straight() {
    corner("");
    height("s", "on-the-strap", -200);
    shock("s", 600);
    height("m", "in-between", 0);
    shock("m", 500);
    height("b", "full-bump", 200);
    shock("b", 400);
  }

  /**
   * Dropped so far that the stop is pressed all it has, and a millimetre further. By hand: 100 kg
   * on 4 N/mm at the wheel from loose at −200 mm; by 200 mm it takes 2 · 400² = 320 J; the stop
   * from 150 mm on, 100 N/mm, 125 J by its 50 mm: the drop h with 100 g (h + 400 mm) = 445 J.
   */
  @Test
  void a_drop_that_uses_the_whole_stop_rests_there_and_a_higher_one_leaves_the_chart()
      throws IOException {
    double h = 445_000 / (100 * 9.80665) - 400;
    for (double more : new double[] {-0.5, 1}) {
      straight();
      define("'spring':{'rate':'16 N/mm','looseAt':" + mm(600) + "}");
      weight(100);
      define(
          "'bumpStop':{'stop':'s','kind':'rubber','touch':"
              + mm(150)
              + ",'drop':"
              + mm(h + more)
              + ",'chart':[{'crush':'0 mm','force':'0 N'},{'crush':'25 mm','force':'2500 N'},"
              + "{'crush':'50 mm','force':'5000 N'}]}");
      JsonNode stop = springs().at("/stops/0");
      assertEquals((h + more + 400) * 0.980665, value(stop, "/broughtJ"), 1e-6);
      assertEquals(320, value(stop, "/coilJ"), 1e-6);
      assertEquals(125, value(stop, "/stopTakesJ"), 1e-6);
      assertEquals(more > 0, stop.get("bottoms").asBoolean());
      // Its doubt reaches past the chart's last point: where it rests is not said.
      assertTrue(stop.path("restsAtMm").isMissingNode(), stop.toString());
    }
  }

  private static final double[][] BY_SCIPY = {
    {0.00792, 591.464, 629.797979798, 673.642},
    {0.008, 603.689, 624.5, 646.613},
    {0.00796571428571, 611.618, 626.614060258, 642.116}
  };

  /**
   * A strap by 3, 4, 5 and 6 readings in miles that grow by 0.8 mm each 100 miles, 0.02 mm off by
   * turns, which is less than the rule's own 0.0311 mm. Slope by numpy's lstsq; early, middle and
   * late by scipy's brentq on the prediction interval with s = 0.0311 mm. Fewer than five uses
   * forecast nothing.
   */
  @Test
  void a_strap_by_few_readings_in_miles_has_no_forecast_until_five_uses_tell_it()
      throws IOException {
    for (int readings = 3; readings <= 6; readings++) {
      corner(
          ",'given':[{'dimension':'new-strap-length','length':'500 mm'}],"
              + "'heldBack':[{'allowance':'strap-stretch','percent':1}]");
      line(
          "definition",
          null,
          "{'car':'car','tool':{'tool':'tape','name':'steel rule','use':'tape',"
              + "'graduation':'0.1 mm','placingHalfWidth':'0.02 mm'}}");
      for (int i = 0; i < readings; i++) {
        if (i > 0) {
          line("use", null, "{'car':'car','unit':'miles','amount':100}");
        }
        line(
            "telltale",
            null,
            "{'corner':'lf','what':'strap-length','length':"
                + mm(500 + 0.8 * i + 0.02 * (i % 2 == 0 ? 1 : -1))
                + ",'pull':'200 lb'}");
      }
      JsonNode strap = springs().get("strap");
      assertEquals("miles", strap.get("unit").asText());
      assertEquals(505, value(strap, "/goneAtMm"), 1e-9);
      if (readings == 3) {
        assertEquals(0, strap.get("fits").size());
        continue;
      }
      JsonNode straight = fit(strap, "straight");
      double[] wanted = BY_SCIPY[readings - 4];
      assertEquals(wanted[0], value(straight, "/parameters/1"), 1e-9);
      assertEquals(wanted[1], value(straight, "/early"), 0.02);
      assertEquals(wanted[2], value(straight, "/middle"), 1e-6);
      assertEquals(wanted[3], value(straight, "/late"), 0.02);
      assertEquals(readings - 2, straight.get("dof").asInt());
      assertEquals(readings >= 5, strap.has("early"), strap.path("needs").asText());
      if (strap.has("early")) {
        assertTrue(value(strap, "/early") < 625 && value(strap, "/late") > 625, strap.toString());
      } else {
        assertEquals("the strap's length after more drives", strap.get("needs").asText());
      }
    }
  }

  /**
   * Four corners alike, of 0.5 shock for wheel and 500 kg each on 50 N/mm; the left front's spring
   * is swapped for one of 40 N/mm. By hand: its wheel rate falls from 12.5 to 10 N/mm, under its
   * own load it would sink 500 g/(0.5 · 0.5) (1/40 − 1/50) = 98.067 mm; the frame does not twist,
   * so λ = −98.067/(1/10 + 3/12.5) = −288.43 N, and it sinks 69.22 mm, the two next to it 23.07,
   * and the right rear rises as much.
   */
  @Test
  void another_spring_foretells_ride_at_all_four_corners_until_it_is_read() throws IOException {
    line("car", "car", "{'details':{'name':'Mule','unit':'mm'}}");
    for (String place : List.of("left-front", "right-front", "left-rear", "right-rear")) {
      line(
          "corner",
          place,
          "{'car':'car','place':'"
              + place
              + "','layout':'unsteered-double-a-arm','adjusters':[{'adjuster':'spring',"
              + "'kind':'spring','unit':'words','moreShortens':false}]}");
      line(
          "round",
          "r-" + place,
          "{'corner':'"
              + place
              + "','springIn':true,'bumpStopIn':true,'wheelOn':true,'onTyres':true,"
              + "'steeringLinked':false}");
      for (int z = -200; z <= 200; z += 200) {
        String key = z == 0 ? "ride" : z < 0 ? "low" : "high";
        line(
            "height",
            key + place,
            "{'round':'r-"
                + place
                + "','name':'"
                + (z == 0 ? "ride" : "in-between")
                + "','spindle':"
                + mm(500 + z)
                + ",'mark':"
                + mm(500)
                + "}");
        shock(key + place, 600 - z / 2.0);
      }
      springAt(place, 50, 600 + 500 * 9.80665 / 0.5 / 50);
      line(
          "definition",
          null,
          "{'corner':'" + place + "','cornerWeight':{'by':'estimate','sprung':'500 kg'}}");
    }
    foretold(List.of());
    line(
        "adjustment",
        null,
        "{'corner':'left-front','adjuster':'spring','from':'50','to':'the soft one'}");
    foretold(List.of());
    springAt("left-front", 40, 600 + 500 * 9.80665 / 0.5 / 50);
    foretold(List.of(69.224, 23.075, 23.075, -23.075));

    // The right rear gives T/(1 + k (1/10 + 2/12.5)) = 23.075 mm at its wheel's k = 12.5 N/mm: by
    // JCGM 100 its ± 8 % (rectangular) moves that by 0.26 k/(1 + 0.26 k) of it.
    double exact = foretoldU();
    lines.replaceAll(l -> l.contains("right-rear") ? l.replace("50.0 N", "50.0 ± 4 N") : l);
    assertEquals(2 * 23.075 * 3.25 / 4.25 * 0.08 / Math.sqrt(3), apart(foretoldU(), exact), 0.03);
  }

  /**
   * By JCGM 100 two readings of a tape do not share its steps, nor the hand: 1/16 and ± 1/32 in.
   */
  @Test
  void where_two_springs_are_loose_was_read_twice() throws IOException {
    line("car", "car", "{'details':{'name':'Mule','unit':'mm'}}");
    for (String place : List.of("left-front", "right-front")) {
      line(
          "corner",
          place,
          "{'car':'car','place':'" + place + "','layout':'unsteered-double-a-arm'}");
      springAt(place, 50, 600);
    }
    springAt("left-front", 50, 610);
    Path file = Files.write(folder.resolve("two.jsonl"), lines);
    CarBook book = CarsOfFile.of(BookFile.readByHand(file)).get("car");
    Figure left = looseAt(book, "left-front");
    double twice = 2 * Math.sqrt(2 * (1.5875 * 1.5875 / 12 + 0.79375 * 0.79375 / 3));
    assertEquals(twice, left.minus(looseAt(book, "right-front")).U(), 1e-9);
    assertEquals(twice, left.minus(looseAt(book.asOf(book.n() - 1), "left-front")).U(), 1e-9);
  }

  private static Figure looseAt(CarBook book, String corner) {
    return CornerRide.of(book.card(corner)).coil.orElseThrow().zeroForceMm();
  }

  /** At the right rear. */
  private double foretoldU() throws IOException {
    return JSON.readTree(Figures.of(Files.write(folder.resolve("u.jsonl"), lines), told -> {}))
        .at("/cars/0/corners/3/springs/rideForetoldMm/U")
        .doubleValue();
  }

  /** What one source more adds to U, by itself. */
  private static double apart(double with, double without) {
    return Math.sqrt(with * with - without * without);
  }

  /** In series k_w k_t/(k_w + k_t): by JCGM 100 the tyre's own ± goes in by (k_w/(k_w + k_t))². */
  @Test
  void a_tyre_s_rate_brings_its_own_doubt() throws IOException {
    double[] expanded = new double[2];
    double rate = 0;
    for (int i = 0; i < 2; i++) {
      corner("");
      height("a", "in-between", -200);
      height("b", "in-between", 200);
      shock("a", 700);
      shock("b", 500);
      String tyre = i == 0 ? "280 N/mm" : "280 ± 28 N/mm";
      define("'spring':{'rate':'60 N/mm','looseAt':'680 mm','tyre':'" + tyre + "'}");
      weight(300);
      JsonNode ride = springs().get("ride");
      expanded[i] = value(ride, "/onTyreNPerMm/U");
      rate = value(ride, "/rateNPerMm");
    }
    double share = rate / (rate + 280);
    assertEquals(2 * share * share * 28 / Math.sqrt(3), apart(expanded[1], expanded[0]), 2e-3);
  }

  private void springAt(String place, double rate, double looseAtMm) {
    line(
        "definition",
        null,
        "{'corner':'"
            + place
            + "','spring':{'rate':'"
            + rate
            + " N/mm','looseAt':"
            + mm(looseAtMm)
            + "}}");
  }

  /** At all corners; none of them while the list is empty. */
  private void foretold(List<Double> wantedMm) throws IOException {
    Path file = folder.resolve("four.jsonl");
    Files.write(file, lines);
    JsonNode corners = JSON.readTree(Figures.of(file, told -> {})).at("/cars/0/corners");
    for (int i = 0; i < 4; i++) {
      JsonNode is = corners.get(i).at("/springs/rideForetoldMm");
      if (wantedMm.isEmpty()) {
        assertTrue(is.isMissingNode(), is.toString());
      } else {
        assertEquals(wantedMm.get(i), is.get("value").doubleValue(), 0.01, "corner " + i);
      }
    }
  }

  /** However much a strap is said to have been used, what is told of it stays short. */
  @Test
  void a_strap_of_a_thousand_million_hours_is_told_in_few_lines() throws IOException {
    corner(
        ",'given':[{'dimension':'new-strap-length','length':'500 mm'}],"
            + "'adjusters':[{'adjuster':'strap','kind':'limit-strap','unit':'holes',"
            + "'step':'10 mm','moreShortens':true}],"
            + "'heldBack':[{'allowance':'strap-stretch','percent':10}]");
    line(
        "part",
        null,
        "{'car':'car','corner':'lf','part':'strap','done':'fitted','adjuster':'strap',"
            + "'usedBefore':1e9}");
    for (int i = 0; i < 6; i++) {
      line("use", null, "{'car':'car','unit':'hours','amount':1}");
      line(
          "telltale",
          null,
          "{'corner':'lf','what':'strap-length','length':" + mm(510 + i) + ",'pull':'200 lb'}");
    }
    for (JsonNode fit : springs().at("/strap/fits")) {
      assertTrue(fit.get("next").size() <= 102, () -> fit.get("next").size() + " lines");
    }
  }

  private static JsonNode fit(JsonNode strap, String shape) {
    for (JsonNode fit : strap.get("fits")) {
      if (fit.get("shape").asText().equals(shape)) {
        return fit;
      }
    }
    throw new AssertionError(shape + " is not in " + strap);
  }

  private static void line(
      JsonNode series, JsonNode strap, String name, String shape, double relative) {
    JsonNode row = series.get(name);
    JsonNode fit = fit(strap, shape);
    near(row, "b0", fit, "/parameters/0", relative);
    near(row, "b1", fit, "/parameters/1", relative);
    near(row, "se_b0", fit, "/se/0", relative);
    near(row, "se_b1", fit, "/se/1", relative);
    near(row, "s", fit, "/s", relative);
    assertEquals(row.get("dof").asInt(), fit.get("dof").asInt());
    JsonNode at = row.get("crossing");
    near(at, "t_centre", fit, "/middle", relative);
    near(at, "t_early", fit, "/early", relative);
    near(at, "t_late", fit, "/late", relative);
    next(row.get("pi_at"), fit, relative);
  }

  private static void settled(JsonNode row, JsonNode fit) {
    if (row == null) {
      return;
    }
    ObjectNode params = (ObjectNode) row.get("params");
    boolean creeps = params.has("creep");
    near(params, "L0", fit, "/parameters/0", 1e-6);
    near(params, "a", fit, "/parameters/1", 1e-6);
    near(params, "tau_h", fit, creeps ? "/parameters/3" : "/parameters/2", 1e-6);
    if (creeps) {
      near(params, "creep", fit, "/parameters/2", 1e-6);
    }
    near(row, "rss", fit, "/rss", 1e-7);
    near(row, "s", fit, "/s", 1e-6);
    JsonNode at = row.get("crossing");
    for (String[] name :
        new String[][] {{"t_early", "early"}, {"t_centre", "middle"}, {"t_late", "late"}}) {
      if (at.get(name[0]).isNull()) {
        assertNull(fit.get(name[1]), name[1]);
      } else {
        near(at, name[0], fit, "/" + name[1], 1e-5);
      }
    }
    next(row.get("pi_at"), fit, 1e-6);
  }

  /** The interval of one more reading, where the row says it. */
  private static void next(JsonNode pi, JsonNode fit, double relative) {
    pi.fields()
        .forEachRemaining(
            at -> {
              JsonNode next = null;
              for (JsonNode each : fit.get("next")) {
                next =
                    each.get("use").doubleValue() == Double.parseDouble(at.getKey()) ? each : next;
              }
              double mm = next.get("mm").doubleValue();
              double within = next.get("within").doubleValue();
              ArrayNode wanted = (ArrayNode) at.getValue();
              assertEquals(wanted.get(0).doubleValue(), mm - within, relative * mm);
              assertEquals(wanted.get(1).doubleValue(), mm + within, relative * mm);
            });
  }
}
