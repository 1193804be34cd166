package spindlebook.corner;

import java.time.Instant;

/**
 * One change of a setting, or a happening, as a reason why a reading no longer holds.
 *
 * @param place where it was made; null for the whole car
 * @param adjuster the adjuster's short name, null for a happening
 * @param words what was done, ready to be read
 */
public record Change(
    long n, String key, Instant at, String who, Place place, String adjuster, String words) {}
