package spindlebook.fold;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import spindlebook.log.Bodies;
import spindlebook.log.BookFile;

/** Small books written by hand, for tests. */
public final class HandBooks {
  private HandBooks() {}

  public static CarBook named(String name) {
    return read(folder().resolve(name + ".jsonl"));
  }

  /** Lines as they would stand in the file. */
  public static CarBook of(List<String> lines) {
    try {
      Path file = Files.createTempFile("book", ".jsonl");
      try {
        Files.write(file, lines);
        return read(file);
      } finally {
        Files.delete(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public static CarBook of(String... lines) {
    return of(List.of(lines));
  }

  static Path folder() {
    try {
      return Path.of(HandBooks.class.getResource("/books").toURI());
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  static List<String> names() {
    try (Stream<Path> files = Files.list(folder())) {
      return files
          .map(f -> f.getFileName().toString())
          .filter(f -> f.endsWith(".jsonl"))
          .map(f -> f.replace(".jsonl", ""))
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static CarBook read(Path file) {
    return CarBook.of(BookFile.readByHand(file).entries().stream().map(Bodies::noted).toList());
  }
}
