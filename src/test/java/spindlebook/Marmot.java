package spindlebook;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spindlebook.card.ToReadAddress;
import spindlebook.definition.Layout;
import spindlebook.definition.Starter;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.HeightName;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;

/**
 * The car of the story, put into the book through its pages: left front with three watch points,
 * cycled from hanging with the strap off to past the bump stop, and once more at ride height.
 */
final class Marmot {
  static final List<String> NOT_WATCHED =
      List.of(
          "lower-rod-end",
          "tie-rod-end",
          "spindle-wheel",
          "tyre-frame",
          "upper-uniball-angle",
          "lower-uniball-angle",
          "hose-slack");
  static final String TIE_ROD = "p-tie-rod-upper-arm";
  static final String UPPER_ROD_END = "p-upper-rod-end";
  static final String SHOCK_ARM = "p-shock-upper-arm";
  static final String STRAP = "q-strap-length";
  static final String SHOCK = "q-shock-length";
  static final String STOP_GAP = "q-stop-gap";

  final Shop shop;
  final String car;
  final String left;
  final String right;
  String round;
  String strapOff;
  String onStrap;
  String low;
  String high;
  String touch;
  String past;
  String ride;

  Marmot(Shop shop) {
    this.shop = shop;
    Page created = shop.get("/").is(200).form("/cars").with("name", "Marmot").keep();
    this.car = created.location().substring("/cars/".length());
    this.left = car + "-lf";
    this.right = car + "-rf";
  }

  /** What is given, what is set, what is watched. */
  Marmot prepared() {
    send(
        "/corners/" + left + "/given",
        Map.of(
            "new-strap-length", "18 3/8",
            "stop-crush", "1-1/2",
            "shock-open", "27 1/8",
            "shock-closed", "13 5/8",
            "mark-to-lowest-frame", "15 5/16",
            "tyre-squashed-radius", "15 3/4",
            "strap-stretch", "8 %",
            "impact-reserve", "3/8"));
    for (String point : NOT_WATCHED) {
      String address = "/corners/" + left + "/watch-points/" + point;
      shop.get(address).is(200).form(address + "/retire").keep();
    }
    adjust(left, "limit-strap", "18 3/8");
    adjust(left, "bump-stop-spacer", "1/2");
    adjust(left, "upper-rod-ends", "3");
    return this;
  }

  /** The round with the stop in, from hanging to touch. */
  Marmot measured() {
    round = startRound(left, Map.of("who", "Sam"));
    strapOff = height(round, "strap-off", "11 7/8", "31 5/8");
    onStrap = heightAsAt(round, "on-the-strap", "15 3/16", strapOff);
    low = heightAsAt(round, "in-between", "18 7/8", strapOff);
    high = heightAsAt(round, "in-between", "22 3/16", strapOff);
    touch = heightAsAt(round, "stop-touch", "26 5/8", strapOff);

    readTieRod(strapOff, "7/16", "1/8", "touches");
    readTieRod(onStrap, "9/16", "5/16", "5/32");
    readTieRod(low, "15/16", "3/4", "11/16");
    readTieRod(high, "1 1/4", "1 3/16", "1 1/8");
    readTieRod(touch, "1 1/2", "1 7/16", "1 3/8");
    for (String height : List.of(strapOff, touch)) {
      for (String steering : List.of("full-left", "straight", "full-right")) {
        read(height, steering, UPPER_ROD_END, "well clear");
      }
    }
    read(strapOff, "straight", SHOCK_ARM, "1 1/4");
    read(touch, "straight", SHOCK_ARM, "3/4");

    read(strapOff, "straight", STRAP, "20");
    read(onStrap, "straight", STRAP, "18 11/16");
    read(low, "straight", STRAP, "17 1/8");
    read(high, "straight", STRAP, "15 1/2");
    read(strapOff, "straight", SHOCK, "27");
    read(onStrap, "straight", SHOCK, "25 5/8");
    read(low, "straight", SHOCK, "22 7/8");
    read(high, "straight", SHOCK, "20 1/4");
    read(touch, "straight", SHOCK, "16 7/8");
    read(low, "straight", STOP_GAP, "4 7/16");
    read(high, "straight", STOP_GAP, "2 5/8");
    return this;
  }

  /** The stop taken out and the wheel jacked past where it touches; then the car at ride height. */
  Marmot measuredOn() {
    String out = startRound(left, Map.of("bumpStop", "out"));
    past = heightAsAt(out, "in-between", "30 3/16", strapOff);
    readTieRod(past, "1 5/8", "1 1/2", "1 7/16");
    for (String steering : List.of("full-left", "straight", "full-right")) {
      read(past, steering, UPPER_ROD_END, "well clear");
    }
    read(past, "straight", SHOCK_ARM, "5/8");
    read(past, "straight", SHOCK, "14 5/16");
    String standing = startRound(left, Map.of("spring", "in", "on", "tyres"));
    ride = height(standing, "ride", "20 3/4", "31 9/16");
    return this;
  }

