package spindlebook.round;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.card.CornerBar;
import spindlebook.card.PutBack;
import spindlebook.card.TakesAlong;
import spindlebook.drawing.Lengths;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Steering;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.Cautions;
import spindlebook.page.FormKey;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;
import spindlebook.plan.JackPlan;
import spindlebook.units.LengthUnit;
import spindlebook.web.Who;
import spindlebook.words.EntryWords;

/** A new height of a round, and what is read at one, by steering. */
public record HeightPages(Histories histories, RoundStore store) {
  /** Shows the form of a new height, and takes it. */
  public void create(Context ctx) {
    Sitting at = Sitting.of(histories, ctx);
    Asked a = Asked.of(ctx, at.unit(), at.card().lastChange());
    Content.Height height =
        HeightForm.of(a, at, false).ask(proposed(ctx, at), true, Long.MAX_VALUE);
    if (!a.ok()) {
      PageFrame frame =
          at.frame("A height", Capital.of(at.card().place().words()) + ", a height")
              .sub("Straight ahead. " + RoundPages.conditions(at.card(), at.seen()))
              .caution(Cautions.MEASURING);
      a.show(ctx, frame, at.href() + "/heights", "Save", at.href());
      return;
    }
    String kept = store.keep(at.card(), height, a.key(), Who.of(ctx)).key();
    Html.next(ctx, "/heights/" + kept + "?saved=" + kept);
  }

  /** The place an address names, else what comes next. */
  private static Content.Height proposed(Context ctx, Sitting at) {
    HeightName next =
        GuidePlan.of(at).next().map(GuidePlan.Place::name).orElse(HeightName.IN_BETWEEN);
    Posted said = new Posted(ctx.queryParamMap());
    return HeightForm.at(
        at,
        said.word("name", HeightName.class, next),
        null,
        said.word("pairing", Pairing.class, null),
        said.word("otherName", HeightName.class, null));
  }

  // --- readings at a height

  public void height(Context ctx) {
    Card card = card(ctx);
    Optional<SeenHeight> height = card.height(ctx.pathParam("height"));
    if (height.isEmpty()) {
      gone(ctx, card);
      return;
    }
    Steering steering = SentReading.steering(new Posted(ctx.queryParamMap()));
    Sitting at = Sitting.of(histories, card, height.get().round());
    show(ctx, at, height.get(), steering, new Posted(Map.of()), "");
  }

  /**
   * @param sentBack the row that is wrong; empty when none was sent
   */
  private void show(
      Context ctx,
      Sitting at,
      SeenHeight height,
      Steering steering,
      Posted posted,
      String sentBack) {
    Card card = at.card();
    List<Slot> planned =
        at.planned(height.name(), height.height().label(), height.asked(), steering);
    List<Slot> everything =
        at.slots(
            steering,
            s -> s.row().equals(sentBack) || !at.readings(height.key(), steering, s).isEmpty());
    // A row that is sent back was shown, whether the round asked for it or not.
    boolean all =
        "1".equals(ctx.queryParam("all"))
            || JackPlan.whole(at.round())
            || !sentBack.isEmpty() && planned.stream().noneMatch(a -> a.row().equals(sentBack));
    List<Slot> slots = all || planned.isEmpty() ? everything : planned;
    HeightView view =
        new HeightView(
            height.key(),
            Posted.word(steering),
            tabs(card, height, steering),
            JustSaved.of(at, ctx.queryParam("saved")),
            ReadingRows.of(at, height, steering, slots, posted, sentBack),
            ReadingRows.others(at, height, steering),
            own(height),
            said(at, height),
            slots.size() < everything.size() ? address(height.key(), steering) + "&all=1" : null,
            at.href());
    PageFrame frame =
        PageFrame.of(
                Capital.of(card.place().words()) + " · " + height.words() + " · Spindlebook", "")
            .step(StepWords.band(card, height.name(), height.words(), steering, 0, 0))
            .up("the round", at.href())
            .modules("/static/save-as-typed.js")
            .caution(Cautions.MEASURING);
    Html.show(ctx, posted, Html.TEMPLATES.roundHeight(frame, view));
  }

  private static String own(SeenHeight height) {
    String read = GuideJson.words(height.height());
    return Capital.of(read + (read.isEmpty() ? "" : ", ") + "correct or withdraw");
  }

  static String address(String height, Steering steering) {
    return "/heights/" + height + "?steering=" + Posted.word(steering);
  }

  /** Raw travel so far; on a solid axle where both ends stand comes first. */
  private static String said(Sitting at, SeenHeight height) {
    Lengths lengths = new Lengths(at.card().details().unit());
    String raw = RoundPages.raw(at.card(), height.round(), lengths);
    return at.otherEnd()
        .flatMap(o -> o.height(height.key()).map(h -> lessMark(o, h, lengths)))
        .map(
            other ->
                (Capital.of(lessMark(at.card(), height, lengths)) + "; " + other + ". " + raw)
                    .strip())
        .orElse(raw);
  }

