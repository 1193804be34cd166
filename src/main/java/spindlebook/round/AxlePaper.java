package spindlebook.round;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.corner.AxleOrder;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.HeightName;
import spindlebook.corner.Pairing;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.Steering;

/** The heights of a blank sheet for a solid axle: both spindles, both ends' gaps, both pairings. */
final class AxlePaper {
  private AxlePaper() {}

  static List<PaperView.Height> heights(Card card, Card otherEnd, Content.Round round) {
    List<PaperView.Height> heights = new ArrayList<>();
    for (AxleOrder height : AxleOrder.of(round)) {
      heights.add(height(card, otherEnd, round, height));
    }
    return heights;
  }

  private static PaperView.Height height(
      Card card, Card otherEnd, Content.Round round, AxleOrder height) {
    boolean crossed = height.pairing() == Pairing.CROSSED;
    String title =
        crossed
            ? Capital.of(card.place().words())
                + ": "
                + height.words()
                + "; "
                + otherEnd.place().words()
                + ": "
                + height.otherEnd().words()
            : Capital.of(height.words());
    Pairing asked = crossed ? height.pairing() : null;
    List<PaperView.Row> rows =
        Stream.concat(
                Asked.planned(card, round, height.name(), asked, Steering.STRAIGHT).stream()
                    .map(a -> row(card, height.name(), height.pairing(), a)),
                round.toRead().isEmpty()
                    ? Asked.allAt(otherEnd, Steering.STRAIGHT).stream()
                        .map(a -> row(otherEnd, height.otherEnd(), height.pairing(), a))
                    : Stream.empty())
            .toList();
    return new PaperView.Height(
        title,
        List.of(
            spindle(card, height.name(), height.pairing()),
            spindle(otherEnd, height.otherEnd(), height.pairing())),
        rows.isEmpty()
            ? List.of()
            : List.of(new PaperView.Swing(Capital.of(Steering.STRAIGHT.words()), rows)));
  }

  private static PaperView.Row row(Card card, HeightName name, Pairing pairing, Asked asked) {
    String point = asked.point() == null ? null : asked.point().point();
    String before =
        name.onePlace()
            ? card.last(name, pairing, Steering.STRAIGHT, asked.quantity(), point)
                .map(r -> "last " + PaperPages.brief(r))
                .orElse("")
            : "";
    return new PaperView.Row(Capital.of(asked.words()), ReadingRows.rule(asked), before);
  }

  private static PaperView.Spindle spindle(Card card, HeightName name, Pairing pairing) {
    Optional<SeenHeight> last =
        card.heights().stream()
            .filter(h -> name.onePlace() && h.name() == name && h.pairing() == pairing)
            .filter(h -> h.height().spindle() != null)
            .reduce((first, second) -> second);
    return new PaperView.Spindle(
        Capital.of(card.place().words()) + ": ",
        last.map(h -> "last " + h.height().spindle().typed()).orElse(""));
  }
}
