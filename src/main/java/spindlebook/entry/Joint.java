package spindlebook.entry;

/** What has to be known of a corner's linkage, by the name it has in a file. */
public enum Joint {
  LF("LF", Carried.FRAME, "lower arm, front pivot"),
  LR("LR", Carried.FRAME, "lower arm, rear pivot"),
  L("L", Carried.LOWER_ARM, "lower ball joint"),
  UF("UF", Carried.FRAME, "upper arm, front pivot"),
  UR("UR", Carried.FRAME, "upper arm, rear pivot"),
  U("U", Carried.UPPER_ARM, "upper ball joint"),
  TI("TI", Carried.RACK, "tie rod, inner end"),
  TO("TO", Carried.KNUCKLE, "tie rod, outer end"),
  W("W", Carried.KNUCKLE, "wheel centre"),
  SU("SU", Carried.FRAME, "shock, upper mount"),
  SL("SL", Carried.LOWER_ARM, "shock, lower mount"),
  KU("KU", Carried.FRAME, "strap, upper mount"),
  KL("KL", Carried.LOWER_ARM, "strap, lower mount"),
  BOLT_L("boltL", Carried.KNUCKLE, "lower uniball, its bolt"),
  HOUSE_L("houseL", Carried.LOWER_ARM, "lower uniball, its housing"),
  BOLT_U("boltU", Carried.KNUCKLE, "upper uniball, its bolt"),
  HOUSE_U("houseU", Carried.UPPER_ARM, "upper uniball, its housing"),
  STUD_TO("studTO", Carried.KNUCKLE, "tie rod, outer end's stud"),
  STUD_TI("studTI", Carried.RACK, "tie rod, inner end's stud");

  /** What a joint sits on; an arm's pivots sit on the frame. */
  public enum Carried {
    FRAME,
    RACK,
    LOWER_ARM,
    UPPER_ARM,
    KNUCKLE
  }

  /** As a file names it. */
  public final String key;

  public final Carried by;
  public final String words;

  Joint(String key, Carried by, String words) {
    this.key = key;
    this.by = by;
    this.words = words;
  }

  /** Without the first nine there is no corner. */
  public boolean needed() {
    return compareTo(W) <= 0;
  }

  /** The rod end or uniball whose bolt or stud it is; null of any other. */
  public String swings() {
    return switch (this) {
      case BOLT_L -> "lower uniball";
      case BOLT_U -> "upper uniball";
      case STUD_TO -> "tie rod, outer end";
      case STUD_TI -> "tie rod, inner end";
      default -> null;
    };
  }

  /** Told by the way from one end of it to the other, not by a place. */
  public boolean direction() {
    return compareTo(BOLT_L) >= 0;
  }
}
