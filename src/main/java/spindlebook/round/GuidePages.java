package spindlebook.round;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.log.Bodies;
import spindlebook.log.Entry;
import spindlebook.log.Histories;
import spindlebook.log.Json;
import spindlebook.page.Asked;
import spindlebook.page.Field;
import spindlebook.page.FormKey;
import spindlebook.page.FormPart;
import spindlebook.page.Html;
import spindlebook.page.Link;
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;
import spindlebook.page.ReadingRow;
import spindlebook.page.StepBand;
import spindlebook.units.LengthUnit;
import spindlebook.web.Who;
import spindlebook.words.EntryWords;

/**
 * A round one thing at a time. The page and its forms do it alone; with its script the phone walks
 * on by itself, keeps what is typed and sends it when it can.
 */
public record GuidePages(Histories histories, RoundStore store) {
  private static final String END = "end";

  /** Before the step of each place that a look at all others was shown with. */
  private static final String SEEN = "seen-";

  /** The entry that was answered before. */
  private static final String MENDS = "corrects";

  private static final long LAST = Long.MAX_VALUE;

  public void guide(Context ctx) {
    show(ctx, Sitting.of(histories, ctx), Posted.proposed(Map.of()), ctx.queryParam("at"));
  }

  private void show(Context ctx, Sitting at, Posted posted, String id) {
    Card card = at.card();
    GuidePlan plan = GuidePlan.of(at);
    List<GuidePlan.Step> steps = plan.steps();
    GuidePlan.Step step =
        END.equals(id)
            ? null
            : Stream.concat(
                    steps.stream(), plan.places().stream().flatMap(p -> GuidePlan.all(p).stream()))
                .filter(s -> s.id().equals(id))
                .findFirst()
                .or(() -> nextAfter(plan, steps, ctx.queryParam("from")))
                .orElse(null);
    int i = step == null ? -1 : index(steps, step.id());
    String here = at.href() + "/guide";
    PageFrame frame =
        at.frame(Capital.of(card.place().words()) + ", step by step", "")
            .plan(null)
            .modules("guide.js")
            .step(band(plan, step));
    GuideView view =
        new GuideView(
            at.key(),
            json(at, step == null ? "" : step.id()).toString(),
            step == null ? null : asked(plan, step, posted),
            step == null ? RoundEnd.of(plan) : null,
            JustSaved.of(at, ctx.queryParam("saved")),
            i > 0 ? here + "?at=" + steps.get(i - 1).id() : null,
            step == null ? null : skip(plan, steps, i));
    Html.show(ctx, posted, Html.TEMPLATES.roundGuide(frame, view));
  }

  /** Past the last step comes what is asked again because of it, then the end. */
  private static String skip(GuidePlan plan, List<GuidePlan.Step> steps, int i) {
    String next =
        i + 1 < steps.size()
            ? steps.get(i + 1).id()
            : steps.subList(0, i).stream()
                .filter(plan::comesBack)
                .findFirst()
                .map(GuidePlan.Step::id)
                .orElse(END);
    return plan.sitting().href() + "/guide?at=" + next;
  }

  /** What a browser keeps until the book has it: the page only shows where its script puts it. */
  public void waiting(Context ctx) {
    PageFrame frame =
        PageFrame.of("Waiting · Spindlebook", "Waiting on this phone")
            .up("cars", "/cars")
            .modules("waiting.js");
    Html.show(ctx, Html.TEMPLATES.roundWaiting(frame));
  }

  /**
   * The next that is not done yet, after the one just left; what was skipped is not asked again,
   * only what a reading further out asks for.
   */
  private static Optional<GuidePlan.Step> nextAfter(
      GuidePlan plan, List<GuidePlan.Step> steps, String left) {
    int from = left == null ? 0 : index(steps, left);
    return Stream.concat(
            steps.subList(from, steps.size()).stream().filter(s -> !plan.done(s)),
            steps.stream().filter(plan::comesBack))
        .findFirst();
  }

