package spindlebook.round;

import com.fasterxml.jackson.databind.node.ObjectNode;
import gg.jte.models.runtime.JteModel;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.EntryWords;
import spindlebook.corner.Layout;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenRound;
import spindlebook.corner.Steering;
import spindlebook.log.Bodies;
import spindlebook.log.Draft;
import spindlebook.log.Entry;
import spindlebook.log.Histories;
import spindlebook.log.Json;
import spindlebook.web.Crumb;
import spindlebook.web.Field;
import spindlebook.web.FormKey;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.Pick;
import spindlebook.web.Posted;
import spindlebook.web.ReadingRow;
import spindlebook.web.StepBand;
import spindlebook.web.Who;

/**
 * A round one thing at a time. The page and its forms do it alone; with its script the phone walks
 * on by itself, keeps what is typed and sends it when it can.
 */
public final class GuidePages {
  private final Histories histories;
  private final RoundStore store;

  public GuidePages(Histories histories, RoundStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void guide(Context ctx) {
    Card card = card(ctx);
    SeenRound round = round(ctx, card);
    if (card.layout() == Layout.SOLID_AXLE_END) {
      // One thing at a time asks one spindle; an axle's heights are typed with both.
      Html.next(ctx, "/rounds/" + round.key());
      return;
    }
    show(ctx, card, round, new Posted(Map.of()), ctx.queryParam("at"), null);
  }

  private void show(
      Context ctx, Card card, SeenRound round, Posted posted, String at, FormKey key) {
    List<GuidePlan.Step> steps = GuidePlan.of(card, round).steps();
    GuidePlan.Step step =
        steps.stream()
            .filter(s -> s.id().equals(at))
            .findFirst()
            .or(() -> nextAfter(steps, ctx.queryParam("from"), card))
            .orElse(null);
    int i = steps.indexOf(step);
    String here = "/rounds/" + round.key() + "/guide";
    String progress = step == null ? "" : (i + 1) + " of " + steps.size();
    PageFrame frame =
        PageFrame.of(Capital.of(card.place().words()) + ", step by step · Spindlebook", "")
            .crumbs(new Crumb("the round", "/rounds/" + round.key()))
            .modules("guide.js")
            .step(step == null ? finished(card) : StepWords.band(card, step, progress));
    GuideView view =
        new GuideView(
            round.key(),
            json(card, round, step == null ? "" : step.place().id()).toString(),
            step == null ? null : asked(card, round, step, posted, key),
            JustSaved.of(histories.of(card.car()), card, ctx.queryParam("saved")),
            i > 0 ? here + "?at=" + steps.get(i - 1).id() : null,
            step == null ? null : skip(steps, i, card, round));
    JteModel page = Html.TEMPLATES.roundGuide(frame, view);
    if (posted.ok()) {
      Html.show(ctx, page);
    } else {
      Html.again(ctx, page);
    }
  }

  /** Past the last step comes what was skipped before it; when nothing was, the round itself. */
  private static String skip(List<GuidePlan.Step> steps, int i, Card card, SeenRound round) {
    String here = "/rounds/" + round.key();
    Optional<GuidePlan.Step> next =
        i + 1 < steps.size()
            ? Optional.of(steps.get(i + 1))
            : steps.subList(0, i).stream().filter(s -> !s.done(card)).findFirst();
    return next.map(s -> here + "/guide?at=" + s.id()).orElse(here);
  }

  /** What a browser keeps until the book has it: the page only shows where its script puts it. */
  public void waiting(Context ctx) {
    PageFrame frame =
        PageFrame.of("Waiting · Spindlebook", "Waiting on this phone")
            .crumbs(new Crumb("cars", "/cars"))
            .modules("waiting.js");
    Html.show(ctx, Html.TEMPLATES.roundWaiting(frame));
  }

  /** The next that is not done yet, after the one just left; what was skipped comes last. */
  private static Optional<GuidePlan.Step> nextAfter(
      List<GuidePlan.Step> steps, String left, Card card) {
    int from = 0;
    while (from < steps.size() && !steps.get(from).id().equals(left)) {
      from++;
    }
    return Stream.concat(
            steps.subList(Math.min(from, steps.size()), steps.size()).stream(), steps.stream())
        .filter(s -> !s.done(card))
        .findFirst();
  }

  private static StepBand finished(Card card) {
    return new StepBand(
        Shown.plan(card),
        Capital.of(card.place().words()),
        "Nothing is left to read",
        StepBand.Level.AT_RIDE,
        "",
        "");
  }

  private ObjectNode json(Card shown, SeenRound round, String place) {
    // How far it goes is asked before the card is: what comes between is then told twice by the
    // phone that sent it, never left out by it.
    long n = histories.of(shown.car()).n();
    Card card = histories.card(shown.car(), shown.corner());
    Card mirror = histories.mirror(card).orElse(null);
    SeenRound now = card.round(round.key()).orElse(round);
    return GuideJson.of(card, mirror, now, n, store.generation(), place);
  }

  private static GuideView.Step asked(
      Card card, SeenRound round, GuidePlan.Step step, Posted posted, FormKey was) {
    FormKey key = was == null ? FormKey.fresh(card.lastChange()) : was;
    GuidePlan.Place place = step.place();
    SeenHeight height = place.height();
    String unit = round.round().unit().word();
    if (height == null || step.asked() == null) {
      Optional<SeenHeight> mark = HeightForm.lastMark(card, round, Long.MAX_VALUE);
      List<Pick> marks = new ArrayList<>();
      mark.ifPresent(
          h ->
              marks.add(
                  new Pick(
                      "markAsAt",
                      h.key(),
                      "as at '" + h.words() + "', " + h.height().mark().typed())));
      if (!posted.problem("mark").isEmpty() && !posted.has("mark")) {
        marks.add(new Pick(HeightForm.NO_MARK, "keep", "keep it without a mark"));
      }
      return new GuideView.Step(
          step.id(),
          "height",
          place.id(),
          Posted.word(place.name()),
          place.label(),
          null,
          Posted.word(Steering.STRAIGHT),
          "height",
          key,
          posted.fill(Field.of("spindle", "Spindle above the floor").unit(unit).focused()),
          posted.fill(
              Field.of("mark", "Frame mark above the floor")
                  .unit(unit)
                  .picks(marks.toArray(Pick[]::new))),
          null);
    }
    Asked asked = step.asked();
    boolean gap = GuideJson.kind(asked).equals("gap");
    boolean angle = GuideJson.kind(asked).equals("angle");
    Field field = Field.of("value", Capital.of(asked.words())).unit(angle ? "°" : unit).focused();
    if (gap) {
      field =
          field.picks(
              new Pick("value", "well clear", "well clear"),
              new Pick("value", "touches", "touches"),
              new Pick("value", "binds", "binds"),
              new Pick("value", "not looked", "not looked"));
    }
    String rule = asked.point() == null ? "" : "keep " + EntryWords.keep(asked.point().keep());
    return new GuideView.Step(
        step.id(),
        "reading",
        place.id(),
        Posted.word(place.name()),
        place.label(),
        height.key(),
        Posted.word(step.steering()),
        asked.row(),
        key,
        null,
        null,
        new ReadingRow(posted.fill(field), rule, GuideJson.last(card, null, step), null));
  }

  /** A step's form, without a script: refused on the spot when it cannot be read. */
  public void keep(Context ctx) {
    Card card = card(ctx);
    SeenRound round = round(ctx, card);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(card.lastChange()));
    String at = posted.text("at");
    Optional<Content> content =
        Sent.read(posted, histories.of(card.car()), round, card, histories.otherEnd(card), true);
    if (content.orElse(null) instanceof Content.Reading reading
        && reading.doubt() != null
        && store.written(key.key()).isEmpty()) {
      refuse(posted, card, reading);
    }
    if (content.isEmpty() || !posted.ok()) {
      show(ctx, card, round, posted, at, key);
      return;
    }
    Entry kept = write(card, content.get(), key, posted, Who.of(ctx));
    Html.next(ctx, "/rounds/" + round.key() + "/guide?saved=" + kept.key() + "&from=" + at);
  }

