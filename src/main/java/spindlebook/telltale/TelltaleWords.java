package spindlebook.telltale;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.advice.ClayGap;
import spindlebook.advice.DeepestBump;
import spindlebook.card.TravelWords;
import spindlebook.drawing.Lengths;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.entry.TelltaleKind;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Change;
import spindlebook.fold.Moves;
import spindlebook.fold.Subject;
import spindlebook.fold.Where;
import spindlebook.fold.Written;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.GuardBand;
import spindlebook.uncertainty.Outcome;

/** What a telltale comes to, in sentences. */
final class TelltaleWords {
  private static final Subject SHOCK_LENGTH =
      new Subject.Taken(Quantity.SHOCK_LENGTH, null, Steering.STRAIGHT, HeightName.IN_BETWEEN);

  private final CarBook book;
  private final Card card;
  private final TravelFindings travel;
  private final TravelWords words;
  private final Lengths lengths;

  TelltaleWords(CarBook book, Card card, TravelFindings travel) {
    this.book = book;
    this.card = card;
    this.travel = travel;
    this.words = new TravelWords(card, travel);
    this.lengths = words.lengths();
  }

  List<String> of(Written<Content.Telltale> seen) {
    Content.Telltale t = seen.content();
    return switch (t.what()) {
      case SHOCK_RING -> ring(seen);
      case CLAY, WITNESS_MARK -> mark(t);
      case STRAP_LENGTH -> strap(seen);
      case TYRE_PRESSURE -> List.of();
    };
  }

  private List<String> ring(Written<Content.Telltale> seen) {
    Optional<Change> since = movedSince(seen);
    if (since.isPresent()) {
      return List.of("Read before " + since.get().words() + ": where it was is not told any more.");
    }
    DeepestBump deepest = DeepestBump.of(card, travel, seen);
    if (deepest instanceof DeepestBump.Needs needs) {
      return List.of(
          "Where the wheel was is not known: needs "
              + switch (needs.missing()) {
                case RING -> "how far the ring sits from the shock's body.";
                case SHOCK_THEN ->
                    "the shock's length eye to eye as the ring was read"
                        + (seen.content().at() == null
                            ? "."
                            : ", or at '" + seen.content().at().words() + "' in a round.");
                case SHOCK_LENGTHS -> "the shock's length at two heights or more.";
              });
    }
    DeepestBump.At at = (DeepestBump.At) deepest;
    boolean beyond = at.beyond();
    List<String> lines = new ArrayList<>();
    String place = words.fromZero(at.positionMm().value());
    lines.add(
        beyond
            ? "Deepest bump: beyond "
                + place
                + ", the highest at which the shock's length was read; the rest is counted from"
                + " there."
            : "Deepest bump: " + place + within(at.positionMm()) + ".");
    lines.add(
        at.toSolidMm()
            .map(f -> apart(f, beyond, "where the stop is solid"))
            .orElse("Where the stop is solid is not known yet."));
    lines.add(
        at.toLimitMm()
            .map(
                f -> apart(f, beyond, "the limit of bump, " + words.name(at.limit().orElseThrow())))
            .orElse("No limit of bump was found yet."));
    return lines;
  }

  private String within(Figure figure) {
    return figure.U() > 0
        ? " ± " + lengths.plusMinus(figure.U()) + " " + lengths.unit().word()
        : "";
  }

  /**
   * @param leftMm what was left to the place; negative when the wheel went past it
   */
  private String apart(Figure leftMm, boolean beyond, String place) {
    String much = lengths.text(Math.abs(leftMm.value())) + within(leftMm);
    return switch (GuardBand.atLeast(leftMm, 0)) {
      case SHORT -> (beyond ? "At least " : "") + much + " past " + place + ".";
      case CLEAR -> (beyond ? "Less than " : "") + much + " short of " + place + ".";
      case CANT_TELL, NEEDS ->
          (beyond ? "At least about as far as " : "About as far as ") + place + ": " + much + ".";
    };
  }

  private Optional<Change> movedSince(Written<Content.Telltale> seen) {
    return card.changes().stream()
        .filter(c -> c.n() > seen.n() && (c.place() == null || c.place() == card.place()))
        .filter(this::movesShockLength)
        .findFirst();
  }

  private boolean movesShockLength(Change change) {
    if (change.adjuster() != null) {
      return card.adjuster(change.adjuster())
          .map(a -> Moves.by(a.adjuster().kind(), Where.HERE, SHOCK_LENGTH))
          .orElse(false);
    }
    return book.standing(change.key()).orElse(null) instanceof Content.Happening h
        && Moves.by(h.what(), Where.HERE, SHOCK_LENGTH);
  }

  private List<String> mark(Content.Telltale t) {
    return ClayGap.of(card, t)
        .map(
            gap ->
                List.of(
                    "The gap came down to that on the drive: "
                        + lengths.text(Math.abs(gap.overMm()))
                        + (gap.outcome() == Outcome.SHORT ? " less" : " more")
                        + " than its rule asks."))
        .orElse(List.of("It has no wheel position: a ring on the shock shaft has one."));
  }

  private List<String> strap(Written<Content.Telltale> seen) {
    Content.Telltale t = seen.content();
    if (t.pull() != null) {
      return List.of("It counts for how long the strap lasts: Springs and stops says.");
    }
    return card.readings().stream()
        .filter(r -> r.of(Quantity.STRAP_LENGTH) && r.value() != null)
        .filter(r -> r.counts() || r.stale())
        .filter(r -> r.height().name() == HeightName.ON_THE_STRAP)
        .reduce((earlier, later) -> later)
        .map(r -> grown(t.length().mm() - r.value().value(), counted(seen)))
        .map(List::of)
        .orElse(List.of());
  }

  /** The last that was typed, where no reading in a round is newer. */
  private boolean counted(Written<Content.Telltale> seen) {
    return card.strapNow().isPresent()
        && book.telltales().stream()
            .filter(t -> t.content().corner().equals(card.corner()) && t.n() > seen.n())
            .noneMatch(
                t ->
                    t.content().what() == TelltaleKind.STRAP_LENGTH
                        && t.content().length() != null
                        && t.content().pull() == null);
  }

  private String grown(double mm, boolean counted) {
    String much = lengths.text(Math.abs(mm));
    if (much.equals(lengths.text(0))) {
      return "As long as it was last read on the strap.";
    }
    return much
        + (mm > 0 ? " longer" : " shorter")
        + " than last read on the strap."
        + (counted ? " The sums count it." : "");
  }
}
