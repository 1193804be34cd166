package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A whole round walked as its plan asks, on corners whose truth is known: both ends are decided, in
 * far fewer taps than a walk that asked everything at every height. The corners are made up here,
 * in inches; no source.
 */
class JackPlanTest {
  static final double MARK = 32;
  private static final double HANGS = -20;
  private static final double STRAP = -17;
  private static final double TOUCH = -5;
  private static final double SOLID = -2.5;
  private static final double OUT = -1.25;

  /** Strap 20 new, 20 1/4 on it, 5 % to come at a ratio of a half; then a quarter of impact. */
  static final double DROOP_END = STRAP - 1.5;

  static final double BUMP_END = SOLID + 0.25;

  /** The most of the taps of everything everywhere that a plan may take. */
  private static final double MOST = 0.6;

  /** Keys of the old walk to a height it had not planned: More, One more height, name, Keep. */
  private static final int ONE_MORE_HEIGHT = 4;

  /**
   * What closes on a corner.
   *
   * @param limit wheel position at which its rule is met
   * @param per how much it closes over an inch of wheel travel
   */
  record Closes(boolean droop, double limit, double per) {
    double over(double z) {
      return per * (droop ? z - limit : limit - z);
    }
  }

  /** A corner whose every gap is known; what is not named stays wide open. */
  record Truth(Map<String, Closes> closes) {
    double value(String point, double least, double z) {
      Closes c = closes.get(point);
      return c == null ? 4 * least + 1 : least + c.over(z);
    }

    /** As a tape, a drill or an eye tells it: to a sixteenth, below half an inch to a 32nd. */
    String gap(String point, double least, double z) {
      double value = value(point, least, z);
      if (value > 2 * least + 0.25) {
        return "well clear";
      }
      return value <= 1 / 64.0 ? "touches" : text(value, value < 0.5 ? 32 : 16);
    }
  }

  static String text(double inches, int parts) {
    long n = Math.round(Math.abs(inches) * parts);
    long whole = n / parts;
    long top = n % parts;
    int of = parts;
    while (top > 0 && top % 2 == 0) {
      top /= 2;
      of /= 2;
    }
    String sign = inches < 0 && n > 0 ? "-" : "";
    return sign
        + (top == 0 ? String.valueOf(whole) : (whole > 0 ? whole + " " : "") + top + "/" + of);
  }

  /** Keys of the pad: digits of the whole, one key for the rest. */
  static int taps(String value) {
    if (value.matches("[a-z ]+")) {
      return 1;
    }
    if (value.endsWith("°")) {
      return value.length();
    }
    String plain = value.replace("-", "");
    int sign = value.length() - plain.length();
    String whole = plain.contains(" ") ? plain.split(" ")[0] : plain.contains("/") ? "" : plain;
    boolean fine = plain.endsWith("/32");
    return sign + whole.length() + 1 + (fine ? 1 : 0);
  }

  @TempDir Path folder;
  Shop shop;
  Marmot marmot;

  /** Where the wheel is jacked to with the stop out. */
  private double out = OUT;

  /** Heights that close an open end where one look told the rest. */
  private int lookedAtOnce;

  @AfterEach
  void close() {
    if (shop != null) {
      shop.close();
    }
  }

  String corner(String layout, boolean rear) {
    shop = new Shop(folder.resolve(layout + System.nanoTime()));
    marmot = new Marmot(shop);
    String at = marmot.car + (rear ? "-lr" : "-lf");
    if (rear) {
      String corners = "/cars/" + marmot.car + "/corners";
      shop.get(corners + "/new")
          .is(200)
          .form(corners)
          .with("end", "rear")
          .with("layout", layout)
          .keep();
    }
    for (String end :
        rear && layout.equals("solid-axle-end")
            ? List.of("-lr", "-rr")
            : List.of(at.substring(marmot.car.length()))) {
      marmot.send(
          "/corners/" + marmot.car + end + "/given",
          Map.of(
              "new-strap-length", "20",
              "stop-crush", "1 1/2",
              "shock-open", "29",
              "shock-closed", "9",
              "mark-to-lowest-frame", "13",
              "tyre-squashed-radius", "17",
              "strap-stretch", "5 %"));
      marmot.adjust(marmot.car + end, "limit-strap", "20");
    }
    return at;
  }

