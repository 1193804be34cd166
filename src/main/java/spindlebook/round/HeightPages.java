package spindlebook.round;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.HeightName;
import spindlebook.corner.Quantity;
import spindlebook.corner.ReadingText;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenRound;
import spindlebook.corner.Steering;
import spindlebook.corner.WatchPoint;
import spindlebook.log.Histories;
import spindlebook.units.LengthUnit;
import spindlebook.web.Cautions;
import spindlebook.web.Crumb;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.Html;
import spindlebook.web.Lengths;
import spindlebook.web.PageFrame;
import spindlebook.web.PlanView;
import spindlebook.web.Posted;
import spindlebook.web.Steer;
import spindlebook.web.StepBand;
import spindlebook.web.Who;

/** Heights, and the readings that hang on them. */
public final class HeightPages {
  /** No row of this end, so that none of the other takes the thumb first. */
  private static final String ELSEWHERE = "-";

  private final Histories histories;
  private final RoundStore store;

  public HeightPages(Histories histories, RoundStore store) {
    this.histories = histories;
    this.store = store;
  }

  // --- a new height

  public void newHeight(Context ctx) {
    Card card = card(ctx, "round");
    SeenRound round = card.round(ctx.pathParam("round")).orElseThrow(NotFoundResponse::new);
    Map<String, List<String>> start = new HashMap<>();
    for (String said : List.of("name", AxleHeightForm.PAIRING, AxleHeightForm.OTHER_NAME)) {
      if (ctx.queryParam(said) != null) {
        start.put(said, List.of(ctx.queryParam(said)));
      }
    }
    showNew(ctx, card, round, new Posted(start), FormKey.fresh(card.lastChange()));
  }

  private static void showNew(Context ctx, Card card, SeenRound round, Posted posted, FormKey key) {
    HeightName next = RoundPages.nextName(card, round);
    PageFrame frame =
        PageFrame.of("A height · Spindlebook", Capital.of(card.place().words()) + ", a height")
            .sub("Straight ahead. " + RoundPages.conditions(round))
            .plan(Shown.plan(card).steered(Steer.STRAIGHT))
            .crumbs(new Crumb("the round", "/rounds/" + round.key()))
            .caution(Cautions.MEASURING);
    FormPage page =
        new FormPage(
            frame,
            "/rounds/" + round.key() + "/heights",
            key,
            HeightForm.parts(
                posted, card, round, next == null ? HeightName.IN_BETWEEN : next, Long.MAX_VALUE),
            "Keep this height",
            "/rounds/" + round.key());
    Html.form(ctx, posted, page);
  }

  public void create(Context ctx) {
    Card card = card(ctx, "round");
    SeenRound round = card.round(ctx.pathParam("round")).orElseThrow(NotFoundResponse::new);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    HeightForm form = HeightForm.read(posted, round, true);
    if (form instanceof HeightForm.Accepted accepted) {
      String kept = store.height(card, accepted.height(), key, Who.of(ctx));
      Html.next(ctx, "/heights/" + kept + "?saved=" + kept);
    } else {
      showNew(ctx, card, round, posted, key);
    }
  }

  // --- readings at a height

  public void height(Context ctx) {
    Card card = card(ctx, "height");
    Optional<SeenHeight> height = card.height(ctx.pathParam("height"));
    if (height.isEmpty()) {
      new GoneHeight(histories, store).show(ctx, card);
      return;
    }
    Steering steering = Sent.steering(ctx.queryParam("steering"));
    show(ctx, card, height.get(), steering, new Posted(Map.of()), "", null);
  }