  /** Where it is walked; what is none of those asked for is of the look at all others there. */
  private static int index(List<GuidePlan.Step> steps, String id) {
    for (boolean itself : new boolean[] {true, false}) {
      for (int i = 0; i < steps.size(); i++) {
        GuidePlan.Step step = steps.get(i);
        if (itself
            ? step.id().equals(id)
            : step.others() && id.startsWith(step.place().id() + "/")) {
          return i;
        }
      }
    }
    return steps.size();
  }

  private static StepBand band(GuidePlan plan, GuidePlan.Step step) {
    Card card = plan.sitting().card();
    List<GuidePlan.Place> planned = plan.places().stream().filter(p -> p.nth() >= 0).toList();
    int of = planned.size();
    if (step == null) {
      return StepWords.band(card, HeightName.RIDE, "The round is done", Steering.STRAIGHT, of, of);
    }
    GuidePlan.Place at = step.place();
    int n = planned.indexOf(at) + 1;
    return StepWords.band(card, at.name(), at.words(), step.steering(), n, of);
  }

  private ObjectNode json(Sitting shown, String here) {
    // How far it goes is asked before the card is: what comes between is then told twice by the
    // phone that sent it, never left out by it.
    long n = histories.of(shown.card().car()).n();
    Card card = histories.card(shown.card().car(), shown.card().corner());
    Sitting now = Sitting.of(histories, card, card.round(shown.key()).orElse(shown.seen()));
    return GuideJson.of(now, n, store.generation(), here);
  }

  private static GuideView.Step asked(GuidePlan plan, GuidePlan.Step step, Posted posted) {
    Sitting at = plan.sitting();
    Asked a = Asked.of(posted, at.unit(), at.card().lastChange());
    GuidePlan.Place place = step.place();
    a.hidden("at", step.id());
    // What is wrong with what is no box of the page.
    Stream.of("what", "height", "target")
        .map(posted::problem)
        .filter(p -> !p.isEmpty())
        .forEach(a::said);
    if (place.height() == null || (step.slot() == null && !step.others())) {
      a.hidden("what", "height");
      List<GuidePlan.Place> places = plan.places();
      int i = places.indexOf(place);
      StandWords.Ready ready = StandWords.ready(at, i > 0 ? places.get(i - 1) : null, place);
      if (!ready.say().isEmpty()) {
        a.said(ready.say() + ". " + ready.caution());
      }
      a.said(Capital.of(StandWords.aim(at, place)) + ".");
      if (place.height() != null) {
        a.hidden(MENDS, place.heightKey());
      }
      Content.Height start =
          HeightForm.at(at, place.name(), place.label(), place.pairing(), place.otherName());
      HeightForm.of(a, at, true).ask(start, true, Long.MAX_VALUE);
      return new GuideView.Step(a.key(), a.parts(), null, "Keep this height");
    }
    a.hidden("height", place.heightKey());
    if (step.others()) {
      a.hidden("what", GuidePlan.OTHERS);
      a.said(
          (at.card().layout().steered() ? "Swing it lock to lock and look." : "Look at each.")
              + " One that is not well clear is read alone:");
      List<GuidePlan.Step> seen = others(plan, place);
      seen.forEach(s -> a.hidden(SEEN + s.id(), "1"));
      List<FormPart> parts = new ArrayList<>(a.parts());
      seen.forEach(
          s ->
              parts.add(
                  new FormPart.Way(
                      new Link(
                          Capital.of(s.slot().words()) + ", " + s.steering().words(),
                          at.href() + "/guide?at=" + s.id()))));
      return new GuideView.Step(a.key(), parts, null, allClear(seen.size()));
    }
    Slot slot = step.slot();
    a.hidden("what", "reading");
    a.hidden("steering", Posted.word(step.steering()));
    a.hidden("row", slot.row());
    if (plan.read(step) != null) {
      a.hidden(MENDS, plan.read(step).key());
    }
    Field field = posted.fill(slot.field("value", at.unit()).focused());
    ReadingRow row = new ReadingRow(field, slot.rule(), GuideJson.last(at, step), null);
    return new GuideView.Step(a.key(), a.parts(), row, "Keep");
  }