  static String position(Card card, SeenHeight height, Lengths lengths) {
    return card.place().words()
        + " "
        + (height.positionMm() == null
            ? "not known"
            : lengths.signedText(height.positionMm().value()));
  }

  private static String lessMark(Card card, SeenHeight height, Lengths lengths) {
    return position(card, height, lengths)
        + (height.positionMm() == null ? "" : " spindle less mark");
  }

  private static List<HeightView.Tab> tabs(Card card, SeenHeight height, Steering here) {
    List<Steering> swung =
        List.of(
            Steering.FULL_LEFT,
            Steering.PART_LEFT,
            Steering.STRAIGHT,
            Steering.PART_RIGHT,
            Steering.FULL_RIGHT);
    return swung.stream()
        .filter(s -> card.layout().steered())
        .filter(s -> s == here || s == Steering.STRAIGHT || s.full() || count(card, height, s) > 0)
        .map(
            s ->
                new HeightView.Tab(
                    s.words(),
                    address(height.key(), s),
                    s == here,
                    count(card, height, s) == 0 ? "" : String.valueOf(count(card, height, s))))
        .toList();
  }

  private static long count(Card card, SeenHeight height, Steering steering) {
    return card.readingsAt(height.key()).stream()
        .filter(r -> r.reading().steering() == steering)
        .count();
  }

  public void read(Context ctx) {
    Card card = card(ctx);
    String height = ctx.pathParam("height");
    Posted posted = Html.posted(ctx);
    Steering steering = SentReading.steering(posted);
    String row = posted.text("row");
    Optional<SeenHeight> there = card.height(height);
    Optional<Slot> slot = Slot.byRow(card, histories.of(card.car()).otherEnd(card), steering, row);
    if (steering.steered() && !card.layout().steered()) {
      throw new NotFoundResponse();
    }
    LengthUnit unit = unitOf(card, height);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    String field = "v-" + row;
    String text = posted.text(field).strip();
    SentReading sent = new SentReading(height, steering, row, text, null);
    Content.Reading reading;
    if (there.isPresent() && slot.isPresent()) {
      reading = sent.asked(slot.get(), unit, posted, field).orElse(null);
      if (reading == null) {
        Sitting at = Sitting.of(histories, card, there.get().round());
        show(ctx, at, there.get(), steering, posted, row);
        return;
      }
    } else if (row.isEmpty() || text.isEmpty()) {
      Html.next(ctx, "/heights/" + height);
      return;
    } else {
      // From a page that was open while its height, or what it asks for, was taken away.
      reading = sent.kept(slot, unit);
    }
    String kept = store.keep(card, reading, key, Who.of(ctx)).key();
    Html.next(ctx, address(height, steering) + "&saved=" + kept);
  }

  // --- a height that is no longer on its corner's card

  /** A height that was withdrawn, or answered away, keeps its address and says so there. */
  private void gone(Context ctx, Card card) {
    String key = ctx.pathParam("height");
    CarBook history = histories.of(card.car());
    Content.Height height = original(history, key, Content.Height.class);
    Content said = history.standing(key).orElse(height);
    Optional<PutBack> putBack = PutBack.of(history, key);
    String why =
        putBack.isPresent()
            ? ("It was withdrawn and stays in the book. " + TakesAlong.after(history, key)).strip()
            : "It does not count: somebody answered that it is not so, or its round is gone.";
    PageFrame frame =
        CornerBar.under(card, "Withdrawn", putBack.isPresent() ? "Withdrawn" : "Left out")
            .sub(card.place().words() + " · a height");
    String justKept =
        Optional.ofNullable(ctx.queryParam("saved"))
            .flatMap(history::standing)
            .map(c -> "Just kept, but not counted: " + new EntryWords(history).of(c) + ".")
            .orElse("");
    GoneView view =
        new GoneView(
            new EntryWords(history).of(said),
            why,
            justKept,
            putBack.orElse(null),
            "/entries/" + key,
            card.round(height.round()).map(r -> "/rounds/" + r.key()).orElse(null));
    Html.show(ctx, Html.TEMPLATES.roundGone(frame, view));
  }

  /** Of the round the height was read in, gone or not; where it is none it is not found. */
  private LengthUnit unitOf(Card card, String height) {
    CarBook history = histories.of(card.car());
    String round = original(history, height, Content.Height.class).round();
    return history.original(round).orElse(null) instanceof Content.Round r
        ? r.unit()
        : card.details().unit();
  }

  private static <C extends Content> C original(CarBook history, String key, Class<C> type) {
    return history
        .original(key)
        .filter(type::isInstance)
        .map(type::cast)
        .orElseThrow(NotFoundResponse::new);
  }

  private Card card(Context ctx) {
    return histories.cardOf(ctx.pathParam("height")).orElseThrow(NotFoundResponse::new);
  }
}
