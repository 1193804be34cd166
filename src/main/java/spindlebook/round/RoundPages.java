package spindlebook.round;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import spindlebook.card.Addressed;
import spindlebook.card.Capital;
import spindlebook.card.CornerBar;
import spindlebook.card.Counted;
import spindlebook.card.Days;
import spindlebook.card.Shown;
import spindlebook.definition.Tool;
import spindlebook.definition.ToolUse;
import spindlebook.drawing.Lengths;
import spindlebook.entry.Content;
import spindlebook.entry.Zeroing;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.fold.SeenRound;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.Cautions;
import spindlebook.page.FormKey;
import spindlebook.page.Html;
import spindlebook.page.Link;
import spindlebook.page.Notice;
import spindlebook.page.PageFrame;
import spindlebook.travel.CornerTravel;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeFormat;
import spindlebook.web.Who;
import spindlebook.words.EntryWords;

/** Rounds: starting one, looking at it, moving it to the other side. */
public record RoundPages(Histories histories, RoundStore store) {
  private static final String MOVED = "moved";

  /** Shows the form of a new round, and starts one. */
  public void start(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    List<Content.ToRead> toRead = RoundPlan.asked(ctx, card);
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    RoundPlan.ask(a, ctx, card, toRead);
    RoundForm form = RoundForm.ask(a, card, RoundForm.usual(card, toRead), Who.of(ctx));
    String corner = "/corners/" + card.corner();
    if (!a.ok()) {
      Sitting at = Sitting.of(histories, card, form.round());
      a.more(
          "The heights, in order",
          () -> {
            StandWords.heights(at, GuidePlan.of(at, List.of())).forEach(a::said);
            return null;
          });
      PageFrame frame =
          CornerBar.under(card, "A round", heading(ctx, toRead))
              .notices(afterAChange(ctx, card, toRead))
              .caution(Cautions.MEASURING);
      a.show(ctx, frame, corner + "/rounds", "Start", corner);
      return;
    }
    String kept = store.keep(card, form.round(), a.key(), form.who()).key();
    Who.remember(ctx, form.who());
    Html.next(ctx, "/rounds/" + kept + "/guide");
  }

  /** The change that sent one here. */
  private List<Notice> afterAChange(Context ctx, Card card, List<Content.ToRead> toRead) {
    List<Notice> notices = new ArrayList<>();
    String saved = ctx.queryParam(RoundPlan.CHANGE);
    if (saved != null) {
      CarBook history = histories.of(card.car());
      history
          .standing(saved)
          .map(c -> "In the book: " + new EntryWords(history).of(c))
          .ifPresent(words -> notices.add(new Notice(Notice.Kind.BOOK, words)));
      if (toRead.isEmpty()) {
        notices.add(new Notice(Notice.Kind.NOTE, "Nothing to measure again."));
      }
    }
    return notices;
  }

  private static String heading(Context ctx, List<Content.ToRead> toRead) {
    if (toRead.isEmpty()) {
      return "Start a round";
    }
    return RoundPlan.again(ctx) ? "Read again" : "Read what is needed";
  }

  public void ofCorner(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    PageFrame frame = CornerBar.under(card, "Rounds", "Rounds");
    List<RoundLine> lines = new ArrayList<>();
    for (SeenRound round : card.rounds()) {
      lines.add(
          0,
          new RoundLine(
              Days.day(round.at()),
              round.who(),
              Counted.of(card.heightsOf(round.key()).size(), "height")
                  + ", "
                  + Counted.of(card.readingsIn(round.key()).size(), "reading"),
              "/rounds/" + round.key()));
    }
    Html.show(
        ctx, Html.TEMPLATES.roundList(frame, lines, "/corners/" + card.corner() + "/rounds/new"));
  }

  /** One round in a corner's list. */
  public record RoundLine(String day, String who, String detail, String href) {}

