package spindlebook.ride;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.definition.CarDetails;
import spindlebook.definition.Place;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.SeenSprings;
import spindlebook.spring.RigidFrame;
import spindlebook.spring.WheelSpring;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Propagated;

/**
 * Where a corner rides since collars were turned or springs swapped, here or at the others, until
 * somebody reads it: as last read, and what the frame on its four springs makes of that.
 */
public final class RideForetold {
  private RideForetold() {}

  /**
   * The wheel position; empty where ride is as it was read, where something else moved it, and
   * while the spring of a corner is not known.
   */
  public static Optional<Figure> of(CarBook book, Card card) {
    Optional<SeenSprings.RideMoved> moved = card.springs().rideMoved();
    if (moved.isEmpty() || book.corners().size() != Place.values().length) {
      return Optional.empty();
    }
    List<Figure> raised = new ArrayList<>();
    List<Figure> rates = new ArrayList<>();
    for (Place place : Place.values()) {
      String corner = book.cornerAt(place).orElseThrow();
      CornerRide ride = CornerRide.of(book.card(corner));
      Long then = moved.get().swapped().get(place);
      Optional<Figure> up =
          then != null
              ? CornerRide.of(book.asOf(then).card(corner)).coil.flatMap(ride::raisedMm)
              : ride.raisedMm(moved.get().pressedMm().getOrDefault(place, 0.0));
      if (up.isEmpty()) {
        return Optional.empty();
      }
      raised.add(up.get());
      rates.add(
          ride.onTyreNPerMm().or(() -> ride.ride.map(WheelSpring.Ride::rateNPerMm)).orElseThrow());
    }
    Figure load =
        RigidFrame.moreLoadN(raised, rates, tracks(card.details())).get(card.place().ordinal());
    Figure rate = CornerRide.of(card).ride.orElseThrow().rateNPerMm();
    Figure gives = Propagated.of(List.of(load, rate), v -> v[0] / v[1]);
    Figure rises = raised.get(card.place().ordinal()).minus(gives);
    // The frame rises over the wheel: the wheel goes towards droop.
    return Optional.of(moved.get().readMm().minus(rises));
  }

  /** Front over rear; 1 where either is not known. */
  private static double tracks(CarDetails car) {
    return car.frontTrack() == null || car.rearTrack() == null
        ? 1
        : car.frontTrack().mm() / car.rearTrack().mm();
  }
}
