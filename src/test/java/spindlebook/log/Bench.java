package spindlebook.log;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jdbi.v3.core.Jdbi;

/** A folder with a book in it, as the tests of this package handle it. */
final class Bench {
  static final Clock NOON = Clock.fixed(Instant.parse("2031-05-04T12:00:00Z"), ZoneOffset.UTC);

  final Path folder;
  final List<String> told = new ArrayList<>();

  Bench(Path folder) {
    this.folder = folder;
  }

  Book open() {
    told.clear();
    return Book.open(folder, NOON, told::add);
  }

  /** A copy with so many entries was put back, and whoever starts it says so. */
  Book openRestored(long entries) {
    told.clear();
    return Book.open(folder, NOON, entries, told::add);
  }

  /** The log alone, without lock and index, and without what is beside it. */
  LogFile openLog() {
    told.clear();
    return LogFile.open(folder, NOON.instant(), OnceHeld.NOTHING, entry -> {}, told::add);
  }

  Path log() {
    return folder.resolve(LogFile.NAME);
  }

  byte[] bytes() {
    return bytes(log());
  }

  static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException trouble) {
      throw new UncheckedIOException(trouble);
    }
  }

  List<String> lines() {
    return new String(bytes(), StandardCharsets.UTF_8).lines().toList();
  }

  void write(byte[] bytes) throws IOException {
    Files.write(log(), bytes);
  }

  List<Path> tornFiles() throws IOException {
    List<Path> torn = new ArrayList<>();
    try (var files = Files.newDirectoryStream(folder, "book.torn-*.jsonl")) {
      files.forEach(torn::add);
    }
    torn.sort(null);
    return torn;
  }

  static Draft draft(String key, String kind, ObjectNode body) {
    return new Draft(key, kind, 1, 0, "Sam", null, null, body);
  }

  static Draft note(String key) {
    return draft(key, "note", body().put("text", "note " + key));
  }

  static ObjectNode body() {
    return Json.MAPPER.createObjectNode();
  }

  static Draft car(String key) {
    return draft(key, "car", body().put("name", key));
  }

  static Draft corner(String key, String car) {
    return draft(key, "corner", body().put("car", car));
  }

  static Draft round(String key, String corner) {
    return draft(key, "round", body().put("corner", corner));
  }

  static Draft height(String key, String round) {
    return draft(key, "height", body().put("round", round));
  }

  static Draft reading(String key, String height) {
    return draft(key, "reading", body().put("height", height).put("value", 8.25));
  }

  static Draft correction(String key, String target, ObjectNode newBody) {
    ObjectNode body = body().put("target", target).put("reason", "slip");
    body.set("body", newBody);
    return draft(key, "correction", body);
  }

  /** Every row of every table but Flyway's, which notes when it ran. */
  static Map<String, List<String>> dump(Jdbi index) {
    return index.withHandle(
        handle -> {
          Map<String, List<String>> tables = new TreeMap<>();
          List<String> names =
              handle
                  .createQuery(
                      """
                      select table_name from information_schema.tables
                      where table_schema = 'PUBLIC' and table_name <> 'flyway_schema_history'
                      """)
                  .mapTo(String.class)
                  .list();
          for (String name : names) {
            tables.put(
                name,
                handle.createQuery("select * from \"" + name + "\"").mapToMap().stream()
                    .map(row -> new TreeMap<>(row).toString())
                    .sorted()
                    .toList());
          }
          return tables;
        });
  }
}
