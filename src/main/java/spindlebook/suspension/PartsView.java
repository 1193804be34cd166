package spindlebook.suspension;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.SeenPart;

/** The parts of a car, what to look at next before all others. */
public record PartsView(CarBook book) {
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

  public String fit() {
    return "/cars/" + book.car().orElseThrow() + "/parts/new";
  }

  /** Those with a figure, the next one first; then those without. */
  public List<Group> groups() {
    List<Line> next =
        book.parts().stream()
            .filter(p -> p.left().isPresent())
            .sorted(Comparator.comparingDouble(p -> p.left().orElseThrow()))
            .map(PartsView::line)
            .toList();
    int seen = (int) Math.max(SEEN_AT_ONCE, next.stream().filter(Line::due).count());
    List<Line> first = next.stream().limit(seen).toList();
    List<Line> later = next.stream().skip(seen).toList();
    List<Line> without =
        book.parts().stream().filter(p -> p.left().isEmpty()).map(PartsView::line).toList();
    return Stream.of(
            new Group("To look at next", false, first),
            new Group("Later: " + later.size(), true, later),
            new Group("No figure when to look: " + without.size(), true, without))
        .filter(g -> !g.lines().isEmpty())
        .toList();
  }

  private static Line line(SeenPart part) {
    Content.Part said = part.said();
    String use =
        "used "
            + used(part, part.used())
            + (said.lookAfter() == null ? "" : ", look every " + used(part, said.lookAfter()));
    String more =
        Stream.of(
                said.size(),
                said.number() == null ? null : "no. " + said.number(),
                "fitted " + Days.day(part.fitted().at()),
                part.counted() ? use : use + ", not every drive counted")
            .filter(Objects::nonNull)
            .collect(Collectors.joining(" · "));
    String next = part.left().map(left -> "in " + used(part, left)).orElse("");
    return new Line(
        Capital.of(part.where()) + ": " + said.what(),
        more,
        part.due() ? "look now" : next,
        part.due(),
        "/cars/" + said.car() + "/parts/" + part.fitted().key());
  }

  private static String used(SeenPart part, double amount) {
    return part.said().used(Math.rint(amount * 10) / 10);
  }
}
