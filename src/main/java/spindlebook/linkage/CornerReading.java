package spindlebook.linkage;

import spindlebook.uncertainty.Figure;

/**
 * One value read of a corner.
 *
 * @param key whose it is
 * @param heightMm straight ahead, above the design height; its sources are shared by all readings
 *     at that jack setting
 * @param rackMm steered by so much, the jack left as it was
 * @param value mm or rad, with its own sources
 */
public record CornerReading(
    String key, Quantity quantity, Figure heightMm, double rackMm, Figure value) {}
