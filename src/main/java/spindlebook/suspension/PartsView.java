package spindlebook.suspension;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.fold.CarBook;
import spindlebook.fold.SeenPart;

/** The parts of a car, what to look at next before all others. */
public final class PartsView {
  /**
   * @param more size, part number, since when, its use
   * @param next when to look at it; empty without a figure
   */
  public record Line(String what, String more, String next, boolean due, String href) {}

  /**
   * @param folded what comes later, or has no figure
   */
  public record Group(String title, boolean folded, List<Line> lines) {}

  private static final int SEEN_AT_ONCE = 6;

  private final CarBook book;

  PartsView(CarBook book) {
    this.book = book;
  }

  public String fit() {
    return "/cars/" + book.car().orElseThrow() + "/parts/new";
  }

  /** Those with a figure, the next one first; then those without. */
  public List<Group> groups() {
    List<Group> groups = new ArrayList<>();
    List<Line> next =
        book.parts().stream()
            .filter(p -> p.left().isPresent())
            .sorted(Comparator.comparingDouble(p -> p.left().orElseThrow()))
            .map(PartsView::line)
            .toList();
    int seen = (int) Math.max(SEEN_AT_ONCE, next.stream().filter(Line::due).count());
    if (!next.isEmpty()) {
      groups.add(new Group("To look at next", false, next.stream().limit(seen).toList()));
    }
    if (next.size() > seen) {
      List<Line> later = next.subList(seen, next.size());
      groups.add(new Group("Later: " + later.size(), true, later));
    }
    List<Line> without =
        book.parts().stream().filter(p -> p.left().isEmpty()).map(PartsView::line).toList();
    if (!without.isEmpty()) {
      groups.add(new Group("No figure when to look: " + without.size(), true, without));
    }
    return groups;
  }

  private static String place(SeenPart part) {
    return part.place() == null ? "the whole car" : part.place().words();
  }

  private static Line line(SeenPart part) {
    List<String> more = new ArrayList<>();
    if (part.said().size() != null) {
      more.add(part.said().size());
    }
    if (part.said().number() != null) {
      more.add("no. " + part.said().number());
    }
    more.add("since " + Days.day(part.fitted().at()));
    more.add(
        "used " + used(part, part.used()) + (part.counted() ? "" : ", not every drive counted"));
    double left = part.left().orElse(0.0);
    return new Line(
        Capital.of(place(part)) + ": " + part.said().what(),
        String.join(" · ", more),
        part.left().isEmpty() ? "" : part.due() ? "look now" : "in " + used(part, left),
        part.due(),
        "/cars/" + part.said().car() + "/parts/" + part.fitted().key());
  }

  private static String used(SeenPart part, double amount) {
    return part.said().used(Math.rint(amount * 10) / 10);
  }
}
