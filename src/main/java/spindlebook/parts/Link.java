package spindlebook.parts;

/**
 * A tube with a rod end in each end, turned whole while the rod ends stand still.
 *
 * <pre>  one turn: |p1 + p2| with opposite hands,  |p1 − p2| with the same hand,   mm</pre>
 *
 * <p>One hand at both ends with the same pitch: turning it whole does nothing; a rod end must come
 * off. Source: common knowledge of the trade. Worked example: 3/4-16 left and right: 3.175 mm a
 * turn.
 */
public record Link(RodThread one, RodThread other) {

  public double lengthPerTurnMm() {
    return one.hand() == other.hand()
        ? Math.abs(one.pitchMm() - other.pitchMm())
        : one.pitchMm() + other.pitchMm();
  }

  /** Whether it can be set without taking an end off. */
  public boolean setsTurnedWhole() {
    return lengthPerTurnMm() > 0;
  }
}
