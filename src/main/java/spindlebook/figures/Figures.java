package spindlebook.figures;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import spindlebook.advice.DriveCheck;
import spindlebook.card.TravelWords;
import spindlebook.finding.Finding;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.InForce;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.log.BookFile;
import spindlebook.log.CarsOfFile;
import spindlebook.log.Json;
import spindlebook.measured.AlignedCheck;
import spindlebook.travel.Cure;
import spindlebook.travel.EndFindings;
import spindlebook.travel.EndLimit;
import spindlebook.travel.Limit;
import spindlebook.travel.Need;
import spindlebook.travel.StopFound;
import spindlebook.travel.Total;
import spindlebook.travel.TravelFindings;

/**
 * Every finding of a book as JSON, from the same cards and findings as the pages. Lengths in
 * millimetres, angles in radians; wheel positions are spindle minus frame mark, + towards bump; U
 * is the expanded uncertainty, k = 2.
 */
public final class Figures {
  private final TravelWords words;

  private Figures(TravelWords words) {
    this.words = words;
  }

  /**
   * @param tell gets one sentence when the book is unsealed
   * @throws spindlebook.log.BookRefused when the file cannot be read as a book
   */
  public static String of(Path file, Consumer<String> tell) {
    BookFile.Contents contents = BookFile.readByHand(file);
    if (!contents.sealed()) {
      tell.accept("This book is unsealed: written by hand, its lines do not vouch for each other.");
    }
    Node all =
        new Node()
            .put("sealed", contents.sealed())
            .put("entries", contents.entries().size())
            .put("cars", CarsOfFile.of(contents).values().stream().map(Figures::car).toList());
    try {
      return Json.MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(all.json());
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  public static ObjectNode car(CarBook book) {
    DriveCheck check = AlignedCheck.of(book);
    Node car =
        new Node()
            .put("car", book.car().orElse(""))
            .put("name", book.details().map(d -> d.name()).orElse(""))
            .put("n", book.n())
            .put("corners", check.corners().stream().map(c -> corner(book, c)).toList());
    return car.part(() -> LifeFigures.car(car, book, check)).json();
  }

  private static Node corner(CarBook book, DriveCheck.Checked at) {
    Card card = at.card();
    TravelFindings travel = at.travel();
    Figures figures = new Figures(new TravelWords(card, travel));
    Node corner =
        new Node()
            .put("corner", card.corner())
            .put("place", card.place())
            .put("outcome", travel.outcome())
            .put("rideMm", travel.rideMm())
            .put("rawMm", travel.rawMm());
    List<String> mid = new ArrayList<>();
    return corner
        .part(() -> corner.put("asSet", figures.total(travel.asSet())))
        .part(() -> corner.put("asItCouldBe", figures.total(travel.asItCouldBe())))
        .part(() -> corner.put("droop", figures.end(travel.droop())))
        .part(() -> corner.put("bump", figures.end(travel.bump())))
        .part(() -> travel.midTravel().forEach(m -> mid.add(figures.words.midTravel(m))))
        .put("midTravel", mid)
        .part(() -> LadderFigures.put(corner, card, travel, figures.words))
        .put("settings", card.adjusters().stream().map(Figures::setting).toList())
        .put("heights", card.heights().stream().map(Figures::height).toList())
        .put("readings", card.readings().stream().map(Figures::reading).toList())
        .put(
            "inDoubt",
            card.doubts().stream()
                .map(d -> new Node().put("key", d.key()).said("why", d.doubt()))
                .toList())
        .part(() -> AlignmentFigures.corner(corner, card, book.mirror(card)))
        .part(() -> SpringFigures.corner(corner, book, card))
        .part(() -> LifeFigures.corner(corner, book, at));
  }

  private Node total(Total total) {
    return new Node()
        .put("mm", total.mm())
        .put("droopMm", total.droopMm())
        .put("bumpMm", total.bumpMm())
        .put("atLeast", total.atLeast())
        .put("needs", needs(total.needs()));
  }

  private List<String> needs(List<Need> needs) {
    return needs.stream().map(words::need).toList();
  }

  private Node end(EndFindings end) {
    Stream<Finding> limits =
        words.found(end.end()).stream().filter(f -> f.group() == Finding.Group.LIMIT);
    Optional<StopFound> stop = end.stop();
    List<EndFindings.Reach> stops = end.reaches().size() > 1 ? end.reaches() : List.of();
    return new Node()
        .put("outcome", end.outcome())
        .put("finding", words.finding(end))
        .put("stopMm", stop.map(StopFound::positionMm))
        .put("stopComputed", stop.map(StopFound::computed))
        .put("stopNotConfirmed", stop.map(StopFound::notConfirmed))
        .put("stopOtherMm", stop.map(StopFound::otherMm))
        .put("stops", stops.isEmpty() ? null : stops.stream().map(this::reach).toList())
        .put("heldBackMm", end.heldBack().map(h -> h.mm()))
        .put("neededStopMm", end.neededStopMm())
        .put("marginMm", end.marginMm())
        .put("marginAtLeast", end.marginAtLeast())
        .put("limits", limits.map(f -> limit(f, end)).toList())
        .put("needs", needs(end.needs()))
        .put("cure", end.cure().map(Figures::cure));
  }

  /** A stop with the ends of a solid axle in one pairing. */
  private Node reach(EndFindings.Reach reach) {
    return new Node()
        .put("pairing", reach.pairing())
        .put("stopMm", reach.stop().map(s -> s.positionMm()))
        .put("reachMm", reach.mm())
        .put("needs", needs(reach.needs()));
  }

  private Node limit(Finding found, EndFindings end) {
    Limit limit = (Limit) found.of();
    boolean between = limit.at() instanceof EndLimit.Crosses c && c.brokenMm() != null;
    return new Node()
        .put("what", found.name())
        .put("pairing", limit.pairing())
        .put("outcome", found.verdict())
        .put("rules", end.rules().filter(limit::equals).isPresent())
        .put("found", found(limit.at()))
        .put("positionMm", found.position())
        .put("between", between ? between((EndLimit.Crosses) limit.at()) : null)
        .put("roomMm", found.figure())
        .put("readings", found.readings());
  }

  private static Node between(EndLimit.Crosses crosses) {
    return new Node()
        .put("keptMm", crosses.positionMm())
        .put("brokenMm", crosses.brokenMm())
        .put("plannedFrom", "kept");
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

  private static Node cure(Cure cure) {
    return new Node()
        .put("adjuster", cure.adjuster())
        .put("wantedMm", cure.wantedMm())
        .put("setMm", cure.setMm())
        .put("steps", cure.steps())
        .put("from", cure.from() == null ? null : cure.from().inWords())
        .put("to", cure.to() == null ? null : cure.to().inWords())
        .put("atWheelMm", cure.atWheelMm())
        .put("leavesCantTell", cure.leaves() != null);
  }

  private static Node setting(InForce a) {
    return new Node()
        .put("adjuster", a.adjuster().adjuster())
        .said("setTo", a.setting() == null ? null : a.setting().inWords());
  }

  private static Node height(SeenHeight h) {
    return taken(h.at(), h.who())
        .put("key", h.key())
        .put("round", h.round().key())
        .put("name", h.name())
        .put("words", h.words())
        .put("spindleMm", h.height().spindle())
        .put("markMm", h.height().mark())
        .put("pairing", h.height().pairing() == null ? null : h.pairing())
        .put("positionMm", h.positionMm())
        .put("stands", h.stands())
        .put("stop", h.stop());
  }

  private static Node reading(SeenReading r) {
    return taken(r.at(), r.who())
        .put("key", r.key())
        .put("height", r.height().key())
        .put("heightWords", r.height().words())
        .put("positionMm", r.height().positionMm())
        .put("steering", r.reading().steering())
        .put("what", r.what())
        .put("result", r.reading().result())
        .said("typed", r.reading().typed())
        .put(r.reading().angle() != null ? "rad" : "mm", r.value())
        .put("stands", r.stands())
        .put("because", r.because().stream().map(c -> c.words()).toList());
  }

  /** When and by whom, as far as a book written by hand says so. */
  static Node taken(Instant at, String who) {
    return new Node().put("at", at).put("who", who);
  }
}
