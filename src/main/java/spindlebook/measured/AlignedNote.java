package spindlebook.measured;

import spindlebook.alignment.TotalToe;

/** What ought to be known beside a figure of alignment. One sentence each. */
public enum AlignedNote {
  HIDES_SIDES(TotalToe.HIDES_SIDES),
  IN_ROUND(
      "Read in a round, the car on its tyres, rolled and bounced: it counts, as nothing measured"
          + " here does."),
  WHEEL_IN_ROUND(
      "One of the wheels was read in a round, the car on its tyres, rolled and bounced: it counts,"
          + " as nothing measured of that wheel does."),
  ACROSS_BORROWED(
      "How far apart its two places are was given for the other wheel: give it for this one where"
          + " the two differ."),
  ZERO_NOT_KNOWN(
      "The gauge's zero is not known: ± 0.2° is counted for it. Turn the gauge round and read it"
          + " again to find it."),
  CAMBER_TAKEN("Camber straight ahead was not read in the sweep: camber as measured is taken."),
  CAMBER_NOT_KNOWN("Camber straight ahead is not known: 0 ± 1.5° is counted."),
  TOE_NOT_KNOWN("Toe of this wheel is not known: 0 ± 0.5° is counted."),
  KPI_FROM_CAMBERS(
      "KPI from cambers alone hangs on very little, as its ± says: read pitch in the sweep, or type"
          + " KPI as known."),
  KPI_KNOWN("KPI is as it was typed, not measured in the sweep."),
  SECTION_NOT_KNOWN("The outside needs the tyre's width."),
  CAMBER_NOT_IN_TRACK("Camber is not known: the wheels are taken as upright.");

  private final String words;

  AlignedNote(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
