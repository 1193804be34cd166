package spindlebook.fold;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import spindlebook.definition.Adjuster;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.Allowance;
import spindlebook.definition.Dimension;
import spindlebook.definition.Given;
import spindlebook.definition.HeldBack;
import spindlebook.definition.Layout;
import spindlebook.definition.Measure;
import spindlebook.definition.Place;
import spindlebook.definition.Retired;
import spindlebook.definition.Starter;
import spindlebook.definition.Tool;
import spindlebook.definition.ToolUse;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.AlignmentWay;
import spindlebook.entry.Content;
import spindlebook.entry.GapResult;
import spindlebook.entry.HappeningKind;
import spindlebook.entry.HeightName;
import spindlebook.entry.Joint;
import spindlebook.entry.Pairing;
import spindlebook.entry.PartDone;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.entry.TelltaleKind;
import spindlebook.uncertainty.Figure;

/**
 * Folds a car's entries into one corner's card. It is kept with the card, so that what is
 * commonest, one more height or reading, is added to it and not all folded again.
 */
final class CardFold implements Cloneable {
  private static final AtomicLong FOLDS = new AtomicLong();

  private CarBook book;
  private final String cornerKey;
  private final Content.Corner corner;
  private final Settings settings = new Settings();
  private AlignmentFold alignment;
  private SeenSprings.Fold springs;

  private final Map<String, WatchPoint> watchPoints = new LinkedHashMap<>();
  private final Map<String, Versions<WatchPoint>> asked = new HashMap<>();
  private final Map<String, Adjuster> adjusters = new LinkedHashMap<>();
  private final Map<Dimension, Versions<SeenGiven.Then>> given = new EnumMap<>(Dimension.class);
  private final Map<Dimension, Versions<SeenGiven.Then>> givenAcross =
      new EnumMap<>(Dimension.class);
  private final Map<Allowance, HeldBack> heldBack = new EnumMap<>(Allowance.class);
  private final Map<String, Versions<Tool>> tools = new LinkedHashMap<>();
  // Rounds and heights of other corners too: a mark may be taken as at any of them.
  private Map<String, SeenRound> rounds = new LinkedHashMap<>();
  private Map<String, Written<Content.Height>> heights = new LinkedHashMap<>();
  private final Map<String, List<Written<Content.Reading>>> readings = new HashMap<>();
  private final Map<String, List<Doubted>> doubtedAdjustments = new HashMap<>();
  private final List<Doubted> doubts = new ArrayList<>();
  private final Map<Joint, Written<Content.JointPlace>> joints = new EnumMap<>(Joint.class);
  private Written<Content.Telltale> strapTyped;
  private Positions positions;
  private Card card;

  CardFold(CarBook book, String cornerKey) {
    FOLDS.incrementAndGet();
    this.book = book;
    this.cornerKey = cornerKey;
    this.corner =
        book.standing(cornerKey, Content.Corner.class)
            .orElseThrow(() -> new IllegalArgumentException("no corner " + cornerKey));
    this.alignment = new AlignmentFold(corner.place(), book);
    this.springs = new SeenSprings.Fold(book);
    for (int i = 0; i < book.entries().size(); i++) {
      if (book.standing().get(i) != null) {
        take(book.entries().get(i), book.standing().get(i));
      }
    }
    // Only now is every round known: a phone may send a height before the round it hangs on.
    heights.replaceAll((key, raw) -> new Written<>(raw.entry(), fromThisEnd(raw.content())));
    if (settings.solidAxle()) {
      readings.replaceAll((height, raws) -> raws.stream().filter(this::ofThisEnd).toList());
    }
    positions =
        new Positions(cornerKey, corner.place(), book, settings, rounds, heights, readings, given);
    List<SeenHeight> seenHeights = seeHeights();
    List<SeenReading> seenReadings = seeReadings(seenHeights);
    for (Written<Content.Alignment> raw : alignment.doubted()) {
      AlignmentWay way = raw.content().way();
      doubts.add(doubted(raw, "alignment", way.thing().words() + ", " + way.said()));
    }
    card =
        new Card(
            book.car().orElse(null),
            book.details().orElseThrow(() -> new IllegalArgumentException("no car in this book")),
            cornerKey,
            corner.place(),
            corner.layout(),
            book.n(),
            List.copyOf(watchPoints.values()),
            adjusters.values().stream().map(this::inForce).toList(),
            seeGiven(corner.place(), given),
            seeGiven(corner.place().mirror(), givenAcross),
            Map.copyOf(heldBack),
            tools.values().stream().map(Versions::last).toList(),
            rounds.values().stream().filter(r -> here(r) || otherEndHere(r)).toList(),
            seenHeights,
            seenReadings,
            settings.changes(),
            List.copyOf(doubts),
            alignment.see(settings, this::tool),
            joints.values().stream().map(this::seeJoint).toList(),
            strapNow(seenReadings),
            springs.see(corner.place(), settings, this::tool, seenHeights),
            new Memo(book.asKnown()));
  }

