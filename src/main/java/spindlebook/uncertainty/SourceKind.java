package spindlebook.uncertainty;

/**
 * What kind of thing makes a figure doubtful. Kinds differ in what would make the doubt smaller.
 */
public enum SourceKind {
  /** The steps of the scale: only a finer tool helps. */
  RESOLUTION,
  /** Where the hand put the tool: repeating helps. */
  PLACING,
  /** The tool itself reads long or short, the same way in every reading. */
  TOOL,
  /** A mark that was read once and used in many figures. */
  MARK,
  /** A number chosen by the owner, or a crush or stretch that was measured once. */
  ALLOWANCE,
  /** The frame did not stand as it did for another round. */
  TILT,
  /** What lies between two readings was not read. */
  INTERPOLATION
}
