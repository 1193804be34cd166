package spindlebook.measured;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.advice.DriveCheck;
import spindlebook.advice.ThingFirst;
import spindlebook.advice.ThingFirst.Why;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Standing;
import spindlebook.uncertainty.Outcome;

/**
 * The drive check of a car, with what the owner's targets for alignment and the hardware of rod
 * ends and uniballs demand.
 */
public final class AlignedCheck {
  private AlignedCheck() {}

  public static DriveCheck of(CarBook book) {
    return book.memo().get(AlignedCheck.class, () -> worked(book));
  }

  private static DriveCheck worked(CarBook book) {
    List<ThingFirst> more = new ArrayList<>();
    for (String corner : book.corners()) {
      Card card = book.card(corner);
      if (!card.aligned().targets().isEmpty()) {
        targets(card, book.mirror(card), more);
      }
      for (JointSwing swing : JointSwing.of(card, book.mirror(card))) {
        if (swing.outcome() == Outcome.SHORT || swing.outcome() == Outcome.CANT_TELL) {
          Why why = swing.outcome() == Outcome.SHORT ? Why.SHORT : Why.CANT_TELL;
          more.add(new ThingFirst.SwingsTooFar(why, corner, swing.joint(), swing.allows().words()));
        }
      }
    }
    return DriveCheck.of(book, more);
  }

  /** What belongs to the axle is told once, of its left wheel. */
  private static void targets(Card card, Optional<Card> mirror, List<ThingFirst> more) {
    for (AlignedFinding found : new MeasuredAlignment(card, mirror).findings()) {
      boolean toldAcross =
          found.figure().thing().ofAxle() && mirror.isPresent() && !card.place().left();
      if (found.target() != null && !toldAcross) {
        why(found)
            .ifPresent(
                why -> more.add(new ThingFirst.OffTarget(why, card.corner(), found.target())));
      }
    }
  }

  /** Empty when it is kept, or waits for an answer, which is asked for on its own. */
  private static Optional<Why> why(AlignedFinding found) {
    if (found.value() == null) {
      return Optional.of(Why.MISSING);
    }
    if (found.stands() == Standing.STALE) {
      return Optional.of(Why.STALE);
    }
    if (found.stands() == Standing.IN_DOUBT) {
      return Optional.empty();
    }
    if (found.against() == null) {
      return Optional.of(Why.MISSING);
    }
    return switch (found.against().decision()) {
      case SHORT -> Optional.of(Why.SHORT);
      case CANT_TELL -> Optional.of(Why.CANT_TELL);
      case CLEAR, NEEDS ->
          found.stands() == Standing.PUT_BACK ? Optional.of(Why.NOT_CONFIRMED) : Optional.empty();
    };
  }
}
