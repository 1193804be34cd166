package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static spindlebook.fold.CarLines.CAR;
import static spindlebook.fold.CarLines.LF;
import static spindlebook.fold.CarLines.R1;
import static spindlebook.fold.CarLines.gap;
import static spindlebook.fold.CarLines.line;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.fold.CarBook;
import spindlebook.fold.Noted;

/** Cars straight from a file: which entry belongs to which car. */
class CarsOfFileTest {
  @TempDir Path folder;

  private static final String H1 =
      line(
          "{'key':'h1','kind':'height','body':{'round':'r1','name':'ride','spindle':'8 in',"
              + "'mark':'20 in'}}");

  @Test
  void an_entry_belongs_where_what_it_hangs_on_belongs() throws IOException {
    assertEquals(
        Map.of("car", List.of("car", "lf", "r1", "h1", "g1")),
        keys(CAR, LF, R1, H1, gap("g1", "h1", "3/8 in")));
  }

  @Test
  void it_may_come_before_what_it_hangs_on() throws IOException {
    assertEquals(
        Map.of("car", List.of("car", "lf", "g1", "h1", "r1")),
        keys(CAR, LF, gap("g1", "h1", "3/8 in"), H1, R1));
  }

  @Test
  void two_cars_are_kept_apart() throws IOException {
    assertEquals(
        Map.of("car", List.of("car", "lf"), "other", List.of("other", "rf")),
        keys(
            CAR,
            line("{'key':'other','kind':'car','body':{'details':{'name':'Wash'}}}"),
            LF,
            line(
                "{'key':'rf','kind':'corner','body':{'car':'other','place':'right-front',"
                    + "'layout':'steered-double-a-arm'}}")));
  }

  @Test
  void what_leads_to_no_car_is_left_out() throws IOException {
    assertEquals(
        Map.of("car", List.of("car")),
        keys(
            CAR,
            R1,
            line("{'key':'w','kind':'answer','body':{'target':'v','itIsSo':true}}"),
            line("{'key':'v','kind':'answer','body':{'target':'w','itIsSo':true}}")));
  }

  private Map<String, List<String>> keys(String... lines) throws IOException {
    Path file = folder.resolve("book.jsonl");
    Files.write(file, List.of(lines));
    Map<String, CarBook> cars = CarsOfFile.of(BookFile.readByHand(file));
    return cars.entrySet().stream()
        .collect(
            java.util.stream.Collectors.toMap(
                Map.Entry::getKey, e -> e.getValue().entries().stream().map(Noted::key).toList()));
  }
}
