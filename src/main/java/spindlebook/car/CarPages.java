package spindlebook.car;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import spindlebook.alignment.AlignedCheck;
import spindlebook.card.CornerLines;
import spindlebook.corner.CarBook;
import spindlebook.corner.CarDetails;
import spindlebook.corner.Place;
import spindlebook.drivecheck.CheckLine;
import spindlebook.limits.NextLine;
import spindlebook.log.Histories;
import spindlebook.travel.DriveCheck;
import spindlebook.web.Action;
import spindlebook.web.Cautions;
import spindlebook.web.Crumb;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.Html;
import spindlebook.web.Notice;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** The cars, and one car with its corners. */
public final class CarPages {
  private final CarStore store;
  private final Histories histories;
  private final Supplier<Optional<String>> noBackup;

  /**
   * @param noBackup a sentence while no good backup is known
   */
  public CarPages(CarStore store, Histories histories, Supplier<Optional<String>> noBackup) {
    this.store = store;
    this.histories = histories;
    this.noBackup = noBackup;
  }

  /** Where a person starts: the only car, the list, or the form for the first one. */
  public void home(Context ctx) {
    List<CarStore.Listed> cars = store.all();
    if (cars.isEmpty()) {
      showNew(ctx, new Posted(Map.of()), FormKey.fresh(0));
    } else if (cars.size() == 1) {
      ctx.redirect("/cars/" + cars.get(0).key());
    } else {
      list(ctx);
    }
  }

  public void list(Context ctx) {
    PageFrame frame = PageFrame.of("Cars · Spindlebook", "Cars in the book").notices(littleRoom());
    Html.show(ctx, Html.TEMPLATES.carList(frame, store.all(), noBackup.get().orElse("")));
  }

  private List<Notice> littleRoom() {
    return store.littleRoom().map(w -> new Notice(Notice.Kind.PROBLEM, w)).stream().toList();
  }

  public void newCar(Context ctx) {
    showNew(ctx, new Posted(Map.of()), FormKey.fresh(0));
  }

  private static void showNew(Context ctx, Posted posted, FormKey key) {
    PageFrame frame =
        PageFrame.of("A new car · Spindlebook", "A new car")
            .sub(
                "Each of its corners comes with usual watch points and adjusters; the other end can"
                    + " be added later.");
    FormPage page =
        new FormPage(frame, "/cars", key, CarForm.newCar(posted), "Put it in the book", null);
    Html.form(ctx, posted, page);
  }

  public void create(Context ctx) {
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(0));
    CarForm form = CarForm.read(posted);
    if (form instanceof CarForm.Accepted accepted) {
      Html.next(ctx, "/cars/" + store.create(accepted, key, Who.of(ctx)));
    } else {
      showNew(ctx, posted, key);
    }
  }

  public void car(Context ctx) {
    String key = ctx.pathParam("car");
    CarBook history = history(key);
    CarDetails details = history.details().orElseThrow(NotFoundResponse::new);
    DriveCheck check = AlignedCheck.of(history);
    CornerLines lines = CornerLines.of(check);
    String note = details.note() == null ? "" : details.note() + " · ";
    PageFrame frame =
        PageFrame.of(details.name() + " · Spindlebook", details.name())
            .sub(note + "worst corner first")
            .crumbs(new Crumb("all cars", "/cars"))
            .notices(littleRoom())
            .ownSheets("car.css")
            .caution(Cautions.FIGURES);
    String worst = lines.worst();
    Html.show(
        ctx,
        Html.TEMPLATES.carCar(
            frame,
            key,
            noBackup.get().orElse(""),
            lines,
            CheckLine.of(history, check),
            NextLine.of(check).orElse(null),
            !CornersForm.missing(history).isEmpty(),
            List.of(
                Action.link("Measure", "/corners/" + worst + "/rounds/new", true),
                Action.link("Change a setting", "/cars/" + key + "/settings", false))));
  }

  // --- corners that come later

  public void newCorners(Context ctx) {
    String key = ctx.pathParam("car");
    showNewCorners(ctx, key, history(key), new Posted(Map.of()), FormKey.fresh(0));
  }

  private static void showNewCorners(
      Context ctx, String car, CarBook history, Posted posted, FormKey key) {
    PageFrame frame =
        PageFrame.of("More corners · Spindlebook", "More corners")
            .sub("They start with usual watch points and adjusters, which can be changed.")
            .crumbs(new Crumb("the car", "/cars/" + car));
    FormPage page =
        new FormPage(
            frame,
            "/cars/" + car + "/corners",
            key,
            CornersForm.parts(posted, CornersForm.missing(history)),
            "Put them in the book",
            "/cars/" + car);
    Html.form(ctx, posted, page);
  }

  public void addCorners(Context ctx) {
    String car = ctx.pathParam("car");
    CarBook history = history(car);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(0));
    List<Place> missing = CornersForm.missing(history);
    if (missing.isEmpty()) {
      Html.next(ctx, "/cars/" + car);
      return;
    }
    CornersForm form = CornersForm.read(posted, missing);
    if (form instanceof CornersForm.Accepted accepted) {
      store.addCorners(car, accepted, key, Who.of(ctx));
      Html.next(ctx, "/cars/" + car);
    } else {
      showNewCorners(ctx, car, history, posted, key);
    }
  }

  // --- details

  public void details(Context ctx) {
    String key = ctx.pathParam("car");
    CarDetails details = history(key).details().orElseThrow(NotFoundResponse::new);
    showDetails(ctx, key, CarForm.typed(details), FormKey.fresh(0));
  }

  private static void showDetails(Context ctx, String car, Posted posted, FormKey key) {
    PageFrame frame =
        PageFrame.of("Details · Spindlebook", "The car's details")
            .crumbs(new Crumb("the car", "/cars/" + car));
    FormPage page =
        new FormPage(
            frame,
            "/cars/" + car + "/details",
            key,
            CarForm.parts(posted),
            "Keep these",
            "/cars/" + car);
    Html.form(ctx, posted, page);
  }

  public void changeDetails(Context ctx) {
    String car = ctx.pathParam("car");
    history(car);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(0));
    CarForm form = CarForm.read(posted);
    if (form instanceof CarForm.Accepted accepted) {
      store.changeDetails(car, accepted.details(), key, Who.of(ctx));
      Html.next(ctx, "/cars/" + car);
    } else {
      showDetails(ctx, car, posted, key);
    }
  }

  private CarBook history(String car) {
    CarBook history = histories.of(car);
    if (history.car().isEmpty()) {
      throw new NotFoundResponse();
    }
    return history;
  }
}
