package spindlebook.round;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.advice.NextReading;
import spindlebook.card.Capital;
import spindlebook.card.CureAddress;
import spindlebook.card.NeedAddress;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.drawing.State;
import spindlebook.fold.Card;
import spindlebook.page.Link;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.TravelFindings;

/**
 * What a round came to: how much was read and left out, the verdict at both ends, what comes next.
 *
 * @param skipped what was asked for and not read
 * @param last the place read last; empty where none was
 * @param back what is put back before driving, and what may hurt whoever does it; empty for nothing
 * @param touched past what the jack was not sent, and why
 */
public record RoundEnd(
    int read,
    int skipped,
    List<Verdict> verdicts,
    Link next,
    String last,
    List<String> back,
    List<String> touched) {
  /** One end's. */
  public record Verdict(String end, State state, String finding) {}

  static RoundEnd of(GuidePlan plan) {
    Card card = plan.sitting().card();
    TravelFindings travel = CornerTravel.of(card);
    TravelWords words = new TravelWords(card, travel);
    List<GuidePlan.Step> steps = plan.steps();
    int done = (int) steps.stream().filter(plan::done).count();
    List<Verdict> verdicts = new ArrayList<>();
    for (End end : End.values()) {
      EndFindings at = travel.at(end);
      verdicts.add(
          new Verdict(
              Capital.of(end.words()),
              Shown.state(at.outcome()),
              Capital.of(words.finding(at).replaceFirst("^(Droop|Bump): ", ""))));
    }
    Sitting at = plan.sitting();
    Optional<GuidePlan.Place> last =
        card.heightsOf(at.key()).stream()
            .reduce((first, second) -> second)
            .flatMap(
                h -> plan.places().stream().filter(p -> h.key().equals(p.heightKey())).findFirst());
    return new RoundEnd(
        done,
        steps.size() - done,
        verdicts,
        next(plan, travel, words),
        last.map(GuidePlan.Place::id).orElse(""),
        last.map(p -> back(at, p)).orElse(List.of()),
        Touched.in(plan).stream().map(Touched::words).toList());
  }

  /** Before driving, from where a place left the car. */
  static List<String> back(Sitting at, GuidePlan.Place place) {
    StandWords.Ready ready = StandWords.driven(at, place);
    return ready.say().isEmpty()
        ? List.of()
        : List.of(ready.say() + " before driving.", ready.caution());
  }

  /** A cure before a reading, ride when nothing is left, last the corner itself. */
  private static Link next(GuidePlan plan, TravelFindings travel, TravelWords words) {
    Card card = plan.sitting().card();
    String corner = "/corners/" + card.corner();
    Optional<NextReading> reading = words.next().stream().findFirst();
    Optional<Link> cure =
        Stream.of(travel.droop(), travel.bump())
            .filter(e -> e.cure().isPresent())
            .findFirst()
            .map(e -> new Link(words.cureKey(e), CureAddress.of(card, e.cure().get())));
    return cure.or(
            () ->
                reading.map(
                    r ->
                        new Link(
                            (r.need().toRead() == null ? "Give " : "Measure ")
                                + words.need(r.need().bare()),
                            NeedAddress.of(card.corner(), words, r))))
        .orElse(new Link("To the " + card.place().words(), corner));
  }
}
