package spindlebook.web;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;

/** So many at once and so many a second, for each of many callers. */
public final class RateLimit {
  /** More callers than a garage has; those not heard of longest are forgotten first. */
  private static final int MOST_CALLERS = 4096;

  private final int atOnce;
  private final double aSecond;
  private final Clock clock;
  private final Map<String, Left> callers =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Left> eldest) {
          return size() > MOST_CALLERS;
        }
      };

  private record Left(double turns, Instant at) {}

  public RateLimit(int atOnce, double aSecond, Clock clock) {
    this.atOnce = atOnce;
    this.aSecond = aSecond;
    this.clock = clock;
  }

  /** Takes one turn of a caller; false when it has none left just now. */
  public synchronized boolean take(String caller) {
    Instant now = clock.instant();
    Left left = callers.getOrDefault(caller, new Left(atOnce, now));
    double seconds = Math.max(0, Duration.between(left.at(), now).toMillis() / 1000.0);
    double turns = Math.min(atOnce, left.turns() + seconds * aSecond);
    callers.put(caller, new Left(turns < 1 ? turns : turns - 1, now));
    return turns >= 1;
  }
}
