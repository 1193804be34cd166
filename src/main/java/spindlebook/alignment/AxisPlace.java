package spindlebook.alignment;

import spindlebook.uncertainty.Figure;

/**
 * Where one point of the kingpin lies, seen from the wheel's centre: the lower joint, or wherever a
 * straight-edge along both joints was measured. In mm; ahead, inboard and below +.
 */
public record AxisPlace(Figure aheadMm, Figure inboardMm, Figure belowMm) {}
