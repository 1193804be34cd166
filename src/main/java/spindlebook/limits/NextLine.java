package spindlebook.limits;

import java.util.Comparator;
import java.util.Optional;
import spindlebook.card.TravelWords;
import spindlebook.travel.DriveCheck;
import spindlebook.travel.DriveCheck.Checked;
import spindlebook.travel.NextReading;

/**
 * The one thing to read that matters most on a car, for its page.
 *
 * @param words "left front, read tie rod to upper arm, full right, at …"
 * @param href the corner's limits, which say why and lead to it
 */
public record NextLine(String words, String href) {

  private record OfCorner(Checked corner, NextReading next) {}

  /** Of the corners that were measured; empty when nothing is left to read there. */
  public static Optional<NextLine> of(DriveCheck check) {
    return check.corners().stream()
        .filter(c -> !c.card().heights().isEmpty())
        .flatMap(c -> NextReading.of(c.card(), c.travel()).map(n -> new OfCorner(c, n)).stream())
        .min(Comparator.comparing(OfCorner::next, NextReading.theOneThatMattersMostFirst()))
        .map(NextLine::of);
  }

  private static NextLine of(OfCorner of) {
    String corner = of.corner().card().corner();
    TravelWords words = new TravelWords(of.corner().card(), of.corner().travel());
    NextWords say = new NextWords(corner, of.corner().travel(), words);
    return new NextLine(
        of.corner().card().place().words() + ", " + say.what(of.next()),
        "/corners/" + corner + "/limits");
  }
}
