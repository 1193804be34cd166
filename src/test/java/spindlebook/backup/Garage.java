package spindlebook.backup;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import spindlebook.log.Book;
import spindlebook.log.BookFile;
import spindlebook.log.Draft;
import spindlebook.log.Json;
import spindlebook.log.Sha256;

/** A folder with a book and photos in it, written by the real writer. */
final class Garage {
  static final Instant NOON = Instant.parse("2031-05-04T12:00:00Z");
  static final Clock CLOCK = Clock.fixed(NOON, ZoneOffset.UTC);

  final Path data;
  final List<String> told = new ArrayList<>();

  Garage(Path data) {
    this.data = data;
  }

  Book open() {
    told.clear();
    return Book.open(data, CLOCK, told::add);
  }

  /** Opens it, adds entries and closes it. */
  Garage with(String... keys) {
    try (Book book = open()) {
      for (String key : keys) {
        book.append(note(key));
      }
    }
    return this;
  }

  static Draft note(String key) {
    return draft(key, "note", Json.MAPPER.createObjectNode().put("text", "note " + key));
  }

  private static Draft draft(String key, String kind, ObjectNode body) {
    return new Draft(key, kind, 1, 0, "Sam", null, null, body);
  }

  /** A photo on the disk with its small one, and the entry that names it. */
  String photo(Book book, String picture) throws IOException {
    return photo(book, picture, Json.MAPPER.createObjectNode());
  }

  /** The same, with more in the entry's body. */
  String photo(Book book, String picture, ObjectNode body) throws IOException {
    byte[] bytes = ("a picture of " + picture).getBytes(java.nio.charset.StandardCharsets.UTF_8);
    String hash = Sha256.hex(bytes);
    Files.createDirectories(photos());
    Files.write(photos().resolve(hash + ".jpg"), bytes);
    Files.write(photos().resolve(hash + ".small.jpg"), new byte[] {1, 2, 3});
    book.append(draft(picture, "photo", body.put("file", hash)));
    return hash;
  }

  Path photos() {
    return data.resolve("photos");
  }

  Path log() {
    return data.resolve("book.jsonl");
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

  Backup backup(Place place) {
    return backup(place, NOON);
  }

  Backup backup(Place place, Instant at) {
    return Backup.of(data, BookFile.extent(data), place, at, step -> {});
  }

  /** Every file below a folder, by its path from there, with what it holds. */
  static Map<String, String> files(Path below) {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(below)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        files.put(below.relativize(file).toString(), Sha256.hex(file));
      }
      return files;
    } catch (IOException trouble) {
      throw new UncheckedIOException(trouble);
    }
  }

  /** The same without what a book that is open writes when it likes: its index and its end. */
  static Map<String, String> filesBesideAnOpenBook(Path below) {
    Map<String, String> files = files(below);
    files.keySet().removeIf(file -> file.matches("data/(index|generation).*"));
    return files;
  }
}
