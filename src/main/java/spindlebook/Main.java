package spindlebook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import spindlebook.log.BookRefused;

/** The command line. */
@Command(
    name = "spindlebook",
    description = "The measuring book of a long-travel corner.",
    mixinStandardHelpOptions = true,
    version = "0.1.0",
    subcommands = {Main.Demo.class, Main.Rebuild.class, Main.Figures.class})
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

  public static void main(String[] args) {
    System.exit(run(args));
  }

  static int run(String... args) {
    return new CommandLine(new Main()).setExecutionExceptionHandler(Main::say).execute(args);
  }

  /** One clear sentence on the terminal, and an exit code that is not 0. */
  private static int say(Exception e, CommandLine commandLine, CommandLine.ParseResult parsed)
      throws Exception {
    if (e instanceof BookRefused) {
      commandLine.getErr().println(e.getMessage());
      return REFUSED;
    }
    if (portTaken(e)) {
      commandLine
          .getErr()
          .println(
              "Something else on this machine listens on that port; choose another with --port.");
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
    return serve(data, port);
  }

  private static int serve(Path folder, int port) throws InterruptedException {
    App app = App.start(folder, port, Clock.systemUTC(), System.err::println);
    Runtime.getRuntime().addShutdownHook(new Thread(app::close, "close"));
    System.err.println(
        "The book in " + folder + " is open at http://127.0.0.1:" + app.port() + "/");
    new CountDownLatch(1).await();
    return 0;
  }

  @Command(
      name = "demo",
      description = "Serve a throw-away copy of the demo car; your own book is not touched.",
      mixinStandardHelpOptions = true)
  static final class Demo implements Callable<Integer> {
    @CommandLine.ParentCommand Main main;

    @Override
    public Integer call() throws IOException, InterruptedException {
      Path folder = Files.createTempDirectory("spindlebook-demo");
      DemoCar.play(folder, Clock.systemUTC(), System.err::println);
      return serve(folder, main.port);
    }
  }

  @Command(
      name = "rebuild",
      description = "Build the index anew from the book.",
      mixinStandardHelpOptions = true)
  static final class Rebuild implements Callable<Integer> {
    @CommandLine.ParentCommand Main main;

    @Override
    public Integer call() {
      App.rebuild(main.data, System.err::println);
      return 0;
    }
  }

  @Command(
      name = "figures",
      description = "Every finding of a book as JSON; a book written by hand will do.",
      mixinStandardHelpOptions = true)
  static final class Figures implements Callable<Integer> {
    @Parameters(paramLabel = "BOOK.jsonl", description = "The book's file.")
    Path file;

    @Override
    public Integer call() {
      System.out.println(spindlebook.figures.Figures.of(file, System.err::println));
      return 0;
    }
  }
}
