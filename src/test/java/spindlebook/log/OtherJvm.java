package spindlebook.log;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Random;

/** What the tests start as a second process. */
final class OtherJvm {
  private OtherJvm() {}

  static Process start(Path errors, String... arguments) throws IOException {
    return start(List.of(), errors, arguments);
  }

  static Process start(List<String> before, Path errors, String... arguments) throws IOException {
    List<String> command = new java.util.ArrayList<>(before);
    command.addAll(
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-Xmx256m",
            "-cp",
            System.getProperty("java.class.path"),
            OtherJvm.class.getName()));
    command.addAll(List.of(arguments));
    return new ProcessBuilder(command).redirectError(errors.toFile()).start();
  }

  /**
   * {@code hold <folder>} opens a book and waits; {@code write <folder> <seed>} writes for ever.
   */
  public static void main(String[] arguments) throws Exception {
    Path folder = Path.of(arguments[1]);
    Book book;
    try {
      book = Book.open(folder, Clock.systemUTC(), System.err::println);
    } catch (BookRefused refused) {
      System.out.println("refused " + refused.getMessage());
      System.exit(3);
      return;
    }
    System.out.println("open");
    if ("write".equals(arguments[0])) {
      for (int i = 0; i < 8; i++) {
        String name = arguments[2] + "-" + i;
        new Thread(() -> write(book, name)).start();
      }
    } else {
      System.in.read();
      book.close();
    }
  }

  private static void write(Book book, String name) {
    Random random = new Random(name.hashCode());
    for (int i = 0; true; i++) {
      String key = name + "-" + i;
      book.append(draft(key, random.nextInt(3000)));
      // One write call a line, so that a kill cannot cut two lines into one.
      synchronized (System.out) {
        System.out.println(key);
        System.out.flush();
      }
    }
  }

  /** The body repeats its key, so that the parent can tell whether it is whole. */
  static Draft draft(String key, int length) {
    return Bench.draft(
        key,
        "note",
        Bench.body().put("text", key).put("length", length).put("fill", "x".repeat(length)));
  }
}
