package spindlebook;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * The lines of one small car of everyday sixteenths, repeats included: a corner, or two ends of an
 * axle, read at a few heights that may be one place, with whatever somebody may have given, set or
 * seen. Keys start with the car's.
 */
final class SmallBook {
  private static final String[] NAMES = {
    "strap-off", "on-the-strap", "in-between", "in-between", "ride", "stop-touch", "full-bump"
  };
  private static final String[] STEERINGS = {
    "straight", "straight", "straight", "full-left", "full-right", "part-left"
  };
  private static final String[] GAPS = {"lower-arm-frame", "tyre-frame", "tie-rod-end"};

  private final Random random;
  private final String car;
  private final boolean axle;
  private final List<String> lines = new ArrayList<>();
  private final List<String> points = new ArrayList<>();
  private final List<String> heights = new ArrayList<>();

  SmallBook(String car, Random random) {
    this.car = car;
    this.random = random;
    this.axle = random.nextInt(6) == 0;
  }

  List<String> lines() {
    line(
        car,
        "car",
        "\"details\":{\"name\":\"%s\",\"unit\":\"%s\"}"
            .formatted(car, random.nextInt(5) == 0 ? "mm" : "inch"));
    corner("L", axle ? "left-rear" : "left-front");
    if (axle || random.nextInt(4) == 0) {
      corner("R", axle ? "right-rear" : "right-front");
    }
    line(
        car + "r",
        "round",
        ("\"corner\":\"%sL\",\"springIn\":false,\"bumpStopIn\":true,\"wheelOn\":true,\"onTyres\":false,"
             + "\"steeringLinked\":true")
            .formatted(car));
    int places = 1 + random.nextInt(6);
    for (int i = 0; i < places; i++) {
      height(i);
    }
    if (random.nextInt(3) == 0) {
      change();
      height(places);
    }
    return lines;
  }

  private void corner(String key, String place) {
    List<String> watched = new ArrayList<>();
    for (int i = 0; i < 1 + random.nextInt(2); i++) {
      watched.add(watchPoint("p" + i));
    }
    List<String> held = new ArrayList<>();
    held(held, "\"strap-stretch\",\"percent\":" + pick("0", "5", "10"));
    held(held, "\"impact-reserve\",\"length\":\"%s\"".formatted(sixteenths(0, 24)));
    held(held, "\"shock-open-reserve\",\"length\":\"%s\"".formatted(sixteenths(0, 8)));
    held(held, "\"shock-closed-reserve\",\"length\":\"%s\"".formatted(sixteenths(0, 8)));
    held(held, "\"ground-clearance\",\"length\":\"%s\"".formatted(sixteenths(0, 32)));
    List<String> given = new ArrayList<>();
    given(given, "new-strap-length", 280, 40);
    given(given, "stop-crush", 0, 48);
    given(given, "shock-open", 400, 60);
    given(given, "shock-closed", 200, 60);
    given(given, "tyre-squashed-radius", 240, 40);
    given(given, "mark-to-lowest-frame", 40, 40);
    line(
        car + key,
        "corner",
        ("\"car\":\"%s\",\"place\":\"%s\",\"layout\":\"%s\",\"watchPoints\":[%s],\"heldBack\":[%s],"
                + "\"given\":[%s],\"adjusters\":[%s]")
            .formatted(
                car,
                place,
                axle ? "solid-axle-end" : "steered-double-a-arm",
                String.join(",", watched),
                String.join(",", held),
                String.join(",", given),
                "{\"adjuster\":\"strap\",\"kind\":\"limit-strap\",\"unit\":\"holes\",\"step\":\"1"
                    + " in\",\"moreShortens\":true,\"first\":\"hole"
                    + " 3\"},{\"adjuster\":\"spacer\",\"kind\":\"bump-stop-spacer\",\"unit\":\"length\",\"moreShortens\":false,\"first\":\"1"
                    + " in\"}"));
  }

  private String watchPoint(String point) {
    points.add(point);
    String keep = "{\"least\":\"%s\"}".formatted(sixteenths(0, 8));
    String place = pick(GAPS);
    if (random.nextInt(6) == 0) {
      place = "cv-plunge";
      keep = "{\"least\":\"%s\",\"most\":\"%s\"}".formatted(sixteenths(0, 3), sixteenths(3, 6));
    }
    return "{\"point\":\"%s\",\"place\":\"%s\",\"keep\":%s}".formatted(point, place, keep);
  }

