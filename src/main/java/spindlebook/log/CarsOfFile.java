package spindlebook.log;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spindlebook.fold.CarBook;
import spindlebook.fold.Noted;

/** The cars' books straight from a file, without a folder, a lock or an index. */
public final class CarsOfFile {
  private CarsOfFile() {}

  /**
   * By the car's key, in the order in which the cars' entries came; entries of no known car are
   * left out. An entry may come before the one it hangs on, as in the index.
   */
  public static Map<String, CarBook> of(BookFile.Contents contents) {
    Belonging belonging = new Belonging();
    contents.entries().forEach(belonging::add);
    Map<String, List<Noted>> noted = new LinkedHashMap<>();
    for (Entry entry : contents.entries()) {
      String car = belonging.where(entry.key()).car();
      if (car != null) {
        noted.computeIfAbsent(car, c -> new ArrayList<>()).add(Bodies.noted(entry));
      }
    }
    Map<String, CarBook> books = new LinkedHashMap<>();
    noted.forEach((car, entries) -> books.put(car, CarBook.of(entries)));
    return books;
  }
}
