package spindlebook.log;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import spindlebook.corner.CarBook;
import spindlebook.corner.Noted;

/** The cars' books straight from a file, without a folder, a lock or an index. */
public final class CarsOfFile {
  private CarsOfFile() {}

  /**
   * By the car's key, in the order in which the cars' entries came; entries of no known car are
   * left out. An entry may come before the one it hangs on, as in the index.
   */
  public static Map<String, CarBook> of(BookFile.Contents contents) {
    Map<String, Entry> byKey = new HashMap<>();
    contents.entries().forEach(e -> byKey.putIfAbsent(e.key(), e));
    Map<String, List<Noted>> noted = new LinkedHashMap<>();
    for (Entry entry : contents.entries()) {
      String car = carOf(entry, byKey);
      if (car != null) {
        noted.computeIfAbsent(car, c -> new ArrayList<>()).add(Bodies.noted(entry));
      }
    }
    Map<String, CarBook> books = new LinkedHashMap<>();
    noted.forEach((car, entries) -> books.put(car, CarBook.of(entries)));
    return books;
  }

  /** Null when it leads to no car, or round in a ring. */
  private static String carOf(Entry entry, Map<String, Entry> byKey) {
    Set<String> seen = new HashSet<>();
    Entry at = entry;
    while (at != null && seen.add(at.key())) {
      if (at.kind().equals("car")) {
        return at.key();
      }
      at = byKey.get(EntryRows.parent(at.body()));
    }
    return null;
  }
}
