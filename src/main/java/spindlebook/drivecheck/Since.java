package spindlebook.drivecheck;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import spindlebook.card.Days;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Noted;
import spindlebook.fold.SeenSignOff;
import spindlebook.words.EntryWords;

/**
 * What changed since a sign-off.
 *
 * @param outcome then and now, in a sentence
 * @param notKept what that copy does not hold, a sentence; empty when it holds all
 * @param groups entries that came since, by what they are
 */
public record Since(String outcome, CopyChanges changes, String notKept, List<Group> groups) {
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

  /**
   * @param more how many more there are than are listed
   */
  public record Group(String title, List<Line> lines, int more, String moreHref, boolean open) {}

  public record Line(String words, String when, String href) {}

  static List<Group> groups(CarBook history, long n) {
    Map<String, Long> positions = new HashMap<>();
    history.entries().forEach(e -> positions.put(e.key(), e.n()));
    Map<Sort, List<Noted>> sorted = new EnumMap<>(Sort.class);
    for (Noted entry : SeenSignOff.since(history, n)) {
      sorted
          .computeIfAbsent(sort(entry.content(), positions, n), s -> new ArrayList<>())
          .add(entry);
    }
    EntryWords words = new EntryWords(history);
    List<Group> groups = new ArrayList<>();
    sorted.forEach((sort, entries) -> groups.add(group(history, sort, entries, words)));
    return groups;
  }

  private static Group group(CarBook history, Sort sort, List<Noted> entries, EntryWords words) {
    List<Line> lines = newest(entries, MOST, words);
    String book = "/cars/" + history.car().orElseThrow() + "/book";
    return new Group(
        sort.title + ": " + entries.size(),
        lines,
        entries.size() - lines.size(),
        sort.kind == null ? book : book + "?kind=" + sort.kind,
        sort == Sort.SET || sort == Sort.BACKWARDS);
  }

  /** So many at most, the last first. */
  static List<Line> newest(List<Noted> entries, int most, EntryWords words) {
    return entries.stream()
        .sorted(Comparator.comparingLong(Noted::n).reversed())
        .limit(most)
        .map(
            e ->
                new Line(
                    words.of(e.content()),
                    "entry " + e.n() + " · " + Days.day(e.at()) + " · " + e.who(),
                    "/entries/" + e.key()))
        .toList();
  }

  private static Sort sort(Content content, Map<String, Long> positions, long n) {
    if (content instanceof Content.Adjustment || content instanceof Content.Happening) {
      return Sort.SET;
    }
    String target =
        content instanceof Content.Correction c
            ? c.target()
            : content instanceof Content.Answer a ? a.target() : null;
    if (target != null) {
      return positions.getOrDefault(target, Long.MAX_VALUE) <= n ? Sort.BACKWARDS : Sort.OTHER;
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
        || content instanceof Content.Alignment
        || content instanceof Content.JointPlace) {
      return Sort.READ;
    }
    return content instanceof Content.Use
            || content instanceof Content.Telltale
            || content instanceof Content.Fastener
            || content instanceof Content.Part
            || content instanceof Content.ToDo
        ? Sort.LOOKED
        : Sort.OTHER;
  }
}
