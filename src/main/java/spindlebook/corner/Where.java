package spindlebook.corner;

/** Where a change was made, seen from the corner whose reading is asked about. */
public enum Where {
  HERE,
  OTHER_SIDE,
  ELSEWHERE;

  static Where seenFrom(Place corner, Place changed) {
    if (corner == changed) {
      return HERE;
    }
    return corner.mirror() == changed ? OTHER_SIDE : ELSEWHERE;
  }
}
