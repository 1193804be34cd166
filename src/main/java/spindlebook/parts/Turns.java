package spindlebook.parts;

/** Turns of an arm's front and rear rod end, + out (arm longer there). */
public record Turns(double front, double rear) {

  /**
   * The nearest that can be set, in steps such as half a turn; step > 0. Source: common practice,
   * no source: a rod end's flats stand between its tabs every half turn. Worked example: 1.3 and
   * −0.4 turns in halves: 1.5 and −0.5.
   */
  public Turns settable(double step) {
    if (!(step > 0)) {
      throw new IllegalArgumentException("turns are set in steps of more than 0, not " + step);
    }
    return new Turns(Math.rint(front / step) * step, Math.rint(rear / step) * step);
  }
}
