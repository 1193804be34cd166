package spindlebook;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Handler;
import spindlebook.backup.BackupPages;
import spindlebook.book.BookPages;
import spindlebook.book.BookStore;
import spindlebook.book.EntryPages;
import spindlebook.car.CarPages;
import spindlebook.car.CarStore;
import spindlebook.card.IntoBook;
import spindlebook.charts.CurvePages;
import spindlebook.compare.ComparePages;
import spindlebook.compare.PutBackPages;
import spindlebook.corner.CornerPages;
import spindlebook.device.DevicePages;
import spindlebook.device.Door;
import spindlebook.device.PairPages;
import spindlebook.drivecheck.DriveCheckPages;
import spindlebook.drivecheck.SignOffPages;
import spindlebook.drivecheck.SignOffStore;
import spindlebook.fastener.FastenerPages;
import spindlebook.figures.TablePages;
import spindlebook.gauge.AlignmentPages;
import spindlebook.geometry.LinkagePages;
import spindlebook.life.LifePages;
import spindlebook.limits.LimitsPages;
import spindlebook.log.Book;
import spindlebook.log.Histories;
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
import spindlebook.sums.SumPages;
import spindlebook.suspension.PartPages;
import spindlebook.suspension.SpringPages;
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
import spindlebook.web.StaticFiles;

/** Every address of the program, in one table, and the pages that answer there. */
final class Routes {
  private final RoutesConfig r;
  private final App app;
  private final Door door;

  private Routes(RoutesConfig r, App app) {
    this.r = r;
    this.app = app;
    this.door = app.door;
  }

  static void add(RoutesConfig r, App app) {
    new Routes(r, app).add();
  }

  /** Shown, and sent to the same address. */
  private void form(String address, Handler both) {
    r.get(address, both);
    r.post(address, both);
  }

  /** Shown at {@code …/new}, and sent to where the others are. */
  private void fresh(String others, Handler both) {
    r.get(others + "/new", both);
    r.post(others, both);
  }

  /** A page of the book, kept as it was written. */
  private void page(String address, Handler page) {
    r.get(address, app.kept.page(page));
  }

  /** One that may take its time. */
  private void slow(String address, Handler page) {
    page(address, door.oneAtATime(page));
  }