  /** Taps, and how the ends stand. */
  private record Walked(int taps, int asked, String droop, String bump) {}

  private static final Pattern END =
      Pattern.compile("(Droop|Bump) (clear|too close|can’t tell|not measured)");

  static double at(String id) {
    String place = id.substring(0, id.indexOf('/'));
    if (place.startsWith("in-between")) {
      return place.endsWith("1") ? -13 : -9;
    }
    return switch (place.replaceFirst("-\\d$", "")) {
      case "strap-off" -> HANGS;
      case "on-the-strap" -> STRAP;
      case "stop-touch" -> TOUCH;
      case "full-bump" -> SOLID;
      case "stop-out" -> OUT;
      default -> throw new AssertionError(place);
    };
  }

  private Walked walk(String corner, Truth truth) throws IOException {
    String round = marmot.startRound(corner, Map.of());
    String guide = "/rounds/" + round + "/guide";
    Page page = shop.get(guide).is(200);
    int taps = 0;
    int asked = 0;
    String last = "";
    Map<String, Double> z = new HashMap<>();
    Map<String, List<String>> picked = new HashMap<>();
    for (int n = 0; !page.text().contains("The round is done"); n++) {
      assertTrue(n < 400, "it ends");
      asked++;
      Form form = page.form(guide);
      String id = form.value("at");
      String here0 = id.substring(0, id.indexOf('/'));
      // Back at a height that was there before the jack went on is a screen of its own.
      taps += z.containsKey(here0) && !here0.equals(last) ? 1 : 0;
      last = here0;
      switch (form.value("what")) {
        case "height" -> {
          double here = id.startsWith("stop-out") ? out : aimed(page, id);
          z.put(id.substring(0, id.indexOf('/')), here);
          boolean first = !form.values().containsKey("markAsAt") && z.size() == 1;
          taps += readied(page) + taps(text(MARK + here, 16)) + (first ? taps("32") : 1);
          if (form.values().containsKey("otherSpindle")) {
            taps += taps(text(MARK + here, 16)) + (first ? taps("32") : 0);
            double there = form.value("pairing").equals("crossed") ? crossed(here) : here;
            z.put(id.substring(0, id.indexOf('/')) + "o", there);
            form = form.with("otherSpindle", text(MARK + there, 16)).with("otherMark", "32");
          }
          page =
              shop.browser.follow(
                  form.with("spindle", text(MARK + here, 16)).with("mark", "32").keep());
        }
        case "others" -> {
          lookedAtOnce += id.startsWith("closing") ? 1 : 0;
          String not = null;
          String place = id.substring(0, id.indexOf('/'));
          for (String way : ways(page)) {
            String row = way.substring(way.lastIndexOf('/') + 1);
            String value = value(truth, row, z.get(end(place, row, z)));
            if (!value.equals("well clear")
                && !picked.computeIfAbsent(place, p -> new ArrayList<>()).contains(way)) {
              picked.get(place).add(way);
              not = way;
            }
          }
          taps += not == null ? 1 : 2;
          page =
              not == null
                  ? shop.browser.follow(form.keep())
                  : shop.get(guide + "?at=" + not).is(200);
        }
        default -> {
          String place = id.substring(0, id.indexOf('/'));
          String value = value(truth, form.value("row"), z.get(end(place, form.value("row"), z)));
          if (place.startsWith("closing") && !place.endsWith("x") && value.equals("well clear")) {
            String past = place.startsWith("closing-0") ? "strap-off-1" : "stop-out-1";
            assertNotEquals(
                "well clear", value(truth, form.value("row"), z.get(past)), id + ": one look does");
          }
          taps += taps(value);
          page = shop.browser.follow(form.with("value", value).keep()).is(200);
        }
      }
    }
    return ends(taps, asked, page);
  }

