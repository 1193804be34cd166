package spindlebook.compare;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.definition.Place;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.log.Histories;
import spindlebook.page.Cautions;
import spindlebook.page.Crumb;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;

/** Left against right, one end of the car at a time. */
public final class SidesPages {
  private final Histories histories;

  public SidesPages(Histories histories) {
    this.histories = histories;
  }

  /** An end of the car that has both its corners. */
  private record Axle(boolean front, String left, String right) {
    String word() {
      return front ? "front" : "rear";
    }
  }

  public void sides(Context ctx) {
    String car = ctx.pathParam("car");
    CarBook history = histories.of(car);
    String name = history.details().orElseThrow(NotFoundResponse::new).name();
    List<Axle> axles = axles(history);
    String asked = ctx.queryParam("axle");
    Optional<Axle> here =
        axles.stream()
            .filter(a -> a.word().equals(asked))
            .findFirst()
            .or(() -> axles.stream().findFirst());
    PageFrame frame =
        PageFrame.of(
                "Left against right · " + name,
                here.map(a -> Capital.of(a.word()) + ", left against right")
                    .orElse("Left against right"))
            .sub("Inner lock against inner lock, each reading where the other wheel stood alike")
            .crumbs(new Crumb(name, "/cars/" + car))
            .ownSheets("car.css")
            .caution(Cautions.FIGURES);
    Html.show(ctx, Html.TEMPLATES.compareSides(frame, view(car, axles, here)));
  }

  private SidesView view(String car, List<Axle> axles, Optional<Axle> here) {
    String compare = "/cars/" + car + "/compare";
    if (here.isEmpty()) {
      return new SidesView(
          List.of(), "No end of this car has both its corners in the book.", List.of(), compare);
    }
    List<SidesView.Tab> tabs =
        axles.size() < 2
            ? List.of()
            : axles.stream()
                .map(
                    a ->
                        new SidesView.Tab(
                            Capital.of(a.word()),
                            "/cars/" + car + "/sides?axle=" + a.word(),
                            a.equals(here.get())))
                .toList();
    Card left = histories.card(car, here.get().left());
    Card right = histories.card(car, here.get().right());
    return new SidesViews(left, right).view(tabs, compare + "?beside=other-side");
  }

  private static List<Axle> axles(CarBook history) {
    List<Axle> axles = new ArrayList<>();
    for (Place left : List.of(Place.LEFT_FRONT, Place.LEFT_REAR)) {
      Optional<String> l = history.cornerAt(left);
      Optional<String> r = history.cornerAt(left.mirror());
      if (l.isPresent() && r.isPresent()) {
        axles.add(new Axle(left.front(), l.get(), r.get()));
      }
    }
    return axles;
  }
}
