package spindlebook.travel;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import spindlebook.curve.Bound;
import spindlebook.curve.Node;
import spindlebook.curve.Rule;
import spindlebook.uncertainty.Outcome;

/**
 * Tells between which wheel positions a rule is kept.
 *
 * <p>The readings, sorted from droop to bump, fall into runs that keep and runs that break the
 * rule. A broken run that holds the lowest reading makes the droop limit where it ends; one that
 * holds the highest makes the bump limit where it begins; one between two kept runs is a shortfall
 * in mid-travel. Where a run ends is found by {@link RuleMet}.
 *
 * <p>Axes: wheel position in mm, + towards bump. Exactly at the limit keeps the rule; a single
 * number exactly at the limit between broken ones only touches it and ends no run, a bound ('well
 * clear', a drill of that size that goes) is at the limit or beyond. A bound that cannot say (a
 * drill thinner than the rule goes) is left out. Where a number keeps the rule and a bound at the
 * same place breaks it (14 mm, and it touches), the bound counts.
 *
 * <p>Assumes that the value turns only at readings: a dip between two kept readings is not seen.
 * Nothing is extrapolated: kept at the last reading means kept to there. A reading within its U of
 * the rule counts by its face value; where that is neither near a limit nor in a shortfall it is
 * told as hardly kept.
 *
 * <p>Source: derived in docs/methods.md. Worked example: gaps 5, 12, 19, 30 mm at −100, −50, 0, 50
 * mm, at least 12: droop limit −50 mm, kept to 50 mm towards bump.
 */
public final class RuleAlongTravel {
  private RuleAlongTravel() {}

  /** Where nothing can be worked out from the readings, neither end is read. */
  public static Along along(List<Node> nodes, Rule rule) {
    return WorkedOut.or(() -> workedOut(nodes, rule), why -> notRead(List.of(why)));
  }

  private static Along notRead(List<String> because) {
    EndLimit not = new EndLimit.NotRead(because);
    return new Along(not, not, List.of(), List.of());
  }

  private static Along workedOut(List<Node> nodes, Rule rule) {
    List<Node> telling =
        Node.merge(nodes).stream()
            .map(node -> worse(node, nodes, rule))
            .filter(node -> tells(node, rule))
            .toList();
    if (telling.isEmpty()) {
      return notRead(List.of());
    }
    List<Run> runs = runs(telling, rule);
    RuleMet met = new RuleMet(telling, rule);
    int last = runs.size() - 1;
    return new Along(
        end(runs.get(0), last > 0 ? runs.get(1) : null, met, true),
        end(runs.get(last), last > 0 ? runs.get(last - 1) : null, met, false),
        midTravel(runs, met, rule),
        hardlyKept(telling, rule));
  }

  /** Neighbouring readings, from droop to bump, that all keep or all break the rule. */
  record Run(boolean kept, List<Node> nodes) {
    /** From the side of the limit into the run. */
    List<Node> from(boolean droopSide) {
      if (droopSide) {
        return nodes;
      }
      List<Node> reversed = new ArrayList<>(nodes);
      Collections.reverse(reversed);
      return reversed;
    }
  }

  /**
   * A touch at the same place outweighs a number that keeps the rule: the worse of the two rules.
   */
  private static Node worse(Node node, List<Node> read, Rule rule) {
    if (node.bound() != Bound.EXACT || clearance(node, rule) < 0) {
      return node;
    }
    return read.stream()
        .filter(other -> other.bound() != Bound.EXACT && other.samePlaceAs(node))
        .filter(other -> clearance(other, rule) < 0 && tells(other, rule))
        .findFirst()
        .orElse(node);
  }

  private static boolean tells(Node node, Rule rule) {
    return node.bound() == Bound.EXACT || node.against(rule) != Outcome.CANT_TELL;
  }

