package spindlebook.travel;

import spindlebook.corner.Steering;
import spindlebook.corner.WatchPoint;

/** A rule broken between two places where it is kept: no stop cures it. */
public record MidTravel(WatchPoint point, Steering steering, Shortfall shortfall) {}
