package spindlebook.round;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.card.Days;
import spindlebook.card.Shown;
import spindlebook.definition.Layout;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.Rounded;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Steering;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.fold.SeenRound;
import spindlebook.fold.Standing;
import spindlebook.linkage.CornerJoints;
import spindlebook.linkage.Pose;
import spindlebook.linkage.Quantity;
import spindlebook.log.Histories;
import spindlebook.page.PageFrame;
import spindlebook.plan.JackPlan;
import spindlebook.uncertainty.Figure;
import spindlebook.units.LengthUnit;
import spindlebook.words.EntryWords;

/**
 * A round and all its pages need: the corner it is of and the one beside it, which on a solid axle
 * is its other end and read in the same sitting.
 *
 * @param mirror the corner on the car's other side; null where the car has none
 * @param round what was said when it was started
 * @param seen the round in the book; null of one that is only printed
 */
record Sitting(CarBook book, Card card, Card mirror, Content.Round round, SeenRound seen) {
  static Sitting of(Histories histories, Card card, Content.Round round) {
    return new Sitting(
        histories.of(card.car()), card, histories.mirror(card).orElse(null), round, null);
  }

  static Sitting of(Histories histories, Card card, SeenRound seen) {
    return new Sitting(
        histories.of(card.car()), card, histories.mirror(card).orElse(null), seen.round(), seen);
  }

  /** The round an address names. */
  static Sitting of(Histories histories, Context ctx) {
    String round = ctx.pathParam("round");
    Card card = histories.cardOf(round).orElseThrow(NotFoundResponse::new);
    return of(histories, card, card.round(round).orElseThrow(NotFoundResponse::new));
  }

  String key() {
    return seen.key();
  }

  String href() {
    return "/rounds/" + key();
  }

  LengthUnit unit() {
    return round.unit();
  }

  boolean axle() {
    return card.layout() == Layout.SOLID_AXLE_END;
  }

  /** The other end of a solid axle; empty of a wheel hung alone. */
  Optional<Card> otherEnd() {
    return Optional.ofNullable(mirror).filter(m -> axle() && m.layout() == card.layout());
  }

  /** The card of the end that something is read at. */
  Card end(Slot slot) {
    return slot.otherEnd() == null ? card : mirror;
  }

  /** A page of this round. */
  PageFrame frame(String title, String heading) {
    return PageFrame.of(title + " · Spindlebook", heading)
        .plan(Shown.plan(card))
        .up("the round", href());
  }

  Optional<Slot> slot(Steering steering, String row) {
    return Slot.byRow(card, otherEnd(), steering, row);
  }

  /** Everything that is asked for at one steering, at both ends of an axle. */
  List<Slot> slots(Steering steering) {
    return slots(steering, s -> false);
  }

  /**
   * @param there what is shown though it is not asked for: somebody read it, or typed it
   */
  List<Slot> slots(Steering steering, Predicate<Slot> there) {
    return Stream.concat(
            Slot.all(card, steering).stream(),
            otherEnd().stream().flatMap(o -> Slot.allAt(o, steering).stream()))
        .filter(s -> s.asked(end(s)) || there.test(s))
        .toList();
  }

  /**
   * What the round set out to read there; all of it when it set out to read nothing in particular.
   *
   * @param crossed crossed on a solid axle; null otherwise
   */
  List<Slot> planned(HeightName height, String label, Pairing crossed, Steering steering) {
    return JackPlan.whole(round)
        ? slots(steering)
        : Slot.all(card, steering).stream()
            .filter(
                s ->
                    round.toRead().stream()
                        .filter(t -> t.label() == null || label == null || t.label().equals(label))
                        .anyMatch(t -> s.is(t, height, crossed, steering)))
            .toList();
  }

  /** What was read in a slot at one height; that of another phone too. */
  List<SeenReading> readings(String height, Steering steering, Slot slot) {
    return end(slot).readingsAt(height).stream()
        .filter(r -> r.reading().steering() == steering && slot.readBy(r))
        .toList();
  }

  /**
   * The last time at this height, the other side's beside it, inner lock for inner lock. In one
   * round two heights of a name are two places, and in between is anywhere.
   */
  String lastTime(
      HeightName name, Pairing pairing, Steering steering, Slot slot, String notOfHeight) {
    String own =
        end(slot)
            .last(name, pairing, steering, slot.quantity(), slot.key())
            .filter(r -> name != HeightName.IN_BETWEEN && !r.height().round().key().equals(key()))
            .map(
                r ->
                    "last time "
                        + EntryWords.value(r.reading())
                        + " · "
                        + Days.day(r.at())
                        + stands(r))
            .orElse("");
    Card beside = slot.otherEnd() == null ? mirror : card;
    String other =
        beside == null
            ? ""
            : beside
                .last(name, pairing, steering.mirrored(), slot.quantity(), slot.key())
                .filter(r -> name != HeightName.IN_BETWEEN || r.height().key().equals(notOfHeight))
                .filter(r -> end(slot).reading(r.key()).isEmpty())
                .map(
                    r ->
                        beside.place().words()
                            + " "
                            + EntryWords.value(r.reading())
                            + (r.reading().steering().steered()
                                ? " at " + r.reading().steering().words()
                                : "")
                            + stands(r))
                .orElse("");
    return Stream.of(own, other, jointsSay(steering, slot, notOfHeight))
        .filter(said -> !said.isEmpty())
        .collect(Collectors.joining(" · "));
  }

  /** {@code joints say 11 3/8 in}: what the linkage laid out makes of it at this height. */
  private String jointsSay(Steering steering, Slot slot, String height) {
    CornerJoints joints = CornerJoints.of(end(slot));
    Optional<Quantity> of = modelled(slot);
    Optional<Figure> position =
        end(slot).height(height).filter(SeenHeight::positionCounts).map(SeenHeight::positionMm);
    if (of.isEmpty()
        || position.isEmpty()
        || joints.linkage() == null
        || joints.positionMm() == null
        || steering != Steering.STRAIGHT
        || !(joints.linkage().at(position.get().minus(joints.positionMm()).value(), 0)
            instanceof Pose pose)) {
      return "";
    }
    double value = of.get().of(pose);
    return Double.isNaN(value)
        ? ""
        : "joints say "
            + (of.get() == Quantity.CAMBER
                ? Rounded.signed(Math.toDegrees(value), 1) + "°"
                : new Lengths(unit()).text(value));
  }

  /** Toe is not: as a length it hangs on what it is across. */
  private static Optional<Quantity> modelled(Slot slot) {
    return switch (slot.quantity()) {
      case CAMBER -> Optional.of(Quantity.CAMBER);
      case SHOCK_LENGTH -> Optional.of(Quantity.SHOCK);
      case STRAP_LENGTH -> Optional.of(Quantity.STRAP);
      case TOE, STOP_GAP, WATCH_POINT -> Optional.empty();
    };
  }

  private static String stands(SeenReading r) {
    return r.stands() == Standing.LIVE ? "" : " · " + r.stands().words();
  }
}