  void readTieRod(String height, String fullLeft, String straight, String fullRight) {
    read(height, "full-left", TIE_ROD, fullLeft);
    read(height, "straight", TIE_ROD, straight);
    read(height, "full-right", TIE_ROD, fullRight);
  }

  String startRound(String corner, Map<String, String> conditions) {
    String action = "/corners/" + corner + "/rounds";
    Form form = shop.get(action + "/new").is(200).form(action);
    for (Map.Entry<String, String> condition : conditions.entrySet()) {
      form = form.with(condition.getKey(), condition.getValue());
    }
    form.keep();
    return form.key();
  }

  /** A round of every gap and length at four heights, as the pad's keys want it: 124 questions. */
  String everything(String corner, Map<String, String> conditions) {
    return everything(shop.browser, corner, conditions);
  }

  static String everything(Browser browser, String corner, Map<String, String> conditions) {
    List<ToRead> all = new ArrayList<>();
    for (HeightName name :
        List.of(
            HeightName.ON_THE_STRAP,
            HeightName.IN_BETWEEN,
            HeightName.IN_BETWEEN,
            HeightName.STOP_TOUCH)) {
      String label = name != HeightName.IN_BETWEEN ? null : all.size() < 40 ? "low" : "high";
      for (Steering steering :
          List.of(Steering.STRAIGHT, Steering.FULL_LEFT, Steering.FULL_RIGHT)) {
        for (WatchPoint point : Starter.watchPoints(Layout.STEERED_DOUBLE_A_ARM)) {
          boolean gap = point.keep().mostAngle() == null;
          if (gap && (steering == Steering.STRAIGHT || point.place().steered())) {
            all.add(new ToRead(name, label, steering, Quantity.WATCH_POINT, point.point()));
          }
        }
        for (Quantity quantity : Quantity.values()) {
          boolean there = steering == Steering.STRAIGHT || quantity == Quantity.TOE;
          if (quantity != Quantity.WATCH_POINT && there) {
            all.add(new ToRead(name, label, steering, quantity, null));
          }
        }
      }
    }
    String address = ToReadAddress.newRound(corner, all);
    Map<String, String> fields =
        new LinkedHashMap<>(
            browser.get(address).is(200).form("/corners/" + corner + "/rounds").values());
    // One of many of its name: they stand in the address.
    fields.remove(ToReadAddress.NEED);
    fields.putAll(conditions);
    browser.post(address.replace("/rounds/new", "/rounds"), fields).is(303);
    return fields.get("key");
  }

  String height(String round, String name, String spindle, String mark) {
    Form form = heightForm(round, name, spindle).with("mark", mark);
    form.keep();
    return form.key();
  }

  String heightAsAt(String round, String name, String spindle, String other) {
    Form form = heightForm(round, name, spindle).with("markAsAt", other);
    form.keep();
    return form.key();
  }

  Form heightForm(String round, String name, String spindle) {
    return shop.get("/rounds/" + round + "/heights/new")
        .is(200)
        .form("/rounds/" + round + "/heights")
        .with("name", name)
        .with("spindle", spindle);
  }

  String read(String height, String steering, String row, String value) {
    Form form = readingForm(height, steering, row).with("v-" + row, value);
    form.keep();
    return form.key();
  }

  Form readingForm(String height, String steering, String row) {
    return shop.get("/heights/" + height + "?steering=" + steering + "&all=1")
        .is(200)
        .formWithId(row);
  }

  /** Through the page that says what it would move; back comes where one is sent next. */
  Page adjust(String corner, String adjuster, String to) {
    String action = "/corners/" + corner + "/adjustments/" + adjuster;
    Page wouldMove =
        shop.get(action).is(200).form(action + "/would-move").with("to", to).send().is(200);
    return wouldMove.form(action).keep();
  }

  Page send(String action, Map<String, String> fields) {
    return send(shop.get(action), action, fields);
  }

  /** From a page of another address. */
  Page send(String page, String action, Map<String, String> fields) {
    return send(shop.get(page), action, fields);
  }

  static Page send(Page page, String action, Map<String, String> fields) {
    Form form = page.is(200).form(action);
    for (Map.Entry<String, String> field : new LinkedHashMap<>(fields).entrySet()) {
      form = form.with(field.getKey(), field.getValue());
    }
    return form.keep();
  }
}
