package spindlebook.round;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.card.Zero;
import spindlebook.entry.Content;
import spindlebook.entry.GapResult;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.Doubted;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.fold.ToolError;
import spindlebook.log.Json;
import spindlebook.page.Asked;
import spindlebook.page.Posted;
import spindlebook.travel.CornerTravel;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeFormat;
import spindlebook.units.TypedLength;
import spindlebook.words.EntryWords;

/** All a phone needs to walk through a round while it has no network. */
final class GuideJson {
  private GuideJson() {}

  /**
   * @param n the last of the car's entries that the card surely holds
   * @param book its generation
   * @param here the step that is shown first: what was read in words is wanted of its place and
   *     steering; null for all of it
   */
  static ObjectNode of(Sitting at, long n, String book, String here) {
    GuidePlan plan = GuidePlan.of(at);
    Card card = at.card();
    ObjectNode json = Json.MAPPER.createObjectNode();
    json.put("round", at.key())
        .put("where", card.details().name() + ", " + card.place().words())
        .put("n", n)
        .put("book", book)
        .put("after", card.lastChange())
        .put("mirror", at.mirror() == null ? null : at.mirror().place().words())
        .put("mm", at.unit() != LengthUnit.INCH)
        .put("part", here != null)
        .put("here", here == null ? null : here.isEmpty() ? "end" : here);
    // From here on a gap is read with the tape, and its doubt is the tape's.
    double from = at.seen().gapTool().largestMm();
    if (here == null && Double.isFinite(from)) {
      json.putObject("tape").put("from", tenth(from)).put("pm", plusMinus(at, from));
    }
    ObjectNode boxes = json.putObject("boxes");
    HeightForm.labels(at).forEach(boxes::put);
    ObjectNode rows = json.putObject("rows");
    ObjectNode done = json.putObject("done");
    ObjectNode last = json.putObject("last");
    ArrayNode places = json.putArray("places");
    GuidePlan.Place before = null;
    for (GuidePlan.Place place : plan.places()) {
      ObjectNode one = places.addObject();
      place(one, plan, before, place, here);
      before = place;
      // Most places ask for the same: it is said once.
      ObjectNode asked = rows(place, s -> plan.asksFirst(s));
      if (!json.has("asked")) {
        json.set("asked", asked);
      } else if (!asked.equals(json.get("asked"))) {
        one.set("asked", asked);
      }
      if (here == null && !json.has("gaps")) {
        json.set("gaps", rows(place, s -> s.slot().point() != null));
        json.set("lengths", rows(place, s -> GuidePlan.settlesLength(s.slot())));
      }
      // Where an open end is closed only what is open is looked at.
      if (here == null && place.nth() < 0) {
        one.set("gaps", rows(place, s -> s.slot().point() != null));
      }
      for (GuidePlan.Step step : GuidePlan.all(place)) {
        String name = "/" + Posted.word(step.steering()) + "/" + step.slot().row();
        SeenReading read = plan.read(step);
        if (here == null || read != null || plan.asksFirst(step)) {
          row(rows, at, step.slot());
        }
        boolean wanted =
            here == null || here.startsWith(place.id() + "/" + Posted.word(step.steering()) + "/");
        if (read != null) {
          ObjectNode said = done.putObject(place.heightKey() + name);
          if (here == null) {
            said.put("ok", plan.clear(place.nameAt(step.slot()), step.slot(), read) ? 1 : 0);
          }
          if (here == null && read.reading().result() == GapResult.WELL_CLEAR) {
            said.put("wc", 1);
          }
          if (wanted) {
            said(said, read);
          }
        }
        String was = wanted ? last(at, step) : "";
        if (!was.isEmpty()) {
          last.put(place.id() + name, was);
        }
      }
    }
    // The first screen waits for every letter: what comes later says the rest.
    if (here == null || here.isEmpty()) {
      end(json.putObject("end"), RoundEnd.of(plan));
    }
    zero(card).ifPresent(mm -> json.put("ride", tenth(mm)));
    HeightForm.lastMark(at, Long.MAX_VALUE)
        .ifPresent(
            h ->
                json.putArray("marks")
                    .addObject()
                    .put("key", h.key())
                    .put("words", h.words())
                    .put("typed", HeightForm.marks(h)));
    json.withArray("marks");
    doubts(json.putArray("doubts"), at);
    start(json.putObject("start"), at);
    return json;
  }