  private SeenJoint seeJoint(Written<Content.JointPlace> raw) {
    Settings.Verdict verdict =
        settings.judge(
            corner.place(), raw.after(), new Subject.JointLaidOut(raw.content().joint()));
    return new SeenJoint(raw.entry(), raw.content(), verdict.stands(), verdict.because());
  }

  /** It hangs as when it is read on the strap in a round, and what moves that moves this. */
  private Optional<Figure> strapNow(List<SeenReading> seen) {
    Subject onIt =
        new Subject.Taken(Quantity.STRAP_LENGTH, null, Steering.STRAIGHT, HeightName.ON_THE_STRAP);
    return Optional.ofNullable(strapTyped)
        .filter(t -> settings.judge(corner.place(), t.after(), onIt).stands().counts())
        .filter(
            t ->
                seen.stream()
                    .filter(r -> r.of(Quantity.STRAP_LENGTH) && r.height().onTheStrap())
                    .noneMatch(SeenReading::counts))
        .map(
            t ->
                ToolError.ofLengths(Starter.tape())
                    .read(t.content().length().mm(), t.key(), t.key()));
  }

  Card card() {
    return card;
  }

  /** How often a corner was folded from its first entry. */
  static long folds() {
    return FOLDS.get();
  }

  // --- one entry more

  /**
   * The same with one entry more, of a key that nothing was said of; empty when it moves more than
   * itself, so that all is to be folded again.
   *
   * @param longer the book with it
   */
  Optional<CardFold> with(Noted entry, CarBook longer) {
    Content content = entry.content();
    if (content instanceof Content.Height height) {
      return withHeight(new Written<>(entry, fromThisEnd(height)), longer);
    }
    if (content instanceof Content.Reading reading) {
      return withReading(new Written<>(entry, reading), longer);
    }
    if (content instanceof Content.Round round) {
      return withRound(entry, round, longer);
    }
    boolean onNoCard =
        content instanceof Content.ToDo
            || content instanceof Content.Photo
            || (content instanceof Content.Telltale t && t.what() != TelltaleKind.STRAP_LENGTH)
            || content instanceof Content.Fastener
            || content instanceof Content.SignOff;
    return onNoCard ? Optional.of(in(longer)) : Optional.empty();
  }

  private Optional<CardFold> withRound(Noted entry, Content.Round round, CarBook longer) {
    if (heights.values().stream().anyMatch(h -> h.content().round().equals(entry.key()))) {
      return Optional.empty();
    }
    CardFold with = in(longer);
    with.rounds = new LinkedHashMap<>(rounds);
    SeenRound seen = seeRound(entry, round);
    with.rounds.put(entry.key(), seen);
    with.positions = positions.with(with.rounds, longer);
    if (here(seen) || otherEndHere(seen)) {
      with.card = card.with(longer.n(), seen);
    }
    return Optional.of(with);
  }

  private Optional<CardFold> withHeight(Written<Content.Height> raw, CarBook longer) {
    SeenRound round = rounds.get(raw.content().round());
    if (movesMore(raw)) {
      return Optional.empty();
    }
    CardFold with = placed(raw, longer);
    if (ofThisCorner(raw, round)) {
      SeenHeight later = with.seeHeight(raw, round);
      Map<String, SeenHeight> replaced = with.replacedBy(later, card.heights());
      List<SeenHeight> seen = new ArrayList<>(card.heights());
      seen.replaceAll(h -> replaced.getOrDefault(h.key(), h));
      seen.add(later);
      List<SeenReading> there =
          replaced.isEmpty()
              ? card.readings()
              : card.readings().stream()
                  .map(r -> r.at(replaced.getOrDefault(r.height().key(), r.height())))
                  .toList();
      with.card =
          replaced.isEmpty()
              ? card.reading(null, longer.n(), seen, there)
              : card.with(longer.n(), seen, there);
    }
    return Optional.of(with);
  }

