package spindlebook.round;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.Doubted;
import spindlebook.corner.EntryWords;
import spindlebook.corner.HeightName;
import spindlebook.corner.Measure;
import spindlebook.corner.Quantity;
import spindlebook.corner.ReadingText;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenReading;
import spindlebook.corner.SeenRound;
import spindlebook.corner.Standing;
import spindlebook.log.Json;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedLength;
import spindlebook.web.Posted;

/** All a phone needs to walk through a round while it has no network. */
final class GuideJson {
  private GuideJson() {}

  /**
   * @param mirror the other side's card, or null
   * @param n the last of the car's entries that the card surely holds
   * @param book its generation
   * @param here the place whose readings in words are wanted first; null for those of all places
   */
  static ObjectNode of(Card card, Card mirror, SeenRound round, long n, String book, String here) {
    GuidePlan plan = GuidePlan.of(card, round);
    ObjectNode json = Json.MAPPER.createObjectNode();
    json.put("round", round.key())
        .put("where", card.details().name() + ", " + card.place().words())
        .put("n", n)
        .put("book", book)
        .put("after", card.lastChange())
        .put("mirror", mirror == null ? null : mirror.place().words())
        .put("mm", round.round().unit() != LengthUnit.INCH)
        .put("part", here != null);
    ObjectNode rows = json.putObject("rows");
    ObjectNode done = json.putObject("done");
    ObjectNode last = json.putObject("last");
    ObjectNode bands = json.putObject("bands");
    ArrayNode places = json.putArray("places");
    for (GuidePlan.Place place : plan.places()) {
      place(places.addObject(), place, here == null || here.equals(place.id()));
      place.asked().forEach((s, asked) -> asked.forEach(a -> row(rows, a)));
    }
    for (GuidePlan.Step step : plan.steps()) {
      String word = Posted.word(step.steering());
      for (String of : List.of(word, Posted.word(step.place().name()))) {
        if (!bands.has(of)) {
          bands.put(of, StepWords.html(card, step));
        }
      }
      SeenReading read = GuidePlan.read(card, step);
      boolean wanted = here == null || here.equals(step.place().id());
      if (read != null) {
        done.set(
            step.place().height().key() + "/" + word + "/" + step.asked().row(),
            wanted ? said(read) : Json.MAPPER.createObjectNode());
      }
      if (step.asked() != null && wanted) {
        String was = last(card, mirror, step);
        if (!was.isEmpty()) {
          last.put(Posted.word(step.place().name()) + "/" + word + "/" + step.asked().row(), was);
        }
      }
    }
    marks(json.putArray("marks"), card, round);
    doubts(json.putArray("doubts"), card, round);
    start(json.putObject("start"), round);
    return json;
  }

  private static void place(ObjectNode json, GuidePlan.Place place, boolean wanted) {
    json.put("id", place.id())
        .put("name", Posted.word(place.name()))
        .put("words", Capital.of(place.words()))
        .put("rank", place.name() == HeightName.IN_BETWEEN ? -1 : place.name().ordinal())
        .put("label", place.label());
    SeenHeight height = place.height();
    if (height != null) {
      json.put("height", height.key());
      if (wanted) {
        json.put("say", new EntryWordsOfHeight(height).words());
      }
      if (height.positionCounts()) {
        json.put("at", Math.round(height.positionMm().value() * 10) / 10.0);
      }
    }
    ObjectNode asked = json.putObject("asked");
    place
        .asked()
        .forEach(
            (s, list) -> {
              ArrayNode names = asked.putArray(Posted.word(s));
              list.forEach(a -> names.add(a.row()));
            });
  }

  /** A height in a few words: {@code spindle 14 3/8, mark 30 1/4}. */
  private record EntryWordsOfHeight(SeenHeight height) {
    String words() {
      Content.Height h = height.height();
      String spindle = h.spindle() == null ? "" : "spindle " + h.spindle().typed();
      return h.mark() == null ? spindle : spindle + ", mark " + h.mark().typed();
    }
  }

