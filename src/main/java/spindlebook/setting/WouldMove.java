package spindlebook.setting;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Standing;

/** What a change on paper would make stale, in words, one line a thing. */
public final class WouldMove {
  private WouldMove() {}

  public static List<String> lines(Card now, Card then) {
    List<String> lines = new ArrayList<>();
    for (SeenHeight height : then.heights()) {
      boolean held =
          now.height(height.key()).map(h -> h.stopCounts() && h.name().onePlace()).orElse(false);
      if (held && height.stop() == Standing.STALE) {
        lines.add("where '" + height.words() + "' lies");
      }
    }
    Map<String, Long> readings =
        then.readings().stream()
            .filter(r -> r.stands() == Standing.STALE)
            .filter(r -> now.reading(r.key()).map(SeenReading::counts).orElse(false))
            .collect(
                Collectors.groupingBy(
                    SeenReading::what, java.util.LinkedHashMap::new, Collectors.counting()));
    readings.forEach(
        (what, count) -> lines.add(what + (count == 1 ? "" : ", " + count + " readings")));
    return lines;
  }
}
