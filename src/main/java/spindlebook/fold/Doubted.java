package spindlebook.fold;

import java.time.Instant;

/** An entry that does not count until somebody answers. */
public record Doubted(
    long n, String key, Instant at, String who, String kind, String words, String doubt) {}