  /** Whether a height moves more than itself, or nothing is known of its round. */
  private boolean movesMore(Written<Content.Height> raw) {
    return !rounds.containsKey(raw.content().round())
        || book.waits(raw)
        || readings.containsKey(raw.key())
        || !positions.leavesMarks(raw);
  }

  /** With a height among the heights, its card as it was. */
  private CardFold placed(Written<Content.Height> raw, CarBook longer) {
    CardFold with = in(longer);
    with.heights = new LinkedHashMap<>(heights);
    with.heights.put(raw.key(), raw);
    with.positions = positions.with(raw, with.heights, longer);
    return with;
  }

  /** The earlier heights that a later one stands for, by their keys. */
  private Map<String, SeenHeight> replacedBy(SeenHeight later, List<SeenHeight> earlier) {
    Map<String, SeenHeight> replaced = new HashMap<>();
    if (later.name().onePlace()) {
      Worth worth = worth(later);
      earlier.stream()
          .filter(h -> h.name() == later.name() && h.pairing() == later.pairing())
          .filter(h -> standsFor(later, worth, h, worth(h)))
          .forEach(h -> replaced.put(h.key(), h.replaced()));
    }
    return replaced;
  }

  private Optional<CardFold> withReading(Written<Content.Reading> raw, CarBook longer) {
    SeenHeight height = heightHere(raw);
    if (movesMore(raw.content()) || (height != null && book.waits(raw))) {
      return Optional.empty();
    }
    CardFold with = in(longer);
    if (height != null) {
      SeenReading later = seeReading(raw, height);
      List<SeenReading> before = card.readingsOf(later.thing());
      List<SeenReading> after = SeenReadings.with(before, later, this::era, this::moved);
      List<SeenReading> seen = new ArrayList<>(card.readings());
      if (!before.equals(after.subList(0, before.size()))) {
        Map<String, SeenReading> stand = new HashMap<>();
        after.forEach(r -> stand.put(r.key(), r));
        seen.replaceAll(r -> stand.getOrDefault(r.key(), r));
      }
      seen.add(later);
      with.card = card.reading(later.thing(), longer.n(), card.heights(), seen);
      with.card.memo().get(Card.readings(later.thing()), () -> after);
    }
    return Optional.of(with);
  }

  /** Whether a reading moves more than itself, or nothing is known of its height. */
  private boolean movesMore(Content.Reading reading) {
    return !heights.containsKey(reading.height())
        || (reading.quantity() == Quantity.CAMBER
            && given.containsKey(Dimension.READ_POINT_OUTBOARD))
        || (reading.quantity() == Quantity.STRAP_LENGTH && strapTyped != null);
  }

  /** The height a reading was taken at; null when the reading is not on this card. */
  private SeenHeight heightHere(Written<Content.Reading> raw) {
    return card.height(raw.content().height()).filter(h -> ofThisEnd(raw)).orElse(null);
  }

  /**
   * Why a height or reading would be asked about that is not written yet. Nothing is folded for it,
   * unless it moves more than itself.
   */
  Optional<String> doubt(Noted entry) {
    if (entry.content() instanceof Content.Height height) {
      Written<Content.Height> raw = new Written<>(entry, fromThisEnd(height));
      if (!movesMore(raw)) {
        return doubtOfHeight(raw, rounds.get(height.round()));
      }
    } else if (entry.content() instanceof Content.Reading reading && !movesMore(reading)) {
      Written<Content.Reading> raw = new Written<>(entry, reading);
      return Optional.ofNullable(heightHere(raw)).flatMap(at -> doubtOfReading(raw, at));
    }
    return Doubts.of(new CardFold(book.with(entry), cornerKey).card(), entry.key());
  }