  private static void end(ObjectNode json, RoundEnd end) {
    ArrayNode verdicts = json.putArray("verdicts");
    end.verdicts()
        .forEach(
            v ->
                verdicts
                    .addObject()
                    .put("end", v.end())
                    .put("is", v.state().mark())
                    .put("state", v.state().word())
                    .put("finding", v.finding()));
    end.touched().forEach(json.putArray("touched")::add);
    json.put("next", end.next().word()).put("href", end.next().href()).put("last", end.last());
  }

  private static void place(
      ObjectNode json, GuidePlan plan, GuidePlan.Place before, GuidePlan.Place place, String here) {
    Sitting at = plan.sitting();
    boolean wanted = here == null || here.startsWith(place.id() + "/");
    json.put("id", place.id())
        .put("name", Posted.word(place.name()))
        .put("words", Capital.of(place.words()))
        .put("rank", place.name() == HeightName.IN_BETWEEN ? -1 : place.name().ordinal());
    if (place.label() != null) {
      json.put("label", place.label());
    }
    if (place.pairing() != null) {
      json.put("pairing", Posted.word(place.pairing()));
    }
    if (place.pairing() == Pairing.CROSSED) {
      json.put("otherName", Posted.word(place.otherName()));
      String there = Capital.of(at.card().place().mirror().words());
      json.put("other", there + ": " + place.otherName().words());
    }
    if (here == null) {
      further(json, plan, place);
    }
    if (here == null || here.isEmpty()) {
      ArrayNode back = json.putArray("back");
      RoundEnd.back(at, place).forEach(back::add);
    }
    if (here == null || (wanted && place.height() == null)) {
      stand(json, plan, before, place);
    }
    SeenHeight height = place.height();
    if (height != null) {
      json.put("height", height.key());
      if (wanted) {
        json.put("say", words(height.height()));
      }
      if (height.positionCounts()) {
        json.put("at", tenth(height.positionMm().value()));
      }
    }
    if (here == null || (wanted && height == null)) {
      before(at, place).ifPresent(h -> was(json.putObject("was"), h));
    }
  }

  /** How it is made ready, and where the jack is aimed. */
  private static void stand(
      ObjectNode json, GuidePlan plan, GuidePlan.Place before, GuidePlan.Place place) {
    Sitting at = plan.sitting();
    StandWords.Ready ready = StandWords.ready(at, before, place);
    if (!ready.say().isEmpty() && place.height() == null) {
      json.put("ready", ready.say()).put("caution", ready.caution());
    }
    json.put("set", ready.set());
    if (place.height() == null) {
      json.put("find", StandWords.find(at, place));
      StandWords.overMarkMm(at, place).ifPresent(mm -> json.put("aim", tenth(mm)));
    }
  }

  /** Whether all others are looked at; places further out, where an axle's ends differ by end. */
  private static void further(ObjectNode json, GuidePlan plan, GuidePlan.Place place) {
    if (plan.lookedAt(place)) {
      json.put("all", 1);
    }
    List<Slot> slots = place.slots().getOrDefault(Steering.STRAIGHT, List.of());
    for (boolean other : new boolean[] {false, true}) {
      List<String> ids =
          slots.stream()
              .filter(s -> (s.otherEnd() != null) == other)
              .findFirst()
              .map(s -> plan.furtherOut(place, s).stream().map(GuidePlan.Place::id).toList())
              .orElse(List.of());
      if (!ids.isEmpty()) {
        ArrayNode out = json.putArray(other ? "outO" : "out");
        ids.forEach(out::add);
      }
    }
  }

  /** What is read at a place, by steering. */
  private static ObjectNode rows(GuidePlan.Place place, Predicate<GuidePlan.Step> which) {
    ObjectNode rows = Json.MAPPER.createObjectNode();
    for (GuidePlan.Step step : GuidePlan.all(place)) {
      if (which.test(step)) {
        rows.withArray(Posted.word(step.steering())).add(step.slot().row());
      }
    }
    return rows;
  }

  /** The last time its wheel stood there, in an earlier round. */
  private static Optional<SeenHeight> before(Sitting at, GuidePlan.Place place) {
    return at.card().heights().stream()
        .filter(h -> h.name() == place.name() && h.pairing() == place.stood())
        .filter(h -> h.name() != HeightName.IN_BETWEEN && !h.round().key().equals(at.key()))
        .filter(SeenHeight::positionCounts)
        .reduce((first, second) -> second);
  }

  private static void was(ObjectNode json, SeenHeight last) {
    Content.Height h = last.height();
    String day = Days.day(last.at());
    json.put("at", tenth(last.positionMm().value())).put("day", day);
    if (h.spindle() != null) {
      json.put("spindle", "last time " + h.spindle().typed() + ", " + day);
    }
    if (h.mark() != null) {
      json.put("mark", "last time " + h.mark().typed() + ", " + day);
    }
  }