  private void show(
      Context ctx,
      Card card,
      SeenHeight height,
      Steering steering,
      Posted posted,
      String wrongRow,
      FormKey wrongKey) {
    List<Asked> planned = Asked.planned(card, height.round(), height, steering);
    // A row that is sent back was shown, whether the round asked for it or not.
    boolean all =
        "1".equals(ctx.queryParam("all"))
            || !wrongRow.isEmpty() && planned.stream().noneMatch(a -> a.row().equals(wrongRow));
    List<Asked> everything = Asked.all(card, steering);
    List<Asked> asked = all || planned.isEmpty() ? everything : planned;
    Optional<Card> otherEnd =
        histories.otherEnd(card).filter(o -> o.height(height.key()).isPresent());
    boolean both = asked.size() == everything.size();
    String saved = ctx.queryParam("saved");
    Card savedOn =
        otherEnd.filter(o -> saved != null && card.reading(saved).isEmpty()).orElse(card);
    List<HeightView.Row> rows =
        new ArrayList<>(
            ReadingRows.of(
                card, histories.mirror(card), height, steering, asked, posted, wrongRow, wrongKey));
    if (both) {
      otherEnd.ifPresent(
          o ->
              rows.addAll(
                  ReadingRows.of(
                      o,
                      Optional.of(card),
                      o.height(height.key()).orElseThrow(),
                      steering,
                      Asked.allAt(o, steering),
                      posted,
                      wrongRow.isEmpty() ? ELSEWHERE : wrongRow,
                      wrongKey)));
    }
    List<HeightView.Said> others = new ArrayList<>(ReadingRows.others(card, height, steering));
    otherEnd.ifPresent(o -> others.addAll(ReadingRows.others(o, height, steering)));
    String here = "/heights/" + height.key() + "?steering=" + Posted.word(steering);
    HeightView view =
        new HeightView(
            height.key(),
            Posted.word(steering),
            tabs(card, height, steering),
            JustSaved.of(histories.of(card.car()), savedOn, saved),
            rows,
            others,
            said(card, otherEnd, height),
            asked.size() < everything.size() ? here + "&all=1" : null,
            "/rounds/" + height.round().key());
    PageFrame frame =
        PageFrame.of(
                Capital.of(card.place().words()) + " · " + height.words() + " · Spindlebook", "")
            .step(band(card, height, steering))
            .crumbs(new Crumb("the round", "/rounds/" + height.round().key()))
            .modules("/static/save-as-typed.js")
            .caution(Cautions.MEASURING);
    if (posted.ok()) {
      Html.show(ctx, Html.TEMPLATES.roundHeight(frame, view));
    } else {
      Html.again(ctx, Html.TEMPLATES.roundHeight(frame, view));
    }
  }

  /** Raw travel so far; on a solid axle where both ends stand comes first. */
  private static String said(Card card, Optional<Card> otherEnd, SeenHeight height) {
    Lengths lengths = new Lengths(card.details().unit());
    String raw = RoundPages.raw(card, height.round(), lengths);
    return otherEnd
        .flatMap(o -> o.height(height.key()).map(h -> position(o, h, lengths)))
        .map(
            other ->
                (Capital.of(position(card, height, lengths)) + "; " + other + ". " + raw).strip())
        .orElse(raw);
  }

  private static String position(Card card, SeenHeight height, Lengths lengths) {
    return card.place().words()
        + " "
        + (height.positionMm() == null
            ? "not known"
            : lengths.signedText(height.positionMm().value()) + " spindle less mark");
  }

  private static StepBand band(Card card, SeenHeight height, Steering steering) {
    Steer steer =
        switch (steering) {
          case FULL_LEFT, PART_LEFT -> Steer.LEFT;
          case FULL_RIGHT, PART_RIGHT -> Steer.RIGHT;
          case STRAIGHT -> Steer.STRAIGHT;
        };
    StepBand.Level level =
        switch (height.name()) {
          case STRAP_OFF, ON_THE_STRAP -> StepBand.Level.DOWN;
          case STOP_TOUCH, FULL_BUMP, STOP_OUT -> StepBand.Level.UP;
          case RIDE, IN_BETWEEN -> StepBand.Level.AT_RIDE;
        };
    PlanView plan = Shown.plan(card).steered(steer);
    return new StepBand(
        plan,
        Capital.of(card.place().words()),
        Capital.of(height.words()),
        level,
        card.layout().steered() ? "Steering " + steering.words() : "",
        "");
  }

