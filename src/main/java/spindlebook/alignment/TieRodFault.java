package spindlebook.alignment;

import spindlebook.definition.RackSide;

/**
 * What a tie rod can be set wrong by, and which way that turns the toe curve.
 *
 * <pre>
 *                          rack behind         rack ahead
 *   outer end too high     slope −             slope +
 *   outer end too low      slope +             slope −
 *   tie rod too long       curvature +         curvature −
 *   tie rod too short      curvature −         curvature +
 * </pre>
 *
 * Slope, curvature of toe (+ in) against wheel position (+ bump) at ride. 'Outer too high' and
 * 'inner too low' are one thing to toe; 'too long' means the inner end too far inboard, the toe at
 * ride being set. Assumes arms that slope and swing like a usual double A-arm's and a rod not
 * within 25° of lining up with its steering arm. Source: derived in docs/methods-alignment.md;
 * checked with rigid corners.
 *
 * <p>Worked example: rack behind, slope −0.0047 °/mm: outer end too high; rack ahead: too low.
 */
public enum TieRodFault {
  OUTER_TOO_HIGH("outer end too high (or inner end too low)"),
  OUTER_TOO_LOW("outer end too low (or inner end too high)"),
  TOO_LONG("tie rod too long (inner end too far inboard)"),
  TOO_SHORT("tie rod too short (inner end too far outboard)");

  private final String words;

  TieRodFault(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** What a slope of this sign means; slope not 0. */
  public static TieRodFault ofSlope(double slope, RackSide rack) {
    return slope < 0 == (rack == RackSide.BEHIND_AXLE) ? OUTER_TOO_HIGH : OUTER_TOO_LOW;
  }

  /** What a bend of this sign means; curvature not 0. */
  public static TieRodFault ofCurvature(double curvature, RackSide rack) {
    return curvature > 0 == (rack == RackSide.BEHIND_AXLE) ? TOO_LONG : TOO_SHORT;
  }

  public boolean height() {
    return this == OUTER_TOO_HIGH || this == OUTER_TOO_LOW;
  }
}
