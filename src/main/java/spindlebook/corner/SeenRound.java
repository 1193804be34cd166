package spindlebook.corner;

import java.time.Instant;

/**
 * A round with the tools it was read with, in the version that counted then.
 *
 * @param tape null when the round names a tool the book does not know; likewise the others
 */
public record SeenRound(
    String key,
    long n,
    Instant at,
    String who,
    Content.Round round,
    Tool tape,
    Tool gapTool,
    Tool angleTool) {}