  private Optional<String> doubtOfHeight(Written<Content.Height> raw, SeenRound round) {
    if (!ofThisCorner(raw, round)) {
      return Optional.empty();
    }
    CardFold with = placed(raw, book);
    SeenHeight height = with.seeHeight(raw, round);
    Map<String, SeenHeight> replaced = with.replacedBy(height, card.heights());
    return Doubts.height(
        height, card.heights().stream().map(h -> replaced.getOrDefault(h.key(), h)).toList());
  }

  private Optional<String> doubtOfReading(Written<Content.Reading> raw, SeenHeight at) {
    SeenReading reading = seeReading(raw, at);
    return Doubts.reading(
        reading,
        SeenReadings.with(card.readingsOf(reading.thing()), reading, this::era, this::moved),
        card);
  }

  /** The same card in a longer book. */
  private CardFold in(CarBook longer) {
    try {
      CardFold same = (CardFold) clone();
      same.book = longer;
      same.alignment = null;
      same.springs = null;
      same.card = card.in(longer.n());
      return same;
    } catch (CloneNotSupportedException impossible) {
      throw new IllegalStateException(impossible);
    }
  }

  private void take(Noted entry, Content content) {
    if (content instanceof Content.Car car) {
      car.tools().forEach(t -> addTool(entry.n(), t));
    } else if (content instanceof Content.Corner other) {
      takeCorner(entry, other);
    } else if (content instanceof Content.Definition definition) {
      takeDefinition(entry, definition);
    } else if (content instanceof Content.Round round) {
      rounds.put(entry.key(), seeRound(entry, round));
    } else if (content instanceof Content.Height height) {
      heights.put(entry.key(), new Written<>(entry, height));
    } else if (content instanceof Content.Reading reading) {
      readings
          .computeIfAbsent(reading.height(), h -> new ArrayList<>())
          .add(new Written<>(entry, reading));
    } else if (content instanceof Content.Adjustment adjustment) {
      takeAdjustment(entry, adjustment);
    } else if (content instanceof Content.Happening happening) {
      Place place = placeOf(happening.corner());
      if (happening.corner() == null || place != null) {
        settings.befall(place, happening.what(), change(entry, place, null, words(happening)));
      }
      if (happening.what() == HappeningKind.DRIVEN) {
        springs.drive(entry, null);
      }
    } else if (content instanceof Content.Part part) {
      takePart(entry, part);
    } else if (content instanceof Content.Use use) {
      springs.drive(entry, use);
      settings.befall(null, HappeningKind.DRIVEN, change(entry, null, null, SeenUse.words(use)));
    } else if (content instanceof Content.Alignment measured) {
      alignment.take(entry, measured);
    } else if (content instanceof Content.Telltale telltale
        && telltale.what() == TelltaleKind.STRAP_LENGTH
        && telltale.length() != null
        && cornerKey.equals(telltale.corner())) {
      if (telltale.pull() == null) {
        strapTyped = new Written<>(entry, telltale);
      } else {
        springs.take(entry, telltale);
      }
    } else if (content instanceof Content.Target target) {
      alignment.take(entry, target);
    } else if (content instanceof Content.JointPlace place && cornerKey.equals(place.corner())) {
      joints.put(place.joint(), new Written<>(entry, place));
    }
  }

  /** A height on a solid axle is of both its ends; elsewhere what it says of an axle is nothing. */
  private Content.Height fromThisEnd(Content.Height height) {
    if (!height.ofAxle()) {
      return height;
    }
    SeenRound round = rounds.get(height.round());
    boolean onAxle = round != null && endOfAxle(round.round().corner()) != null;
    if (!onAxle) {
      return height.withAxle(null, null);
    }
    return otherEndHere(round) ? height.fromOtherEnd() : height;
  }

  /** Whether a round was taken from the other end of this corner's solid axle. */
  private boolean otherEndHere(SeenRound round) {
    return corner.layout() == Layout.SOLID_AXLE_END
        && endOfAxle(round.round().corner()) == corner.place().mirror();
  }

