package spindlebook.corner;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import spindlebook.uncertainty.Figure;

/** Folds a car's entries into one corner's card. Used once and thrown away. */
final class CardFold {
  private final CarBook book;
  private final String cornerKey;
  private final Content.Corner corner;
  private final Settings settings = new Settings();
  private final AlignmentFold alignment;

  private final Map<String, WatchPoint> watchPoints = new LinkedHashMap<>();
  private final Map<String, Versions<WatchPoint>> asked = new HashMap<>();
  private final Map<String, Adjuster> adjusters = new LinkedHashMap<>();
  private final Map<Dimension, Versions<GivenThen>> given = new EnumMap<>(Dimension.class);
  private final Map<Dimension, Versions<GivenThen>> givenAcross = new EnumMap<>(Dimension.class);
  private final Map<Allowance, HeldBack> heldBack = new EnumMap<>(Allowance.class);
  private final Map<String, Versions<Tool>> tools = new LinkedHashMap<>();
  // Rounds and heights of other corners too: a mark may be taken as at any of them.
  private final Map<String, SeenRound> rounds = new LinkedHashMap<>();
  private final Map<String, Written<Content.Height>> heights = new LinkedHashMap<>();
  private final Map<String, List<Written<Content.Reading>>> readings = new HashMap<>();
  private final Map<String, List<Doubted>> doubtedAdjustments = new HashMap<>();
  private final List<Doubted> doubts = new ArrayList<>();
  private Written<Content.Telltale> strapTyped;

  CardFold(CarBook book, String cornerKey) {
    this.book = book;
    this.cornerKey = cornerKey;
    this.corner =
        book.standing(cornerKey)
            .filter(Content.Corner.class::isInstance)
            .map(Content.Corner.class::cast)
            .orElseThrow(() -> new IllegalArgumentException("no corner " + cornerKey));
    this.alignment = new AlignmentFold(corner.place(), book);
  }