  private static List<Run> runs(List<Node> telling, Rule rule) {
    List<Run> runs = new ArrayList<>();
    for (int i = 0; i < telling.size(); i++) {
      boolean kept = keeps(telling, i, rule);
      if (runs.isEmpty() || runs.get(runs.size() - 1).kept() != kept) {
        runs.add(new Run(kept, new ArrayList<>()));
      }
      runs.get(runs.size() - 1).nodes().add(telling.get(i));
    }
    return runs;
  }

  private static boolean keeps(List<Node> telling, int i, Rule rule) {
    double clearance = clearance(telling.get(i), rule);
    boolean inner = i > 0 && i < telling.size() - 1;
    boolean touchesFromBroken =
        clearance == 0
            && telling.get(i).bound() == Bound.EXACT
            && inner
            && clearance(telling.get(i - 1), rule) < 0
            && clearance(telling.get(i + 1), rule) < 0;
    return clearance >= 0 && !touchesFromBroken;
  }

  private static EndLimit end(Run outer, Run inner, RuleMet met, boolean droopSide) {
    Node outermost = outer.from(droopSide).get(0);
    if (outer.kept()) {
      double surely = met.surely(outer.from(droopSide), Double.NaN, true);
      return new EndLimit.KeptTo(
          outermost.positionMm(),
          Double.isNaN(surely) ? OptionalDouble.empty() : OptionalDouble.of(surely),
          outermost.readings());
    }
    if (inner == null) {
      return new EndLimit.BrokenThroughout(readings(outer.nodes()));
    }
    return met.between(inner.from(droopSide), outer.from(!droopSide));
  }

  private static List<Shortfall> midTravel(List<Run> runs, RuleMet met, Rule rule) {
    List<Shortfall> shortfalls = new ArrayList<>();
    for (int i = 1; i < runs.size() - 1; i++) {
      Run run = runs.get(i);
      if (!run.kept()) {
        Node worst =
            run.nodes().stream()
                .min(Comparator.comparingDouble(n -> clearance(n, rule) + n.value().U()))
                .get();
        shortfalls.add(
            new Shortfall(
                met.between(runs.get(i - 1).from(false), run.from(true)),
                met.between(runs.get(i + 1).from(true), run.from(false)),
                worst.value(),
                readings(run.nodes())));
      }
    }
    return shortfalls;
  }

  /**
   * Readings that keep the rule by less than their U, with readings on both sides that keep it for
   * sure. Beside a limit, or a shortfall, they are part of its doubt and not told again.
   */
  private static List<Shortfall> hardlyKept(List<Node> telling, Rule rule) {
    List<Shortfall> hardly = new ArrayList<>();
    int sure = -1;
    for (int i = 0; i < telling.size(); i++) {
      if (surelyKeeps(telling.get(i), rule)) {
        List<Node> between = sure < 0 ? List.of() : telling.subList(sure + 1, i);
        if (!between.isEmpty() && between.stream().allMatch(n -> clearance(n, rule) >= 0)) {
          hardly.add(hardlyKept(telling.get(sure), between, telling.get(i), rule));
        }
        sure = i;
      }
    }
    return hardly;
  }

  private static Shortfall hardlyKept(Node before, List<Node> between, Node after, Rule rule) {
    Node worst =
        between.stream().min(Comparator.comparingDouble(n -> clearance(n, rule))).orElseThrow();
    return new Shortfall(
        unsure(between.get(0), before),
        unsure(between.get(between.size() - 1), after),
        worst.value(),
        readings(between));
  }

  private static EndLimit.Crosses unsure(Node at, Node sure) {
    return new EndLimit.Crosses(
        at.positionMm(),
        sure.positionMm().value(),
        Double.NaN,
        EndLimit.How.BRACKET,
        Double.NaN,
        null,
        at.readings());
  }

  private static boolean surelyKeeps(Node node, Rule rule) {
    return clearance(node, rule) >= node.value().U();
  }

  static double clearance(Node node, Rule rule) {
    return rule.clearance(node.value().value());
  }

  private static List<String> readings(List<Node> nodes) {
    return nodes.stream().flatMap(node -> node.readings().stream()).distinct().toList();
  }
}
