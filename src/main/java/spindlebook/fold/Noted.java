package spindlebook.fold;

import java.time.Instant;
import spindlebook.entry.Content;

/**
 * One entry as the fold sees it.
 *
 * @param n position in the book
 * @param after position of the last change of a setting, or happening, that the writer knew of
 */
public record Noted(long n, String key, Instant at, String who, long after, Content content) {}
