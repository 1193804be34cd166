package spindlebook.fold;

import spindlebook.definition.Place;

/** Where a change was made, seen from the corner whose reading is asked about. */
public enum Where {
  HERE,
  /** The other end of the solid axle that carries both wheels. */
  SAME_AXLE,
  OTHER_SIDE,
  ELSEWHERE;

  /**
   * @param solidAxle whether one solid axle carries the corner and its mirror
   */
  static Where seenFrom(Place corner, Place changed, boolean solidAxle) {
    if (corner == changed) {
      return HERE;
    }
    if (corner.mirror() != changed) {
      return ELSEWHERE;
    }
    return solidAxle ? SAME_AXLE : OTHER_SIDE;
  }
}