  /** Ride height, from which positions are told; empty where it was never read. */
  private static Optional<Double> zero(Card card) {
    Zero zero = Zero.of(card, CornerTravel.of(card));
    return zero.ofRide() ? Optional.of(zero.mm()) : Optional.empty();
  }

  private static double tenth(double mm) {
    return Math.round(mm * 10) / 10.0;
  }

  /** A height in a few words: {@code spindle 14 3/8, mark 30 1/4}. */
  static String words(Content.Height h) {
    String spindle = h.spindle() == null ? "" : "spindle " + h.spindle().typed();
    return h.mark() == null ? spindle : spindle + ", mark " + h.mark().typed();
  }

  /** What is not there is not sent: a phone waits for every letter. */
  private static void row(ObjectNode rows, Sitting at, Slot slot) {
    if (!rows.has(slot.row())) {
      ObjectNode row =
          rows.putObject(slot.row())
              .put("words", Capital.of(slot.words()))
              .put("kind", slot.kind());
      TypedLength least = slot.kind().equals("gap") ? slot.point().keep().least() : null;
      if (least != null) {
        // The shank that tells at once whether the rule is kept, as the rule was typed; and the
        // doubt of a gap as wide, by which the phone judges what is typed.
        row.put("drill", least.words()).put("pm", plusMinus(at, least.mm()));
      } else if (!slot.rule().isEmpty()) {
        row.put("rule", slot.rule());
      }
    }
  }

  /** Of a gap as wide, to the 64th, never less than it is. */
  private static String plusMinus(Sitting at, double mm) {
    double expanded = ToolError.ofLengths(at.seen().toolOfGap(mm)).read(mm, "r", "p").U();
    boolean inch = at.unit() == LengthUnit.INCH;
    return TapeFormat.length(inch ? TapeFormat.roundUp(expanded, 64) : expanded, at.unit(), 64);
  }

  private static void said(ObjectNode json, SeenReading r) {
    json.put("say", EntryWords.value(r.reading())).put("who", r.who()).put("key", r.key());
  }

  static String last(Sitting at, GuidePlan.Step step) {
    GuidePlan.Place place = step.place();
    return at.lastTime(
        place.nameAt(step.slot()), place.stood(), step.steering(), step.slot(), place.heightKey());
  }

  private static void doubts(ArrayNode doubts, Sitting at) {
    doubts(doubts, at, at.card(), new HashSet<>(), "");
    Set<String> told = new HashSet<>(doubts.findValuesAsText("key"));
    at.otherEnd().ifPresent(o -> doubts(doubts, at, o, told, o.place().words() + ": "));
  }

  /**
   * @param told those that are there already: what is at an axle's middle is of both ends
   */
  private static void doubts(ArrayNode doubts, Sitting at, Card end, Set<String> told, String of) {
    Set<String> here = new HashSet<>();
    end.heightsOf(at.key()).forEach(h -> here.add(h.key()));
    end.readingsIn(at.key()).forEach(r -> here.add(r.key()));
    for (Doubted doubt : end.doubts()) {
      if (here.contains(doubt.key()) && !told.contains(doubt.key())) {
        ObjectNode one =
            doubts
                .addObject()
                .put("key", doubt.key())
                .put("words", of + doubt.words())
                .put("doubt", doubt.doubt());
        end.reading(doubt.key()).ifPresent(r -> unread(one, r.reading()));
        end.heightsOf(at.key()).stream()
            .filter(h -> h.key().equals(doubt.key()) && h.positionMm() != null)
            .forEach(h -> one.put("at", tenth(h.positionMm().value())));
      }
    }
  }

  /** Of what nothing could be read nobody can say that it is right. */
  static void unread(ObjectNode json, Content content) {
    if (content instanceof Content.Reading r && r.result() == GapResult.UNREAD) {
      json.put("unread", 1);
    }
  }

  /** The form that started the round, for a book put back from before it. */
  private static void start(ObjectNode start, Sitting at) {
    Asked form = Asked.fresh(at.unit(), 0);
    RoundPlan.hidden(form, at.round().toRead());
    RoundForm.ask(form, at.card(), at.round(), at.seen().who());
    start.put("to", "/corners/" + at.round().corner() + "/rounds");
    ObjectNode body = start.putObject("body");
    body.put("key", at.key());
    form.body()
        .forEach(
            (name, texts) ->
                texts.stream().filter(t -> !t.isEmpty()).forEach(body.withArray(name)::add));
  }
}
