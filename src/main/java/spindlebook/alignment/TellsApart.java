package spindlebook.alignment;

/** The reading that would tell one meaning of a toe curve from another. */
public enum TellsApart {
  TOE_AT_BOTH_ENDS("read toe again at both ends of the travel: the ends settle the slope"),
  TOE_AT_RIDE_AND_ENDS(
      "read toe again at ride and at both ends of the travel: they settle whether the curve is"
          + " bowed"),
  FIVE_PLACES("read toe at five places or more: with fewer, slope and bow run into each other"),
  ROD_HEIGHTS(
      "measure at ride how high both ends of the tie rod and of the lower arm lie: toe alone does"
          + " not say whether the outer end is too high or the inner end too low"),
  INNER_SPREAD(
      "measure inner tie-rod end to inner tie-rod end, and pivot line to pivot line: toe alone does"
          + " not say whether the rod or the rack is at fault"),
  AFTER_FIRST_CURE("set the larger one right first, then read toe again");

  private final String words;

  TellsApart(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
