package spindlebook.travel;

import java.util.List;

/**
 * One rule along the whole travel that was read.
 *
 * @param droop how far down the wheel may go
 * @param bump how far up
 * @param midTravel stretches between the two where the rule is broken, from droop to bump
 * @param hardlyKept stretches between the two where it is kept, but by less than the readings' own
 *     U, surely kept on both sides; from droop to bump
 */
public record Along(
    EndLimit droop, EndLimit bump, List<Shortfall> midTravel, List<Shortfall> hardlyKept) {}
