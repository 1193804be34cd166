package spindlebook;

import java.io.File;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import spindlebook.backup.BackupRefused;
import spindlebook.backup.Commands;
import spindlebook.device.DevicesRefused;
import spindlebook.figures.Figures;
import spindlebook.figures.Tables;
import spindlebook.linkage.CornerText;
import spindlebook.linkage.Linkage;
import spindlebook.linkage.LinkageRefused;
import spindlebook.linkage.Sheet;
import spindlebook.log.BookRefused;
import spindlebook.web.Listening;

/** The command line. */
@Command(
    name = "spindlebook",
    description = "The measuring book of a long-travel corner.",
    mixinStandardHelpOptions = true,
    version = "0.1.0")
public final class Main implements Callable<Integer> {
  private static final int REFUSED = 2;

  @Option(
      names = "--data",
      description = "Folder of the book (default: SPINDLEBOOK_DATA, else ./data).",
      defaultValue = "${env:SPINDLEBOOK_DATA:-data}",
      scope = CommandLine.ScopeType.INHERIT)
  Path data;

  @Option(
      names = "--port",
      description = "Port on this machine (default: SPINDLEBOOK_PORT, else 8321; 0: any free one).",
      defaultValue = "${env:SPINDLEBOOK_PORT:-8321}",
      scope = CommandLine.ScopeType.INHERIT)
  int port;

  @Option(
      names = "--listen",
      description =
          "lan: all of this machine's addresses; here: this machine only; or one IP address"
              + " (default: SPINDLEBOOK_LISTEN, else lan).",
      defaultValue = "${env:SPINDLEBOOK_LISTEN:-lan}",
      scope = CommandLine.ScopeType.INHERIT)
  String listen;

  @Option(
      names = "--name",
      description = "A host name that leads to this machine, such as garage.lan; may be repeated.",
      scope = CommandLine.ScopeType.INHERIT)
  List<String> names = List.of();

  @Option(
      names = "--public-address",
      description =
          "The https address of a proxy in front of it, such as https://book.example.org.",
      scope = CommandLine.ScopeType.INHERIT)
  String publicAddress;

  @Option(
      names = "--restored",
      paramLabel = "ENTRIES",
      description = "The book was put back from an older copy, and holds so many entries.",
      defaultValue = "-1",
      scope = CommandLine.ScopeType.INHERIT)
  long restored;

  @Option(
      names = "--second-place",
      paramLabel = "FOLDER",
      description =
          "Backups go there too: a folder on a stick or a NAS (default: SPINDLEBOOK_SECOND_PLACE,"
              + " else none).",
      defaultValue = "${env:SPINDLEBOOK_SECOND_PLACE}")
  Path secondPlace;

  public static void main(String[] args) {
    System.exit(run(args));
  }

  static int run(String... args) {
    return new CommandLine(new Main()).setExecutionExceptionHandler(Main::say).execute(args);
  }

  /** One clear sentence on the terminal, and an exit code that is not 0. */
  private static int say(Exception e, CommandLine commandLine, CommandLine.ParseResult parsed)
      throws Exception {
    if (e instanceof BookRefused
        || e instanceof DevicesRefused
        || e instanceof BackupRefused
        || e instanceof LinkageRefused
        || e instanceof WrongWord) {
      commandLine.getErr().println(e.getMessage());
      return REFUSED;
    }
    if (portTaken(e)) {
      commandLine
          .getErr()
          .println(
              "Something else listens on that port, or --listen names no address of this machine;"
                  + " choose another with --port.");
      return REFUSED;
    }
    throw e;
  }

  private static boolean portTaken(Throwable e) {
    for (Throwable cause = e; cause != null; cause = cause.getCause()) {
      if (cause instanceof java.net.BindException
          || cause instanceof io.javalin.util.JavalinBindException) {
        return true;
      }
    }
    return false;
  }

  @Override
  public Integer call() throws InterruptedException {
    App app =
        App.start(data, listening(), Clock.systemUTC(), restored, secondPlace, System.err::println);
    Runtime.getRuntime().addShutdownHook(new Thread(app::close, "close"));
    return serve(app, data, new CountDownLatch(1));
  }

  private Listening listening() {
    try {
      return Listening.of(listen, port, names, publicAddress);
    } catch (IllegalArgumentException e) {
      throw new WrongWord(e.getMessage());
    }
  }

  private static int serve(App app, Path folder, CountDownLatch end) throws InterruptedException {
    app.lookAhead();
    app.copying.byThemselves();
    // The square code's letters are not in every terminal's own encoding.
    PrintStream terminal =
        new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
    Greeting.print(terminal, folder, app.addresses(), app.code());
    end.await();
    return 0;
  }

  /** An option that says nothing that can be done. */
  private static final class WrongWord extends RuntimeException {
    private static final long serialVersionUID = 1L;

