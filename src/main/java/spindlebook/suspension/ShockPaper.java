package spindlebook.suspension;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.card.Zero;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.finding.LimitNames;
import spindlebook.fold.Card;
import spindlebook.page.Asked;
import spindlebook.ride.CornerRide;
import spindlebook.ride.ShockTried;
import spindlebook.sums.OnPaperView;
import spindlebook.sums.OnPaperView.Block;
import spindlebook.sums.OnPaperView.Line;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.TravelFindings;
import spindlebook.units.TypedLength;

/** Another shock, tried before anything is bought. */
final class ShockPaper {
  private final Card card;
  private final Asked a;
  private final CornerRide ride;
  private final TravelFindings travel;
  private final Lengths lengths;
  private final Zero zero;
  private final List<String> notes = new ArrayList<>();

  ShockPaper(Card card, Asked a) {
    this.card = card;
    this.a = a;
    this.ride = CornerRide.of(card);
    this.travel = CornerTravel.of(card);
    this.lengths = new Lengths(card.details().unit());
    this.zero = Zero.of(card, travel);
  }

  OnPaperView view() {
    TypedLength open = a.above("open", "Shock fully open, eye to eye").read();
    TypedLength stroke =
        a.above("stroke", "Its stroke").hint("Fully open less fully closed.").read();
    TypedLength mount =
        a.signed("mount", "Mounts further apart, along the shock")
            .hint("A mount moved out by so much; − closer. Empty: as they are.")
            .read();
    List<Block> blocks = new ArrayList<>();
    if (open != null && stroke != null && stroke.mm() < open.mm()) {
      tried(open.mm(), open.mm() - stroke.mm(), mount == null ? 0 : mount.mm())
          .ifPresent(blocks::add);
    } else if (open != null || stroke != null) {
      a.wrong("stroke", "Type both: open length, and a stroke that is shorter.");
    }
    notes.add("The stops stay where they are set: move them too to get the travel.");
    notes.add("It tells no more than the shock lengths that were read.");
    return new OnPaperView(
        "/corners/" + card.corner() + "/spring/try", a.parts(), "Show it", blocks, notes);
  }

  private Optional<Block> tried(double openMm, double closedMm, double mountMm) {
    List<ShockTried> ends = ride.tried(openMm, closedMm, mountMm);
    if (ends.isEmpty()) {
      notes.add("Needs the shock's length at two heights.");
      return Optional.empty();
    }
    List<Line> lines = new ArrayList<>();
    for (ShockTried end : ends) {
      Optional<FigureText> won = end.wonMm().map(lengths::signedFigure);
      String at =
          end.thenMm()
              .map(z -> lengths.signedText(zero.from(z)) + " " + zero.words())
              .map(place -> "runs out at " + place + ", its reserve kept")
              .orElse("Past where shock lengths were read: read one further out.");
      String name = Capital.of(end.end().words());
      lines.add(new Line(won.isPresent() ? name + " travel" : name, won.orElse(null), at));
      end.next()
          .ifPresent(
              next ->
                  lines.add(
                      new Line(
                          end.nextFirst() ? "Stops first" : "Then",
                          lengths.signedFigure(next.positionMm().plus(-zero.mm())),
                          new LimitNames(card, travel).of(next))));
    }
    return Optional.of(new Block("This shock", lines));
  }
}