  private static List<GuidePlan.Step> others(GuidePlan plan, GuidePlan.Place place) {
    return place.slots().keySet().stream()
        .flatMap(
            s -> plan.others(place, s).stream().map(o -> new GuidePlan.Step(place, s, o, false)))
        .toList();
  }

  private static String allClear(int others) {
    return "All " + (others > 1 ? others + " " : "") + "others well clear";
  }

  // --- what is sent

  /** A step's form, without a script: refused on the spot when it cannot be read. */
  public void keep(Context ctx) {
    Sitting at = Sitting.of(histories, ctx);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(at.card().lastChange()));
    if (posted.text("what").equals(GuidePlan.OTHERS)) {
      allWellClear(ctx, at, posted, key);
      return;
    }
    Content content = read(at, posted, true);
    if (content instanceof Content.Reading reading
        && reading.doubt() != null
        && store.written(key.key()).isEmpty()) {
      // What it may mean is offered as keys, where it is asked for at all.
      at.slot(reading.steering(), posted.text("row"))
          .ifPresent(s -> SentReading.says(posted, "value", at.unit(), s.quantity(), s.point()));
      posted.wrong("value", reading.doubt());
    }
    String step = posted.text("at");
    if (content == null || !posted.ok()) {
      show(ctx, at, posted, step);
      return;
    }
    Entry kept = write(at, mending(at, content, posted, key), posted, key, Who.of(ctx));
    Html.next(ctx, at.href() + "/guide?saved=" + kept.key() + "&from=" + step);
  }

  /** One look at all that nobody asked for or read at a height: what was listed and still is. */
  private void allWellClear(Context ctx, Sitting at, Posted posted, FormKey key) {
    GuidePlan plan = GuidePlan.of(at);
    String height = posted.text("height");
    List<RoundStore.ToKeep> all = new ArrayList<>();
    for (GuidePlan.Place place : plan.places()) {
      if (height.equals(place.heightKey())) {
        for (GuidePlan.Step step : others(plan, place)) {
          if (!posted.has(SEEN + step.id())) {
            continue;
          }
          String row = step.slot().row();
          FormKey each =
              new FormKey(
                  UUID.nameUUIDFromBytes((key.key() + step.id()).getBytes(StandardCharsets.UTF_8))
                      .toString(),
                  key.after());
          SentReading sent = new SentReading(height, step.steering(), row, "well clear", null);
          all.add(new RoundStore.ToKeep(sent.kept(Optional.of(step.slot()), at.unit()), each));
        }
      }
    }
    if (!all.isEmpty()) {
      store.keep(at.card(), all, Who.of(ctx));
    }
    Html.next(ctx, at.href() + "/guide?from=" + posted.text("at"));
  }

  /**
   * What was sent says, or null with problems posted.
   *
   * @param asks whether somebody is there to be asked about a height without a mark
   */
  private Content read(Sitting at, Posted posted, boolean asks) {
    switch (posted.text("what")) {
      case "height" -> {
        Asked a = Asked.of(posted, at.unit(), 0);
        Content.Height start = HeightForm.at(at, HeightName.IN_BETWEEN, null, null, null);
        // Only an earlier one has a mark that one which is mended can take.
        long before = at.card().height(posted.text(MENDS)).map(SeenHeight::n).orElse(LAST);
        boolean marked = asks && before == LAST;
        Content.Height height = HeightForm.of(a, at, false).ask(start, marked, before);
        return posted.ok() ? height : null;
      }
      case "reading" -> {
        SentReading sent = SentReading.of(posted);
        return sent == null
            ? null
            : sent.kept(at.slot(sent.steering(), sent.row()), unit(at, sent));
      }
      case "take-back" -> {
        return target(at, posted, t -> new Content.Correction(t, null, "typed by mistake"));
      }
      case "so" -> {
        return target(at, posted, t -> new Content.Answer(t, true, null));
      }
      case "not" -> {
        return target(at, posted, t -> new Content.Answer(t, false, null));
      }
      default -> {
        posted.wrong("what", "It does not say whether it is a height or a reading.");
        return null;
      }
    }
  }

  /**
   * Instead of what was answered to the same question, where it was gone back to; what was
   * withdrawn since is answered anew.
   */
  private Content mending(Sitting at, Content said, Posted posted, FormKey key) {
    String target = posted.text(MENDS);
    Content was = at.book().standing(target).orElse(null);
    if (said instanceof Content.Height height && was instanceof Content.Height before) {
      return store.instead(at.card(), target, height.insteadOf(before), key);
    }
    return said instanceof Content.Reading reading && was instanceof Content.Reading before
        ? store.instead(at.card(), target, reading.insteadOf(before), key)
        : said;
  }

  /** Of the round its height was read in. */
  private static LengthUnit unit(Sitting at, SentReading sent) {
    return at.card().height(sent.height()).map(h -> h.round().round().unit()).orElse(at.unit());
  }

  /** A phone may answer before it is asked: what it types it may know to be doubted. */
  private static Content target(Sitting at, Posted posted, Function<String, Content> says) {
    String target = posted.neededLine("target", 80, "It does not say which entry is meant.");
    if (target != null && !at.book().withdrawable(target)) {
      posted.wrong("target", "Only what was read, set or noted on this car is withdrawn.");
    }
    return posted.ok() ? says.apply(target) : null;
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
    Sitting at = Sitting.of(histories, ctx);
    FormKey key = posted.formKey().orElse(null);
    if (key == null) {
      refused(ctx, "It came without the key that makes it one entry.");
      return;
    }
    Entry entry = store.written(key.key()).orElse(null);
    if (entry == null || Set.of("height", "reading").contains(posted.text("what"))) {
      Content content = read(at, posted, false);
      if (content == null) {
        refused(ctx, posted.problems().get(0));
        return;
      }
      if (content instanceof Content.Reading reading
          && !(at.book().original(reading.height()).orElse(null) instanceof Content.Height)) {
        refused(ctx, "The height it hangs on is not in the book yet.");
        return;
      }
      String who = posted.line("who", Who.LONGEST);
      Content said = mending(at, content, posted, key);
      entry = write(at, said, posted, key, who == null ? Who.of(ctx) : who);
    }
    Content content = Bodies.read(entry);
    Content.Correction mends =
        content instanceof Content.Correction c && c.body() != null ? c : null;
    if (mends != null) {
      content = mends.body();
    }
    ObjectNode answer =
        Json.MAPPER
            .createObjectNode()
            .put("key", key.key())
            .put("as", mends == null ? entry.key() : mends.target())
            .put("n", entry.n())
            .put("book", store.generation())
            .put("words", new EntryWords(histories.of(at.card().car())).of(content));
    if (content.doubt() != null) {
      answer.put("doubt", content.doubt());
      GuideJson.unread(answer, content);
    }
    answer(ctx, 200, answer);
  }

  /**
   * Whether the sender knows another generation: it is told this one before anything of it is
   * taken, so that what the book lacks comes first and in order.
   */
  private boolean otherBook(Context ctx, String known) {
    if (known == null || known.isEmpty() || known.equals(store.generation())) {
      return false;
    }
    answer(ctx, 409, Json.MAPPER.createObjectNode().put("book", store.generation()));
    return true;
  }

  private static void refused(Context ctx, String sentence) {
    answer(ctx, 422, Json.MAPPER.createObjectNode().put("sentence", sentence));
  }

  private static void answer(Context ctx, int status, ObjectNode json) {
    ctx.status(status).contentType("application/json").result(json.toString());
  }

  /** On the card of the height it hangs on, which may be of another round by now. */
  private Entry write(Sitting at, Content content, Posted posted, FormKey key, String who) {
    Card card =
        content instanceof Content.Reading r
            ? histories.cardOf(r.height()).orElse(at.card())
            : at.card();
    Instant claimed = claimed(posted.text("claimed"));
    return store.keep(card, List.of(new RoundStore.ToKeep(content, key, claimed)), who).get(0);
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
    Sitting at = Sitting.of(histories, ctx);
    if (String.valueOf(at.book().n()).equals(ctx.queryParam("n"))) {
      ctx.status(204);
      return;
    }
    answer(ctx, 200, json(at, null));
  }
}