  public void round(Context ctx) {
    Sitting at = Sitting.of(histories, ctx);
    Card card = at.card();
    SeenRound round = at.seen();
    Lengths lengths = new Lengths(card.details().unit());
    OtherSide moved = new OtherSide(card, round);
    Optional<Card> mirror = Optional.ofNullable(at.mirror());
    List<Link> notWatched = moved.notWatched(mirror);
    PageFrame frame =
        CornerBar.under(card, "Round", Capital.of(card.place().words()) + ", a round")
            .sub(Days.minute(round.at()) + " · " + round.who())
            .notices("1".equals(ctx.queryParam(MOVED)) ? moved.notices() : List.of())
            .caution(Cautions.MEASURING);
    Optional<GuidePlan.Place> next = GuidePlan.of(at).next();
    RoundView view =
        new RoundView(
            round.key(),
            conditions(card, round),
            notZeroed(at),
            card.heightsOf(round.key()).stream()
                .map(h -> line(card, at.otherEnd(), h, lengths))
                .toList(),
            RoundPlan.lines(at),
            notWatched,
            notWatched.isEmpty() ? null : "/corners/" + card.corner() + "/watch-points",
            raw(card, round, lengths),
            next.map(GuidePlan.Place::words).orElse("in between"),
            next.map(p -> GuidePlan.newHeight(at, p.name(), p.pairing(), p.otherName()))
                .orElse(at.href() + "/heights/new"),
            mirror
                .map(m -> m.place().words() + (at.axle() ? ": change the ends over" : ""))
                .orElse(null),
            otherGapTool(card, round)
                .map(
                    t ->
                        (t.use() == ToolUse.TAPE ? "All gaps with " : "Narrow gaps with ")
                            + t.name())
                .orElse(null));
    Html.show(ctx, Html.TEMPLATES.roundRound(frame, view, FormKey.fresh(card.lastChange())));
  }

  private static String notZeroed(Sitting at) {
    List<String> not =
        Arrays.stream(Zeroing.values())
            .filter(z -> z.at(at.card().layout()) && z.in(at.round()))
            .filter(z -> !at.round().zeroed().contains(z))
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
        otherEnd
                .flatMap(
                    o -> o.height(h.key()).map(s -> HeightPages.position(o, s, lengths) + " · "))
                .orElse("")
            + Counted.of(card.readingsAt(h.key()).size() + there, "reading"),
        "/heights/" + h.key());
  }

  /** What lies at an axle's middle is on both ends' cards. */
  private static boolean twice(SeenReading reading) {
    return reading.pointThen() != null && reading.pointThen().place().ofTheAxle();
  }

  static String conditions(Card card, SeenRound seen) {
    Content.Round r = seen.round();
    List<String> parts = new ArrayList<>();
    parts.add("spring " + (r.springIn() ? "in" : "out"));
    parts.add("bump stop " + (r.bumpStopIn() ? "in" : "out"));
    parts.add("wheel " + (r.wheelOn() ? "on" : "off"));
    parts.add(r.onTyres() ? "on its tyres" : "on stands");
    if (card.layout().steered()) {
      parts.add(r.steeringLinked() ? "steering linked" : "steering not linked");
    }
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

  /** "Gaps: drill shanks below 1/2 in, from there tape". */
  static String gapsWith(SeenRound seen) {
    Tool gaps = seen.gapTool();
    if (gaps.use() != ToolUse.GAPS) {
      return gaps.name();
    }
    LengthUnit unit = seen.round().unit();
    return gaps.name()
        + " below "
        + TapeFormat.length(gaps.largestMm(), unit, 64)
        + ", from there "
        + seen.tape().name();
  }

  /** The other way to read this round's gaps: all with the tape, or shanks for the narrow ones. */
  private static Optional<Tool> otherGapTool(Card card, SeenRound round) {
    ToolUse other = round.gapTool().use() == ToolUse.GAPS ? ToolUse.TAPE : ToolUse.GAPS;
    return other == ToolUse.TAPE
        ? Optional.of(round.tape())
        : card.tools().stream().filter(t -> t.use() == other).findFirst();
  }

  /** One tap: every gap of the round was taped, or was not; nothing where no other tool is left. */
  public void gapTool(Context ctx) {
    Sitting at = Sitting.of(histories, ctx);
    otherGapTool(at.card(), at.seen())
        .ifPresentOrElse(
            t -> correct(ctx, at, at.round().withGapTool(t.tool()), "gaps with " + t.name(), ""),
            () -> Html.next(ctx, at.href()));
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
    Sitting at = Sitting.of(histories, ctx);
    Card mirror = Optional.ofNullable(at.mirror()).orElseThrow(NotFoundResponse::new);
    String why = "these were the " + mirror.place().words();
    correct(ctx, at, at.round().withCorner(mirror.corner()), why, "?" + MOVED + "=1");
  }

  /** Pressed twice it is done once: what is the other one has changed by then. */
  private void correct(Context ctx, Sitting at, Content.Round to, String why, String next) {
    FormKey key = Html.posted(ctx).formKey().orElseGet(() -> FormKey.fresh(at.card().lastChange()));
    if (store.written(key.key()).isEmpty()) {
      Content said = new Content.Correction(at.key(), to, why);
      store.keep(at.card(), said, key, Who.of(ctx));
    }
    Html.next(ctx, at.href() + next);
  }
}