  /** A reading is of the end its round is of, unless it says that it was taken at the other. */
  private boolean ofThisEnd(Written<Content.Reading> raw) {
    Written<Content.Height> height = heights.get(raw.content().height());
    SeenRound round = height == null ? null : rounds.get(height.content().round());
    boolean atOther =
        Boolean.TRUE.equals(raw.content().atOtherEnd())
            && round != null
            && endOfAxle(round.round().corner()) != null;
    return round == null
        || (otherEndHere(round) ? atOther : !atOther)
        || (otherEndHere(round) && ofTheAxle(raw.content().point()))
        || (atOther && ofTheAxle(raw.content().point()));
  }

  private boolean ofTheAxle(String point) {
    WatchPoint here = point == null ? null : watchPoints.get(point);
    return here != null && here.place().ofTheAxle();
  }

  /** The place of an end of a solid axle; null for any other corner. */
  private Place endOfAxle(String key) {
    return book.standing(key, Content.Corner.class)
        .filter(c -> c.layout() == Layout.SOLID_AXLE_END)
        .map(Content.Corner::place)
        .orElse(null);
  }

  private void takeCorner(Noted entry, Content.Corner other) {
    if (other.layout() == Layout.SOLID_AXLE_END) {
      settings.onSolidAxle(other.place());
    }
    other.adjusters().forEach(a -> settings.add(other.place(), a, entry.n()));
    if (other.place() == corner.place().mirror()) {
      other.given().forEach(g -> addGiven(givenAcross, entry, g));
    }
    if (!entry.key().equals(cornerKey)) {
      return;
    }
    other.watchPoints().forEach(w -> addWatchPoint(entry.n(), w));
    other.adjusters().forEach(a -> adjusters.put(a.adjuster(), a));
    other.given().forEach(g -> addGiven(given, entry, g));
    other.heldBack().forEach(h -> heldBack.put(h.allowance(), h));
  }

  private void takeDefinition(Noted entry, Content.Definition d) {
    boolean here = cornerKey.equals(d.corner());
    Place place = placeOf(d.corner());
    if (d.what() instanceof Tool tool) {
      addTool(entry.n(), tool);
    } else if (d.what() instanceof Adjuster adjuster) {
      if (place != null) {
        settings.add(place, adjuster, entry.n());
      }
      if (here) {
        adjusters.put(adjuster.adjuster(), adjuster);
      }
    } else if (d.what() instanceof Given dimension) {
      if (place == corner.place().mirror()) {
        addGiven(givenAcross, entry, dimension);
      }
      if (here) {
        addGiven(given, entry, dimension);
      }
    } else if (d.what() instanceof WatchPoint point && here) {
      addWatchPoint(entry.n(), point);
    } else if (d.what() instanceof HeldBack held && here) {
      heldBack.put(held.allowance(), held);
    } else if (d.what() instanceof Retired retired) {
      retire(retired, here);
    } else if (here) {
      springs.take(entry, d);
    }
  }

  /** Of the same kind, but another one: what was read of the one before is not of it. */
  private void takePart(Noted entry, Content.Part part) {
    Place place = placeOf(part.corner());
    if (part.done() != PartDone.FITTED || part.adjuster() == null || place == null) {
      return;
    }
    settings.fit(
        place,
        part.adjuster(),
        change(entry, place, part.adjuster(), part.called() + " " + part.done().words()));
    Adjuster adjuster = adjusters.get(part.adjuster());
    if (cornerKey.equals(part.corner())
        && adjuster != null
        && adjuster.kind() == AdjusterKind.LIMIT_STRAP) {
      springs.take(entry, part);
    }
  }

  private void retire(Retired retired, boolean here) {
    if (retired.tool() != null) {
      tools.remove(retired.tool());
    }
    if (here && retired.watchPoint() != null) {
      watchPoints.remove(retired.watchPoint());
    }
    if (here && retired.adjuster() != null) {
      adjusters.remove(retired.adjuster());
    }
  }

  private void takeAdjustment(Noted entry, Content.Adjustment adjustment) {
    Place place = placeOf(adjustment.corner());
    Written<Content.Adjustment> raw = new Written<>(entry, adjustment);
    if (place == null || book.refused(raw)) {
      return;
    }
    String words = words(place, adjustment);
    if (book.waits(raw)) {
      if (place == corner.place()) {
        Doubted doubted = doubted(raw, "adjustment", words);
        doubts.add(doubted);
        doubtedAdjustments
            .computeIfAbsent(adjustment.adjuster(), a -> new ArrayList<>())
            .add(doubted);
      }
      return;
    }
    settings.adjust(place, adjustment, change(entry, place, adjustment.adjuster(), words));
  }

