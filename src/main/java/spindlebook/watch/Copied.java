package spindlebook.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.card.Counted;
import spindlebook.definition.Adjuster;
import spindlebook.definition.Defined;
import spindlebook.definition.Given;
import spindlebook.definition.HeldBack;
import spindlebook.definition.WatchPoint;
import spindlebook.fold.Card;

/**
 * What copying one corner to another writes there: rules and allowances become as they are here;
 * lengths and settings are filled in where nobody said them there.
 *
 * @param points watch points that are new or changed there, as they will be
 * @param fresh how many of them the other corner does not have yet
 * @param same how many it has just so already
 */
record Copied(
    List<WatchPoint> points,
    int fresh,
    int same,
    List<HeldBack> heldBack,
    List<Given> given,
    List<Adjuster> set) {
  Copied {
    points = List.copyOf(points);
  }

  /** All of it, in the order it is written. */
  List<Defined> all() {
    return Stream.of(points, heldBack, given, set)
        .flatMap(List<? extends Defined>::stream)
        .map(Defined.class::cast)
        .toList();
  }

  static Copied of(Card from, Card to) {
    List<WatchPoint> points = new ArrayList<>();
    int fresh = 0;
    int same = 0;
    for (WatchPoint point : from.watchPoints()) {
      WatchPoint there = to.watchPoint(point.point()).orElse(null);
      if (point.equals(there)) {
        same++;
      } else if (there == null) {
        points.add(point);
        fresh++;
      } else if (there.place() == point.place()) {
        points.add(point);
      } else {
        // Another place has the name there; a changed place would be another watch point.
        String name = free(point.point(), to);
        points.add(new WatchPoint(name, point.place(), point.name(), point.keep(), point.basis()));
        fresh++;
      }
    }
    return new Copied(
        points,
        fresh,
        same,
        from.heldBack().values().stream()
            .filter(h -> !h.equals(to.heldBack().get(h.allowance())))
            .toList(),
        from.givenNow().stream().filter(g -> !to.given().containsKey(g.dimension())).toList(),
        from.adjustersAsSet().stream()
            .filter(a -> a.first() != null)
            .filter(a -> to.adjuster(a.adjuster()).filter(t -> t.setting() == null).isPresent())
            .toList());
  }

  String words() {
    return Stream.of(
            fresh + " new",
            points.size() - fresh + " changed",
            same + " the same already",
            Counted.of(given.size(), "spec"),
            Counted.of(heldBack.size(), "allowance"),
            Counted.of(set.size(), "setting"))
        .filter(part -> !part.startsWith("0 "))
        .collect(Collectors.joining(", "));
  }

  private static String free(String name, Card card) {
    int next = 2;
    while (card.watchPoint(name + "-" + next).isPresent()) {
      next++;
    }
    return name + "-" + next;
  }
}
