package spindlebook.sums;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.card.Shown;
import spindlebook.definition.Dimension;
import spindlebook.definition.Given;
import spindlebook.drawing.Lengths;
import spindlebook.fold.Card;
import spindlebook.page.Asked;
import spindlebook.parts.GroundAtBump;
import spindlebook.sums.OnPaperView.Block;
import spindlebook.sums.OnPaperView.Line;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.GivenFigures;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.GuardBand;
import spindlebook.uncertainty.Outcome;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedLength;

/** How near the frame comes to the ground at full bump, on the tyre fitted or one planned. */
final class GroundPaper {
  private static final double RATIO_UNSURE = 0.05;
  private static final double LEAST_RATIO = 0.05;
  private static final double LEAST_MM = 4 * 25.4;
  private static final double MOST_MM = 40 * 25.4;

  private final Card card;
  private final Asked a;
  private final Lengths lengths;
  private final Optional<Figure> squashed;
  private final TypedLength wanted;

  /** How much the stop's gap closes for each of wheel travel; null when it was not typed. */
  private final Figure ratio;

  GroundPaper(Card card, Asked a, TypedFigures good) {
    this.card = card;
    this.a = a;
    this.lengths = new Lengths(a.unit());
    Optional<Given> given = card.given(Dimension.TYRE_SQUASHED_RADIUS);
    String empty =
        given.map(g -> " Empty: " + lengths.text(g.length().mm()) + ", as given.").orElse("");
    TypedLength planned =
        a.length("squashed", "Squashed radius of the tyre")
            .hint("Spindle to ground when the tyre is squashed on a hard landing." + empty)
            .check(
                l -> l.mm() >= LEAST_MM && l.mm() <= MOST_MM,
                "Type the squashed radius, from 4 in (100 mm) to 40 in (1 m).")
            .neededIf(
                given.isEmpty() && (a.has("wanted") || a.has("ratio")),
                "Type the tyre's squashed radius; none is given for this corner.");
    this.squashed =
        a.has("squashed")
            ? Optional.ofNullable(good.mm("squashed", planned))
            : given.map(GivenFigures::of);
    this.wanted = a.length("wanted", "Frame to ground wanted").read();
    Double typed =
        good.number(
                "ratio",
                "Stop's gap closes, for 1 of wheel travel",
                LEAST_RATIO,
                3,
                "Type a number between 0.05 and 3, such as 0.6.")
            .hint("Read the gap at two heights: its change over the wheel's. Such as 0.6.")
            .read();
    this.ratio = typed == null ? null : TypedFigures.assumed("ratio", typed, RATIO_UNSURE * typed);
  }

  /** Adds what is known; what is missing for it is told of in {@code notes} once it was asked. */
  void add(List<Block> blocks, List<String> notes) {
    if (squashed.isEmpty() || !a.ok()) {
      return;
    }
    Optional<Figure> bump = CornerTravel.of(card).bump().stop().map(s -> s.positionMm());
    Optional<Figure> down = card.given(Dimension.MARK_TO_LOWEST_FRAME).map(GivenFigures::of);
    if (bump.isEmpty() || down.isEmpty()) {
      notes.add(
          bump.isEmpty()
              ? "The frame at full bump needs to know where the stop is solid: measure that first."
              : "The frame at full bump needs the frame mark's way down to the lowest frame point,"
                  + " under what is given.");
      return;
    }
    if (wanted != null && wanted.mm() > MOST_MM) {
      a.wrong("wanted", "No frame stands that high at full bump: type 40 in (1 m) or less.");
      return;
    }
    Figure clearance = GroundAtBump.clearanceMm(squashed.get(), bump.get(), down.get());
    Outcome apart = GuardBand.apart(clearance);
    List<Line> lines = new ArrayList<>();
    String from = a.has("squashed") ? "as typed" : "as given for the tyre that is on";
    lines.add(new Line("Squashed radius", lengths.figure(squashed.get()), from));
    lines.add(
        new Line(
            "− wheel position at full bump",
            lengths.signedFigure(bump.get()),
            "spindle less frame mark, where the stop is solid"));
    lines.add(
        new Line(
            "− mark to lowest frame point",
            lengths.figure(down.get()),
            "as given" + (down.get().U() > 0 ? "" : "; no ± was given for it")));
    lines.add(
        new Line(
            "= frame to ground",
            lengths.figure(clearance),
            "level ground and frame" + touches(apart),
            wanted != null
                ? Shown.state(GuardBand.atLeast(clearance, wanted.mm()).worse(apart))
                : apart == Outcome.CLEAR ? null : Shown.state(apart)));
    if (wanted != null) {
      lines.add(spacer(clearance, wanted.mm()));
    }
    blocks.add(new Block("The frame at full bump, tyre squashed", lines));
  }

  private static String touches(Outcome apart) {
    return switch (apart) {
      case CLEAR -> "";
      case SHORT -> "; the frame meets the ground before the stop is solid";
      case CANT_TELL, NEEDS ->
          "; within its ± the frame may meet the ground before the stop is solid";
    };
  }

  private Line spacer(Figure clearance, double wantedMm) {
    double stepMm = a.unit() == LengthUnit.INCH ? a.unit().mm() / 8 : 1;
    if (ratio == null) {
      return new Line(
          "Spacer for " + lengths.text(wantedMm),
          null,
          "type below how much the stop's gap closes for 1 of wheel travel");
    }
    String spacer =
        GroundAtBump.spacer(clearance, wantedMm, ratio, stepMm)
            .map(s -> "Add " + lengths.text(s.count() * stepMm) + " of bump-stop spacer")
            .orElse("No more spacer is needed");
    return new Line(
        spacer,
        null,
        "so that "
            + lengths.text(wantedMm)
            + " is kept though all of that ± goes the wrong way; in steps of "
            + lengths.text(stepMm)
            + "; the ratio taken as good to 5 %");
  }
}