  Card card() {
    for (Noted entry : book.entries()) {
      book.standing(entry.key()).ifPresent(content -> take(entry, content));
    }
    // Only now is every round known: a phone may send a height before the round it hangs on.
    heights.replaceAll((key, raw) -> new Written<>(raw.entry(), fromThisEnd(raw.content())));
    readings.replaceAll((height, raws) -> raws.stream().filter(this::ofThisEnd).toList());
    Positions positions =
        new Positions(cornerKey, corner.place(), book, settings, rounds, heights, readings, given);
    List<SeenHeight> seenHeights = seeHeights(positions);
    List<SeenReading> seenReadings = seeReadings(seenHeights, positions);
    for (Written<Content.Alignment> raw : alignment.doubted()) {
      AlignmentWay way = raw.content().way();
      doubts.add(doubted(raw, "alignment", way.thing().words() + ", " + way.said()));
    }
    return new Card(
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
        strapNow(seenReadings));
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
        .map(t -> ToolFigures.length(t.content().length(), Starter.tape(), t.key(), t.key()));
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
    } else if (content instanceof Content.Use use) {
      settings.befall(null, HappeningKind.DRIVEN, change(entry, null, null, SeenUse.words(use)));
    } else if (content instanceof Content.Alignment measured) {
      alignment.take(entry, measured);
    } else if (content instanceof Content.Telltale telltale
        && telltale.what() == TelltaleKind.STRAP_LENGTH
        && telltale.length() != null
        && cornerKey.equals(telltale.corner())) {
      strapTyped = new Written<>(entry, telltale);
    } else if (content instanceof Content.Target target) {
      alignment.take(entry, target);
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
    return book.standing(key)
        .filter(Content.Corner.class::isInstance)
        .map(Content.Corner.class::cast)
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
    if (d.tool() != null) {
      addTool(entry.n(), d.tool());
    }
    Content.Retired retired = d.retired();
    if (retired != null && retired.tool() != null) {
      tools.remove(retired.tool());
    }
    Place place = placeOf(d.corner());
    if (d.adjuster() != null && place != null) {
      settings.add(place, d.adjuster(), entry.n());
    }
    if (d.given() != null && place == corner.place().mirror()) {
      addGiven(givenAcross, entry, d.given());
    }
    if (!cornerKey.equals(d.corner())) {
      return;
    }
    if (d.watchPoint() != null) {
      addWatchPoint(entry.n(), d.watchPoint());
    }
    if (d.adjuster() != null) {
      adjusters.put(d.adjuster().adjuster(), d.adjuster());
    }
    if (d.given() != null) {
      addGiven(given, entry, d.given());
    }
    if (d.heldBack() != null) {
      heldBack.put(d.heldBack().allowance(), d.heldBack());
    }
    if (retired != null && retired.watchPoint() != null) {
      watchPoints.remove(retired.watchPoint());
    }
    if (retired != null && retired.adjuster() != null) {
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
    Noted entry = raw.entry();
    return new Doubted(
        entry.n(), entry.key(), entry.at(), entry.who(), kind, words, CarBook.doubt(raw.content()));
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
    return key == null
        ? null
        : book.standing(key)
            .filter(Content.Corner.class::isInstance)
            .map(c -> ((Content.Corner) c).place())
            .orElse(null);
  }

  private void addTool(long n, Tool tool) {
    tools.computeIfAbsent(tool.tool(), t -> new Versions<>()).add(n, tool);
  }

  private static void addGiven(Map<Dimension, Versions<GivenThen>> to, Noted entry, Given length) {
    to.computeIfAbsent(length.dimension(), d -> new Versions<>())
        .add(entry.n(), new GivenThen(length, entry.after()));
  }

  private Map<Dimension, SeenGiven> seeGiven(
      Place of, Map<Dimension, Versions<GivenThen>> versions) {
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
        entry.key(),
        entry.n(),
        entry.at(),
        entry.who(),
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

  private List<SeenHeight> seeHeights(Positions positions) {
    List<SeenHeight> seen = new ArrayList<>();
    for (Written<Content.Height> raw : heights.values()) {
      SeenRound round = rounds.get(raw.content().round());
      boolean ofThisEnd =
          round != null && (here(round) || (raw.content().ofAxle() && otherEndHere(round)));
      if (!ofThisEnd || book.refused(raw)) {
        continue;
      }
      SeenHeight height = seeHeight(raw, round, positions);
      replaceEarlier(seen, height, positions);
      seen.add(height);
    }
    return List.copyOf(seen);
  }

  private SeenHeight seeHeight(Written<Content.Height> raw, SeenRound round, Positions positions) {
    Noted entry = raw.entry();
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
        entry.key(),
        entry.n(),
        entry.at(),
        entry.who(),
        round,
        height,
        position,
        stands,
        verdict.stands(),
        verdict.because());
  }

  private static String typed(Content.Height height) {
    return "spindle " + (height.spindle() == null ? "not read" : height.spindle().typed());
  }

  /**
   * A later height of the same name stands for earlier ones whose place was moved or worn since;
   * and for those it lies far off, asked about and answered that it is so: the mean of the two is a
   * place where the wheel never stood. Taken back, the earlier one is there again.
   */
  private void replaceEarlier(List<SeenHeight> seen, SeenHeight later, Positions positions) {
    if (!later.name().onePlace() || !later.stopCounts()) {
      return;
    }
    boolean instead = Boolean.FALSE.equals(later.height().again());
    boolean again = Boolean.TRUE.equals(later.height().again());
    boolean itIsSo = later.height().doubt() != null;
    for (int i = 0; i < seen.size(); i++) {
      SeenHeight earlier = seen.get(i);
      boolean moved =
          earlier.stop() != Standing.LIVE || era(earlier, positions) != era(later, positions);
      boolean kept = again && earlier.stop().counts();
      if (earlier.name() == later.name()
          && earlier.pairing() == later.pairing()
          && (instead || ((moved || (itIsSo && Doubts.farOff(earlier, later))) && !kept))) {
        seen.set(i, earlier.replaced());
      }
    }
  }

  private long era(SeenHeight height, Positions positions) {
    return positions.era(heights.get(height.key()));
  }

  // --- readings

  private List<SeenReading> seeReadings(List<SeenHeight> seenHeights, Positions positions) {
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

    List<SeenReading> seen = new ArrayList<>();
    for (Written<Content.Reading> raw : inOrder) {
      if (book.refused(raw)) {
        continue;
      }
      SeenReading reading = seeReading(raw, byKey.get(raw.content().height()), positions);
      replaceEarlier(seen, reading, positions);
      seen.add(reading);
    }
    return List.copyOf(seen);
  }

  private SeenReading seeReading(
      Written<Content.Reading> raw, SeenHeight height, Positions positions) {
    Noted entry = raw.entry();
    Content.Reading reading = raw.content();
    WatchPoint point = reading.point() == null ? null : watchPoints.get(reading.point());
    WatchPoint pointThen =
        reading.point() != null && asked.containsKey(reading.point())
            ? asked.get(reading.point()).at(entry.n())
            : null;
    Settings.Verdict verdict =
        settings.judge(
            corner.place(),
            raw.after(),
            new Subject.Taken(
                reading.quantity(),
                pointThen == null ? null : pointThen.place(),
                reading.steering(),
                height.name()));
    boolean fits = fits(reading, pointThen);
    boolean nothingWatched = reading.quantity() == Quantity.WATCH_POINT && point == null;
    Standing stands = verdict.stands();
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
    String steps = Positions.stepsOf(reading, positions.stepsOf(heights.get(height.key())));
    return new SeenReading(
        entry.key(),
        entry.n(),
        entry.at(),
        entry.who(),
        height,
        reading,
        point,
        pointThen,
        fits ? value(raw, height, steps) : null,
        stands,
        mounts(raw, stands),
        named,
        verdict.because());
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
      return reading.go() == null || reading.noGo() == null
          ? null
          : ToolFigures.between(reading.go(), reading.noGo(), steps);
    }
    if (reading.result() != GapResult.NUMBER) {
      return null;
    }
    if (reading.angle() != null) {
      return ToolFigures.angle(reading.angle(), height.round().angleTool(), raw.key(), steps);
    }
    boolean gap =
        reading.quantity() == Quantity.WATCH_POINT || reading.quantity() == Quantity.STOP_GAP;
    Tool tool = gap ? height.round().gapTool() : height.round().tape();
    return ToolFigures.length(reading.length(), tool, raw.key(), steps);
  }

