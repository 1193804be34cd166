package spindlebook.fold;

import java.time.Instant;
import spindlebook.entry.Content;

/** What the owner wants a figure of alignment to be, in the version in force. */
public record SeenTarget(String key, long n, Instant at, String who, Content.Target target) {}
