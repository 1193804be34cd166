package spindlebook.fastener;

import java.util.List;

/**
 * One corner's fasteners.
 *
 * @param open touched and not said to be tight and marked since
 */
public record FastenersOfCorner(String place, List<FastenerLine> open, List<FastenerLine> others) {}