  /**
   * Everything at every height, as the walk was: the heights it planned, and those past the stops.
   */
  private Walked everything(String corner, Truth truth) throws IOException {
    String round = marmot.startRound(corner, Map.of());
    JsonNode plan = plan(round);
    String after = plan.get("after").asText();
    boolean axle = plan.get("boxes").has("otherSpindle");
    List<Object[]> heights = new ArrayList<>();
    Object[][] together = {
      {"on-the-strap", STRAP, 0},
      {"in-between", -13.0, 0},
      {"in-between", -9.0, 0},
      {"stop-touch", TOUCH, 0},
      {"strap-off", HANGS, ONE_MORE_HEIGHT},
      {"stop-out", OUT, ONE_MORE_HEIGHT}
    };
    for (Object[] one : together) {
      heights.add(new Object[] {one[0], one[1], one[2], one[0], one[1]});
    }
    if (axle) {
      heights.add(new Object[] {"on-the-strap", STRAP, 0, "stop-touch", TOUCH});
      heights.add(new Object[] {"stop-touch", TOUCH, 0, "on-the-strap", STRAP});
      heights.add(new Object[] {"strap-off", HANGS, ONE_MORE_HEIGHT, "stop-out", OUT});
      heights.add(new Object[] {"stop-out", OUT, ONE_MORE_HEIGHT, "strap-off", HANGS});
    }
    int taps = 0;
    int asked = 0;
    for (int h = 0; h < heights.size(); h++) {
      Object[] one = heights.get(h);
      double here = (double) one[1];
      double there = (double) one[4];
      Map<String, String> height = new HashMap<>();
      height.put("what", "height");
      height.put("name", (String) one[0]);
      height.put("spindle", text(MARK + here, 16));
      height.put("mark", "32");
      if (axle) {
        height.put("pairing", h < 6 ? "both-together" : "crossed");
        height.put("otherName", (String) one[3]);
        height.put("otherSpindle", text(MARK + there, 16));
        height.put("otherMark", "32");
      }
      taps += (int) one[2] + taps(height.get("spindle")) + (h == 0 ? taps("32") : 1);
      taps += axle ? taps(height.get("otherSpindle")) + (h == 0 ? taps("32") : 0) : 0;
      asked++;
      sent(round, after, "h" + h, height);
      for (var at : plan.get("gaps").properties()) {
        Set<String> rows = new LinkedHashSet<>();
        at.getValue().forEach(r -> rows.add(r.asText()));
        if (at.getKey().equals("straight")) {
          rows.addAll(List.of("q-strap-length", "q-shock-length", "q-stop-gap"));
          if (axle) {
            rows.addAll(List.of("o-q-strap-length", "o-q-shock-length", "o-q-stop-gap"));
          }
          taps += axle ? 0 : taps("0.8°");
        }
        // Toe, which it asked for everywhere as well: one key where no digit is needed.
        taps += axle ? 0 : 1;
        for (String row : rows) {
          double z = row.startsWith("o-") ? there : here;
          if (row.endsWith("q-stop-gap") && z >= TOUCH) {
            taps += 1;
            continue;
          }
          String value = value(truth, row, z);
          taps += taps(value);
          asked++;
          sent(
              round,
              after,
              "r" + h + at.getKey() + row,
              Map.of(
                  "what",
                  "reading",
                  "height",
                  round + "h" + h,
                  "steering",
                  at.getKey(),
                  "row",
                  row,
                  "value",
                  value));
        }
      }
    }
    return ends(taps, asked, shop.get("/rounds/" + round + "/guide?at=end").is(200));
  }

