package spindlebook.parts;

/** Where a wheel or tyre comes near something, as measured inside and around the present one. */
public enum WheelGap {
  BARREL("inside of the barrel to the nearest part", "measured outward from the axle"),
  SPOKES("back of the spokes to the nearest part", "measured along the axle"),
  INNER_LIP("inner lip to the nearest part", "measured along the axle"),
  TYRE_INBOARD("tyre's inner side to the nearest part", "measured along the axle"),
  TYRE_OUTBOARD("tyre's outer side to the bodywork", "measured along the axle"),
  TREAD("tread to the bodywork", "measured outward from the axle");

  private final String words;
  private final String measured;

  WheelGap(String words, String measured) {
    this.words = words;
    this.measured = measured;
  }

  public String words() {
    return words;
  }

  /** Which way the tape lies. */
  public String measured() {
    return measured;
  }
}
