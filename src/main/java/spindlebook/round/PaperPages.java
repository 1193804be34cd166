package spindlebook.round;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.card.Shown;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.EntryWords;
import spindlebook.corner.HeightName;
import spindlebook.corner.HeightOrder;
import spindlebook.corner.Layout;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenReading;
import spindlebook.corner.SeenRound;
import spindlebook.corner.Steering;
import spindlebook.corner.Zeroing;
import spindlebook.log.Histories;
import spindlebook.units.TypedAngle;
import spindlebook.web.Cautions;
import spindlebook.web.Crumb;
import spindlebook.web.Html;
import spindlebook.web.Notice;
import spindlebook.web.PageFrame;

/** A round on paper, blank: any round of the book, or the one a corner would start with. */
public final class PaperPages {
  private final Histories histories;

  public PaperPages(Histories histories) {
    this.histories = histories;
  }

  public void ofRound(Context ctx) {
    Card card = histories.cardOf(ctx.pathParam("round")).orElseThrow(NotFoundResponse::new);
    SeenRound round = card.round(ctx.pathParam("round")).orElseThrow(NotFoundResponse::new);
    show(ctx, card, round.round(), Optional.of(round));
  }

  public void ofCorner(Context ctx) {
    Card card = histories.cornerCard(ctx.pathParam("corner")).orElseThrow(NotFoundResponse::new);
    show(ctx, card, usual(card), Optional.empty());
  }

  /** Spring out, stop in, wheel on, on stands: as the form for a new round comes up. */
  private static Content.Round usual(Card card) {
    return new Content.Round(
        card.corner(),
        false,
        true,
        true,
        false,
        true,
        null,
        null,
        null,
        card.details().unit(),
        null,
        null,
        null,
        null,
        null,
        null);
  }

  private void show(Context ctx, Card card, Content.Round round, Optional<SeenRound> started) {
    Crumb back =
        started
            .map(r -> new Crumb("the round", "/rounds/" + r.key()))
            .orElse(new Crumb(card.place().words(), "/corners/" + card.corner()));
    PageFrame frame =
        PageFrame.of("A blank sheet · Spindlebook", Capital.of(card.place().words()) + ", a round")
            .sub(card.details().name() + " · numbers without a unit: " + round.unit().word())
            .plan(Shown.plan(card))
            .crumbs(back)
            .notices(
                List.of(
                    new Notice(
                        Notice.Kind.NOTE,
                        card.layout() == Layout.SOLID_AXLE_END
                            ? "Print this page; afterwards it is typed from the round, height by"
                                + " height."
                            : "Print this page; afterwards it is typed from the round, 'from"
                                + " paper'.")))
            .caution(Cautions.MEASURING);
    PaperView view =
        new PaperView(
            lines(round, started),
            conditions(round, started),
            zeroing(round, started.isPresent()),
            histories
                .otherEnd(card)
                .map(o -> AxlePaper.heights(card, o, round))
                .orElseGet(() -> heights(card, round)));
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

  private static List<PaperView.Ticks> conditions(Content.Round r, Optional<SeenRound> started) {
    boolean known = started.isPresent();
    return List.of(
        either("Spring", "out", "in", known, r.springIn()),
        either("Bump stop", "in", "out", known, !r.bumpStopIn()),
        either("Wheel", "on", "off", known, !r.wheelOn()),
        either("On", "stands", "its tyres", known, r.onTyres()),
        either("Steering linked", "yes", "no", known, !r.steeringLinked()));
  }

  private static PaperView.Ticks either(
      String legend, String one, String other, boolean known, boolean isOther) {
    return new PaperView.Ticks(
        legend,
        List.of(
            new PaperView.Tick(one, known && !isOther),
            new PaperView.Tick(other, known && isOther)));
  }

  private static List<PaperView.Tick> zeroing(Content.Round round, boolean known) {
    return Arrays.stream(Zeroing.values())
        .filter(z -> !known || z.in(round))
        .map(z -> new PaperView.Tick(z.sentence(), round.zeroed().contains(z)))
        .toList();
  }

  /** In the order of the screen, and one more for a height nobody thought of. */
  private static List<PaperView.Height> heights(Card card, Content.Round round) {
    List<PaperView.Height> heights = new ArrayList<>();
    for (HeightName name : HeightOrder.of(round)) {
      heights.add(height(card, round, name, Capital.of(name.words())));
    }
    if (round.toRead().isEmpty()) {
      heights.add(height(card, round, HeightName.IN_BETWEEN, "Another height:"));
    }
    return heights;
  }

  private static PaperView.Height height(
      Card card, Content.Round round, HeightName name, String title) {
    List<PaperView.Swing> swings = new ArrayList<>();
    for (Steering steering :
        List.of(
            Steering.STRAIGHT,
            Steering.FULL_LEFT,
            Steering.PART_LEFT,
            Steering.PART_RIGHT,
            Steering.FULL_RIGHT)) {
      List<Asked> asked = asked(card, round, name, steering);
      if (!asked.isEmpty()) {
        swings.add(
            new PaperView.Swing(
                Capital.of(steering.words()),
                asked.stream().map(a -> row(card, name, steering, a)).toList()));
      }
    }
    return new PaperView.Height(
        title, List.of(new PaperView.Spindle("", spindleBefore(card, name))), swings);
  }

  /** Part lock, and the locks of a wheel that does not steer, only where they were asked for. */
  private static List<Asked> asked(
      Card card, Content.Round round, HeightName name, Steering steering) {
    boolean usual = steering == Steering.STRAIGHT || (steering.full() && card.layout().steered());
    return round.toRead().isEmpty() && !usual
        ? List.of()
        : Asked.planned(card, round, name, steering);
  }

  private static PaperView.Row row(Card card, HeightName name, Steering steering, Asked asked) {
    String point = asked.point() == null ? null : asked.point().point();
    String before =
        name.onePlace()
            ? card.last(name, steering, asked.quantity(), point)
                .map(r -> "last " + brief(r))
                .orElse("")
            : "";
    return new PaperView.Row(Capital.of(asked.words()), ReadingRows.rule(asked), before);
  }

  /** In the unit it was read in alone: a box has no room for both. */
  static String brief(SeenReading reading) {
    return EntryWords.value(reading.reading()).split(" · ", 2)[0];
  }

  /** Only of a name that is one place: any other height in between is another one. */
  private static String spindleBefore(Card card, HeightName name) {
    return card.heights().stream()
        .filter(h -> name.onePlace() && h.name() == name && h.height().spindle() != null)
        .reduce((first, second) -> second)
        .map(PaperPages::spindle)
        .orElse("");
  }

  private static String spindle(SeenHeight height) {
    return "last " + height.height().spindle().typed();
  }
}
