package spindlebook.parts;

import spindlebook.uncertainty.Figure;

/**
 * A tyre as it stands, or as it is promised, mm: free radius from axle to tread, loaded radius from
 * axle to ground at ride in the wheel's plane, squashed radius on a hard landing, section width at
 * its widest. What only the seller says carries a wide ± of its own.
 */
public record Tyre(
    Figure freeRadiusMm, Figure loadedRadiusMm, Figure squashedRadiusMm, Figure sectionWidthMm) {}
