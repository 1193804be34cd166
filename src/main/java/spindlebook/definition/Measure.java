package spindlebook.definition;

/** What is read at a watch point. */
public enum Measure {
  GAP,
  ANGLE,
  PLUNGE
}
