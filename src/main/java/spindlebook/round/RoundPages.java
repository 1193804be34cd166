package spindlebook.round;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.Days;
import spindlebook.card.Shown;
import spindlebook.corner.AxleOrder;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.EntryWords;
import spindlebook.corner.HeightName;
import spindlebook.corner.HeightOrder;
import spindlebook.corner.Layout;
import spindlebook.corner.Pairing;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenReading;
import spindlebook.corner.SeenRound;
import spindlebook.corner.Tool;
import spindlebook.corner.ToolUse;
import spindlebook.corner.Zeroing;
import spindlebook.log.Histories;
import spindlebook.travel.CornerTravel;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeFormat;
import spindlebook.web.Cautions;
import spindlebook.web.Crumb;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.FormPart;
import spindlebook.web.Html;
import spindlebook.web.Lengths;
import spindlebook.web.Notice;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** Rounds: starting one, looking at it, moving it to the other side. */
public final class RoundPages {
  private static final String MOVED = "moved";

  private final Histories histories;
  private final RoundStore store;

  public RoundPages(Histories histories, RoundStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void newRound(Context ctx) {
    Card card = corner(ctx);
    List<Content.ToRead> toRead = RoundPlan.asked(ctx, card);
    show(ctx, card, usual(toRead), FormKey.fresh(card.lastChange()), toRead);
  }

  /**
   * A car is at ride height on its tyres, with its springs in; a wheel goes past its bump stop with
   * that out.
   */
  private static Posted usual(List<Content.ToRead> toRead) {
    boolean ride = !toRead.isEmpty() && toRead.stream().allMatch(t -> t.name() == HeightName.RIDE);
    if (ride) {
      return new Posted(Map.of("spring", List.of("in"), "on", List.of("tyres")));
    }
    boolean stopOut = toRead.stream().anyMatch(t -> t.name() == HeightName.STOP_OUT);
    return new Posted(stopOut ? Map.of("bumpStop", List.of("out")) : Map.of());
  }

  private void show(
      Context ctx, Card card, Posted posted, FormKey key, List<Content.ToRead> toRead) {
    List<FormPart> parts = new ArrayList<>(RoundPlan.parts(ctx, card, toRead));
    parts.addAll(RoundForm.parts(posted, card, Who.of(ctx)));
    List<Notice> notices = new ArrayList<>();
    String saved = ctx.queryParam(RoundPlan.CHANGE);
    if (saved != null) {
      CarBook history = histories.of(card.car());
      history
          .standing(saved)
          .ifPresent(
              c ->
                  notices.add(
                      new Notice(
                          Notice.Kind.BOOK, "In the book: " + new EntryWords(history).of(c))));
      if (toRead.isEmpty()) {
        notices.add(new Notice(Notice.Kind.NOTE, "Nothing has to be read again."));
      }
    }
    PageFrame frame =
        PageFrame.of("A round · Spindlebook", heading(ctx, toRead))
            .sub(card.place().words())
            .plan(Shown.plan(card))
            .crumbs(new Crumb(card.place().words(), "/corners/" + card.corner()))
            .notices(notices)
            .caution(Cautions.MEASURING);
    FormPage page =
        new FormPage(
            frame,
            "/corners/" + card.corner() + "/rounds",
            key,
            parts,
            "Start",
            "/corners/" + card.corner());
    Html.form(ctx, posted, page);
  }

  private static String heading(Context ctx, List<Content.ToRead> toRead) {
    if (toRead.isEmpty()) {
      return "Start a round";
    }
    return RoundPlan.again(ctx) ? "Read again" : "Read what is needed";
  }

  public void start(Context ctx) {
    Card card = corner(ctx);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    List<Content.ToRead> toRead = RoundPlan.asked(ctx, card);
    RoundForm form = RoundForm.read(posted, card, toRead);
    if (!(form instanceof RoundForm.Accepted accepted)) {
      show(ctx, card, posted, key, toRead);
      return;
    }
    String kept = store.start(accepted.round(), key, accepted.who());
    Who.remember(ctx, accepted.who());
    Html.next(ctx, "/rounds/" + kept + "/guide");
  }

  public void ofCorner(Context ctx) {
    Card card = corner(ctx);
    PageFrame frame =
        PageFrame.of("Rounds · Spindlebook", "Rounds")
            .sub(card.place().words())
            .plan(Shown.plan(card))
            .crumbs(new Crumb(card.place().words(), "/corners/" + card.corner()));
    List<RoundLine> lines = new ArrayList<>();
    for (SeenRound round : card.rounds()) {
      long readings =
          card.readings().stream()
              .filter(r -> r.height().round().key().equals(round.key()))
              .count();
      lines.add(
          0,
          new RoundLine(
              Days.day(round.at()),
              round.who(),
              Counted.of(card.heightsOf(round.key()).size(), "height")
                  + ", "
                  + Counted.of(readings, "reading"),
              "/rounds/" + round.key()));
    }
    Html.show(
        ctx, Html.TEMPLATES.roundList(frame, lines, "/corners/" + card.corner() + "/rounds/new"));
  }

  /** One round in a corner's list. */
  public record RoundLine(String day, String who, String detail, String href) {}

  public void round(Context ctx) {
    Card card = card(ctx);
    SeenRound round = card.round(ctx.pathParam("round")).orElseThrow(NotFoundResponse::new);
    Lengths lengths = new Lengths(card.details().unit());
    OtherSide moved = new OtherSide(card, round);
    List<RoundView.OtherLine> notWatched = moved.notWatched(histories.mirror(card));
    PageFrame frame =
        PageFrame.of("Round · Spindlebook", Capital.of(card.place().words()) + ", a round")
            .sub(Days.minute(round.at()) + " · " + round.who())
            .plan(Shown.plan(card))
            .crumbs(new Crumb(card.place().words(), "/corners/" + card.corner()))
            .notices("1".equals(ctx.queryParam(MOVED)) ? moved.notices() : List.of())
            .caution(Cautions.MEASURING);
    Optional<Card> otherEnd = histories.otherEnd(card);
    RoundView view =
        new RoundView(
            round.key(),
            conditions(round),
            notZeroed(round.round()),
            card.heightsOf(round.key()).stream()
                .map(h -> line(card, otherEnd, h, lengths))
                .toList(),
            RoundPlan.lines(card, round),
            OrderWords.of(round.round().toRead()),
            notWatched,
            notWatched.isEmpty() ? null : "/corners/" + card.corner() + "/watch-points",
            raw(card, round, lengths),
            nextWords(card, round),
            nextHref(card, round),
            histories
                .mirror(card)
                .map(m -> m.place().words())
                .map(m -> these(card, m))
                .orElse(null),
            otherEnd.isEmpty() ? "/rounds/" + round.key() + "/guide" : null,
            otherGapTool(card, round)
                .map(
                    t ->
                        (t.use() == ToolUse.TAPE ? "All gaps with " : "Narrow gaps with ")
                            + t.name())
                .orElse(null));
    Html.show(ctx, Html.TEMPLATES.roundRound(frame, view, FormKey.fresh(card.lastChange())));
  }

  private static String these(Card card, String mirror) {
    return card.layout() == Layout.SOLID_AXLE_END ? mirror + ": change the ends over" : mirror;
  }

  private static String nextWords(Card card, SeenRound round) {
    if (card.layout() == Layout.SOLID_AXLE_END) {
      return nextOfAxle(card, round).map(AxleOrder::words).orElse("in between");
    }
    HeightName next = nextName(card, round);
    return next == null ? "in between" : next.words();
  }

  private static String nextHref(Card card, SeenRound round) {
    if (card.layout() == Layout.SOLID_AXLE_END) {
      return newHeight(
          round, nextOfAxle(card, round).orElse(AxleOrder.together(HeightName.IN_BETWEEN)));
    }
    HeightName next = nextName(card, round);
    String name = next == null ? "" : "?name=" + Posted.word(next);
    return "/rounds/" + round.key() + "/heights/new" + name;
  }

  private static Optional<AxleOrder> nextOfAxle(Card card, SeenRound round) {
    return AxleOrder.left(round.round(), card.heightsOf(round.key())).stream().findFirst();
  }

  /** The form of a height of a solid axle, with how its ends stand. */
  static String newHeight(SeenRound round, AxleOrder height) {
    return "/rounds/"
        + round.key()
        + "/heights/new?name="
        + Posted.word(height.name())
        + "&pairing="
        + Posted.word(height.pairing())
        + (height.pairing() == Pairing.CROSSED
            ? "&otherName=" + Posted.word(height.otherEnd())
            : "");
  }

  private static String notZeroed(Content.Round round) {
    List<String> not =
        Arrays.stream(Zeroing.values())
            .filter(z -> z.in(round) && !round.zeroed().contains(z))
            .map(Zeroing::words)
            .toList();
    return not.isEmpty() ? "" : "Not zeroed, or not said: " + String.join(", ", not) + ".";
  }

  private static RoundView.HeightLine line(
      Card card, Optional<Card> otherEnd, SeenHeight h, Lengths lengths) {
    long there =
        otherEnd.map(o -> o.readingsAt(h.key()).stream().filter(r -> !twice(r)).count()).orElse(0L);
    return new RoundView.HeightLine(
        h.words(),
        h.positionMm() == null ? null : lengths.signedFigure(h.positionMm().value()),
        Shown.state(h.stands().counts() ? h.stop() : h.stands()),
        otherEnd.flatMap(o -> o.height(h.key()).map(s -> other(o, s, lengths) + " · ")).orElse("")
            + Counted.of(card.readingsAt(h.key()).size() + there, "reading"),
        "/heights/" + h.key());
  }

  /** What lies at an axle's middle is on both ends' cards. */
  private static boolean twice(SeenReading reading) {
    return reading.pointThen() != null && reading.pointThen().place().ofTheAxle();
  }

  private static String other(Card card, SeenHeight h, Lengths lengths) {
    return card.place().words()
        + " "
        + (h.positionMm() == null ? "not known" : lengths.signedText(h.positionMm().value()));
  }

  /** The place that comes next, among those asked for; null when there is none. */
  static HeightName nextName(Card card, SeenRound round) {
    List<HeightName> read = card.heightsOf(round.key()).stream().map(SeenHeight::name).toList();
    return HeightOrder.left(round.round(), read).stream().findFirst().orElse(null);
  }

  static String conditions(SeenRound seen) {
    Content.Round r = seen.round();
    List<String> parts = new ArrayList<>();
    parts.add("spring " + (r.springIn() ? "in" : "out"));
    parts.add("bump stop " + (r.bumpStopIn() ? "in" : "out"));
    parts.add("wheel " + (r.wheelOn() ? "on" : "off"));
    parts.add(r.onTyres() ? "on its tyres" : "on stands");
    parts.add(r.steeringLinked() ? "steering linked" : "steering not linked");
    if (r.rake() != null) {
      parts.add("rake " + r.rake().typed());
    }
    if (r.roll() != null) {
      parts.add("roll " + r.roll().typed());
    }
    if (r.pressure() != null) {
      parts.add(r.pressure());
    }
    parts.add(seen.tape().name());
    parts.add(gapsWith(seen));
    if (r.note() != null) {
      parts.add(r.note());
    }
    return String.join(" · ", parts);
  }

  /** "Gaps: drill shanks to 1/2 in, tape above". */
  static String gapsWith(SeenRound seen) {
    Tool gaps = seen.gapTool();
    if (gaps.use() != ToolUse.GAPS) {
      return gaps.name();
    }
    LengthUnit unit = seen.round().unit();
    return gaps.name()
        + " to "
        + TapeFormat.length(gaps.largestMm(), unit, 64)
        + ", above it "
        + seen.tape().name();
  }

  /** The other way to read this round's gaps: all with the tape, or shanks for the narrow ones. */
  private static Optional<Tool> otherGapTool(Card card, SeenRound round) {
    ToolUse other = round.gapTool().use() == ToolUse.GAPS ? ToolUse.TAPE : ToolUse.GAPS;
    return other == ToolUse.TAPE
        ? Optional.of(round.tape())
        : card.tools().stream().filter(t -> t.use() == other).findFirst();
  }

  /** One tap: every gap of the round was taped, or was not. */
  public void gapTool(Context ctx) {
    Card card = card(ctx);
    SeenRound round = card.round(ctx.pathParam("round")).orElseThrow(NotFoundResponse::new);
    Tool other = otherGapTool(card, round).orElseThrow(NotFoundResponse::new);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    Content.Round changed = round.round().withGapTool(other.tool());
    store.correct(round.key(), changed, "gaps with " + other.name(), key, Who.of(ctx));
    Html.next(ctx, "/rounds/" + round.key());
  }

  /** From stop to stop; past a stop that is off or out is told apart: no wheel drives there. */
  static String raw(Card card, SeenRound round, Lengths lengths) {
    List<SeenHeight> all =
        card.heightsOf(round.key()).stream().filter(SeenHeight::positionCounts).toList();
    List<SeenHeight> onIt = all.stream().filter(h -> !h.name().pastAStop()).toList();
    List<String> told = new ArrayList<>();
    CornerTravel.rawMm(onIt.stream())
        .map(mm -> "Raw travel in this round so far: " + lengths.text(mm.value()) + ".")
        .ifPresent(told::add);
    CornerTravel.rawMm(all.stream())
        .filter(mm -> all.size() > onIt.size())
        .map(mm -> "With strap off or stop out: " + lengths.text(mm.value()) + ".")
        .ifPresent(told::add);
    return String.join(" ", told);
  }

  /** Left was typed for right: the whole round moves to the mirror corner, by a correction. */
  public void otherSide(Context ctx) {
    Card card = card(ctx);
    SeenRound round = card.round(ctx.pathParam("round")).orElseThrow(NotFoundResponse::new);
    Card mirror = histories.mirror(card).orElseThrow(NotFoundResponse::new);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    // Pressed twice it moves once: where the other side is has changed by then.
    if (store.written(key.key()).isEmpty()) {
      Content.Round moved = round.round().withCorner(mirror.corner());
      String why = "these were the " + mirror.place().words();
      store.correct(round.key(), moved, why, key, Who.of(ctx));
    }
    Html.next(ctx, "/rounds/" + round.key() + "?" + MOVED + "=1");
  }

  private Card corner(Context ctx) {
    return histories.cornerCard(ctx.pathParam("corner")).orElseThrow(NotFoundResponse::new);
  }

  private Card card(Context ctx) {
    return histories.cardOf(ctx.pathParam("round")).orElseThrow(NotFoundResponse::new);
  }
}
