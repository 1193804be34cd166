package spindlebook.watch;

import java.util.ArrayList;
import java.util.List;
import spindlebook.definition.WatchPoint;
import spindlebook.fold.Card;

/**
 * What copying one corner's watch points to another writes there.
 *
 * @param points those that are new or changed there, as they will be
 * @param fresh how many of them the other corner does not have yet
 * @param same how many it has just so already
 */
record Copied(List<WatchPoint> points, int fresh, int same) {
  Copied {
    points = List.copyOf(points);
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
        WatchPoint renamed = named(point, free(point.point(), to));
        points.add(renamed);
        fresh++;
      }
    }
    return new Copied(points, fresh, same);
  }

  String words() {
    List<String> parts = new ArrayList<>();
    if (fresh > 0) {
      parts.add(fresh + " new");
    }
    if (points.size() > fresh) {
      parts.add(points.size() - fresh + " changed");
    }
    if (same > 0) {
      parts.add(same + " the same already");
    }
    return String.join(", ", parts);
  }

  private static WatchPoint named(WatchPoint point, String name) {
    return new WatchPoint(name, point.place(), point.name(), point.keep(), point.basis());
  }

  private static String free(String name, Card card) {
    int next = 2;
    while (card.watchPoint(name + "-" + next).isPresent()) {
      next++;
    }
    return name + "-" + next;
  }
}
