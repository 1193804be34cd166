package spindlebook;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import org.eclipse.jetty.server.handler.GracefulHandler;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import spindlebook.backup.BackupRefused;
import spindlebook.backup.Backups;
import spindlebook.device.Code;
import spindlebook.device.Codes;
import spindlebook.device.Devices;
import spindlebook.device.DevicesRefused;
import spindlebook.device.Door;
import spindlebook.log.Book;
import spindlebook.log.BookRefused;
import spindlebook.log.Histories;
import spindlebook.measured.AlignedCheck;
import spindlebook.page.Html;
import spindlebook.page.ProblemPage;
import spindlebook.web.Hosts;
import spindlebook.web.KeptPages;
import spindlebook.web.Listening;
import spindlebook.web.Manners;

/** The program with its book open; {@link Routes} wires its pages. */
public final class App implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(App.class);

  /** How long, when it is stopped, whoever is at work is waited for. */
  private static final int PATIENCE_SECONDS = 10;

  private final GracefulHandler inFlight = new GracefulHandler();
  final Book bookFile;
  final Histories histories;
  final Devices paired;
  final Codes codes;
  final Hosts hosts;
  final Path dataDir;
  final Clock clock;
  final Door door;
  final KeptPages kept;
  final Backups copying;
  private final Javalin server;

  /** Opens the book in a folder and serves it on loopback; port 0 takes any free one. */
  public static App start(Path dataDir, int port, Clock clock, Consumer<String> tell) {
    return start(dataDir, Listening.here(port), clock, tell);
  }

  /**
   * Opens the book in a folder and serves it.
   *
   * @throws BookRefused when the book cannot be opened
   * @throws DevicesRefused when the list of paired devices is damaged
   */
  public static App start(Path dataDir, Listening listening, Clock clock, Consumer<String> tell) {
    return start(dataDir, listening, clock, -1, null, tell);
  }

  /**
   * Opens a book that may have been put back from an older copy, and serves it.
   *
   * @param restored how many entries such a copy holds; negative if none was put back
   * @param secondPlace where backups go besides the folder's own; null for nowhere
   */
  public static App start(
      Path dataDir,
      Listening listening,
      Clock clock,
      long restored,
      Path secondPlace,
      Consumer<String> tell) {
    Devices devices = new Devices(dataDir, clock);
    Book book = Book.open(dataDir, clock, restored, tell);
    try {
      Backups copying = new Backups(book, dataDir, secondPlace, clock, tell);
      return new App(book, dataDir, copying, devices, listening, clock);
    } catch (RuntimeException e) {
      book.close();
      throw e;
    }
  }

  /** Builds the index anew; the book itself is only read. */
  public static void rebuild(Path dataDir, long restored, Consumer<String> tell) {
    Book.rebuild(dataDir, Clock.systemUTC(), restored, tell);
  }

  /** Works out meanwhile the car that was written of last, so that its first page need not wait. */
  void lookAhead() {
    Thread ahead =
        new Thread(
            () -> {
              try {
                bookFile.entries(bookFile.lastN()).stream()
                    .flatMap(last -> histories.locate(last.key()).stream())
                    .filter(last -> last.car() != null)
                    .forEach(last -> AlignedCheck.of(histories.of(last.car())));
              } catch (RuntimeException asked) {
                LOG.debug("the last car is worked out when its page is asked for", asked);
              }
            },
            "look ahead");
    ahead.setDaemon(true);
    ahead.start();
  }

  private App(
      Book bookFile,
      Path dataDir,
      Backups copying,
      Devices paired,
      Listening listening,
      Clock clock) {
    this.bookFile = bookFile;
    this.dataDir = dataDir;
    this.clock = clock;
    this.copying = copying;
    this.histories = new Histories(bookFile);
    this.kept =
        new KeptPages(() -> List.of(histories.taken(), bookFile.littleRoom(), copying.warning()));
    this.paired = paired;
    this.codes = new Codes(clock);
    this.hosts = new Hosts(listening);
    this.door = new Door(paired, clock);
    bookFile.sentFrom(door::sender);
    this.server = Javalin.create(config -> configure(config, listening)).start();
    hosts.port(server.port());
  }

  private void configure(JavalinConfig config, Listening listening) {
    Manners.of(config, listening, hosts, inFlight);
    config.routes.before(door::before);
    config.routes.before(Manners::onlyForms);
    Routes.add(config.routes, this);
    config.routes.exception(BookRefused.class, App::refused);
    config.routes.exception(DevicesRefused.class, App::notWritten);
    config.routes.exception(BackupRefused.class, App::notWritten);
    Manners.answers(config.routes);
  }

  private static void refused(BookRefused refused, Context ctx) {
    int status =
        switch (refused.why()) {
          case ENTRY -> 422;
          case LOOKS -> 403;
          case BOOK, DISK -> 503;
        };
    String accept = ctx.header("Accept");
    if (accept != null && accept.contains("application/json")) {
      ctx.status(status).json(Map.of("sentence", refused.getMessage()));
      return;
    }
    String heading = ctx.method().equals(HandlerType.GET) ? "Not now" : "Not in the book";
    Html.problem(ctx, new ProblemPage(status, heading, refused.getMessage()));
  }

  private static void notWritten(RuntimeException refused, Context ctx) {
    Html.problem(ctx, new ProblemPage(503, "Not written", refused.getMessage()));
  }

  /** For a watchdog on this machine: really writes, and tells nothing of the book. */
  void health(Context ctx) {
    try {
      bookFile.check();
      ctx.contentType("text/plain").result("ok\n");
    } catch (RuntimeException trouble) {
      LOG.warn(
          "{}", trouble instanceof BookRefused ? trouble.getMessage() : Manners.where(trouble));
      ctx.status(503).contentType("text/plain").result("not ok\n");
    }
  }

  public int port() {
    return server.port();
  }

  /** The addresses to open the book at, the best for another device first. */
  List<String> addresses() {
    return hosts.shown();
  }

  /** A fresh code for a device that will keep the book. */
  Code code() {
    return codes.fresh(true);
  }

  /** Answers who is at work, takes nothing new meanwhile, then closes the book. */
  @Override
  public void close() {
    try {
      inFlight.shutdown().get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException | ExecutionException | TimeoutException goesOn) {
      LOG.debug("somebody was still at work", goesOn);
    }
    server.stop();
    try (bookFile;
        copying) {
      paired.close();
    }
  }
}