  private void held(List<String> held, String of) {
    if (random.nextInt(4) > 0) {
      held.add("{\"allowance\":" + of + "}");
    }
  }

  private void given(List<String> given, String dimension, int from, int by) {
    if (random.nextInt(4) > 0) {
      String half = random.nextBoolean() ? ",\"halfWidth\":\"1/16 in\"" : "";
      given.add(
          "{\"dimension\":\"%s\",\"length\":\"%s\"%s}"
              .formatted(dimension, sixteenths(from, by), half));
    }
  }

  private void height(int i) {
    String key = car + "h" + i;
    String mark =
        !heights.isEmpty() && random.nextInt(3) > 0
            ? "\"markAsAt\":\"" + heights.get(0) + "\""
            : "\"mark\":\"" + (random.nextInt(4) > 0 ? "30 in" : sixteenths(476, 8)) + "\"";
    String crossed = axle && random.nextInt(3) == 0 ? ",\"pairing\":\"crossed\"" : "";
    int spread = random.nextInt(3) == 0 ? 6 : 200;
    line(
        key,
        "height",
        "\"round\":\"%sr\",\"name\":\"%s\",\"spindle\":\"%s\",%s%s"
            .formatted(car, pick(NAMES), sixteenths(400, spread), mark, crossed));
    heights.add(key);
    for (String point : points) {
      int repeats = random.nextInt(5) == 0 ? random.nextInt(9) : random.nextInt(3);
      for (int r = 0; r < repeats; r++) {
        gap(key, point);
      }
    }
    length(key, "strap-length", 300, 60);
    length(key, "shock-length", 300, 80);
    length(key, "stop-gap", 0, 60);
  }

  private void gap(String height, String point) {
    String seen =
        switch (random.nextInt(10)) {
          case 0 -> "\"result\":\"touches\"";
          case 1 -> "\"result\":\"well-clear\"";
          case 2 -> "\"result\":\"" + pick("binds", "not-looked") + "\"";
          case 3 ->
              "\"result\":\"go-no-go\",\"go\":\"%s\",\"noGo\":\"%s\""
                  .formatted(sixteenths(1, 4), sixteenths(6, 4));
          default -> "\"result\":\"number\",\"length\":\"%s\"".formatted(sixteenths(0, 10));
        };
    reading(
        height,
        "\"quantity\":\"watch-point\",\"point\":\"%s\",\"steering\":\"%s\",%s"
            .formatted(point, pick(STEERINGS), seen));
  }

  private void length(String height, String quantity, int from, int by) {
    int repeats = random.nextInt(3) > 0 ? 1 : random.nextInt(4) == 0 ? 2 + random.nextInt(6) : 0;
    for (int r = 0; r < repeats; r++) {
      reading(
          height,
          "\"quantity\":\"%s\",\"steering\":\"straight\",\"result\":\"number\",\"length\":\"%s\""
              .formatted(quantity, sixteenths(from, random.nextInt(3) == 0 ? 2 : by)));
    }
  }

  private void reading(String height, String body) {
    line(car + "k" + lines.size(), "reading", "\"height\":\"" + height + "\"," + body);
  }

  private void change() {
    String key = car + "c" + lines.size();
    switch (random.nextInt(3)) {
      case 0 ->
          line(
              key,
              "adjustment",
              "\"corner\":\"%sL\",\"adjuster\":\"strap\",\"to\":\"hole %d\""
                  .formatted(car, 1 + random.nextInt(5)));
      case 1 -> line(key, "happening", "\"car\":\"%s\",\"what\":\"driven\"".formatted(car));
      default ->
          line(
              key,
              "telltale",
              "\"corner\":\"%sL\",\"what\":\"shock-ring\",\"length\":\"%s\",\"shockLength\":\"%s\""
                  .formatted(car, sixteenths(1, 80), sixteenths(300, 80)));
    }
  }

  private void line(String key, String kind, String body) {
    lines.add("{\"kind\":\"%s\",\"key\":\"%s\",\"body\":{%s}}".formatted(kind, key, body));
  }

  private String sixteenths(int from, int by) {
    int n = from + random.nextInt(by + 1);
    return n / 16 + " " + n % 16 + "/16 in";
  }

  private String pick(String... of) {
    return of[random.nextInt(of.length)];
  }
}