  private static Change change(Noted entry, Place place, String adjuster, String words) {
    return new Change(entry.n(), entry.key(), entry.at(), entry.who(), place, adjuster, words);
  }

  private static Doubted doubted(Written<?> raw, String kind, String words) {
    return new Doubted(raw.entry(), kind, words, raw.content().doubt());
  }

  private String words(Place place, Content.Adjustment a) {
    String from = a.from() == null ? "" : " from " + a.from().inWords();
    return settings.name(place, a.adjuster()) + from + " to " + a.to().inWords();
  }

  private static String words(Content.Happening h) {
    return h.words() == null || h.words().isBlank()
        ? h.what().words()
        : h.what().words() + ": " + h.words();
  }

  private Place placeOf(String key) {
    return book.placeOf(key).orElse(null);
  }

  private void addTool(long n, Tool tool) {
    tools.computeIfAbsent(tool.tool(), t -> new Versions<>()).add(n, tool);
  }

  private static void addGiven(
      Map<Dimension, Versions<SeenGiven.Then>> to, Noted entry, Given length) {
    to.computeIfAbsent(length.dimension(), d -> new Versions<>())
        .add(entry.n(), new SeenGiven.Then(length, entry.after()));
  }

  private Map<Dimension, SeenGiven> seeGiven(
      Place of, Map<Dimension, Versions<SeenGiven.Then>> versions) {
    return versions.entrySet().stream()
        .collect(
            Collectors.toUnmodifiableMap(
                Map.Entry::getKey, e -> e.getValue().last().seen(of, settings)));
  }

  private void addWatchPoint(long n, WatchPoint point) {
    watchPoints.put(point.point(), point);
    asked.computeIfAbsent(point.point(), p -> new Versions<>()).add(n, point);
  }

  /**
   * The tool a round names, in the version of now; the starting one when it reads no such thing.
   */
  private Tool tool(String name, Tool otherwise) {
    Versions<Tool> versions = name == null ? null : tools.get(name);
    boolean angles = otherwise.use() == ToolUse.ANGLES;
    return versions == null || (versions.last().use() == ToolUse.ANGLES) != angles
        ? otherwise
        : versions.last();
  }

  private boolean here(SeenRound round) {
    return cornerKey.equals(round.round().corner());
  }

  private SeenRound seeRound(Noted entry, Content.Round round) {
    return new SeenRound(
        entry,
        round,
        tool(round.tape(), Starter.tape()),
        tool(round.gapTool(), Starter.drills()),
        tool(round.angleTool(), Starter.angleFinder()));
  }

  private InForce inForce(Adjuster adjuster) {
    Place place = corner.place();
    Change last = settings.lastChange(place, adjuster.adjuster());
    return new InForce(
        adjuster,
        settings.now(place, adjuster.adjuster()),
        last == null ? 0 : last.n(),
        last == null ? null : last.at(),
        doubtedAdjustments.getOrDefault(adjuster.adjuster(), List.of()));
  }

  // --- heights

  private List<SeenHeight> seeHeights() {
    List<SeenHeight> seen = new ArrayList<>();
    Map<Named, Map<Worth, List<Integer>>> named = new HashMap<>();
    for (Written<Content.Height> raw : heights.values()) {
      SeenRound round = rounds.get(raw.content().round());
      if (!ofThisCorner(raw, round) || book.refused(raw)) {
        continue;
      }
      SeenHeight height = seeHeight(raw, round);
      if (height.name().onePlace()) {
        Map<Worth, List<Integer>> same =
            named.computeIfAbsent(new Named(height.name(), height.pairing()), n -> new HashMap<>());
        Worth worth = worth(height);
        if (height.stopCounts()) {
          same.forEach((earlier, heights) -> replace(seen, height, worth, heights, earlier));
          same.values().removeIf(List::isEmpty);
        }
        same.computeIfAbsent(worth, w -> new ArrayList<>()).add(seen.size());
      }
      seen.add(height);
    }
    return List.copyOf(seen);
  }