  private static void refuse(Posted posted, Card card, Content.Reading reading) {
    Asked asked = Asked.byRow(card, reading.steering(), posted.text("row"));
    SeenHeight height = card.height(reading.height()).orElseThrow(NotFoundResponse::new);
    if (asked != null) {
      HeightPages.typed(posted, "value", height, reading.steering(), asked);
    } else {
      posted.wrong("value", reading.doubt());
    }
  }

  /**
   * An entry from a phone's outbox; sent again, it gets the first one's answer, and with another
   * body it is kept under a key of its own, which the answer names as well.
   */
  public void sent(Context ctx) {
    Posted posted = Html.posted(ctx);
    if (otherBook(ctx, posted.text("book"))) {
      return;
    }
    Card card = card(ctx);
    SeenRound round = round(ctx, card);
    FormKey key = posted.formKey().orElse(null);
    if (key == null) {
      refused(ctx, "It came without the key that makes it one entry.");
      return;
    }
    Entry entry = store.written(key.key()).orElse(null);
    if (entry == null || Set.of("height", "reading").contains(posted.text("what"))) {
      Optional<Content> content =
          Sent.read(posted, histories.of(card.car()), round, card, histories.otherEnd(card), false);
      if (content.isEmpty()) {
        refused(ctx, posted.problems().get(0));
        return;
      }
      if (content.get() instanceof Content.Reading reading
          && !(histories.of(card.car()).original(reading.height()).orElse(null)
              instanceof Content.Height)) {
        refused(ctx, "The height it hangs on is not in the book yet.");
        return;
      }
      String who = posted.line("who", Who.LONGEST);
      entry = write(card, content.get(), key, posted, who == null ? Who.of(ctx) : who);
    }
    Content content = Bodies.read(entry);
    ObjectNode answer =
        Json.MAPPER
            .createObjectNode()
            .put("key", key.key())
            .put("as", entry.key())
            .put("n", entry.n())
            .put("book", store.generation())
            .put("words", new EntryWords(histories.of(card.car())).of(content));
    doubt(content).ifPresent(d -> answer.put("doubt", d));
    ctx.contentType("application/json").result(answer.toString());
  }

