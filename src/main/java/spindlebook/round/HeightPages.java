package spindlebook.round;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.card.Shown;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.EntryWords;
import spindlebook.corner.HeightName;
import spindlebook.corner.ReadingText;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenReading;
import spindlebook.corner.SeenRound;
import spindlebook.corner.Standing;
import spindlebook.corner.Steering;
import spindlebook.log.Histories;
import spindlebook.uncertainty.Figure;
import spindlebook.web.Cautions;
import spindlebook.web.Crumb;
import spindlebook.web.Field;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.Html;
import spindlebook.web.Lengths;
import spindlebook.web.PageFrame;
import spindlebook.web.Pick;
import spindlebook.web.PlanView;
import spindlebook.web.Posted;
import spindlebook.web.ReadingRow;
import spindlebook.web.Steer;
import spindlebook.web.StepBand;
import spindlebook.web.Who;

/** Heights, and the readings that hang on them. */
public final class HeightPages {
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
    String name = ctx.queryParam("name");
    Map<String, List<String>> start = name == null ? Map.of() : Map.of("name", List.of(name));
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
    HeightForm form = HeightForm.read(posted, round);
    if (form instanceof HeightForm.Accepted accepted) {
      store.height(card, accepted.height(), key, Who.of(ctx));
      Html.next(ctx, "/heights/" + key.key() + "?saved=" + key.key());
    } else {
      showNew(ctx, card, round, posted, key);
    }
  }

  // --- readings at a height

  public void height(Context ctx) {
    Card card = card(ctx, "height");
    SeenHeight height = card.height(ctx.pathParam("height")).orElseThrow(NotFoundResponse::new);
    Steering steering = steering(ctx.queryParam("steering"));
    show(ctx, card, height, steering, new Posted(Map.of()), "", null);
  }

  private static Steering steering(String word) {
    for (Steering s : Steering.values()) {
      if (Posted.word(s).equals(word)) {
        return s;
      }
    }
    return Steering.STRAIGHT;
  }

  private void show(
      Context ctx,
      Card card,
      SeenHeight height,
      Steering steering,
      Posted posted,
      String wrongRow,
      FormKey wrongKey) {
    boolean all = "1".equals(ctx.queryParam("all"));
    List<Asked> planned = Asked.planned(card, height.round(), height, steering);
    List<Asked> everything = Asked.all(card, steering);
    List<Asked> asked = all || planned.isEmpty() ? everything : planned;
    String here = "/heights/" + height.key() + "?steering=" + Posted.word(steering);
    HeightView view =
        new HeightView(
            height.key(),
            Posted.word(steering),
            tabs(card, height, steering),
            saved(ctx, card),
            rows(card, height, steering, asked, posted, wrongRow, wrongKey),
            RoundPages.raw(card, height.round(), new Lengths(card.details().unit())),
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
          case STOP_TOUCH, FULL_BUMP -> StepBand.Level.UP;
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

  private static List<HeightView.Row> rows(
      Card card,
      SeenHeight height,
      Steering steering,
      List<Asked> asked,
      Posted posted,
      String wrongRow,
      FormKey wrongKey) {
    List<HeightView.Row> rows = new ArrayList<>();
    boolean focused = !wrongRow.isEmpty();
    for (Asked a : asked) {
      List<SeenReading> here =
          card.readingsAt(height.key()).stream()
              .filter(r -> r.reading().steering() == steering)
              .filter(r -> a.point() == null ? r.of(a.quantity()) : r.of(a.point().point()))
              .toList();
      boolean wrong = a.row().equals(wrongRow);
      boolean focus = wrong || (!focused && here.isEmpty());
      focused |= focus;
      FormKey key = wrong ? wrongKey : FormKey.fresh(card.lastChange());
      rows.add(
          new HeightView.Row(
              a.row(),
              key.key(),
              key.after(),
              new ReadingRow(
                  field(a, card, height, posted, wrong, focus),
                  rule(a),
                  lastTime(card, height, steering, a),
                  null),
              here.stream().map(r -> said(r)).toList()));
    }
    return rows;
  }

  private static HeightView.Said said(SeenReading r) {
    return new HeightView.Said(
        EntryWords.value(r.reading())
            + (r.stands() == Standing.LIVE ? "" : ", " + r.stands().words()),
        Shown.state(r),
        "/entries/" + r.key());
  }

  private static Field field(
      Asked a, Card card, SeenHeight height, Posted posted, boolean wrong, boolean focus) {
    boolean angle = ReadingText.angle(a.quantity(), a.point());
    Field field =
        Field.of("v-" + a.row(), Capital.of(a.words()))
            .unit(angle ? "°" : height.round().round().unit().word());
    if (focus) {
      field = field.focused();
    }
    if (a.gap() && !angle) {
      field =
          field.picks(
              new Pick(field.name(), "well clear", "well clear"),
              new Pick(field.name(), "touches", "touches"),
              new Pick(field.name(), "binds", "binds"),
              new Pick(field.name(), "not looked", "not looked"));
    }
    return wrong ? posted.fill(field) : field;
  }

  private static String rule(Asked a) {
    return a.point() == null ? "" : "keep " + EntryWords.keep(a.point().keep());
  }

  private static String lastTime(Card card, SeenHeight height, Steering steering, Asked a) {
    return card.last(
            height.name(), steering, a.quantity(), a.point() == null ? null : a.point().point())
        .filter(r -> !r.height().key().equals(height.key()))
        .map(
            r ->
                "last time "
                    + EntryWords.value(r.reading())
                    + " · "
                    + Days.day(r.at())
                    + (r.stands() == Standing.LIVE ? "" : " · " + r.stands().words()))
        .orElse("");
  }

  private HeightView.Saved saved(Context ctx, Card card) {
    String key = ctx.queryParam("saved");
    CarBook history = histories.of(card.car());
    Content content = key == null ? null : history.standing(key).orElse(null);
    if (content == null) {
      return null;
    }
    Optional<SeenReading> reading = card.reading(key);
    Optional<SeenReading> before = reading.flatMap(card::before);
    String doubt =
        card.doubts().stream()
            .filter(d -> d.key().equals(key))
            .map(d -> d.doubt())
            .findFirst()
            .orElse("");
    boolean instead =
        before.isPresent()
            && reading.map(r -> Boolean.FALSE.equals(r.reading().again())).orElse(false);
    return new HeightView.Saved(
        key,
        new EntryWords(history).of(content),
        reading.flatMap(r -> before.map(b -> against(card, r, b))).orElse(""),
        doubt,
        before.filter(b -> b.stands().counts()).isPresent() || instead,
        instead);
  }

  /** The change against last time, and whether it counts again or instead. */
  private static String against(Card card, SeenReading now, SeenReading before) {
    String counts =
        before.stands().counts()
            ? "counts again, with the one before"
            : "counts instead of the one before";
    Figure one = now.value();
    Figure other = before.value();
    boolean lengths =
        one != null
            && other != null
            && now.reading().angle() == null
            && before.reading().angle() == null;
    if (!lengths) {
      return "last time " + EntryWords.value(before.reading()) + " · " + counts;
    }
    double change = one.value() - other.value();
    Lengths words = new Lengths(card.details().unit());
    return words.signed(change).replace('-', '−')
        + " "
        + words.unit().word()
        + " against last time, "
        + EntryWords.value(before.reading())
        + " · "
        + counts;
  }

  public void read(Context ctx) {
    Card card = card(ctx, "height");
    SeenHeight height = card.height(ctx.pathParam("height")).orElseThrow(NotFoundResponse::new);
    Posted posted = Html.posted(ctx);
    Steering steering = steering(posted.text("steering"));
    Asked asked = Asked.byRow(card, steering, posted.text("row"));
    if (asked == null) {
      throw new NotFoundResponse();
    }
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    String name = "v-" + asked.row();
    Optional<Content.Reading> reading = typed(posted, name, height, steering, asked);
    if (reading.isEmpty()) {
      show(ctx, card, height, steering, posted, asked.row(), key);
      return;
    }
    store.reading(card, reading.get(), key, Who.of(ctx));
    Html.next(
        ctx,
        "/heights/" + height.key() + "?steering=" + Posted.word(steering) + "&saved=" + key.key());
  }

  /** The reading as typed, or empty with a problem posted to its field. */
  static Optional<Content.Reading> typed(
      Posted posted, String name, SeenHeight height, Steering steering, Asked asked) {
    String text = posted.text(name).strip();
    if (text.isEmpty()) {
      posted.wrong(name, "Type what the tape says, or tap one of the words.");
      return Optional.empty();
    }
    ReadingText.Result result =
        ReadingText.read(text, height.round().round().unit(), asked.quantity(), asked.point());
    if (result instanceof ReadingText.Refused refused) {
      posted.wrong(name, refused.sentence());
      return Optional.empty();
    }
    if (result instanceof ReadingText.Either either) {
      posted.ask(name, either.choices());
      return Optional.empty();
    }
    return Optional.of(reading(height.key(), steering, asked, text, (ReadingText.Says) result));
  }

  static Content.Reading reading(
      String height, Steering steering, Asked asked, String text, ReadingText.Says says) {
    return new Content.Reading(
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
  }

  private Card card(Context ctx, String path) {
    return histories.cardOf(ctx.pathParam(path)).orElseThrow(NotFoundResponse::new);
  }
}