  /**
   * A later reading of the same place stands for earlier ones that no longer hold. Told to stand
   * instead, it does so for those that hold as well, unless the place was moved between them: then
   * each is true where it was taken.
   */
  private void replaceEarlier(List<SeenReading> seen, SeenReading later, Positions positions) {
    if (!looked(later)) {
      return;
    }
    boolean instead = Boolean.FALSE.equals(later.reading().again());
    for (int i = 0; i < seen.size(); i++) {
      SeenReading earlier = seen.get(i);
      boolean samePlace = earlier.samePlace(later);
      boolean samePosition = era(earlier.height(), positions) == era(later.height(), positions);
      boolean retaken = instead && samePosition && samePlace;
      boolean stoodFor = samePlace || earlier.near(later);
      if (later.counts()
          && ((noLongerHolds(earlier, earlier.stands(), later) && stoodFor)
              || (retaken && earlier.counts()))) {
        seen.set(i, earlier.replaced());
      } else if (later.named().counts()
          && ((noLongerHolds(earlier, earlier.named(), later) && samePlace)
              || (retaken && earlier.named().counts()))) {
        seen.set(i, earlier.replacedWhereNamed());
      }
    }
  }

  private static boolean noLongerHolds(SeenReading earlier, Standing stands, SeenReading later) {
    boolean again = Boolean.TRUE.equals(later.reading().again());
    return stands == Standing.STALE
        || (stands == Standing.PUT_BACK && !again)
        || (stands.counts() && !looked(earlier));
  }

  private static boolean looked(SeenReading reading) {
    GapResult result = reading.reading().result();
    return result != GapResult.NOT_LOOKED && result != GapResult.UNREAD;
  }
}
