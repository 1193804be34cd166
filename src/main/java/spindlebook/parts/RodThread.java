package spindlebook.parts;

import java.util.Objects;

/**
 * The thread of a rod end. In mm.
 *
 * @param name as stamped, such as {@code 5/8-18} or {@code M16x1.5}
 * @param diameterMm nominal
 * @param pitchMm one turn along the thread; single start
 */
public record RodThread(String name, double diameterMm, double pitchMm, Hand hand) {
  public RodThread {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(hand, "hand");
    if (!(pitchMm > 0 && diameterMm > pitchMm)) {
      throw new IllegalArgumentException(
          "no thread has diameter " + diameterMm + " and pitch " + pitchMm);
    }
  }

  public RodThread with(Hand other) {
    return new RodThread(name, diameterMm, pitchMm, other);
  }
}
