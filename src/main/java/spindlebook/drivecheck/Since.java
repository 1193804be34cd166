package spindlebook.drivecheck;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import spindlebook.card.Days;
import spindlebook.corner.CarBook;
import spindlebook.corner.Content;
import spindlebook.corner.EntryWords;
import spindlebook.corner.Noted;
import spindlebook.corner.SeenSignOff;

/** What came into a car's book since a position, by what it is. */
final class Since {
  private static final int MOST = 10;

  /** What an entry is, as far as a sign-off cares; in the order of the page. */
  private enum Sort {
    SET("Settings and happenings", "adjustment"),
    BACKWARDS("Corrections of what was known then", "correction"),
    RULES("Rules, numbers and tools", "definition"),
    READ("Measured", "reading"),
    LOOKED("Drives and what was looked at", null),
    OTHER("Other entries", null);

    private final String title;
    private final String kind;

    Sort(String title, String kind) {
      this.title = title;
      this.kind = kind;
    }
  }

  private Since() {}

  static List<SinceView.Group> groups(CarBook history, long n) {
    Map<String, Long> positions = new HashMap<>();
    history.entries().forEach(e -> positions.put(e.key(), e.n()));
    Map<Sort, List<Noted>> sorted = new EnumMap<>(Sort.class);
    for (Noted entry : SeenSignOff.since(history, n)) {
      sorted
          .computeIfAbsent(sort(entry.content(), positions, n), s -> new ArrayList<>())
          .add(entry);
    }
    EntryWords words = new EntryWords(history);
    List<SinceView.Group> groups = new ArrayList<>();
    sorted.forEach((sort, entries) -> groups.add(group(history, sort, entries, words)));
    return groups;
  }

  private static SinceView.Group group(
      CarBook history, Sort sort, List<Noted> entries, EntryWords words) {
    List<SinceView.Line> lines = new ArrayList<>();
    for (int i = entries.size() - 1; i >= 0 && lines.size() < MOST; i--) {
      lines.add(line(entries.get(i), words));
    }
    String book = "/cars/" + history.car().orElseThrow() + "/book";
    return new SinceView.Group(
        sort.title + ": " + entries.size(),
        lines,
        entries.size() - lines.size(),
        sort.kind == null ? book : book + "?kind=" + sort.kind,
        sort == Sort.SET || sort == Sort.BACKWARDS);
  }

  static SinceView.Line line(Noted entry, EntryWords words) {
    return new SinceView.Line(
        words.of(entry.content()),
        "entry " + entry.n() + " · " + Days.day(entry.at()) + " · " + entry.who(),
        "/entries/" + entry.key());
  }

  private static Sort sort(Content content, Map<String, Long> positions, long n) {
    if (content instanceof Content.Adjustment || content instanceof Content.Happening) {
      return Sort.SET;
    }
    if (content instanceof Content.Correction c) {
      return positions.getOrDefault(c.target(), Long.MAX_VALUE) <= n ? Sort.BACKWARDS : Sort.OTHER;
    }
    if (content instanceof Content.Answer a) {
      return positions.getOrDefault(a.target(), Long.MAX_VALUE) <= n ? Sort.BACKWARDS : Sort.OTHER;
    }
    if (content instanceof Content.Definition
        || content instanceof Content.Target
        || content instanceof Content.Corner
        || content instanceof Content.Car) {
      return Sort.RULES;
    }
    if (content instanceof Content.Round
        || content instanceof Content.Height
        || content instanceof Content.Reading
        || content instanceof Content.Alignment) {
      return Sort.READ;
    }
    return content instanceof Content.Use
            || content instanceof Content.Telltale
            || content instanceof Content.Fastener
            || content instanceof Content.ToDo
        ? Sort.LOOKED
        : Sort.OTHER;
  }
}