    WrongWord(String sentence) {
      super(sentence);
    }
  }

  @Command(
      description = "Serve a throw-away copy of the demo car; your own book is not touched.",
      mixinStandardHelpOptions = true)
  int demo() throws IOException, InterruptedException {
    Listening listening = listening();
    Path folder =
        Path.of(System.getProperty("java.io.tmpdir"), "spindlebook-demo" + UUID.randomUUID());
    CountDownLatch end = new CountDownLatch(1);
    CountDownLatch gone = new CountDownLatch(1);
    Runtime.getRuntime().addShutdownHook(new Thread(() -> endDemo(end, gone), "clear"));
    // Who writes in the folder also clears it: told to end at once, nothing comes after.
    try {
      DemoCar.play(folder, Clock.systemUTC(), System.err::println, () -> end.getCount() == 0);
      if (end.getCount() > 0) {
        try (App app = App.start(folder, listening, Clock.systemUTC(), System.err::println)) {
          return serve(app, folder, end);
        }
      }
      return 0;
    } finally {
      clear(folder);
      gone.countDown();
    }
  }

  private static void endDemo(CountDownLatch end, CountDownLatch gone) {
    end.countDown();
    try {
      gone.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static void clear(Path folder) throws IOException {
    if (Files.exists(folder)) {
      try (Stream<Path> files = Files.walk(folder)) {
        files.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(File::delete);
      }
    }
  }

  @Command(description = "Build the index anew from the book.", mixinStandardHelpOptions = true)
  int rebuild() {
    App.rebuild(data, restored, System.err::println);
    return 0;
  }

  @Command(
      description = "Every finding of a book as JSON; a book written by hand will do.",
      mixinStandardHelpOptions = true)
  int figures(@Parameters(paramLabel = "BOOK.jsonl", description = "The book's file.") Path file) {
    System.out.println(Figures.of(file, System.err::println));
    return 0;
  }

  @Command(
      description = "Every finding of a book as tables for a spreadsheet, a file each.",
      mixinStandardHelpOptions = true)
  int csv(
      @Parameters(paramLabel = "BOOK.jsonl", description = "The book's file.") Path file,
      @Parameters(paramLabel = "FOLDER", description = "Where the tables go.") Path folder) {
    Tables.write(file, folder, System.err::println);
    return 0;
  }

  @Command(
      description = "A corner's linkage over travel and rack, as a table for a spreadsheet.",
      mixinStandardHelpOptions = true)
  int linkage(
      @Parameters(
              paramLabel = "CORNER.csv",
              description = "Its joints, a line each (docs/format-linkage.md).")
          Path file) {
    try {
      CornerText corner =
          CornerText.read(new String(Files.readAllBytes(file), StandardCharsets.UTF_8));
      Sheet sheet = Sheet.of(new Linkage(corner.joints()), corner.heightsMm(), corner.racksMm());
      new PrintStream(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8)
          .print(sheet.csv());
      return 0;
    } catch (IOException e) {
      throw new WrongWord(file + " cannot be read.");
    }
  }

  @Command(
      description = "Copy the book and its photos, and check the copy; also while it is open.",
      mixinStandardHelpOptions = true)
  int backup(
      @Parameters(
              paramLabel = "PLACE",
              arity = "0..1",
              description =
                  "A folder on a stick or a NAS; made if it is missing (default: the data"
                      + " folder's own backups).")
          Path place) {
    return Commands.backup(data, place, Clock.systemUTC(), System.out::println);
  }

  @Command(
      description = "Put a book and its photos back; what they replace is kept beside.",
      mixinStandardHelpOptions = true)
  int restore(
      @Parameters(
              paramLabel = "FROM",
              description = "A copy, a backup place (its newest good copy), or a downloaded zip.")
          Path from,
      @Option(names = "--dry-run", description = "Only say what would happen.") boolean dryRun) {
    return Commands.restore(data, from, dryRun, Clock.systemUTC(), System.out::println);
  }

  @Command(
      name = "import",
      description = "Take another book, or one car of it, into this one; twice is harmless.",
      mixinStandardHelpOptions = true)
  int bringIn(
      @Parameters(paramLabel = "FROM", description = "A copy, a place, a folder or a zip.")
          Path from,
      @Option(names = "--car", description = "Name or key of the one car to take.") String car) {
    return Commands.bringIn(data, from, car, Clock.systemUTC(), System.out::println);
  }

  @Command(
      description = "Look a book, its photos and its index through; exit code 0 if all is good.",
      mixinStandardHelpOptions = true)
  int verify(
      @Parameters(paramLabel = "BOOK", description = "The book's file or its folder.") Path book) {
    return Commands.verify(book, System.out::println);
  }
}
