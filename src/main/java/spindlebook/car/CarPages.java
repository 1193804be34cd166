package spindlebook.car;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import spindlebook.alignment.AlignedCheck;
import spindlebook.card.Addressed;
import spindlebook.card.CornerLines;
import spindlebook.card.IntoBook;
import spindlebook.definition.CarDetails;
import spindlebook.definition.Place;
import spindlebook.drivecheck.CheckLine;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.limits.NextLine;
import spindlebook.log.Histories;
import spindlebook.page.Action;
import spindlebook.page.Asked;
import spindlebook.page.Cautions;
import spindlebook.page.Crumb;
import spindlebook.page.Html;
import spindlebook.page.Notice;
import spindlebook.page.PageFrame;
import spindlebook.travel.DriveCheck;
import spindlebook.units.LengthUnit;
import spindlebook.web.Who;

/** The cars, and one car with its corners. */
public final class CarPages {
  private final CarStore store;
  private final Histories histories;
  private final IntoBook book;
  private final Supplier<Optional<String>> noBackup;

  /**
   * @param noBackup a sentence while no good backup is known
   */
  public CarPages(
      CarStore store, Histories histories, IntoBook book, Supplier<Optional<String>> noBackup) {
    this.store = store;
    this.histories = histories;
    this.book = book;
    this.noBackup = noBackup;
  }

  /** Where a person starts: the only car, the list, or the form for the first one. */
  public void home(Context ctx) {
    List<CarStore.Listed> cars = store.all();
    if (cars.isEmpty()) {
      create(ctx);
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

  /** A new car. */
  public void create(Context ctx) {
    Asked a = Asked.of(ctx, LengthUnit.INCH, 0);
    CarForm.NewCar typed = CarForm.askNew(a);
    if (a.ok()) {
      Html.next(ctx, "/cars/" + store.create(typed, a.key(), Who.of(ctx)));
      return;
    }
    PageFrame frame =
        PageFrame.of("A new car · Spindlebook", "A new car")
            .sub(
                "Each of its corners comes with usual watch points and adjusters; the other end can"
                    + " be added later.");
    a.show(ctx, frame, "/cars", "Put it in the book", null);
  }

  public void car(Context ctx) {
    String key = ctx.pathParam("car");
    CarBook history = Addressed.car(ctx, histories);
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

  /** Corners that come later. */
  public void addCorners(Context ctx) {
    CarBook history = Addressed.car(ctx, histories);
    String car = "/cars/" + ctx.pathParam("car");
    List<Place> missing = CornersForm.missing(history);
    Asked a = Asked.of(ctx, LengthUnit.INCH, 0);
    if (a.sent() && missing.isEmpty()) {
      Html.next(ctx, car);
      return;
    }
    CornersForm.Corners typed = CornersForm.ask(a, missing);
    if (a.ok()) {
      store.addCorners(ctx.pathParam("car"), typed, a.key(), Who.of(ctx));
      Html.next(ctx, car);
      return;
    }
    PageFrame frame =
        PageFrame.of("More corners · Spindlebook", "More corners")
            .sub("They start with usual watch points and adjusters, which can be changed.")
            .crumbs(new Crumb("the car", car));
    a.show(ctx, frame, car + "/corners", "Put them in the book", car);
  }

  /** The car's details, and changing them. */
  public void details(Context ctx) {
    CarDetails now = Addressed.car(ctx, histories).details().orElseThrow(NotFoundResponse::new);
    String key = ctx.pathParam("car");
    String car = "/cars/" + key;
    Asked a = Asked.of(ctx, now.unit(), 0);
    CarDetails then = CarForm.ask(a, now);
    if (a.ok()) {
      book.put(ctx, a, Content.Definition.of(key, then));
      Html.next(ctx, car);
      return;
    }
    PageFrame frame =
        PageFrame.of("Details · Spindlebook", "The car's details")
            .crumbs(new Crumb("the car", car));
    a.show(ctx, frame, car + "/details", "Keep these", car);
  }
}
