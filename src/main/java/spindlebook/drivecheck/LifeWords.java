package spindlebook.drivecheck;

import java.util.stream.Collectors;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.Days;
import spindlebook.card.TravelWords;
import spindlebook.corner.AdjusterKind;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.SeenFastener;
import spindlebook.corner.TelltaleKind;
import spindlebook.drivecheck.CheckWords.Line;
import spindlebook.travel.ClayGap;
import spindlebook.travel.DriveCheck.Checked;
import spindlebook.travel.Limit;
import spindlebook.travel.ThingFirst;
import spindlebook.uncertainty.Figure;
import spindlebook.web.Lengths;

/** What drives did and hands have to do, of what a drive check found, in sentences. */
final class LifeWords {
  private final CarBook book;
  private final String car;

  LifeWords(CarBook book) {
    this.book = book;
    this.car = book.car().orElse("");
  }

  /**
   * @param place the corner's, in words, or the whole car
   */
  Line line(ThingFirst.ToDo toDo, String place) {
    String words = Capital.of(toDo.toDo().toDo().words());
    return new Line(toDo, place, words, "", "/cars/" + car + "/to-do");
  }

  Line line(ThingFirst thing, Checked at, TravelWords say) {
    String corner = "/corners/" + CheckWords.corner(at);
    if (thing instanceof ThingFirst.Opened opened) {
      SeenFastener seen = opened.fastener();
      String name = Capital.of(seen.adjuster().name()) + ", " + seen.adjuster().kind().fastener();
      return CheckWords.line(
          thing,
          at,
          name + ": " + seen.state().words() + ".",
          seen.torque() == null ? "" : "Torque " + seen.torque() + ".",
          corner + "/fasteners/" + seen.adjuster().adjuster());
    }
    if (thing instanceof ThingFirst.ReCheckDue due) {
      return CheckWords.line(
          thing, at, due(due), "", "/cars/" + car + "/re-check?corner=" + CheckWords.corner(at));
    }
    if (thing instanceof ThingFirst.ToDo toDo) {
      return line(toDo, at.card().place().words());
    }
    if (thing instanceof ThingFirst.DeeperThanAllowed deeper) {
      return CheckWords.line(
          thing, at, deeper(deeper, say), "", adjuster(at.card(), AdjusterKind.BUMP_STOP_SPACER));
    }
    if (thing instanceof ThingFirst.NearerThanAllowed nearer) {
      return CheckWords.line(thing, at, nearer(nearer.clay(), say), "", corner + "/adjustments");
    }
    ThingFirst.StretchUsed used = (ThingFirst.StretchUsed) thing;
    return CheckWords.line(
        used,
        at,
        used.between() == null
            ? "The limit strap has taken up all the stretch that is held back for it."
            : "Between drives the limit strap was longer than the stretch held back for it allows.",
        used.between() == null
            ? "A new strap, or more held back."
            : "Read it on the strap in a round.",
        used.between() == null
            ? adjuster(at.card(), AdjusterKind.LIMIT_STRAP)
            : corner + "/rounds/new");
  }

  private static String adjuster(Card card, AdjusterKind kind) {
    String address = "/corners/" + card.corner() + "/adjustments";
    return card.adjuster(kind).map(a -> address + "/" + a.adjuster().adjuster()).orElse(address);
  }

  private String due(ThingFirst.ReCheckDue due) {
    String drive =
        book.lastUse().filter(u -> u.at() != null).map(u -> " of " + Days.day(u.at())).orElse("");
    String read =
        due.unread().stream().sorted().map(LifeWords::briefly).collect(Collectors.joining(", "));
    String marks = due.marks() == 0 ? "" : "marks of " + Counted.of(due.marks(), "fastener");
    return "Not looked at since the drive"
        + drive
        + ": "
        + read
        + (read.isEmpty() || marks.isEmpty() ? "" : ", ")
        + marks
        + ".";
  }

  private static String briefly(TelltaleKind kind) {
    return switch (kind) {
      case STRAP_LENGTH -> "strap";
      case TYRE_PRESSURE -> "tyre pressure";
      case SHOCK_RING, CLAY, WITNESS_MARK -> kind.words();
    };
  }

  private static String deeper(ThingFirst.DeeperThanAllowed deeper, TravelWords say) {
    DeepestPast past = DeepestPast.of(deeper);
    String place =
        past.limit() == null
            ? "where the stop is solid"
            : "the limit of bump, " + say.name(past.limit());
    Lengths lengths = say.lengths();
    return "The ring on the shock shaft: a drive took the wheel "
        + (deeper.beyond() ? "at least " : "")
        + lengths.text(past.mm())
        + " past "
        + place
        + ".";
  }

  /** How far past what. */
  private record DeepestPast(double mm, Limit limit) {
    static DeepestPast of(ThingFirst.DeeperThanAllowed deeper) {
      Figure left =
          deeper.pastLimit()
              ? deeper.bump().toLimitMm().orElseThrow()
              : deeper.bump().toSolidMm().orElseThrow();
      return new DeepestPast(
          -left.value(), deeper.pastLimit() ? deeper.bump().limit().orElseThrow() : null);
    }
  }

  private static String nearer(ClayGap clay, TravelWords say) {
    return "Clay at "
        + clay.point().name()
        + ": the gap came down to "
        + say.lengths().text(clay.thickMm())
        + " on a drive, "
        + say.lengths().text(-clay.overMm())
        + " less than its rule asks.";
  }
}
