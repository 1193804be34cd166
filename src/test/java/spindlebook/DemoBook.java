package spindlebook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.stream.Stream;

/** The demo's book, played once and copied, index and all, for each test that reads or adds. */
final class DemoBook {
  private static Path played;

  private DemoBook() {}

  /** Into a folder that is empty or not there yet. */
  static synchronized void copyTo(Path folder) {
    try {
      if (played == null) {
        Path once = Files.createTempDirectory("demo");
        Runtime.getRuntime().addShutdownHook(new Thread(() -> remove(once), "demo-gone"));
        DemoCar.play(once, Clock.systemUTC(), line -> {}, () -> false);
        played = once;
      }
      copy(played, folder);
    } catch (IOException trouble) {
      throw new UncheckedIOException(trouble);
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    Files.createDirectories(to);
    for (Path one : inside(from)) {
      Path there = to.resolve(from.relativize(one));
      if (Files.isDirectory(one)) {
        Files.createDirectories(there);
      } else {
        Files.copy(one, there);
      }
    }
  }

  private static void remove(Path folder) {
    try {
      List<Path> all = inside(folder);
      for (int i = all.size() - 1; i >= 0; i--) {
        Files.delete(all.get(i));
      }
      Files.delete(folder);
    } catch (IOException trouble) {
      throw new UncheckedIOException(trouble);
    }
  }

  /** A folder before what it holds. */
  private static List<Path> inside(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(p -> !p.equals(folder)).sorted().toList();
    }
  }
}