  private void add() {
    Book file = app.bookFile;
    Histories histories = app.histories;
    AdjustmentStore adjustmentStore = new AdjustmentStore(file, histories);
    RoundStore roundStore = new RoundStore(file, histories);
    BookStore bookStore = new BookStore(file);
    CarStore carStore = new CarStore(file, histories);
    IntoBook intoBook = new IntoBook(file);
    r.get("/static/<file>", StaticFiles::serve);
    r.get("/healthz", app::health);
    PairPages pairing = new PairPages(app.paired, app.codes, app.hosts, app.clock);
    form("/pair", pairing::ask);
    form("/pair/{code}", pairing::pair);
    DevicePages devices = new DevicePages(app.paired, app.codes, app.hosts);
    r.get("/devices", devices::list);
    r.get("/devices/new-link", devices::newLink);
    r.post("/devices/new-link", devices::makeLink);
    form("/devices/{device}", devices::device);
    r.post("/devices/{device}/revoke", devices::revoke);
    BackupPages backups = new BackupPages(app.copying, app.dataDir, app.clock);
    r.get("/backups", backups::list);
    r.post("/backups", backups::now);
    r.get("/backups/book.zip", backups::download);
    CarPages cars = new CarPages(carStore, histories, intoBook, app.copying::warning);
    r.get("/", cars::home);
    r.get("/cars", cars::list);
    fresh("/cars", cars::create);
    page("/cars/{car}", cars::car);
    r.get("/cars/{car}/more", cars::more);
    form("/cars/{car}/details", cars::details);
    fresh("/cars/{car}/corners", cars::addCorners);
    AdjustmentPages adjustments = new AdjustmentPages(histories, adjustmentStore);
    page("/cars/{car}/settings", adjustments::ofCar);
    HappeningPages happenings = new HappeningPages(histories, intoBook);
    fresh("/cars/{car}/happenings", happenings::happened);
    ToolPages tools = new ToolPages(histories, intoBook);
    r.get("/cars/{car}/tools", tools::list);
    form("/cars/{car}/tools/{tool}", tools::tool);
    r.post("/cars/{car}/tools/{tool}/retire", tools::retire);
    BookPages book = new BookPages(histories, bookStore);
    page("/cars/{car}/book", book::book);
    TablePages tables = new TablePages(histories);
    r.get("/cars/{car}/tables", door.oneAtATime(tables::list));
    r.get("/cars/{car}/tables/{table}", door.oneAtATime(tables::table));
    CornerPages corners = new CornerPages(histories);
    page("/corners/{corner}", corners::corner);
    page("/corners/{corner}/gaps", corners::gaps);
    LifePages life = new LifePages(histories);
    slow("/corners/{corner}/life", life::life);
    LimitsPages limits = new LimitsPages(histories);
    page("/corners/{corner}/limits", limits::limits);
    CurvePages curves = new CurvePages(histories);
    slow("/corners/{corner}/curves", curves::curves);
    page("/corners/{corner}/bump-steer", curves::bumpSteer);
    SumPages sums = new SumPages(histories);
    page("/corners/{corner}/rod-ends", sums::rodEnds);
    SpringPages springs = new SpringPages(histories, intoBook);
    page("/corners/{corner}/spring", springs::springs);
    form("/corners/{corner}/spring/rate", springs::spring);
    form("/corners/{corner}/spring/weight", springs::weight);
    form("/corners/{corner}/spring/stops/{stop}", springs::stop);
    page("/corners/{corner}/spring/try", springs::tried);
    PartPages parts = new PartPages(histories, intoBook);
    page("/cars/{car}/parts", parts::list);
    fresh("/cars/{car}/parts", parts::fit);
    form("/cars/{car}/parts/{part}", parts::part);
    AlignmentPages alignment = new AlignmentPages(histories, intoBook);
    page("/corners/{corner}/alignment", alignment::figures);
    fresh("/corners/{corner}/alignment", alignment::measure);
    form("/corners/{corner}/alignment/targets", alignment::targets);
    form("/alignments/{alignment}/correct", alignment::correct);
    page("/corners/{corner}/wheel", sums::wheel);
    LinkagePages linkage = new LinkagePages(histories, intoBook);
    page("/corners/{corner}/linkage", linkage::linkage);
    slow("/corners/{corner}/linkage/agree", linkage::agree);
    slow("/corners/{corner}/linkage/moves", linkage::moves);
    slow("/corners/{corner}/linkage/try", linkage::tried);
    r.get("/corners/{corner}/linkage/poses", door.oneAtATime(linkage::poses));
    r.get("/corners/{corner}/linkage/table", door.oneAtATime(linkage::table));
    r.get("/corners/{corner}/linkage/joints", linkage::joints);
    form("/corners/{corner}/linkage/file", linkage::file);
    r.post("/corners/{corner}/linkage/mirror", linkage::mirror);
    form("/corners/{corner}/linkage/{joint}", linkage::joint);
    GivenPages given = new GivenPages(histories, intoBook);
    form("/corners/{corner}/given", given::given);
    WatchPointPages watchPoints = new WatchPointPages(histories, intoBook);
    page("/corners/{corner}/watch-points", watchPoints::list);
    fresh("/corners/{corner}/watch-points", watchPoints::create);
    CopyPages copies = new CopyPages(histories, new CornerList(file), intoBook);
    form("/corners/{corner}/watch-points/copy", copies::copy);
    form("/corners/{corner}/watch-points/{point}", watchPoints::point);
    r.post("/corners/{corner}/watch-points/{point}/retire", watchPoints::retire);
    AdjusterPages adjusters = new AdjusterPages(histories, intoBook);
    fresh("/corners/{corner}/adjusters", adjusters::create);
    form("/corners/{corner}/adjusters/{adjuster}", adjusters::adjuster);
    r.post("/corners/{corner}/adjusters/{adjuster}/retire", adjusters::retire);
    page("/corners/{corner}/adjustments", adjustments::ofCorner);
    r.get("/corners/{corner}/adjustments/{adjuster}", adjustments::adjuster);
    r.post("/corners/{corner}/adjustments/{adjuster}", adjustments::adjust);
    r.post("/corners/{corner}/adjustments/{adjuster}/would-move", adjustments::wouldMove);
    TrialPages trials = new TrialPages(histories);
    slow("/corners/{corner}/trial", trials::trial);
    RoundPages rounds = new RoundPages(histories, roundStore);
    page("/corners/{corner}/rounds", rounds::ofCorner);
    fresh("/corners/{corner}/rounds", rounds::start);
    PaperPages papers = new PaperPages(histories);
    r.get("/corners/{corner}/paper", papers::ofCorner);
    page("/rounds/{round}", rounds::round);
    GuidePages guide = new GuidePages(histories, roundStore);
    r.get("/waiting", guide::waiting);
    r.get("/rounds/{round}/guide", guide::guide);
    r.post("/rounds/{round}/guide", guide::keep);
    r.post("/rounds/{round}/sent", guide::sent);
    r.get("/rounds/{round}/news", guide::news);
    r.post("/rounds/{round}/other-side", rounds::otherSide);
    r.post("/rounds/{round}/gap-tool", rounds::gapTool);
    r.get("/rounds/{round}/paper", papers::ofRound);
    SheetPages sheets = new SheetPages(histories, roundStore);
    r.get("/rounds/{round}/sheet", sheets::sheet);
    r.post("/rounds/{round}/sheet", sheets::read);
    HeightPages heights = new HeightPages(histories, roundStore);
    fresh("/rounds/{round}/heights", heights::create);
    r.get("/heights/{height}", heights::height);
    r.post("/heights/{height}/readings", heights::read);
    CorrectionPages corrections = new CorrectionPages(histories, roundStore);
    form("/heights/{height}/correct", corrections::height);
    form("/readings/{reading}/correct", corrections::reading);
    UsePages uses = new UsePages(histories, intoBook);
    page("/cars/{car}/use", uses::driven);
    r.post("/cars/{car}/use", uses::driven);
    ToDoPages toDos = new ToDoPages(histories, intoBook);
    page("/cars/{car}/to-do", toDos::list);
    r.post("/cars/{car}/to-do", toDos::list);
    r.post("/to-do/{todo}/done", toDos::done);
    FastenerPages fasteners = new FastenerPages(histories, intoBook);
    page("/cars/{car}/fasteners", fasteners::ofCar);
    page("/corners/{corner}/fasteners", fasteners::ofCorner);
    form("/corners/{corner}/fasteners/{adjuster}", fasteners::fastener);
    TelltalePages telltales = new TelltalePages(histories, intoBook);
    page("/corners/{corner}/telltales", telltales::list);
    r.post("/corners/{corner}/telltales", telltales::list);
    ReCheckPages reChecks = new ReCheckPages(histories);
    page("/cars/{car}/re-check", reChecks::reCheck);
    DriveCheckPages driveChecks = new DriveCheckPages(histories);
    page("/cars/{car}/drive-check", driveChecks::check);
    ComparePages comparing = new ComparePages(histories, carStore);
    slow("/cars/{car}/sides", comparing::sides);
    slow("/cars/{car}/compare", comparing::compare);
    PutBackPages puttingBack = new PutBackPages(histories);
    slow("/cars/{car}/put-back", puttingBack::putBack);
    page("/corners/{corner}/print", driveChecks::print);
    SignOffPages signOffs = new SignOffPages(histories, new SignOffStore(file));
    page("/cars/{car}/sign-offs", signOffs::list);
    fresh("/cars/{car}/sign-offs", signOffs::sign);
    page("/sign-offs/{signoff}", signOffs::signOff);
    slow("/sign-offs/{signoff}/since", signOffs::since);
    PhotoPages photos = new PhotoPages(histories, new PhotoStore(file, app.dataDir));
    r.get("/corners/{corner}/photos", photos::list);
    r.post("/corners/{corner}/photos", photos::add);
    r.get("/photos/{file}", photos::file);
    EntryPages entries = new EntryPages(histories, bookStore, intoBook);
    r.get("/entries/{entry}", entries::entry);
    r.post("/entries/{entry}/answer", entries::answer);
    r.post("/entries/{entry}/take-back", entries::takeBack);
    r.post("/entries/{entry}/counts", corrections::counts);
  }
}
