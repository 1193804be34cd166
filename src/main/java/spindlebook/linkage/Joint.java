package spindlebook.linkage;

/** What has to be known of a corner, by the name it has in a file. */
public enum Joint {
  LF("LF", "lower arm, front pivot"),
  LR("LR", "lower arm, rear pivot"),
  L("L", "lower ball joint"),
  UF("UF", "upper arm, front pivot"),
  UR("UR", "upper arm, rear pivot"),
  U("U", "upper ball joint"),
  TI("TI", "tie rod, inner end"),
  TO("TO", "tie rod, outer end"),
  W("W", "wheel centre"),
  SU("SU", "shock, mount on the body"),
  SL("SL", "shock, mount on the lower arm"),
  KU("KU", "strap, mount on the body"),
  KL("KL", "strap, mount on the lower arm"),
  BOLT_L("boltL", "direction of the bolt through the lower uniball, in the knuckle"),
  HOUSE_L("houseL", "direction of the lower uniball's housing, in the lower arm"),
  BOLT_U("boltU", "direction of the bolt through the upper uniball, in the knuckle"),
  HOUSE_U("houseU", "direction of the upper uniball's housing, in the upper arm"),
  STUD_TO("studTO", "direction of the outer rod end's stud, in the knuckle"),
  STUD_TI("studTI", "direction of the inner rod end's stud, in the rack");

  /** As a file names it. */
  public final String key;

  public final String words;

  Joint(String key, String words) {
    this.key = key;
    this.words = words;
  }

  /** Without the first nine there is no corner. */
  boolean needed() {
    return compareTo(W) <= 0;
  }

  boolean direction() {
    return compareTo(BOLT_L) >= 0;
  }
}
