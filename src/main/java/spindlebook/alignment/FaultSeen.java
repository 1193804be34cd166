package spindlebook.alignment;

import spindlebook.uncertainty.Figure;

/**
 * One fault that the toe curve may show.
 *
 * @param fault what it would be, by the sign of the figure
 * @param figure slope in rad/mm or curvature in rad/mm²
 * @param effectRad what it does to toe at the end of the window further from ride
 * @param sureness how it stands against what the noise lets see
 */
public record FaultSeen(TieRodFault fault, Figure figure, double effectRad, Sureness sureness) {

  /** How sure one may be that the fault is there. */
  public enum Sureness {
    /** At least three times what the noise lets see. */
    PLAIN("plain"),
    /** More than the noise lets see. */
    LIKELY("likely"),
    /** Seen, but so small beside the other that the other may bring it along. */
    MAY_COME_WITH_THE_OTHER("may only come with the other: set that right first, then read again"),
    /** Within what the noise lets see. */
    CANT_TELL("can't tell");

    private final String words;

    Sureness(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }

    /** Whether the fault is said to be there. */
    public boolean said() {
      return this == PLAIN || this == LIKELY;
    }
  }
}
