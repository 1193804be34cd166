package spindlebook.drivecheck;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import spindlebook.alignment.AlignedCheck;
import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.card.Shown;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Noted;
import spindlebook.corner.Place;
import spindlebook.corner.SeenSignOff;
import spindlebook.log.Histories;
import spindlebook.travel.DriveCheck;
import spindlebook.travel.ThingFirst;
import spindlebook.travel.ThingFirst.Why;
import spindlebook.web.Action;
import spindlebook.web.Cautions;
import spindlebook.web.Crumb;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.State;

/** Before a drive: all that is left to see to, and one page of each corner to print. */
public final class DriveCheckPages {
  private final Histories histories;

  public DriveCheckPages(Histories histories) {
    this.histories = histories;
  }

  public void check(Context ctx) {
    CarBook history = histories.of(ctx.pathParam("car"));
    String car = history.car().orElseThrow(NotFoundResponse::new);
    DriveCheck check = AlignedCheck.of(history);
    String name = history.details().orElseThrow().name();
    PageFrame frame =
        PageFrame.of("Drive check · " + name, name + ": " + CheckWords.outcome(check))
            .sub("Drive check: what the book knows of before a drive")
            .crumbs(new Crumb(name, "/cars/" + car))
            .caution(Cautions.FIGURES);
    List<Action> actions =
        List.of(
            Action.link("Sign off", "/cars/" + car + "/sign-offs/new", true),
            Action.link("Sign-offs", "/cars/" + car + "/sign-offs", false));
    Html.show(ctx, Html.TEMPLATES.drivecheckCheck(frame, view(history, check), actions));
  }

  static CheckView view(CarBook history, DriveCheck check) {
    Optional<SeenSignOff> last = history.lastSignOff();
    return new CheckView(
        asOf(history),
        corners(check),
        notes(check),
        groups(CheckWords.of(history, check)),
        last.map(s -> CheckLine.signed(history, s) + ".").orElse(""),
        last.map(s -> "/sign-offs/" + s.key()).orElse(null),
        last.map(s -> "/sign-offs/" + s.key() + "/since").orElse(null));
  }

  static String asOf(CarBook history) {
    Noted last = history.entries().get(history.entries().size() - 1);
    return "As of entry " + last.n() + ", " + Days.minute(last.at()) + ".";
  }

  private static List<CheckView.CornerCounts> corners(DriveCheck check) {
    List<CheckView.CornerCounts> corners = new ArrayList<>();
    for (DriveCheck.Checked c : check.corners()) {
      Card card = c.card();
      Map<Why, Integer> counts = check.counts(card.corner());
      corners.add(
          new CheckView.CornerCounts(
              Capital.of(card.place().words()),
              "/corners/" + card.corner(),
              "/corners/" + card.corner() + "/print",
              card.heights().isEmpty() ? State.NOT_MEASURED : Shown.state(c.travel().outcome()),
              card.rounds().isEmpty() && counts.size() == 1 ? "no round yet" : counted(counts)));
    }
    Map<Why, Integer> ofCar = check.counts(null);
    if (!ofCar.isEmpty()) {
      corners.add(new CheckView.CornerCounts("The whole car", null, null, null, counted(ofCar)));
    }
    return corners;
  }

  private static String counted(Map<Why, Integer> counts) {
    return counts.isEmpty()
        ? "nothing left"
        : counts.entrySet().stream()
            .map(e -> e.getValue() + " " + e.getKey().words())
            .collect(Collectors.joining(" · "));
  }

  /** A car of which the book has two corners is not said to be whole. */
  private static List<String> notes(DriveCheck check) {
    List<String> absent =
        Arrays.stream(Place.values())
            .filter(p -> check.corners().stream().noneMatch(c -> c.card().place() == p))
            .map(Place::words)
            .toList();
    return absent.isEmpty() || check.corners().isEmpty()
        ? List.of()
        : List.of("Not in the book, so nothing is said of it: " + String.join(", ", absent) + ".");
  }

  private static List<CheckView.Group> groups(List<CheckWords.Line> lines) {
    Map<Why, List<CheckWords.Line>> byWhy = new LinkedHashMap<>();
    lines.forEach(l -> byWhy.computeIfAbsent(l.thing().why(), w -> new ArrayList<>()).add(l));
    return byWhy.entrySet().stream()
        .map(e -> new CheckView.Group(title(e.getKey()), Shown.state(e.getKey()), e.getValue()))
        .toList();
  }

  private static String title(ThingFirst.Why why) {
    return Capital.of(why.words());
  }

  // --- on paper

  public void print(Context ctx) {
    Card now = histories.cornerCard(ctx.pathParam("corner")).orElseThrow(NotFoundResponse::new);
    CarBook history = histories.of(now.car());
    DriveCheck check = AlignedCheck.of(history);
    DriveCheck.Checked at = check.corner(now.corner()).orElseThrow(NotFoundResponse::new);
    Card card = at.card();
    PageFrame frame =
        PageFrame.of(
                Capital.of(card.place().words()) + " · " + card.details().name(),
                card.details().name() + ", " + card.place().words())
            .sub(asOf(history))
            .plan(Shown.plan(card))
            .crumbs(
                new Crumb(card.place().words(), "/corners/" + card.corner()),
                new Crumb("drive check", "/cars/" + card.car() + "/drive-check"))
            .caution(Cautions.FIGURES);
    Html.show(ctx, Html.TEMPLATES.drivecheckPrint(frame, PrintView.of(history, check, at)));
  }
}