  private JsonNode plan(String round) throws IOException {
    return new ObjectMapper().readTree(shop.get("/rounds/" + round + "/news?n=-1").is(200).html());
  }

  private void sent(String round, String after, String key, Map<String, String> body) {
    Map<String, String> fields = new HashMap<>(body);
    fields.put("key", round + key);
    fields.put("after", after);
    shop.browser.post("/rounds/" + round + "/sent", fields).is(200);
  }

  private static Walked ends(int taps, int asked, Page page) {
    Map<String, String> ends = new LinkedHashMap<>();
    Matcher found = END.matcher(page.text());
    while (found.find()) {
      ends.put(found.group(1), found.group(2));
    }
    return new Walked(taps, asked, ends.get("Droop"), ends.get("Bump"));
  }

  private static String end(String place, String row, Map<String, Double> z) {
    return row.startsWith("o-") && z.containsKey(place + "o") ? place + "o" : place;
  }

  private static double crossed(double here) {
    return here == STRAP ? SOLID : here == SOLID ? STRAP : here < STRAP ? OUT : HANGS;
  }

  /** Where the page sends the jack: a place by its name, or to the eighth it says. */
  private static double aimed(Page page, String id) {
    Matcher about =
        Pattern.compile("pindle about (\\d+)(?: (\\d)/(\\d))? in above").matcher(page.text());
    if (id.startsWith("closing") && about.find()) {
      return Double.parseDouble(about.group(1))
          + (about.group(2) == null
              ? 0
              : Double.parseDouble(about.group(2)) / Double.parseDouble(about.group(3)))
          - MARK;
    }
    return at(id);
  }

  private static int readied(Page page) {
    return Pattern.compile(
                "Rated stands|The arm drops when the strap|Take the weight|Only the jack|Lower"
                    + " first")
            .matcher(page.text())
            .find()
        ? 1
        : 0;
  }

  private static List<String> ways(Page page) {
    List<String> ways = new ArrayList<>();
    Matcher found =
        Pattern.compile("guide\\?at=([^\"]*/p-[^\"]*|[^\"]*/o-p-[^\"]*)\"").matcher(page.html());
    while (found.find()) {
      ways.add(Page.decoded(found.group(1)));
    }
    return ways;
  }

  private static final Map<String, Double> LEAST =
      Map.ofEntries(
          Map.entry("upper-rod-end", 1 / 16.0),
          Map.entry("lower-rod-end", 1 / 16.0),
          Map.entry("tie-rod-end", 1 / 16.0),
          Map.entry("toe-link-end", 1 / 16.0),
          Map.entry("arm-pivot", 1 / 16.0),
          Map.entry("spindle-wheel", 0.5),
          Map.entry("tyre-frame", 1.0),
          Map.entry("axle-tank", 1.0),
          Map.entry("hose-slack", 1.0));

  static String value(Truth truth, String row, double z) {
    String plain = row.replaceFirst("^o-", "");
    return switch (plain) {
      case "q-strap-length" -> text(20.25 - 0.5 * (z - STRAP), 16);
      case "q-shock-length" -> text(24 - 0.7 * (z - STRAP), 16);
      case "q-stop-gap" -> text(0.6 * (TOUCH - z), 16);
      case "p-cv-angle" ->
          String.format(Locale.ROOT, "%.1f°", 9 - truth.value("cv-angle", 0, z) / 4);
      case "p-upper-uniball-angle", "p-lower-uniball-angle" -> "14.5°";
      case "p-u-joint-angle" ->
          String.format(Locale.ROOT, "%.1f°", 9 - truth.value("u-joint-angle", 0, z) / 4);
      case "p-cv-plunge" -> text(0.01 * (z + 10), 32);
      default -> truth.gap(plain.substring(2), LEAST.getOrDefault(plain.substring(2), 0.25), z);
    };
  }