  /** For one that counts; looks at each of what is worth the same only where they may differ. */
  private static void replace(
      List<SeenHeight> seen, SeenHeight later, Worth worth, List<Integer> heights, Worth earlier) {
    boolean mayDiffer = later.height().doubt() != null;
    if (mayDiffer || standsForAll(later, worth, earlier)) {
      heights.removeIf(
          i -> {
            boolean replaced = standsFor(later, worth, seen.get(i), earlier);
            if (replaced) {
              seen.set(i, seen.get(i).replaced());
            }
            return replaced;
          });
    }
  }

  private record Named(HeightName name, Pairing pairing) {}

  /** What heights of one name are worth as the place it names: all of them alike. */
  private record Worth(Standing stop, long era) {}

  private Worth worth(SeenHeight height) {
    return new Worth(height.stop(), era(height));
  }

  private boolean ofThisCorner(Written<Content.Height> raw, SeenRound round) {
    return round != null && (here(round) || (raw.content().ofAxle() && otherEndHere(round)));
  }

  private SeenHeight seeHeight(Written<Content.Height> raw, SeenRound round) {
    Content.Height height = raw.content();
    Figure position = positions.at(raw, round).orElse(null);
    Standing stands = position == null ? Standing.OUTSIDE : Standing.LIVE;
    if (book.waits(raw)) {
      stands = Standing.IN_DOUBT;
      if (here(round)) {
        doubts.add(doubted(raw, "height", height.name().words() + ", " + typed(height)));
      }
    }
    Settings.Verdict verdict = settings.judge(corner.place(), raw.after(), Positions.stop(height));
    return new SeenHeight(
        raw.entry(),
        round,
        height,
        position,
        positions.markMm(raw),
        stands,
        verdict.stands(),
        verdict.because());
  }

  private static String typed(Content.Height height) {
    return "spindle " + (height.spindle() == null ? "not read" : height.spindle().typed());
  }

  /**
   * A later height of the same name stands for earlier ones whose place was moved or worn before
   * it; and for those it lies far off, asked about and answered that it is so: the mean of the two
   * is a place where the wheel never stood. Taken back, the earlier one is there again.
   */
  private static boolean standsFor(
      SeenHeight later, Worth worth, SeenHeight earlier, Worth worthEarlier) {
    boolean itIsSo = later.height().doubt() != null;
    return later.stopCounts()
        && (standsForAll(later, worth, worthEarlier)
            || (itIsSo && !kept(later, worthEarlier) && Doubts.farOff(earlier, later)));
  }

  /** Whether it does for all that are worth the same. */
  private static boolean standsForAll(SeenHeight later, Worth worth, Worth earlier) {
    boolean moved = !earlier.stop().counts() || earlier.era() != worth.era();
    return Boolean.FALSE.equals(later.height().again()) || (moved && !kept(later, earlier));
  }

  private static boolean kept(SeenHeight later, Worth earlier) {
    return Boolean.TRUE.equals(later.height().again()) && earlier.stop().counts();
  }

  private long era(SeenHeight height) {
    return positions.era(heights.get(height.key()));
  }

  // --- readings

  private List<SeenReading> seeReadings(List<SeenHeight> seenHeights) {
    Map<String, SeenHeight> byKey = new HashMap<>();
    seenHeights.forEach(h -> byKey.put(h.key(), h));
    List<Written<Content.Reading>> inOrder = new ArrayList<>();
    readings.forEach(
        (height, raws) -> {
          if (byKey.containsKey(height)) {
            inOrder.addAll(raws);
          }
        });
    inOrder.sort(Comparator.comparingLong(Written::n));

    SeenReadings seen = new SeenReadings(this::era, this::moved);
    for (Written<Content.Reading> raw : inOrder) {
      if (!book.refused(raw)) {
        seen.add(seeReading(raw, byKey.get(raw.content().height())));
      }
    }
    return seen.list();
  }

