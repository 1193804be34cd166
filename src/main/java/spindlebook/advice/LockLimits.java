package spindlebook.advice;

import java.util.List;
import spindlebook.entry.Steering;
import spindlebook.travel.MidTravel;

/**
 * What acts at one full lock only, and so can be cured by less lock, all of it at once. How much
 * less is not told: the gaps at the new lock have to be read.
 *
 * @param rungs their places in the ladder
 * @param midTravel rules broken, or not surely kept, in mid-travel at that lock
 * @param wins what less lock wins at most, nothing else being cured
 */
public record LockLimits(Steering lock, List<Integer> rungs, List<MidTravel> midTravel, Win wins) {}
