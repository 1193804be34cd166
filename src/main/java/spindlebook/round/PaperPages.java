package spindlebook.round;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.card.Addressed;
import spindlebook.card.Capital;
import spindlebook.card.CornerBar;
import spindlebook.card.Days;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Steering;
import spindlebook.entry.Zeroing;
import spindlebook.fold.Card;
import spindlebook.fold.SeenRound;
import spindlebook.log.Histories;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.Notice;
import spindlebook.page.PageFrame;
import spindlebook.plan.JackPlan;
import spindlebook.units.TypedAngle;
import spindlebook.words.EntryWords;

/** A round on paper, blank: any round of the book, or the one a corner would start with. */
public record PaperPages(Histories histories) {
  public void ofRound(Context ctx) {
    Sitting at = Sitting.of(histories, ctx);
    show(ctx, at, "the round", at.href());
  }

  public void ofCorner(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Sitting at = Sitting.of(histories, card, RoundForm.usual(card, List.of()));
    show(ctx, at, card.place().words(), "/corners/" + card.corner());
  }

  private static void show(Context ctx, Sitting at, String up, String back) {
    Card card = at.card();
    Content.Round round = at.round();
    Optional<SeenRound> started = Optional.ofNullable(at.seen());
    PageFrame frame =
        CornerBar.under(card, "A blank sheet", Capital.of(card.place().words()) + ", a round")
            .sub(card.details().name() + " · numbers without a unit: " + round.unit().word())
            .up(up, back)
            .notices(
                List.of(
                    new Notice(
                        Notice.Kind.NOTE,
                        "Print this page; afterwards it is typed from the round, 'from"
                            + " paper'.")))
            .caution(Cautions.MEASURING)
            .ownSheets("paper.css");
    List<GuidePlan.Place> places = places(at);
    PaperView view =
        new PaperView(
            lines(round, started),
            conditions(at.card(), round, started),
            zeroing(at),
            heights(at, places),
            groups(at, places));
    Html.show(ctx, Html.TEMPLATES.roundPaper(frame, view));
  }

  private static List<PaperView.Line> lines(Content.Round round, Optional<SeenRound> started) {
    return List.of(
        new PaperView.Line("Day", started.map(r -> Days.day(r.at())).orElse("")),
        new PaperView.Line("Who", started.map(SeenRound::who).orElse("")),
        new PaperView.Line("Heights with", started.map(r -> r.tape().name()).orElse("")),
        new PaperView.Line("Gaps with", started.map(RoundPages::gapsWith).orElse("")),
        new PaperView.Line("Angles with", started.map(r -> r.angleTool().name()).orElse("")),
        new PaperView.Line("Rake, nose down +", typed(round.rake())),
        new PaperView.Line("Roll, left up +", typed(round.roll())),
        new PaperView.Line("Pressure", or(round.pressure())),
        new PaperView.Line("Note", or(round.note())));
  }

  private static String typed(TypedAngle angle) {
    return angle == null ? "" : angle.typed();
  }

  private static String or(String words) {
    return words == null ? "" : words;
  }

  private static List<PaperView.Ticks> conditions(
      Card card, Content.Round r, Optional<SeenRound> started) {
    boolean known = started.isPresent();
    List<PaperView.Ticks> ticks = new ArrayList<>();
    ticks.add(either("Spring", "out", "in", known, r.springIn()));
    ticks.add(either("Bump stop", "in", "out", known, !r.bumpStopIn()));
    ticks.add(either("Wheel", "on", "off", known, !r.wheelOn()));
    ticks.add(either("On", "stands", "its tyres", known, r.onTyres()));
    if (card.layout().steered()) {
      ticks.add(either("Steering linked", "yes", "no", known, !r.steeringLinked()));
    }
    return ticks;
  }

  private static PaperView.Ticks either(
      String legend, String one, String other, boolean known, boolean isOther) {
    return new PaperView.Ticks(
        legend,
        List.of(
            new PaperView.Tick(one, known && !isOther),
            new PaperView.Tick(other, known && isOther)));
  }

  private static List<PaperView.Tick> zeroing(Sitting at) {
    return Arrays.stream(Zeroing.values())
        .filter(z -> z.at(at.card().layout()) && (at.seen() == null || z.in(at.round())))
        .map(z -> new PaperView.Tick(z.sentence(), at.round().zeroed().contains(z)))
        .toList();
  }

  /** In the order of the screen, and one more for a height nobody thought of. */
  private static List<GuidePlan.Place> places(Sitting at) {
    List<GuidePlan.Place> places = new ArrayList<>(GuidePlan.of(at, List.of()).places());
    if (JackPlan.whole(at.round()) && !at.axle()) {
      places.add(GuidePlan.any(at, HeightName.IN_BETWEEN));
    }
    return places;
  }

  private static List<PaperView.Height> heights(Sitting at, List<GuidePlan.Place> places) {
    List<PaperView.Height> heights = new ArrayList<>();
    GuidePlan.Place before = null;
    for (GuidePlan.Place place : places) {
      if (place.nth() == 0) {
        heights.add(new PaperView.Height("Another height", "Another", "", ""));
        continue;
      }
      StandWords.Ready ready = StandWords.ready(at, before, place);
      String first = ready.say().isEmpty() ? "" : ready.say() + ". " + ready.caution();
      heights.add(
          new PaperView.Height(title(at, place), column(place), StandWords.aim(at, place), first));
      before = place;
    }
    return heights;
  }

