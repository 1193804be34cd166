package spindlebook.linkage;

import java.util.Locale;

/** What comes of asking for a height. */
public sealed interface Found permits Pose, Found.StopsAssembling {

  /** The pose asked for, or a sentence that says why there is none. */
  default Pose pose() {
    if (this instanceof Pose pose) {
      return pose;
    }
    throw new LinkageRefused(((StopsAssembling) this).words());
  }

  /**
   * The linkage does not get there.
   *
   * @param heightMm the last height that it reaches at this rack position; NaN where the tie rod
   *     reaches neither with the lower arm as at the design nor at the height asked for
   */
  record StopsAssembling(double heightMm, double rackMm, boolean lower) implements Found {
    public String words() {
      if (Double.isNaN(heightMm)) {
        return "At rack %s mm it does not assemble here: the tie rod does not reach."
            .formatted(number(rackMm, 1));
      }
      return "It stops assembling at %s mm: at rack %s mm the wheel comes no %s."
          .formatted(number(heightMm, 2), number(rackMm, 1), lower ? "lower" : "higher");
    }

    private static String number(double mm, int places) {
      return String.format(Locale.ROOT, "%." + places + "f", mm).replace('-', '−');
    }
  }
}