  /**
   * Whether the sender knows another generation: it is told this one before anything of it is
   * taken, so that what the book lacks comes first and in order.
   */
  private boolean otherBook(Context ctx, String known) {
    if (known == null || known.isEmpty() || known.equals(store.generation())) {
      return false;
    }
    ctx.status(409)
        .contentType("application/json")
        .result(Json.MAPPER.createObjectNode().put("book", store.generation()).toString());
    return true;
  }

  private static void refused(Context ctx, String sentence) {
    ctx.status(422)
        .contentType("application/json")
        .result(Json.MAPPER.createObjectNode().put("sentence", sentence).toString());
  }

  private static Optional<String> doubt(Content content) {
    if (content instanceof Content.Reading r) {
      return Optional.ofNullable(r.doubt());
    }
    return content instanceof Content.Height h ? Optional.ofNullable(h.doubt()) : Optional.empty();
  }

  private Entry write(Card card, Content content, FormKey key, Posted posted, String who) {
    FormKey known = new FormKey(key.key(), Math.min(key.after(), store.lastN()));
    Draft draft;
    if (content instanceof Content.Height height) {
      draft = store.draft(card, height, known, who);
    } else if (content instanceof Content.Reading reading) {
      Card there = histories.cardOf(reading.height()).orElse(card);
      if (Boolean.TRUE.equals(reading.atOtherEnd())) {
        there = histories.otherEnd(there).orElse(there);
      }
      draft = store.draft(there, reading, known, who);
    } else {
      draft = Bodies.draft(known.key(), known.after(), who, content);
    }
    return store.append(List.of(draft.claimed(claimed(posted.text("claimed"))))).entries().get(0);
  }

  /** When the sender's clock says it was typed; it describes and orders nothing. */
  private static Instant claimed(String text) {
    try {
      return text.isEmpty() ? null : Instant.parse(text);
    } catch (DateTimeParseException wrong) {
      return null;
    }
  }

  /** What others did since: the plan as it is now, or nothing when nothing was written. */
  public void news(Context ctx) {
    if (otherBook(ctx, ctx.queryParam("book"))) {
      return;
    }
    Card card = card(ctx);
    if (String.valueOf(histories.of(card.car()).n()).equals(ctx.queryParam("n"))) {
      ctx.status(204);
      return;
    }
    ctx.contentType("application/json").result(json(card, round(ctx, card), null).toString());
  }

  private SeenRound round(Context ctx, Card card) {
    return card.round(ctx.pathParam("round")).orElseThrow(NotFoundResponse::new);
  }

  private Card card(Context ctx) {
    return histories.cardOf(ctx.pathParam("round")).orElseThrow(NotFoundResponse::new);
  }
}
