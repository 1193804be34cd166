package spindlebook.car;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import spindlebook.advice.DriveCheck;
import spindlebook.card.Addressed;
import spindlebook.card.IntoBook;
import spindlebook.corner.CornerLines;
import spindlebook.definition.CarDetails;
import spindlebook.definition.Place;
import spindlebook.drivecheck.CheckLine;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.log.Histories;
import spindlebook.measured.AlignedCheck;
import spindlebook.page.Asked;
import spindlebook.page.Bar;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.Link;
import spindlebook.page.Notice;
import spindlebook.page.PageFrame;
import spindlebook.units.LengthUnit;
import spindlebook.web.Who;

/**
 * The cars, and one car with its corners.
 *
 * @param noBackup a sentence while no good backup is known
 */
public record CarPages(
    CarStore store, Histories histories, IntoBook book, Supplier<Optional<String>> noBackup) {
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
    CarForm.NewCar typed = CarForm.askNew(a, store.all());
    if (a.ok()) {
      Html.next(ctx, "/cars/" + store.create(typed, a.key(), Who.of(ctx)));
      return;
    }
    PageFrame frame =
        PageFrame.of("A new car · Spindlebook", "A new car")
            .sub(
                "Each of its corners comes with usual watch points and adjusters; the other end can"
                    + " be added later.");
    a.show(ctx, frame, "/cars", "Save", null);
  }

  public void car(Context ctx) {
    String key = ctx.pathParam("car");
    CarBook history = Addressed.car(ctx, histories);
    CarDetails details = history.details().orElseThrow(NotFoundResponse::new);
    DriveCheck check = AlignedCheck.of(history);
    CornerLines lines = CornerLines.of(check);
    String worst = lines.worst();
    PageFrame frame =
        PageFrame.of(details.name() + " · Spindlebook", details.name())
            .up("cars", "/cars")
            .notices(littleRoom())
            .ownSheets("car.css", "tape.css")
            .bar(
                new Bar(
                    new Link("Measure", "/corners/" + worst + "/rounds/new"),
                    List.of(
                        new Link("Change", "/cars/" + key + "/settings"),
                        new Link("More", "/cars/" + key + "/more")),
                    ""))
            .caution(Cautions.FIGURES);
    Html.show(
        ctx,
        Html.TEMPLATES.carCar(
            frame, noBackup.get().orElse(""), lines, CheckLine.of(history, check)));
  }

  /** All else that a car has. */
  public void more(Context ctx) {
    CarBook history = Addressed.car(ctx, histories);
    String car = "/cars/" + ctx.pathParam("car");
    List<Link> ways =
        new ArrayList<>(
            List.of(
                new Link("The book", car + "/book"),
                new Link("Re-check", car + "/re-check"),
                new Link("Left against right", car + "/sides"),
                new Link("Compare", car + "/compare"),
                new Link("To do", car + "/to-do"),
                new Link("Use log", car + "/use"),
                new Link("Fasteners", car + "/fasteners"),
                new Link("Parts", car + "/parts"),
                new Link("Something happened", car + "/happenings/new")));
    if (!CornersForm.missing(history).isEmpty()) {
      ways.add(new Link("More corners", car + "/corners/new"));
    }
    ways.addAll(
        List.of(
            new Link("Details", car + "/details"),
            new Link("Tools", car + "/tools"),
            new Link("Devices", "/devices"),
            new Link("Backups", "/backups")));
    String name = history.details().orElseThrow(NotFoundResponse::new).name();
    PageFrame frame = PageFrame.of("More · " + name, "More").up(name, car);
    Html.show(ctx, Html.TEMPLATES.carMore(frame, ways));
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
            .up("the car", car);
    a.show(ctx, frame, car + "/corners", "Save", car);
  }

  /** The car's details, and changing them. */
  public void details(Context ctx) {
    CarDetails now = Addressed.car(ctx, histories).details().orElseThrow(NotFoundResponse::new);
    String key = ctx.pathParam("car");
    String car = "/cars/" + key;
    Asked a = Asked.of(ctx, now.unit(), 0);
    CarDetails then = CarForm.ask(a, now);
    if (a.ok()) {
      book.put(ctx, a, Content.Definition.of(key, then), car);
      return;
    }
    PageFrame frame = PageFrame.of("Details · Spindlebook", "The car's details").up("the car", car);
    a.show(ctx, frame, car + "/details", "Save", car);
  }
}