  private static void row(ObjectNode rows, Asked asked) {
    if (!rows.has(asked.row())) {
      rows.putObject(asked.row())
          .put("words", Capital.of(asked.words()))
          .put("kind", kind(asked))
          .put("rule", asked.point() == null ? "" : "keep " + EntryWords.keep(asked.point().keep()))
          .put("drill", drill(asked));
    }
  }

  /** The shank that tells at once whether the rule is kept, as the rule was typed; else null. */
  private static String drill(Asked asked) {
    TypedLength least = asked.point() == null ? null : asked.point().keep().least();
    return least == null || !kind(asked).equals("gap") ? null : least.words();
  }

  /** Which keys read it: sixteenths of a gap, a tape's inches, a length with a side, degrees. */
  static String kind(Asked asked) {
    if (ReadingText.angle(asked.quantity(), asked.point())) {
      return "angle";
    }
    if (asked.quantity() == Quantity.TOE) {
      return "toe";
    }
    if (asked.point() != null && asked.point().place().measure() == Measure.PLUNGE) {
      return "signed";
    }
    return asked.gap() ? "gap" : "tape";
  }

  static ObjectNode said(SeenReading r) {
    return Json.MAPPER
        .createObjectNode()
        .put("say", EntryWords.value(r.reading()))
        .put("who", r.who())
        .put("key", r.key());
  }

  static String last(Card card, Card mirror, GuidePlan.Step step) {
    SeenHeight here = step.place().height();
    String own =
        card.last(step.place().name(), step.steering(), step.asked().quantity(), point(step))
            .filter(r -> here == null || !r.height().key().equals(here.key()))
            .map(
                r ->
                    "last time "
                        + EntryWords.value(r.reading())
                        + ", "
                        + Days.day(r.at())
                        + (r.stands() == Standing.LIVE ? "" : ", " + r.stands().words()))
            .orElse("");
    String other =
        mirror == null
            ? ""
            : mirror
                .last(
                    step.place().name(),
                    step.steering().mirrored(),
                    step.asked().quantity(),
                    point(step))
                .map(r -> mirror.place().words() + " " + EntryWords.value(r.reading()))
                .orElse("");
    return ReadingRows.beside(own, other);
  }

  private static String point(GuidePlan.Step step) {
    return step.asked().point() == null ? null : step.asked().point().point();
  }

  private static void marks(ArrayNode marks, Card card, SeenRound round) {
    HeightForm.lastMark(card, round, Long.MAX_VALUE)
        .ifPresent(
            h ->
                marks
                    .addObject()
                    .put("key", h.key())
                    .put("words", h.words())
                    .put("typed", h.height().mark().typed()));
  }

  private static void doubts(ArrayNode doubts, Card card, SeenRound round) {
    Set<String> here = new LinkedHashSet<>();
    card.heightsOf(round.key()).forEach(h -> here.add(h.key()));
    card.readings().stream()
        .filter(r -> r.height().round().key().equals(round.key()))
        .forEach(r -> here.add(r.key()));
    for (Doubted doubt : card.doubts()) {
      if (here.contains(doubt.key())) {
        doubts
            .addObject()
            .put("key", doubt.key())
            .put("words", doubt.words())
            .put("doubt", doubt.doubt());
      }
    }
  }

  /** The form that started the round, for a book put back from before it. */
  private static void start(ObjectNode start, SeenRound seen) {
    Content.Round r = seen.round();
    start.put("to", "/corners/" + r.corner() + "/rounds");
    ObjectNode body = start.putObject("body");
    body.put("key", seen.key()).put("after", "0");
    RoundForm.typed(r, seen.who())
        .forEach(
            (name, texts) -> {
              ArrayNode all = body.putArray(name);
              texts.forEach(all::add);
            });
  }
}