  /** Jacked less far than asked: each of twenty-odd gaps was then asked for by itself. */
  @Test
  void what_was_well_clear_past_the_stop_is_looked_at_once_where_the_end_is_closed()
      throws IOException {
    out = SOLID + 0.1;
    walk(
        corner("steered-double-a-arm", false),
        truth("tie-rod-upper-arm", DROOP_END - 1, "tyre-frame", BUMP_END + 1));
    assertTrue(lookedAtOnce > 0);
  }

  /** Two lengths of it, one of them within its reserve, tell 17 inches of a limit's place. */
  @Test
  void a_shock_within_its_reserve_past_the_stop_is_read_further_in_on_the_phone_too()
      throws IOException {
    String corner = corner("steered-double-a-arm", false);
    String round = marmot.startRound(corner, Map.of());
    List<String> lengths = new ArrayList<>();
    plan(round).get("lengths").get("straight").forEach(r -> lengths.add(r.asText()));
    assertEquals(List.of("q-shock-length"), lengths);
  }

  @Test
  void a_steered_corner_is_decided() throws IOException {
    decided("steered-double-a-arm", false, "tie-rod-upper-arm", "tyre-frame", "spindle-wheel");
  }

  @Test
  void an_unsteered_one_is() throws IOException {
    decided(
        "unsteered-double-a-arm", true, "drive-shaft-lower-arm", "tyre-frame", "shock-upper-arm");
  }

  @Test
  void a_trailing_arm_is() throws IOException {
    decided("trailing-arm", true, "drive-shaft-arm", "arm-frame", "shock-frame");
  }

  @Test
  void a_solid_axle_is() throws IOException {
    decided("solid-axle-end", true, "shock-axle", "axle-frame", "link-frame");
  }

  /**
   * @param low what usually gets tight at droop, {@code high} at bump; {@code other} where nobody
   *     expects it
   */
  private void decided(String layout, boolean rear, String low, String high, String other)
      throws IOException {
    Map<String, Truth> truths = new LinkedHashMap<>();
    truths.put("clear", truth(low, DROOP_END - 1, high, BUMP_END + 1));
    truths.put("strap too long", truth(low, STRAP + 1, high, BUMP_END + 1));
    truths.put("stretches into it", truth(low, DROOP_END + 0.75, high, BUMP_END + 1));
    truths.put("stop too thin", truth(low, DROOP_END - 1, high, TOUCH + 1));
    truths.put("hits past solid", truth(low, DROOP_END - 1, high, SOLID - 0.5));
    truths.put("unexpected", new Truth(Map.of(other, new Closes(true, STRAP + 0.75, 0.2))));
    int now = 0;
    int was = 0;
    for (Map.Entry<String, Truth> one : truths.entrySet()) {
      Walked walked = walk(corner(layout, rear), one.getValue());
      shop.close();
      Walked before = everything(corner(layout, rear), one.getValue());
      shop.close();
      String told =
          String.format(
              Locale.ROOT,
              "%s, %s: %s; everything everywhere %s: %.0f %%",
              layout,
              one.getKey(),
              walked,
              before,
              100.0 * walked.taps() / before.taps());
      System.out.println(told);
      boolean clear = one.getKey().equals("clear");
      boolean bump = one.getKey().contains("stop") || one.getKey().contains("solid");
      assertEquals(clear || bump ? "clear" : "too close", walked.droop(), told);
      assertEquals(bump ? "too close" : "clear", walked.bump(), told);
      boolean same = walked.droop().equals(before.droop()) && walked.bump().equals(before.bump());
      assertTrue(!same || walked.taps() <= MOST * before.taps(), told);
      now += walked.taps();
      was += before.taps();
    }
    // Where everything everywhere did not decide an end, more would have had to be read.
    assertTrue(now <= MOST * was, layout + ": " + now + " of " + was);
  }

  static Truth truth(String low, double lowLimit, String high, double highLimit) {
    return new Truth(
        Map.of(low, new Closes(true, lowLimit, 0.15), high, new Closes(false, highLimit, 0.15)));
  }
}
