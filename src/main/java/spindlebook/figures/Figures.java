package spindlebook.figures;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import spindlebook.alignment.AlignedCheck;
import spindlebook.card.TravelWords;
import spindlebook.definition.Place;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.InForce;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.log.BookFile;
import spindlebook.log.CarsOfFile;
import spindlebook.log.Json;
import spindlebook.page.Posted;
import spindlebook.travel.Cure;
import spindlebook.travel.DriveCheck;
import spindlebook.travel.EndFindings;
import spindlebook.travel.EndLimit;
import spindlebook.travel.Limit;
import spindlebook.travel.Need;
import spindlebook.travel.Total;
import spindlebook.travel.TravelFindings;
import spindlebook.travel.WorkedOut;
import spindlebook.uncertainty.Figure;
import spindlebook.units.TypedLength;

/**
 * Every finding of a book as JSON, from the same cards and findings as the pages. Lengths in
 * millimetres, angles in radians; wheel positions are spindle minus frame mark, + towards bump; U
 * is the expanded uncertainty, k = 2.
 */
public final class Figures {
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private Figures() {}

  /**
   * @param tell gets one sentence when the book is unsealed
   * @throws spindlebook.log.BookRefused when the file cannot be read as a book
   */
  public static String of(Path file, Consumer<String> tell) {
    BookFile.Contents contents = BookFile.readByHand(file);
    if (!contents.sealed()) {
      tell.accept("This book is unsealed: written by hand, its lines do not vouch for each other.");
    }
    ObjectNode all = NODES.objectNode();
    all.put("sealed", contents.sealed());
    all.put("entries", contents.entries().size());
    ArrayNode cars = all.putArray("cars");
    CarsOfFile.of(contents).values().forEach(book -> cars.add(car(book)));
    try {
      return Json.MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(all);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  public static ObjectNode car(CarBook book) {
    ObjectNode car = NODES.objectNode();
    car.put("car", book.car().orElse(""));
    car.put("name", book.details().map(d -> d.name()).orElse(""));
    car.put("n", book.n());
    DriveCheck check = AlignedCheck.of(book);
    ArrayNode corners = car.putArray("corners");
    check
        .corners()
        .forEach(
            c -> {
              ObjectNode corner = corner(c.card(), c.travel());
              Place across = c.card().place().mirror();
              part(
                  corner,
                  () ->
                      AlignmentFigures.corner(
                          corner, c.card(), book.cornerAt(across).map(book::card)));
              part(corner, () -> LifeFigures.corner(corner, book, c));
              corners.add(corner);
            });
    part(car, () -> LifeFigures.car(car, book, check));
    return car;
  }

  /** One that fails says so and takes none of the rest with it. */
  private static void part(ObjectNode node, Runnable part) {
    WorkedOut.part(part, why -> node.withArray("notWorkedOut").add(why));
  }

  private static ObjectNode corner(Card card, TravelFindings travel) {
    TravelWords words = new TravelWords(card, travel);
    ObjectNode corner = NODES.objectNode();
    corner.put("corner", card.corner());
    corner.put("place", Posted.word(card.place()));
    corner.put("outcome", Posted.word(travel.outcome()));
    figure(corner, "rideMm", travel.rideMm());
    figure(corner, "rawMm", travel.rawMm());
    part(corner, () -> corner.set("asSet", total(travel.asSet(), words)));
    part(corner, () -> corner.set("asItCouldBe", total(travel.asItCouldBe(), words)));
    part(corner, () -> corner.set("droop", end(travel.droop(), words)));
    part(corner, () -> corner.set("bump", end(travel.bump(), words)));
    ArrayNode mid = corner.putArray("midTravel");
    part(corner, () -> travel.midTravel().forEach(m -> mid.add(words.midTravel(m))));
    part(corner, () -> LadderFigures.put(corner, card, travel, words));
    ArrayNode settings = corner.putArray("settings");
    card.adjusters().forEach(a -> settings.add(setting(a)));
    ArrayNode heights = corner.putArray("heights");
    card.heights().forEach(h -> heights.add(height(h)));
    ArrayNode readings = corner.putArray("readings");
    card.readings().forEach(r -> readings.add(reading(r)));
    ArrayNode doubts = corner.putArray("inDoubt");
    card.doubts().forEach(d -> doubts.addObject().put("key", d.key()).put("why", d.doubt()));
    return corner;
  }

  private static ObjectNode total(Total total, TravelWords words) {
    ObjectNode node = NODES.objectNode();
    figure(node, "mm", total.mm());
    figure(node, "droopMm", total.droopMm());
    figure(node, "bumpMm", total.bumpMm());
    node.put("atLeast", total.atLeast());
    needs(node, total.needs(), words);
    return node;
  }

  private static void needs(ObjectNode node, List<Need> needs, TravelWords words) {
    ArrayNode array = node.putArray("needs");
    needs.forEach(n -> array.add(words.need(n)));
  }

  private static ObjectNode end(EndFindings end, TravelWords words) {
    ObjectNode node = NODES.objectNode();
    node.put("outcome", Posted.word(end.outcome()));
    node.put("finding", words.finding(end));
    end.stop()
        .ifPresent(
            s -> {
              figure(node, "stopMm", Optional.of(s.positionMm()));
              node.put("stopComputed", s.computed());
              node.put("stopNotConfirmed", s.notConfirmed());
              figure(node, "stopOtherMm", Optional.ofNullable(s.otherMm()));
            });
    if (end.reaches().size() > 1) {
      ArrayNode stops = node.putArray("stops");
      end.reaches().forEach(r -> stops.add(reach(r, words)));
    }
    figure(node, "heldBackMm", end.heldBack().map(h -> h.mm()));
    figure(node, "neededStopMm", end.neededStopMm());
    figure(node, "marginMm", end.marginMm());
    node.put("marginAtLeast", end.marginAtLeast());
    ArrayNode limits = node.putArray("limits");
    end.limits().forEach(l -> limits.add(limit(l, end, words)));
    needs(node, end.needs(), words);
    end.cure().ifPresent(c -> node.set("cure", cure(c)));
    return node;
  }

  /** A stop with the ends of a solid axle in one pairing. */
  private static ObjectNode reach(EndFindings.Reach reach, TravelWords words) {
    ObjectNode node = NODES.objectNode();
    node.put("pairing", Posted.word(reach.pairing()));
    figure(node, "stopMm", reach.stop().map(s -> s.positionMm()));
    figure(node, "reachMm", Optional.ofNullable(reach.mm()));
    needs(node, reach.needs(), words);
    return node;
  }

  private static ObjectNode limit(Limit limit, EndFindings end, TravelWords words) {
    ObjectNode node = NODES.objectNode();
    node.put("what", words.name(limit));
    if (limit.pairing() != null) {
      node.put("pairing", Posted.word(limit.pairing()));
    }
    node.put("outcome", Posted.word(limit.outcome()));
    node.put("rules", end.rules().filter(limit::equals).isPresent());
    node.put("found", found(limit.at()));
    figure(node, "positionMm", Optional.ofNullable(limit.positionMm()));
    if (limit.at() instanceof EndLimit.Crosses crosses && crosses.brokenMm() != null) {
      ObjectNode between = node.putObject("between");
      figure(between, "keptMm", Optional.of(crosses.positionMm()));
      figure(between, "brokenMm", Optional.of(crosses.brokenMm()));
      between.put("plannedFrom", "kept");
    }
    figure(node, "roomMm", Optional.ofNullable(limit.roomMm()));
    ArrayNode readings = node.putArray("readings");
    limit.readings().forEach(readings::add);
    return node;
  }

  private static String found(EndLimit at) {
    if (at instanceof EndLimit.Crosses crosses) {
      return crosses.how() == EndLimit.How.CUBIC ? "curve" : "bracket";
    }
    if (at instanceof EndLimit.KeptTo) {
      return "kept as far as read";
    }
    return at instanceof EndLimit.BrokenThroughout ? "broken throughout" : "not read";
  }

  private static ObjectNode cure(Cure cure) {
    ObjectNode node = NODES.objectNode();
    node.put("adjuster", cure.adjuster());
    node.put("wantedMm", cure.wantedMm());
    node.put("setMm", cure.setMm());
    node.put("steps", cure.steps());
    if (cure.from() != null) {
      node.put("from", cure.from().inWords());
    }
    if (cure.to() != null) {
      node.put("to", cure.to().inWords());
    }
    node.put("atWheelMm", cure.atWheelMm());
    node.put("leavesCantTell", cure.leaves() != null);
    return node;
  }

  private static ObjectNode setting(InForce a) {
    ObjectNode node = NODES.objectNode();
    node.put("adjuster", a.adjuster().adjuster());
    node.put("setTo", a.setting() == null ? null : a.setting().inWords());
    return node;
  }

  private static ObjectNode height(SeenHeight h) {
    ObjectNode node = taken(NODES.objectNode(), h.at(), h.who());
    node.put("key", h.key());
    node.put("round", h.round().key());
    node.put("name", Posted.word(h.name()));
    node.put("words", h.words());
    typed(node, "spindle", h.height().spindle());
    typed(node, "mark", h.height().mark());
    if (h.height().pairing() != null) {
      node.put("pairing", Posted.word(h.pairing()));
    }
    figure(node, "positionMm", Optional.ofNullable(h.positionMm()));
    node.put("stands", Posted.word(h.stands()));
    node.put("stop", Posted.word(h.stop()));
    return node;
  }

  private static ObjectNode reading(SeenReading r) {
    ObjectNode node = taken(NODES.objectNode(), r.at(), r.who());
    node.put("key", r.key());
    node.put("height", r.height().key());
    node.put("heightWords", r.height().words());
    figure(node, "positionMm", Optional.ofNullable(r.height().positionMm()));
    node.put("steering", Posted.word(r.reading().steering()));
    node.put("what", r.what());
    node.put("result", Posted.word(r.reading().result()));
    node.put("typed", r.reading().typed());
    figure(node, r.reading().angle() != null ? "rad" : "mm", Optional.ofNullable(r.value()));
    node.put("stands", Posted.word(r.stands()));
    ArrayNode because = node.putArray("because");
    r.because().forEach(c -> because.add(c.words()));
    return node;
  }

  /** When and by whom, as far as a book written by hand says so. */
  static ObjectNode taken(ObjectNode node, Instant at, String who) {
    if (at != null) {
      node.put("at", at.toString());
    }
    return who == null ? node : node.put("who", who);
  }

  private static void typed(ObjectNode node, String name, TypedLength length) {
    if (length != null) {
      node.put(name + "Mm", length.mm());
    }
  }

  static void figure(ObjectNode node, String name, Optional<Figure> figure) {
    figure.ifPresent(f -> node.putObject(name).put("value", f.value()).put("U", f.U()));
  }
}
