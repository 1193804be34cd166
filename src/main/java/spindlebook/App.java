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
import spindlebook.align.AlignPages;
import spindlebook.align.AlignmentPages;
import spindlebook.backup.BackupPages;
import spindlebook.backup.BackupRefused;
import spindlebook.backup.Backups;
import spindlebook.book.BookPages;
import spindlebook.book.BookStore;
import spindlebook.book.EntryPages;
import spindlebook.car.CarPages;
import spindlebook.car.CarStore;
import spindlebook.card.CornerPages;
import spindlebook.card.IntoBook;
import spindlebook.compare.ComparePages;
import spindlebook.compare.PutBackPages;
import spindlebook.device.Code;
import spindlebook.device.Codes;
import spindlebook.device.DevicePages;
import spindlebook.device.Devices;
import spindlebook.device.DevicesRefused;
import spindlebook.device.Door;
import spindlebook.device.PairPages;
import spindlebook.drivecheck.DriveCheckPages;
import spindlebook.drivecheck.SignOffPages;
import spindlebook.drivecheck.SignOffStore;
import spindlebook.fastener.FastenerPages;
import spindlebook.figures.TablePages;
import spindlebook.life.LifePages;
import spindlebook.limits.LimitsPages;
import spindlebook.log.Book;
import spindlebook.log.BookRefused;
import spindlebook.log.Histories;
import spindlebook.measured.AlignedCheck;
import spindlebook.page.Html;
import spindlebook.page.ProblemPage;
import spindlebook.photo.PhotoPages;
import spindlebook.photo.PhotoStore;
import spindlebook.recheck.ReCheckPages;
import spindlebook.round.CorrectionPages;
import spindlebook.round.GuidePages;
import spindlebook.round.HeightPages;
import spindlebook.round.PaperPages;
import spindlebook.round.RoundPages;
import spindlebook.round.RoundStore;
import spindlebook.round.SheetPages;
import spindlebook.setting.AdjustmentPages;
import spindlebook.setting.AdjustmentStore;
import spindlebook.setting.HappeningPages;
import spindlebook.telltale.TelltalePages;
import spindlebook.todo.ToDoPages;
import spindlebook.trial.TrialPages;
import spindlebook.use.UsePages;
import spindlebook.watch.AdjusterPages;
import spindlebook.watch.CopyPages;
import spindlebook.watch.CornerList;
import spindlebook.watch.GivenPages;
import spindlebook.watch.ToolPages;
import spindlebook.watch.WatchPointPages;
import spindlebook.web.Hosts;
import spindlebook.web.KeptPages;
import spindlebook.web.Listening;
import spindlebook.web.Manners;

/** The program with its book open: the one place where things are wired. */
public final class App implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(App.class);

  /** How long, when it is stopped, whoever is at work is waited for. */
  private static final int PATIENCE_SECONDS = 10;

  private final GracefulHandler inFlight = new GracefulHandler();
  final Book bookFile;
  private final Histories histories;
  private final Devices paired;
  private final Codes codes;
  private final Hosts hosts;
  final Door door;
  final KeptPages kept;
  final Backups copying;
  private final Javalin server;

  final PairPages pairing;
  final DevicePages devices;
  final BackupPages backups;
  final CarPages cars;
  final CornerPages corners;
  final LifePages life;
  final LimitsPages limits;
  final AlignPages align;
  final AlignmentPages alignment;
  final AdjustmentPages adjustments;
  final HappeningPages happenings;
  final TrialPages trials;
  final RoundPages rounds;
  final GuidePages guide;
  final HeightPages heights;
  final SheetPages sheets;
  final PaperPages papers;
  final CorrectionPages corrections;
  final WatchPointPages watchPoints;
  final CopyPages copies;
  final GivenPages given;
  final AdjusterPages adjusters;
  final ToolPages tools;
  final UsePages uses;
  final ToDoPages toDos;
  final FastenerPages fasteners;
  final TelltalePages telltales;
  final ReCheckPages reChecks;
  final DriveCheckPages driveChecks;
  final SignOffPages signOffs;
  final ComparePages comparing;
  final PutBackPages puttingBack;
  final PhotoPages photos;
  final BookPages book;
  final TablePages tables;
  final EntryPages entries;

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
    this.copying = copying;
    this.backups = new BackupPages(copying, dataDir, clock);
    this.histories = new Histories(bookFile);
    this.kept =
        new KeptPages(() -> List.of(histories.taken(), bookFile.littleRoom(), copying.warning()));
    AdjustmentStore adjustmentStore = new AdjustmentStore(bookFile, histories);
    RoundStore roundStore = new RoundStore(bookFile, histories);
    BookStore bookStore = new BookStore(bookFile);
    CarStore carStore = new CarStore(bookFile, histories);
    IntoBook intoBook = new IntoBook(bookFile);
    this.cars = new CarPages(carStore, histories, intoBook, copying::warning);
    this.corners = new CornerPages(histories);
    this.life = new LifePages(histories);
    this.limits = new LimitsPages(histories);
    this.align = new AlignPages(histories);
    this.alignment = new AlignmentPages(histories, intoBook);
    this.adjustments = new AdjustmentPages(histories, adjustmentStore);
    this.happenings = new HappeningPages(histories, intoBook);
    this.trials = new TrialPages(histories);
    this.rounds = new RoundPages(histories, roundStore);
    this.guide = new GuidePages(histories, roundStore);
    this.heights = new HeightPages(histories, roundStore);
    this.sheets = new SheetPages(histories, roundStore);
    this.papers = new PaperPages(histories);
    this.corrections = new CorrectionPages(histories, roundStore);
    this.watchPoints = new WatchPointPages(histories, intoBook);
    this.copies = new CopyPages(histories, new CornerList(bookFile), intoBook);
    this.given = new GivenPages(histories, intoBook);
    this.adjusters = new AdjusterPages(histories, intoBook);
    this.tools = new ToolPages(histories, intoBook);
    this.uses = new UsePages(histories, intoBook);
    this.toDos = new ToDoPages(histories, intoBook);
    this.fasteners = new FastenerPages(histories, intoBook);
    this.telltales = new TelltalePages(histories, intoBook);
    this.reChecks = new ReCheckPages(histories);
    this.driveChecks = new DriveCheckPages(histories);
    this.comparing = new ComparePages(histories, carStore);
    this.puttingBack = new PutBackPages(histories);
    this.signOffs = new SignOffPages(histories, new SignOffStore(bookFile));
    this.photos = new PhotoPages(histories, new PhotoStore(bookFile, dataDir));
    this.book = new BookPages(histories, bookStore);
    this.tables = new TablePages(histories);
    this.entries = new EntryPages(histories, bookStore, intoBook);
    this.paired = paired;
    this.codes = new Codes(clock);
    this.hosts = new Hosts(listening);
    this.door = new Door(paired, clock);
    bookFile.sentFrom(door::sender);
    this.pairing = new PairPages(paired, codes, hosts, clock);
    this.devices = new DevicePages(paired, codes, hosts);
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
