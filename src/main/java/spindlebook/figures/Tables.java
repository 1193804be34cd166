package spindlebook.figures;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import spindlebook.fold.CarBook;
import spindlebook.fold.Noted;
import spindlebook.log.Bodies;
import spindlebook.log.BookFile;
import spindlebook.log.BookRefused;
import spindlebook.log.CarsOfFile;
import spindlebook.words.EntryWords;

/**
 * The figures of a car as tables: every list of {@link Figures} is one, its rows led by the car,
 * the corner and the end they are of. A figure with doubt is two columns, {@code positionMm} and
 * {@code positionMmU}. The entries of the book come first, in its order.
 */
public final class Tables {
  /** The sign-offs' own copies, and what the limits tell once more. */
  private static final List<String> LEFT_OUT = List.of("kept", "ladders");

  private final Map<String, List<Map<String, JsonNode>>> tables = new LinkedHashMap<>();

  private Tables() {}

  public static List<Table> of(CarBook book) {
    Tables tables = new Tables();
    ObjectNode car = Figures.car(book);
    Map<String, JsonNode> leading = Map.of("car", car.path("name"));
    EntryWords words = new EntryWords(book);
    for (Noted entry : book.entries()) {
      Map<String, JsonNode> row = tables.row("entries", leading);
      Node said =
          Figures.taken(entry.at(), entry.who())
              .put("n", entry.n())
              .put("kind", Bodies.kind(entry.content()))
              .put("key", entry.key())
              .put("words", words.of(entry.content()));
      flat(said.json(), "", row);
    }
    tables.object(car, leading);
    return tables.tables.entrySet().stream().map(t -> new Table(t.getKey(), t.getValue())).toList();
  }

  /**
   * Writes the tables of every car in a book's file to a folder, {@code car-table.csv} each.
   *
   * @throws BookRefused when the file cannot be read as a book, or the folder not be written
   */
  public static void write(Path file, Path folder, Consumer<String> tell) {
    Map<String, CarBook> cars = CarsOfFile.of(BookFile.readByHand(file));
    try {
      Files.createDirectories(folder);
      for (Map.Entry<String, CarBook> car : cars.entrySet()) {
        for (Table table : of(car.getValue())) {
          Files.writeString(
              folder.resolve(car.getKey() + "-" + table.name() + ".csv"), table.csv());
        }
      }
      tell.accept(
          "Tables of " + cars.size() + (cars.size() == 1 ? " car" : " cars") + ": " + folder);
    } catch (IOException trouble) {
      throw BookRefused.book(trouble, "The tables cannot be written to %s.", folder);
    }
  }

  private Map<String, JsonNode> row(String table, Map<String, JsonNode> leading) {
    Map<String, JsonNode> row = new LinkedHashMap<>(leading);
    tables.computeIfAbsent(table, t -> new ArrayList<>()).add(row);
    return row;
  }

  /** Looks for lists in an object; what leads their rows is said before. */
  private void object(JsonNode object, Map<String, JsonNode> leading) {
    object
        .fields()
        .forEachRemaining(
            field -> {
              JsonNode value = field.getValue();
              if (LEFT_OUT.contains(field.getKey())) {
                return;
              }
              if (value.isObject()) {
                boolean end = value.has("limits");
                object(value, end ? with(leading, "end", field.getKey()) : leading);
              } else if (value instanceof ArrayNode rows && rows.path(0).isObject()) {
                rows.forEach(row -> row(field.getKey(), row, leading));
              }
            });
  }

  private void row(String table, JsonNode object, Map<String, JsonNode> leading) {
    flat(object, "", row(table, leading));
    String place = object.path("place").textValue();
    object(object, place == null ? leading : with(leading, "corner", place));
  }

  private static Map<String, JsonNode> with(
      Map<String, JsonNode> leading, String column, String value) {
    Map<String, JsonNode> more = new LinkedHashMap<>(leading);
    more.put(column, TextNode.valueOf(value));
    return more;
  }

  private static void flat(JsonNode object, String prefix, Map<String, JsonNode> row) {
    object
        .fields()
        .forEachRemaining(
            field -> {
              String column = prefix + field.getKey();
              JsonNode value = field.getValue();
              if (value.has("U")) {
                row.put(column, value.path("value"));
                row.put(column + "U", value.path("U"));
              } else if (value.isObject() && !LEFT_OUT.contains(field.getKey())) {
                flat(value, column + ".", row);
              } else if (value.isArray() && !value.path(0).isObject()) {
                List<String> words = new ArrayList<>();
                value.forEach(word -> words.add(word.asText()));
                row.put(column, TextNode.valueOf(String.join("; ", words)));
              } else if (value.isValueNode()) {
                row.putIfAbsent(column, value);
              }
            });
  }
}