  private SeenReading seeReading(Written<Content.Reading> raw, SeenHeight height) {
    Content.Reading reading = raw.content();
    WatchPoint point = reading.point() == null ? null : watchPoints.get(reading.point());
    WatchPoint pointThen =
        reading.point() != null && asked.containsKey(reading.point())
            ? asked.get(reading.point()).at(raw.n())
            : null;
    Subject subject = taken(reading, pointThen, height);
    Settings.Verdict verdict = settings.judge(corner.place(), raw.after(), subject);
    boolean fits = fits(reading, pointThen);
    boolean nothingWatched = reading.quantity() == Quantity.WATCH_POINT && point == null;
    String steps = Positions.stepsOf(reading, positions.stepsOf(heights.get(height.key())));
    Figure value = fits ? value(raw, height, steps) : null;
    Standing stands = verdict.stands();
    if (stands == Standing.WORKED_OUT && value != null) {
      value = value.plus(settings.movedMm(corner.place(), raw.after(), subject));
      // Less than nothing is no gap: there the stop is into its pad.
      stands = value.value() < 0 ? Standing.STALE : stands;
    }
    Standing named = stands;
    if (book.waits(raw)) {
      stands = Standing.IN_DOUBT;
      named = Standing.IN_DOUBT;
      String what = pointThen == null ? reading.quantity().words() : pointThen.name();
      doubts.add(doubted(raw, "reading", what + ", " + reading.typed()));
    } else if (!fits || nothingWatched) {
      stands = Standing.OUTSIDE;
      named = Standing.OUTSIDE;
    } else if (!height.positionCounts()) {
      stands = Standing.OUTSIDE;
      // A height in doubt may not be the place it names.
      named = height.stands() == Standing.IN_DOUBT ? Standing.IN_DOUBT : named;
    }
    return new SeenReading(
        raw.entry(),
        height,
        reading,
        point,
        pointThen,
        value,
        stands,
        mounts(raw, stands),
        named,
        verdict.because());
  }

  private static Subject taken(Content.Reading reading, WatchPoint then, SeenHeight height) {
    return new Subject.Taken(
        reading.quantity(), then == null ? null : then.place(), reading.steering(), height.name());
  }

  /** The last change before a reading that moved what was read. */
  private long moved(SeenReading reading) {
    Subject subject = taken(reading.reading(), reading.pointThen(), reading.height());
    return settings.era(corner.place(), reading.entry().after(), subject);
  }

  private Standing mounts(Written<Content.Reading> raw, Standing stands) {
    if (stands != Standing.STALE || raw.content().quantity() != Quantity.STRAP_LENGTH) {
      return stands;
    }
    Subject elsewhere =
        new Subject.Taken(
            Quantity.STRAP_LENGTH, null, raw.content().steering(), HeightName.IN_BETWEEN);
    return settings.judge(corner.place(), raw.after(), elsewhere).stands();
  }

  /** Whether it was read in the unit that belongs to it: a length, or an angle. */
  private static boolean fits(Content.Reading reading, WatchPoint point) {
    boolean asLength = reading.length() != null || reading.go() != null || reading.noGo() != null;
    boolean asAngle = reading.angle() != null;
    return switch (reading.quantity()) {
      case STRAP_LENGTH, SHOCK_LENGTH, STOP_GAP -> !asAngle;
      case CAMBER -> !asLength;
      case TOE -> true;
      case WATCH_POINT ->
          point == null || (point.place().measure() == Measure.ANGLE ? !asLength : !asAngle);
    };
  }

  private static Figure value(Written<Content.Reading> raw, SeenHeight height, String steps) {
    Content.Reading reading = raw.content();
    if (reading.result() == GapResult.GO_NO_GO) {
      if (reading.go() == null || reading.noGo() == null) {
        return null;
      }
      double middleMm = (reading.go().mm() + reading.noGo().mm()) / 2;
      return ToolError.between(height.round().gapTool(), reading.go(), reading.noGo())
          .read(middleMm, raw.key(), steps);
    }
    if (reading.result() != GapResult.NUMBER) {
      return null;
    }
    if (reading.angle() != null) {
      return ToolError.ofAngles(height.round().angleTool(), 0)
          .read(reading.angle().rad(), raw.key(), steps);
    }
    boolean gap =
        reading.quantity() == Quantity.WATCH_POINT || reading.quantity() == Quantity.STOP_GAP;
    Tool tool = gap ? height.round().toolOfGap(reading.length().mm()) : height.round().tape();
    return ToolError.ofLengths(tool).read(reading.length().mm(), raw.key(), steps);
  }
}
