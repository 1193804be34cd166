package spindlebook.round;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.card.Shown;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.EntryWords;
import spindlebook.corner.HeightName;
import spindlebook.corner.Quantity;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenReading;
import spindlebook.corner.SeenRound;
import spindlebook.log.Histories;
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
  private static final String CHANGE = "change";
  private static final int LISTED_ONE_BY_ONE = 6;

  private final Histories histories;
  private final RoundStore store;

  public RoundPages(Histories histories, RoundStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void newRound(Context ctx) {
    Card card = corner(ctx);
    show(ctx, card, new Posted(Map.of()), FormKey.fresh(card.lastChange()), again(ctx, card));
  }

  /** What no longer holds: all of it, or exactly what the change just made moved. */
  private static List<Content.ToRead> again(Context ctx, Card card) {
    if (!"1".equals(sent(ctx, "again"))) {
      return List.of();
    }
    String change = sent(ctx, CHANGE);
    return change == null ? card.toReadAgain() : card.toReadAgainAfter(change);
  }

  private static String sent(Context ctx, String name) {
    return Optional.ofNullable(ctx.formParam(name)).orElse(ctx.queryParam(name));
  }

  /** Each by name while they are few; by height when they are many. */
  private static String inShort(Card card, List<Content.ToRead> toRead) {
    if (toRead.size() <= LISTED_ONE_BY_ONE) {
      return String.join("; ", toRead.stream().map(t -> words(card, t)).toList());
    }
    Map<String, Long> byHeight =
        toRead.stream()
            .collect(
                Collectors.groupingBy(
                    t -> t.name().words(), LinkedHashMap::new, Collectors.counting()));
    return toRead.size()
        + " in all: "
        + byHeight.entrySet().stream()
            .map(e -> e.getValue() + " at '" + e.getKey() + "'")
            .collect(Collectors.joining(", "));
  }

  private void show(
      Context ctx, Card card, Posted posted, FormKey key, List<Content.ToRead> toRead) {
    List<FormPart> parts = new ArrayList<>();
    if (!toRead.isEmpty()) {
      parts.add(new FormPart.Said("To read again: " + inShort(card, toRead) + "."));
      parts.add(new FormPart.Hidden("again", "1"));
      if (sent(ctx, CHANGE) != null) {
        parts.add(new FormPart.Hidden(CHANGE, sent(ctx, CHANGE)));
      }
    }
    parts.addAll(RoundForm.parts(posted, card, Who.of(ctx)));
    List<Notice> notices = new ArrayList<>();
    String saved = ctx.queryParam(CHANGE);
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
        PageFrame.of("A round · Spindlebook", toRead.isEmpty() ? "Start a round" : "Read again")
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

  public void start(Context ctx) {
    Card card = corner(ctx);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    List<Content.ToRead> toRead = again(ctx, card);
    RoundForm form = RoundForm.read(posted, card, toRead);
    if (!(form instanceof RoundForm.Accepted accepted)) {
      show(ctx, card, posted, key, toRead);
      return;
    }
    store.start(accepted.round(), key, accepted.who());
    Who.remember(ctx, accepted.who());
    Html.next(ctx, "/rounds/" + key.key() + "/guide");
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
              card.heightsOf(round.key()).size() + " heights, " + readings + " readings",
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
    PageFrame frame =
        PageFrame.of("Round · Spindlebook", Capital.of(card.place().words()) + ", a round")
            .sub(Days.minute(round.at()) + " · " + round.who())
            .plan(Shown.plan(card))
            .crumbs(new Crumb(card.place().words(), "/corners/" + card.corner()))
            .caution(Cautions.MEASURING);
    List<RoundView.PlanLine> plan = plan(card, round);
    HeightName next = nextName(card, round);
    RoundView view =
        new RoundView(
            round.key(),
            conditions(round),
            card.heightsOf(round.key()).stream().map(h -> line(card, h, lengths)).toList(),
            plan,
            raw(card, round, lengths),
            next == null ? "in between" : next.words(),
            "/rounds/"
                + round.key()
                + "/heights/new"
                + (next == null ? "" : "?name=" + Posted.word(next)),
            histories
                .of(card.car())
                .cornerAt(card.place().mirror())
                .map(c -> card.place().mirror().words())
                .orElse(null));
    Html.show(ctx, Html.TEMPLATES.roundRound(frame, view, FormKey.fresh(card.lastChange())));
  }

  private static RoundView.HeightLine line(Card card, SeenHeight h, Lengths lengths) {
    long readings = card.readingsAt(h.key()).size();
    return new RoundView.HeightLine(
        h.words(),
        h.positionMm() == null ? null : lengths.signedFigure(h.positionMm().value()),
        Shown.state(h.stands().counts() ? h.stop() : h.stands()),
        readings == 1 ? "1 reading" : readings + " readings",
        "/heights/" + h.key());
  }

  /** The named place that comes next from droop to bump, among those asked for; null when done. */
  static HeightName nextName(Card card, SeenRound round) {
    List<HeightName> read = card.heightsOf(round.key()).stream().map(SeenHeight::name).toList();
    List<Content.ToRead> plan = round.round().toRead();
    List<HeightName> order =
        plan.isEmpty()
            ? List.of(HeightName.ON_THE_STRAP, HeightName.RIDE, HeightName.STOP_TOUCH)
            : plan.stream().map(Content.ToRead::name).distinct().toList();
    return order.stream().filter(n -> !read.contains(n)).findFirst().orElse(null);
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
    parts.add(seen.gapTool().name());
    if (r.note() != null) {
      parts.add(r.note());
    }
    return String.join(" · ", parts);
  }

  static String raw(Card card, SeenRound round, Lengths lengths) {
    double[] mm =
        card.heightsOf(round.key()).stream()
            .filter(SeenHeight::positionCounts)
            .mapToDouble(h -> h.positionMm().value())
            .sorted()
            .toArray();
    return mm.length < 2
        ? ""
        : "Raw travel in this round so far: " + lengths.text(mm[mm.length - 1] - mm[0]) + ".";
  }

  private static List<RoundView.PlanLine> plan(Card card, SeenRound round) {
    List<RoundView.PlanLine> lines = new ArrayList<>();
    for (Content.ToRead toRead : round.round().toRead()) {
      Optional<SeenHeight> height =
          card.heightsOf(round.key()).stream()
              .filter(h -> h.name() == toRead.name() && h.positionCounts())
              .findFirst();
      boolean done =
          toRead.quantity() == null
              ? height.isPresent()
              : card.readings().stream()
                  .anyMatch(
                      r ->
                          r.height().round().key().equals(round.key())
                              && is(r, toRead)
                              && r.counts());
      String href =
          height.isEmpty()
              ? "/rounds/" + round.key() + "/heights/new?name=" + Posted.word(toRead.name())
              : "/heights/" + height.get().key() + "?steering=" + Posted.word(toRead.steering());
      lines.add(new RoundView.PlanLine(words(card, toRead), done, href));
    }
    return lines;
  }

  private static boolean is(SeenReading reading, Content.ToRead toRead) {
    return reading.height().name() == toRead.name()
        && reading.reading().steering() == toRead.steering()
        && (toRead.quantity() == Quantity.WATCH_POINT
            ? reading.of(toRead.point())
            : reading.of(toRead.quantity()));
  }

  static String words(Card card, Content.ToRead toRead) {
    String label = toRead.label() == null ? "" : ", " + toRead.label();
    String height = toRead.name().words() + label;
    if (toRead.quantity() == null) {
      return "the height '" + height + "'";
    }
    String what =
        toRead.quantity() == Quantity.WATCH_POINT
            ? card.watchPoint(toRead.point()).map(p -> p.name()).orElse(toRead.point())
            : toRead.quantity().words();
    return what + " at '" + height + "', " + toRead.steering().words();
  }

  /** Left was typed for right: the whole round moves to the mirror corner, by a correction. */
  public void otherSide(Context ctx) {
    Card card = card(ctx);
    SeenRound round = card.round(ctx.pathParam("round")).orElseThrow(NotFoundResponse::new);
    CarBook history = histories.of(card.car());
    String mirror = history.cornerAt(card.place().mirror()).orElseThrow(NotFoundResponse::new);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    Content.Round moved = round.round().withCorner(mirror);
    store.correct(
        round.key(), moved, "these were the " + card.place().mirror().words(), key, Who.of(ctx));
    Html.next(ctx, "/rounds/" + round.key());
  }

  private Card corner(Context ctx) {
    return histories.cornerCard(ctx.pathParam("corner")).orElseThrow(NotFoundResponse::new);
  }

  private Card card(Context ctx) {
    return histories.cardOf(ctx.pathParam("round")).orElseThrow(NotFoundResponse::new);
  }
}
