package spindlebook.drivecheck;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.function.Function;
import spindlebook.corner.SignedCorner;
import spindlebook.units.LengthUnit;

/**
 * How two copies of a car differ.
 *
 * @param turned limits, corners and targets that are decided otherwise
 * @param alignment its figures and targets, where both copies hold them
 */
record CopyChanges(
    List<Row> turned, List<Row> settings, List<Row> figures, List<Row> alignment, List<Row> rules) {
  /** A hundredth of what the finest steel rule shows: less is the arithmetic of a machine. */
  private static final double SAME_MM = 1e-3;

  /** A hundredth of what an angle finder's finest step shows. */
  private static final double SAME_RAD = 1e-6;

  static final CopyChanges NONE =
      new CopyChanges(List.of(), List.of(), List.of(), List.of(), List.of());

  private static final String NOT_THERE = "–";

  /** One thing, then and now. */
  record Row(String place, String name, String then, String now) {
    /** A margin or a whole travel, from which the other figures follow. */
    boolean weighty() {
      return name.endsWith("margin") || (name.startsWith("usable") && !name.endsWith(" ride"));
    }
  }

  CopyChanges {
    turned = List.copyOf(turned);
    settings = List.copyOf(settings);
    figures = List.copyOf(figures);
    alignment = List.copyOf(alignment);
    rules = List.copyOf(rules);
  }

  boolean none() {
    return turned.isEmpty()
        && settings.isEmpty()
        && figures.isEmpty()
        && alignment.isEmpty()
        && rules.isEmpty();
  }

  /** Without figures that are shown the same: they moved by less than a page tells. */
  CopyChanges asShown() {
    return new CopyChanges(turned, settings, shown(figures), shown(alignment), rules);
  }

  private static List<Row> shown(List<Row> rows) {
    return rows.stream().filter(r -> !r.then().equals(r.now())).toList();
  }

  static CopyChanges between(
      List<SignedCorner> then, List<SignedCorner> now, LengthUnit thenIn, LengthUnit nowIn) {
    List<Row> turned = new ArrayList<>();
    List<Row> settings = new ArrayList<>();
    List<Row> figures = new ArrayList<>();
    List<Row> alignment = new ArrayList<>();
    List<Row> rules = new ArrayList<>();
    for (Pair<SignedCorner> pair :
        pairs(
            SignOffCopy.withOneMinus(then),
            SignOffCopy.withOneMinus(now),
            SignedCorner::corner,
            c -> "")) {
      SignedCorner a = orNothing(pair.then(), pair.now());
      SignedCorner b = orNothing(pair.now(), pair.then());
      String place = b.place().words();
      if (!a.outcome().equals(b.outcome())) {
        turned.add(new Row(place, "the corner", a.outcome(), b.outcome()));
      }
      rows(
          turned,
          place,
          pairs(a.limits(), b.limits(), CopyChanges::name, CopyChanges::name),
          SignedCorner.Limit::outcome,
          SignedCorner.Limit::outcome,
          CopyChanges::decidedAlike);
      rows(
          settings,
          place,
          pairs(a.settings(), b.settings(), SignedCorner.SetTo::adjuster, SignedCorner.SetTo::name),
          CopyChanges::setTo,
          CopyChanges::setTo,
          (x, y) -> Objects.equals(x.to(), y.to()));
      rows(
          figures,
          place,
          pairs(a.figures(), b.figures(), SignedCorner.Figure::name, SignedCorner.Figure::name),
          new SignedWords(a, thenIn)::text,
          new SignedWords(b, nowIn)::text,
          CopyChanges::same);
      if (a.alignment() != null && b.alignment() != null) {
        List<Pair<SignedCorner.Aligned>> aligned =
            pairs(a.alignment(), b.alignment(), CopyChanges::name, CopyChanges::name);
        aligned.forEach(p -> against(turned, place, p));
        rows(
            alignment,
            place,
            aligned,
            new SignedWords(a, thenIn)::text,
            new SignedWords(b, nowIn)::text,
            CopyChanges::same);
      }
      rows(
          rules,
          place,
          pairs(a.rules(), b.rules(), SignedCorner.Rule::of, SignedCorner.Rule::name),
          SignedCorner.Rule::says,
          SignedCorner.Rule::says,
          (x, y) -> x.says().equals(y.says()));
    }
    return new CopyChanges(turned, settings, figures, alignment, rules);
  }

  private static String name(SignedCorner.Aligned aligned) {
    return aligned.figure().words();
  }

  /** Where both held it against a target, and one says otherwise. */
  private static void against(List<Row> turned, String place, Pair<SignedCorner.Aligned> pair) {
    String then = pair.then() == null ? null : pair.then().outcome();
    String now = pair.now() == null ? null : pair.now().outcome();
    if (then != null && now != null && !then.equals(now)) {
      turned.add(new Row(place, pair.name() + " against your target", then, now));
    }
  }

  private static boolean same(SignedCorner.Aligned then, SignedCorner.Aligned now) {
    double step = then.figure().angle() ? SAME_RAD : SAME_MM;
    return same(then.value(), now.value(), step)
        && same(then.expanded(), now.expanded(), step)
        && Objects.equals(then.stands(), now.stands())
        && Objects.equals(then.target(), now.target());
  }

  private static boolean same(Double then, Double now, double step) {
    return then == null || now == null ? Objects.equals(then, now) : Math.abs(then - now) <= step;
  }

  private static String name(SignedCorner.Limit limit) {
    return limit.end() + ": " + limit.what();
  }

  private static String setTo(SignedCorner.SetTo set) {
    return set.to() == null ? "not said" : set.to();
  }

  /** Where a limit lies is told by the figures; here only what was decided of it. */
  private static boolean decidedAlike(SignedCorner.Limit then, SignedCorner.Limit now) {
    return then.outcome().equals(now.outcome());
  }

  private static boolean same(SignedCorner.Figure then, SignedCorner.Figure now) {
    return Math.abs(then.mm() - now.mm()) <= SAME_MM
        && Math.abs(then.expandedMm() - now.expandedMm()) <= SAME_MM
        && then.atLeast() == now.atLeast();
  }

  private static SignedCorner orNothing(SignedCorner corner, SignedCorner other) {
    return corner != null
        ? corner
        : new SignedCorner(
            other.corner(),
            other.place(),
            NOT_THERE,
            0,
            other.zero(),
            null,
            null,
            null,
            null,
            List.of());
  }

  // --- side by side

  private record Pair<T>(String name, T then, T now) {}

  /** By what they are of, the newer name told. */
  private static <T> List<Pair<T>> pairs(
      List<T> then, List<T> now, Function<T, String> of, Function<T, String> name) {
    Map<String, T> before = new LinkedHashMap<>();
    Map<String, T> after = new LinkedHashMap<>();
    then.forEach(t -> before.putIfAbsent(of.apply(t), t));
    now.forEach(t -> after.putIfAbsent(of.apply(t), t));
    Set<String> all = new LinkedHashSet<>(before.keySet());
    all.addAll(after.keySet());
    return all.stream()
        .map(
            k -> {
              T a = before.get(k);
              T b = after.get(k);
              return new Pair<>(name.apply(b == null ? a : b), a, b);
            })
        .toList();
  }

  private static <T> void rows(
      List<Row> into,
      String place,
      List<Pair<T>> pairs,
      Function<T, String> wordsThen,
      Function<T, String> wordsNow,
      BiPredicate<T, T> same) {
    for (Pair<T> pair : pairs) {
      boolean alike =
          pair.then() != null && pair.now() != null && same.test(pair.then(), pair.now());
      if (!alike) {
        into.add(
            new Row(
                place,
                pair.name(),
                pair.then() == null ? NOT_THERE : wordsThen.apply(pair.then()),
                pair.now() == null ? NOT_THERE : wordsNow.apply(pair.now())));
      }
    }
  }
}
