package spindlebook.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spindlebook.card.Capital;
import spindlebook.corner.Card;
import spindlebook.corner.InForce;
import spindlebook.corner.SeenTarget;
import spindlebook.corner.Setting;
import spindlebook.corner.SignedCorner.Rule;
import spindlebook.drivecheck.SignOffCopy;
import spindlebook.sides.SidesView.Cell;
import spindlebook.sides.SidesView.Found;
import spindlebook.sides.SidesView.Row;

/** What is set and what is demanded on two cards, thing by thing. */
record SettingRows(Card one, Card other, Heads heads) {

  List<Row> settings() {
    Map<String, InForce> first = new LinkedHashMap<>();
    Map<String, InForce> second = new LinkedHashMap<>();
    one.adjusters().forEach(a -> first.put(a.adjuster().adjuster(), a));
    other.adjusters().forEach(a -> second.put(a.adjuster().adjuster(), a));
    return both(first, second, this::setting);
  }

  List<Row> rules() {
    return both(rules(one), rules(other), this::rule);
  }

  private static Map<String, Rule> rules(Card card) {
    Map<String, Rule> rules = new LinkedHashMap<>();
    SignOffCopy.rules(card).forEach(r -> rules.put(r.of(), r));
    for (SeenTarget t : card.aligned().targets()) {
      String of = "target: " + t.target().figure().words();
      rules.put(of, new Rule(of, of, t.target().inWords()));
    }
    return rules;
  }

  private interface Beside<T> {
    Row row(T one, T other);
  }

  private static <T> List<Row> both(Map<String, T> first, Map<String, T> second, Beside<T> beside) {
    Map<String, T> all = new LinkedHashMap<>(first);
    second.forEach(all::putIfAbsent);
    List<Row> rows = new ArrayList<>();
    all.keySet().forEach(key -> rows.add(beside.row(first.get(key), second.get(key))));
    return rows;
  }

  private Row setting(InForce a, InForce b) {
    String name = Capital.of((b == null ? a : b).adjuster().name());
    if (a == null || b == null) {
      return new Row(name, cell(a), cell(b), null, Found.DIFFERS, "differs");
    }
    Setting x = a.setting();
    Setting y = b.setting();
    if (x == null || y == null) {
      String where = x == null && y == null ? "" : ", " + (x == null ? heads.one() : heads.other());
      return new Row(
          name, cell(a), cell(b), null, Found.NOT_COMPARED, "not compared: never said" + where);
    }
    if (x.same(y)) {
      return new Row(name, cell(a), cell(b), null, Found.SAME, "the same");
    }
    String another = x.unit() == y.unit() ? "differs" : "differs, counted another way";
    return new Row(name, cell(a), cell(b), null, Found.DIFFERS, another);
  }

  private static Cell cell(InForce set) {
    if (set == null) {
      return absent();
    }
    return set.setting() == null ? word("not said") : word(set.setting().inWords());
  }

  private Row rule(Rule a, Rule b) {
    String name = Capital.of((b == null ? a : b).name());
    Cell x = a == null ? absent() : word(a.says());
    Cell y = b == null ? absent() : word(b.says());
    return a != null && b != null && a.says().equals(b.says())
        ? new Row(name, x, y, null, Found.SAME, "the same")
        : new Row(name, x, y, null, Found.DIFFERS, "differs");
  }

  private static Cell absent() {
    return word("not there");
  }

  private static Cell word(String words) {
    return new Cell(null, words, null, null);
  }
}
