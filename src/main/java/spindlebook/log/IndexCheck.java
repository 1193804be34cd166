package spindlebook.log;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;

/** Whether the index beside a book is what that book gives; both are only read. */
public final class IndexCheck {
  private IndexCheck() {}

  /** Whether there is one that was closed in order; any other is built anew at the next start. */
  public static boolean closed(Path folder) throws IOException {
    return Files.exists(folder.resolve(Index.FILE)) && CleanMark.read(folder).isPresent();
  }

  /**
   * What is wrong with an index that was closed in order, in a few words; null when every row of
   * every table is the one that an index built anew from a copy of the book has.
   */
  public static String wrong(Path folder) throws IOException {
    Optional<CleanMark> mark = CleanMark.read(folder);
    Path file = folder.resolve(Index.FILE);
    if (mark.isEmpty() || !mark.get().sha256().equals(Sha256.hex(file))) {
      return "its file was changed since it was closed";
    }
    Path copies = Files.createTempDirectory("index-check");
    try {
      Path anew = Files.createDirectory(copies.resolve("anew"));
      Files.copy(folder.resolve(LogFile.NAME), anew.resolve(LogFile.NAME));
      Book.open(anew, Clock.systemUTC(), told -> {}).close();
      Files.copy(file, copies.resolve(Index.FILE));
      return rows(copies).equals(rows(anew)) ? null : "a row in it is not what the book says";
    } catch (JdbiException damaged) {
      return "its database cannot be read";
    } finally {
      try (Stream<Path> all = Files.walk(copies)) {
        for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(each);
        }
      }
    }
  }

  /** All that stands in the index in a folder, but when its tables were made. */
  private static List<String> rows(Path folder) {
    Jdbi index =
        Jdbi.create(
            "jdbc:h2:" + folder.toAbsolutePath().resolve("index") + ";ACCESS_MODE_DATA=r",
            "sa",
            "");
    return index.withHandle(
        handle -> {
          List<String> names =
              handle
                  .createQuery(
                      """
                      select table_name from information_schema.tables
                      where table_schema = 'PUBLIC' and table_name <> 'flyway_schema_history'
                      order by table_name
                      """)
                  .mapTo(String.class)
                  .list();
          List<String> rows = new ArrayList<>();
          for (String name : names) {
            handle.createQuery("select * from \"" + name + "\"").mapToMap().stream()
                .map(row -> Sha256.hex((name + row).getBytes(StandardCharsets.UTF_8)))
                .sorted()
                .forEach(rows::add);
          }
          return rows;
        });
  }
}
