package spindlebook.card;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import spindlebook.drawing.CornerLine;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.PlanView;
import spindlebook.drawing.State;
import spindlebook.travel.DriveCheck;
import spindlebook.travel.DriveCheck.Checked;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.ThingFirst;
import spindlebook.travel.Total;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Outcome;

/**
 * A car's corners, the worst first, each in a line: blade, finding, cure.
 *
 * @param worst key of the worst corner
 * @param empty corners with no height yet, which have no blade
 */
public record CornerLines(List<CornerLine> lines, List<Empty> empty, String worst) {
  /** A corner that was never measured. */
  public record Empty(String name, String href, String measure, String toDo, PlanView plan) {}

  /** Of a check of the car, which says what is worst. */
  public static CornerLines of(DriveCheck check) {
    List<Checked> judged = check.worstFirst();
    Set<spindlebook.drawing.DrawnWheel> places = new HashSet<>();
    judged.forEach(j -> places.add(Shown.place(j.card().place())));
    List<CornerLine> lines = new ArrayList<>();
    List<Empty> empty = new ArrayList<>();
    for (Checked j : judged) {
      PlanView plan = new PlanView(places, Set.of(Shown.place(j.card().place())), null);
      var blade = Blades.of(j.card(), j.travel(), false);
      if (blade.isEmpty()) {
        empty.add(
            new Empty(
                Capital.of(j.card().place().words()),
                "/corners/" + j.card().corner(),
                "/corners/" + j.card().corner() + "/rounds/new",
                "Measure " + j.card().place().words(),
                plan));
      } else {
        ThingFirst worst = lines.isEmpty() ? check.worst(j).orElse(null) : null;
        lines.add(line(j, plan, blade.get(), worst));
      }
    }
    return new CornerLines(lines, empty, judged.isEmpty() ? "" : judged.get(0).card().corner());
  }

  private static CornerLine line(
      Checked j, PlanView plan, spindlebook.drawing.TapeBlade blade, ThingFirst worst) {
    TravelWords words = new TravelWords(j.card(), j.travel());
    EndFindings first = worseEnd(j.travel(), worst);
    EndFindings other = j.travel().at(first.end() == End.DROOP ? End.BUMP : End.DROOP);
    List<String> more = new ArrayList<>();
    j.travel().midTravel().forEach(m -> more.add(words.midTravel(m)));
    more.add(words.finding(other));
    if (j.travel().bump().stop().filter(s -> s.otherMm() != null).isPresent()) {
      more.add("Full bump as read and as worked out disagree.");
    }
    if (j.travel().rideMm().isEmpty()) {
      more.add("Ride is not known now: positions are " + words.zero().words() + ".");
    }
    int again = j.card().readAgain().size();
    if (again > 0) {
      more.add(Counted.of(again, "reading", "readings") + " to take again.");
    }
    long doubts = j.card().doubts().size();
    if (doubts > 0) {
      more.add(
          doubts == 1 ? "1 entry waits for an answer." : doubts + " entries wait for an answer.");
    }
    Total could = j.travel().asItCouldBe();
    Total set = j.travel().asSet();
    FigureText usable = null;
    String usableWord = "travel: no total yet";
    if (could.mm().isPresent()) {
      usable = words.lengths().figure(could.mm().get());
      usableWord =
          could.atLeast() ? "of travel at least, limit to limit" : "of travel, limit to limit";
    } else if (set.mm().isPresent()) {
      usable = words.lengths().figure(set.mm().get());
      usableWord = "of travel, stop to stop as set";
    }
    return new CornerLine(
        Capital.of(j.card().place().words()),
        "/corners/" + j.card().corner(),
        plan,
        worst == null ? "" : new WorstWords(words).cause(worst),
        state(j, worst),
        usable,
        usableWord,
        blade,
        words.finding(first),
        words.cure(first),
        more);
  }

  /** A worst corner whose rules are all kept has readings that are missing, or hold no longer. */
  private static State state(Checked j, ThingFirst worst) {
    boolean kept = j.travel().outcome() == Outcome.CLEAR;
    return kept && worst != null ? Shown.state(worst.why()) : Shown.state(j.travel().outcome());
  }

  private static EndFindings worseEnd(TravelFindings travel, ThingFirst worst) {
    if (worst != null && worst.end() != null) {
      return travel.at(worst.end());
    }
    return travel.bump().outcome().ordinal() < travel.droop().outcome().ordinal()
        ? travel.bump()
        : travel.droop();
  }
}