  private static String title(Sitting at, GuidePlan.Place place) {
    String words = Capital.of(place.words());
    return place.pairing() == Pairing.CROSSED
        ? Capital.of(at.card().place().words())
            + ": "
            + place.words()
            + "; "
            + at.card().place().mirror().words()
            + ": "
            + place.otherName().words()
        : words;
  }

  private static String column(GuidePlan.Place place) {
    String words = place.label() == null ? place.name().words() : place.label();
    String brief = words.replaceAll(" \\(.*\\)|,.*", "");
    return Capital.of(place.pairing() == Pairing.CROSSED ? brief + ", crossed" : brief);
  }

  private static List<PaperView.Group> groups(Sitting at, List<GuidePlan.Place> places) {
    GuidePlan plan = new GuidePlan(at, places);
    List<PaperView.Group> groups = new ArrayList<>();
    groups.add(new PaperView.Group("Above the floor", jack(at, places)));
    for (Steering steering :
        List.of(
            Steering.STRAIGHT,
            Steering.FULL_LEFT,
            Steering.PART_LEFT,
            Steering.PART_RIGHT,
            Steering.FULL_RIGHT)) {
      List<PaperView.Row> rows =
          at.slots(steering, s -> true).stream()
              .map(slot -> row(plan, steering, slot))
              .flatMap(Optional::stream)
              .toList();
      if (!rows.isEmpty()) {
        groups.add(new PaperView.Group(Capital.of(steering.words()), rows));
      }
    }
    List<PaperView.Cell> looks =
        places.stream().map(p -> new PaperView.Cell(plan.lookedAt(p), "")).toList();
    if (looks.stream().anyMatch(PaperView.Cell::asked)) {
      PaperView.Row row = new PaperView.Row("All others well clear", "one look, a tick", looks);
      groups.add(new PaperView.Group("", List.of(row)));
    }
    return groups;
  }

  /** In the order of the boxes they are typed into: of both ends the spindle, then the mark. */
  private static List<PaperView.Row> jack(Sitting at, List<GuidePlan.Place> places) {
    List<PaperView.Cell> marks = places.stream().map(p -> new PaperView.Cell(true, "")).toList();
    List<PaperView.Row> spindles = new ArrayList<>();
    List<PaperView.Row> below = new ArrayList<>();
    for (Card end : Stream.concat(Stream.of(at.card()), at.otherEnd().stream()).toList()) {
      boolean other = !end.place().equals(at.card().place());
      String of = at.axle() ? Capital.of(end.place().words()) + ": " : "";
      List<PaperView.Cell> last =
          places.stream()
              .map(p -> spindle(end, other ? p.otherName() : p.name(), p.stood()))
              .toList();
      spindles.add(new PaperView.Row(of + "Spindle", "", last));
      below.add(new PaperView.Row(of + "Frame mark", "or 'same'", marks));
    }
    spindles.addAll(below);
    return spindles;
  }

  /** The last one only of a name that is one place: any other in between is another one. */
  private static PaperView.Cell spindle(Card card, HeightName name, Pairing pairing) {
    String before =
        card.heights().stream()
            .filter(h -> name.onePlace() && h.name() == name && h.pairing() == pairing)
            .filter(h -> h.height().spindle() != null)
            .reduce((first, second) -> second)
            .map(h -> h.height().spindle().typed())
            .orElse("");
    return new PaperView.Cell(true, before);
  }

  /**
   * Empty of what the round never asks; a watch point may be asked further in, once it is tight.
   */
  private static Optional<PaperView.Row> row(GuidePlan plan, Steering steering, Slot slot) {
    boolean there = false;
    boolean asked = false;
    List<PaperView.Cell> cells = new ArrayList<>();
    for (GuidePlan.Place place : plan.places()) {
      boolean here = place.slots().getOrDefault(steering, List.of()).contains(slot);
      boolean open =
          here
              && (place.nth() == 0
                  || plan.asksFirst(new GuidePlan.Step(place, steering, slot, false)));
      there |= here;
      asked |= open && place.nth() != 0;
      cells.add(new PaperView.Cell(open, before(plan.sitting(), place, steering, slot)));
    }
    return there && (asked || slot.point() != null || steering == Steering.STRAIGHT)
        ? Optional.of(new PaperView.Row(Capital.of(slot.words()), slot.rule(), cells))
        : Optional.empty();
  }

  /** In the unit it was read in alone: a box has no room for both. */
  private static String before(Sitting at, GuidePlan.Place place, Steering steering, Slot slot) {
    HeightName name = place.nameAt(slot);
    return name.onePlace()
        ? at.end(slot)
            .last(name, place.stood(), steering, slot.quantity(), slot.key())
            .map(r -> EntryWords.value(r.reading()).split(" · ", 2)[0])
            .orElse("")
        : "";
  }
}
