package spindlebook.suspension;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.card.RideText;
import spindlebook.card.Zero;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.entry.SpringFigure;
import spindlebook.finding.LimitNames;
import spindlebook.fold.Card;
import spindlebook.page.Asked;
import spindlebook.ride.CornerRide;
import spindlebook.ride.ShockTried;
import spindlebook.spring.Coil;
import spindlebook.sums.OnPaperView;
import spindlebook.sums.OnPaperView.Block;
import spindlebook.sums.OnPaperView.Line;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.End;
import spindlebook.travel.Limit;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;
import spindlebook.units.TypedLength;

/** Another shock, and another split and bounce, tried before anything is bought. */
final class ShockPaper {
  private final Card card;
  private final Asked a;
  private final CornerRide ride;
  private final TravelFindings travel;
  private final Lengths lengths;
  private final RideText text;
  private final Zero zero;
  private final List<String> notes = new ArrayList<>();

  ShockPaper(Card card, Asked a) {
    this.card = card;
    this.a = a;
    this.ride = CornerRide.of(card);
    this.travel = CornerTravel.of(card);
    this.lengths = new Lengths(card.details().unit());
    this.text = new RideText(card.details().unit(), "");
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
    Double droop =
        SpringForms.number(
                a, "droop", "Droop wanted, per cent of the travel", 1, 99, "Type 1 to 99 per cent.")
            .read();
    Double hz =
        SpringForms.number(
                a, "hz", "Bounces wanted a second", 0.1, 20, "Type a number such as 1.2.")
            .read();
    List<Block> blocks = new ArrayList<>();
    if (open != null && stroke != null && stroke.mm() < open.mm()) {
      tried(open.mm(), open.mm() - stroke.mm(), mount == null ? 0 : mount.mm())
          .ifPresent(blocks::add);
    } else if (open != null || stroke != null) {
      a.wrong("stroke", "Type both: open length, and a stroke that is shorter.");
    }
    if (droop != null && hz != null) {
      wanted(droop / 100, hz).ifPresent(blocks::add);
    }
    notes.add("The stops stay where they are set: travel is won only when they are moved too.");
    notes.add("Nothing is foretold beyond the shock lengths that were read.");
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
      String name = end.end() == End.DROOP ? "droop" : "bump";
      FigureText won = end.wonMm().map(lengths::signedFigure).orElse(null);
      lines.add(
          new Line(
              Capital.of(name) + (end.wonMm().isPresent() ? " won" : ""),
              won,
              won != null || end.thenMm().isPresent()
                  ? at(end)
                  : "Past where shock lengths were read: read one further out.",
              null));
      end.next().ifPresent(next -> lines.add(next(end, next)));
    }
    return Optional.of(new Block("This shock", lines));
  }

  private String at(ShockTried end) {
    return "its reserve begins at "
        + lengths.signedText(zero.from(end.thenMm().orElseThrow().value()))
        + " "
        + zero.words();
  }

  private Line next(ShockTried end, Limit next) {
    return new Line(
        end.nextFirst() ? "But first" : "Then",
        lengths.signedFigure(next.positionMm().plus(-zero.mm())),
        new LimitNames(card, travel).of(next),
        null);
  }

  private Optional<Block> wanted(double droopShare, double hz) {
    Optional<Figure> low = ride.stop(End.DROOP);
    Optional<Figure> high = ride.stop(End.BUMP);
    Optional<Coil> coil =
        low.flatMap(
            l ->
                high.flatMap(
                    h -> ride.wanted(l.value() + droopShare * (h.value() - l.value()), hz)));
    if (coil.isEmpty()) {
      notes.add("Rate and preload need both stops, shock lengths, spring and corner weight.");
      return Optional.empty();
    }
    List<Line> lines = new ArrayList<>();
    lines.add(
        new Line(
            "Spring rate", text.of(SpringFigure.Unit.RATE, coil.get().mainNPerMm()), "", null));
    lines.add(
        ride.open()
            .map(
                o ->
                    new Line(
                        "Preload",
                        lengths.signedFigure(coil.get().zeroForceMm().minus(o)),
                        "pressed together with the shock open",
                        null))
            .orElse(
                new Line(
                    "Loose at",
                    lengths.figure(coil.get().zeroForceMm()),
                    "the shock, eye to eye",
                    null)));
    return Optional.of(new Block("This split and bounce, one spring", lines));
  }
}