  private static List<HeightView.Tab> tabs(Card card, SeenHeight height, Steering here) {
    if (!card.layout().steered()) {
      return List.of();
    }
    List<HeightView.Tab> tabs = new ArrayList<>();
    for (Steering s :
        List.of(
            Steering.FULL_LEFT,
            Steering.PART_LEFT,
            Steering.STRAIGHT,
            Steering.PART_RIGHT,
            Steering.FULL_RIGHT)) {
      long count =
          card.readingsAt(height.key()).stream().filter(r -> r.reading().steering() == s).count();
      boolean part = s == Steering.PART_LEFT || s == Steering.PART_RIGHT;
      if (!part || s == here || count > 0) {
        tabs.add(
            new HeightView.Tab(
                s.words(),
                "/heights/" + height.key() + "?steering=" + Posted.word(s),
                s == here,
                count == 0 ? "" : String.valueOf(count)));
      }
    }
    return tabs;
  }

  public void read(Context ctx) {
    Card card = card(ctx, "height");
    Optional<SeenHeight> there = card.height(ctx.pathParam("height"));
    Posted posted = Html.posted(ctx);
    Steering steering = Sent.steering(posted.text("steering"));
    Optional<Card> otherEnd = histories.otherEnd(card);
    Asked asked = Asked.byRow(card, otherEnd, steering, posted.text("row"));
    if (steering.steered() && !card.layout().steered()) {
      throw new NotFoundResponse();
    }
    if (there.isEmpty() || asked == null) {
      new GoneHeight(histories, store).keep(ctx, card, posted, steering, asked);
      return;
    }
    SeenHeight height = there.get();
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    String name = "v-" + asked.row();
    Optional<Content.Reading> reading = typed(posted, name, height, steering, asked);
    if (reading.isEmpty()) {
      show(ctx, card, height, steering, posted, asked.row(), key);
      return;
    }
    Card end = asked.otherEnd() == null ? card : otherEnd.orElseThrow();
    String kept = store.reading(end, reading.get(), key, Who.of(ctx));
    Html.next(
        ctx, "/heights/" + height.key() + "?steering=" + Posted.word(steering) + "&saved=" + kept);
  }

  /** The reading as typed, or empty with a problem posted to its field. */
  static Optional<Content.Reading> typed(
      Posted posted, String name, SeenHeight height, Steering steering, Asked asked) {
    return says(posted, name, height.round().round().unit(), asked.quantity(), asked.point())
        .map(says -> reading(height.key(), steering, asked, posted.text(name).strip(), says));
  }

  /** What a text says of one quantity, or empty with a problem posted to its field. */
  static Optional<ReadingText.Says> says(
      Posted posted, String name, LengthUnit bare, Quantity quantity, WatchPoint point) {
    String text = posted.text(name).strip();
    if (text.isEmpty()) {
      posted.wrong(name, "Type what the tape says, or tap one of the words.");
      return Optional.empty();
    }
    ReadingText.Result result = ReadingText.read(text, bare, quantity, point);
    if (result instanceof ReadingText.Refused refused) {
      posted.wrong(name, refused.sentence());
      return Optional.empty();
    }
    if (result instanceof ReadingText.Either either) {
      posted.ask(name, either.choices());
      return Optional.empty();
    }
    return Optional.of((ReadingText.Says) result);
  }

  static Content.Reading reading(
      String height, Steering steering, Asked asked, String text, ReadingText.Says says) {
    Content.Reading reading =
        new Content.Reading(
            height,
            steering,
            asked.quantity(),
            asked.point() == null ? null : asked.point().point(),
            says.result(),
            text,
            says.length(),
            says.angle(),
            says.go(),
            says.noGo(),
            null,
            null,
            null);
    return asked.otherEnd() == null ? reading : reading.withAtOtherEnd(true);
  }

  private Card card(Context ctx, String path) {
    return histories.cardOf(ctx.pathParam(path)).orElseThrow(NotFoundResponse::new);
  }
}
