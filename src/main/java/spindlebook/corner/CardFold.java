package spindlebook.corner;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;
import spindlebook.units.TypedLength;

/** Folds a car's entries into one corner's card. Used once and thrown away. */
final class CardFold {
  private final CarBook book;
  private final String cornerKey;
  private final Content.Corner corner;
  private final Settings settings = new Settings();

  private final Map<String, WatchPoint> watchPoints = new LinkedHashMap<>();
  private final Map<String, Adjuster> adjusters = new LinkedHashMap<>();
  private final Map<Dimension, Given> given = new EnumMap<>(Dimension.class);
  private final Map<Allowance, HeldBack> heldBack = new EnumMap<>(Allowance.class);
  private final Map<String, List<ToolVersion>> tools = new LinkedHashMap<>();
  private final Map<String, SeenRound> rounds = new LinkedHashMap<>();
  private final Map<String, Raw<Content.Height>> rawHeights = new LinkedHashMap<>();
  private final Map<String, List<Raw<Content.Reading>>> rawReadings = new HashMap<>();
  private final Map<String, List<Doubted>> doubtedAdjustments = new HashMap<>();
  private final List<Doubted> doubts = new ArrayList<>();

  private record ToolVersion(long n, Tool tool) {}

  private record Raw<C extends Content>(Noted entry, C content) {}

  CardFold(CarBook book, String cornerKey) {
    this.book = book;
    this.cornerKey = cornerKey;
    this.corner =
        book.standing(cornerKey)
            .filter(Content.Corner.class::isInstance)
            .map(Content.Corner.class::cast)
            .orElseThrow(() -> new IllegalArgumentException("no corner " + cornerKey));
  }

  Card card() {
    for (Noted entry : book.entries()) {
      book.standing(entry.key()).ifPresent(content -> take(entry, content));
    }
    List<SeenHeight> heights = seeHeights();
    List<SeenReading> readings = seeReadings(heights);
    return new Card(
        book.car().orElse(null),
        book.details().orElseThrow(() -> new IllegalArgumentException("no car in this book")),
        cornerKey,
        corner.place(),
        corner.layout(),
        book.n(),
        List.copyOf(watchPoints.values()),
        adjusters.values().stream().map(this::inForce).toList(),
        Map.copyOf(given),
        Map.copyOf(heldBack),
        tools.values().stream().map(v -> v.get(v.size() - 1).tool()).toList(),
        List.copyOf(rounds.values()),
        heights,
        readings,
        settings.changes(),
        List.copyOf(doubts));
  }

  private void take(Noted entry, Content content) {
    if (content instanceof Content.Car car) {
      car.tools().forEach(t -> addTool(entry.n(), t));
    } else if (content instanceof Content.Corner other) {
      takeCorner(entry, other);
    } else if (content instanceof Content.Definition definition) {
      takeDefinition(entry, definition);
    } else if (content instanceof Content.Round round) {
      if (cornerKey.equals(round.corner())) {
        rounds.put(entry.key(), seeRound(entry, round));
      }
    } else if (content instanceof Content.Height height) {
      // Heights of other corners too: a mark may be taken as at any of them.
      rawHeights.put(entry.key(), new Raw<>(entry, height));
    } else if (content instanceof Content.Reading reading) {
      rawReadings
          .computeIfAbsent(reading.height(), h -> new ArrayList<>())
          .add(new Raw<>(entry, reading));
    } else if (content instanceof Content.Adjustment adjustment) {
      takeAdjustment(entry, adjustment);
    } else if (content instanceof Content.Happening happening) {
      Place place = placeOf(happening.corner());
      settings.befall(place, happening.what(), change(entry, place, null, words(happening)));
    }
  }

  private void takeCorner(Noted entry, Content.Corner other) {
    other.adjusters().forEach(a -> settings.add(other.place(), a, entry.n()));
    if (!entry.key().equals(cornerKey)) {
      return;
    }
    other.watchPoints().forEach(w -> watchPoints.put(w.point(), w));
    other.adjusters().forEach(a -> adjusters.put(a.adjuster(), a));
    other.given().forEach(g -> given.put(g.dimension(), g));
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
    if (!cornerKey.equals(d.corner())) {
      return;
    }
    if (d.watchPoint() != null) {
      watchPoints.put(d.watchPoint().point(), d.watchPoint());
    }
    if (d.adjuster() != null) {
      adjusters.put(d.adjuster().adjuster(), d.adjuster());
    }
    if (d.given() != null) {
      given.put(d.given().dimension(), d.given());
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
    if (place == null || takenBackByAnswer(entry)) {
      return;
    }
    String words = words(adjustment);
    if (waits(entry, adjustment.doubt())) {
      if (place == corner.place()) {
        Doubted doubted = doubted(entry, "adjustment", words, adjustment.doubt());
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

  private static Doubted doubted(Noted entry, String kind, String words, String doubt) {
    return new Doubted(entry.n(), entry.key(), entry.at(), entry.who(), kind, words, doubt);
  }

  private String words(Content.Adjustment a) {
    String name =
        book.standing(a.corner())
            .filter(Content.Corner.class::isInstance)
            .flatMap(
                c ->
                    ((Content.Corner) c)
                        .adjusters().stream()
                            .filter(x -> x.adjuster().equals(a.adjuster()))
                            .findFirst())
            .map(Adjuster::name)
            .orElse(a.adjuster());
    String from = a.from() == null ? "" : " from " + a.from().inWords();
    return name + from + " to " + a.to().inWords();
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

  private boolean waits(Noted entry, String doubt) {
    return doubt != null && book.answered(entry.key()).isEmpty();
  }

  private boolean takenBackByAnswer(Noted entry) {
    return book.answered(entry.key()).map(itIsSo -> !itIsSo).orElse(false);
  }

  private void addTool(long n, Tool tool) {
    tools.computeIfAbsent(tool.tool(), t -> new ArrayList<>()).add(new ToolVersion(n, tool));
  }

  private Tool tool(String name, long n, Tool otherwise) {
    List<ToolVersion> versions = tools.getOrDefault(name, List.of());
    Tool then = versions.isEmpty() ? otherwise : versions.get(0).tool();
    for (ToolVersion version : versions) {
      if (version.n() <= n) {
        then = version.tool();
      }
    }
    return then;
  }

  private SeenRound seeRound(Noted entry, Content.Round round) {
    return new SeenRound(
        entry.key(),
        entry.n(),
        entry.at(),
        entry.who(),
        round,
        tool(round.tape(), entry.n(), Starter.tape()),
        tool(round.gapTool(), entry.n(), Starter.drills()),
        tool(round.angleTool(), entry.n(), Starter.angleFinder()));
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
    for (Raw<Content.Height> raw : rawHeights.values()) {
      SeenRound round = rounds.get(raw.content().round());
      if (round == null || takenBackByAnswer(raw.entry())) {
        continue;
      }
      SeenHeight height = seeHeight(raw, round);
      replaceEarlier(seen, height);
      seen.add(height);
    }
    return List.copyOf(seen);
  }

  private SeenHeight seeHeight(Raw<Content.Height> raw, SeenRound round) {
    Noted entry = raw.entry();
    Content.Height height = raw.content();
    Figure position = position(raw, round);
    Standing stands = position == null ? Standing.OUTSIDE : Standing.LIVE;
    if (waits(entry, height.doubt())) {
      stands = Standing.IN_DOUBT;
      doubts.add(
          doubted(entry, "height", height.name().words() + ", " + typed(height), height.doubt()));
    }
    Settings.Verdict verdict =
        settings.judge(corner.place(), entry.after(), new Subject.StopPosition(height.name()));
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

  /** A later height of the same name stands for earlier ones that no longer hold. */
  private static void replaceEarlier(List<SeenHeight> seen, SeenHeight later) {
    if (!later.name().onePlace() || !later.positionCounts()) {
      return;
    }
    boolean instead = Boolean.FALSE.equals(later.height().again());
    for (int i = 0; i < seen.size(); i++) {
      SeenHeight earlier = seen.get(i);
      if (earlier.name() == later.name()
          && (instead || earlier.stop() != Standing.LIVE)
          && !(Boolean.TRUE.equals(later.height().again())
              && earlier.stop() == Standing.PUT_BACK)) {
        seen.set(i, withStop(earlier, Standing.REPLACED));
      }
    }
  }

  private static SeenHeight withStop(SeenHeight h, Standing stop) {
    return new SeenHeight(
        h.key(),
        h.n(),
        h.at(),
        h.who(),
        h.round(),
        h.height(),
        h.positionMm(),
        h.stands(),
        stop,
        h.because());
  }

  private Figure position(Raw<Content.Height> raw, SeenRound round) {
    Content.Height height = raw.content();
    if (height.spindle() == null) {
      return null;
    }
    Optional<Figure> mark = mark(raw, 0);
    if (mark.isEmpty()) {
      return null;
    }
    Figure spindle =
        ToolFigures.length(
            height.spindle(),
            round.tape(),
            raw.entry().key() + ":spindle",
            placeId(raw, ":spindle"));
    double inboardMm = mm(Dimension.MARK_INBOARD);
    double outboardMm = mm(Dimension.READ_POINT_OUTBOARD);
    return WheelPosition.mm(
        spindle,
        mark.get(),
        outboardMm,
        outboardMm == 0 ? Figure.exact(0) : camberAt(raw.entry().key(), round),
        inboardMm,
        corner.place().left() ? 1 : -1,
        inboardMm == 0 ? rollAsTyped(round) : roll(round),
        round.round().rake() == null ? 0 : round.round().rake().rad());
  }

  private double mm(Dimension dimension) {
    Given g = given.get(dimension);
    return g == null ? 0 : g.length().mm();
  }

  /** The mark read at this height, or the earlier one it is taken as at: then the same sources. */
  private Optional<Figure> mark(Raw<Content.Height> raw, int depth) {
    Content.Height height = raw.content();
    if (height.mark() != null) {
      Noted entry = raw.entry();
      Tool tape =
          Optional.ofNullable(rounds.get(height.round()))
              .map(SeenRound::tape)
              .orElseGet(Starter::tape);
      return Optional.of(
          ToolFigures.length(height.mark(), tape, entry.key() + ":mark", placeId(raw, ":mark")));
    }
    Raw<Content.Height> earlier = rawHeights.get(height.markAsAt());
    boolean goesBack =
        earlier != null && earlier.entry().n() < raw.entry().n() && depth < rawHeights.size();
    return goesBack ? mark(earlier, depth + 1) : Optional.empty();
  }

  private String placeId(Raw<Content.Height> raw, String what) {
    Content.Height height = raw.content();
    return height.name().onePlace()
        ? cornerKey + ":" + height.name() + ":" + era(raw.entry(), height.name()) + what
        : raw.entry().key() + what;
  }

  private long era(Noted entry, HeightName name) {
    return settings.era(corner.place(), entry.after(), new Subject.StopPosition(name));
  }

  private static Figure rollAsTyped(SeenRound round) {
    return Figure.exact(round.round().roll() == null ? 0 : round.round().roll().rad());
  }

  private static Figure roll(SeenRound round) {
    if (round.round().roll() != null) {
      return ToolFigures.angle(
          round.round().roll(), round.angleTool(), round.key() + ":roll", round.key() + ":roll");
    }
    return Figure.of(
        0,
        new Source(round.key() + ":roll", SourceKind.TILT),
        Rectangular.u(WheelPosition.UNSAID_TILT_RAD));
  }

  private Figure camberAt(String height, SeenRound round) {
    for (Raw<Content.Reading> raw : rawReadings.getOrDefault(height, List.of())) {
      Content.Reading r = raw.content();
      if (r.quantity() == Quantity.CAMBER
          && r.steering() == Steering.STRAIGHT
          && r.angle() != null
          && !waits(raw.entry(), r.doubt())
          && !takenBackByAnswer(raw.entry())) {
        return ToolFigures.angle(
            r.angle(), round.angleTool(), raw.entry().key(), raw.entry().key());
      }
    }
    return Figure.of(
        0,
        new Source(height + ":camber", SourceKind.TILT),
        Rectangular.u(WheelPosition.UNSAID_CAMBER_RAD));
  }

  // --- readings

  private List<SeenReading> seeReadings(List<SeenHeight> heights) {
    Map<String, SeenHeight> byKey = new HashMap<>();
    heights.forEach(h -> byKey.put(h.key(), h));
    List<Raw<Content.Reading>> inOrder = new ArrayList<>();
    rawReadings.forEach(
        (height, raws) -> {
          if (byKey.containsKey(height)) {
            inOrder.addAll(raws);
          }
        });
    inOrder.sort(java.util.Comparator.comparingLong(r -> r.entry().n()));

    List<SeenReading> seen = new ArrayList<>();
    for (Raw<Content.Reading> raw : inOrder) {
      if (takenBackByAnswer(raw.entry())) {
        continue;
      }
      SeenReading reading = seeReading(raw, byKey.get(raw.content().height()));
      replaceEarlier(seen, reading);
      seen.add(reading);
    }
    return List.copyOf(seen);
  }

  private SeenReading seeReading(Raw<Content.Reading> raw, SeenHeight height) {
    Noted entry = raw.entry();
    Content.Reading reading = raw.content();
    WatchPoint point = reading.point() == null ? null : watchPoints.get(reading.point());
    Settings.Verdict verdict =
        settings.judge(
            corner.place(),
            entry.after(),
            new Subject.Taken(
                reading.quantity(),
                point == null ? null : point.place(),
                reading.steering(),
                height.name()));
    Standing stands = verdict.stands();
    if (waits(entry, reading.doubt())) {
      stands = Standing.IN_DOUBT;
      String what = point == null ? reading.quantity().words() : point.name();
      doubts.add(doubted(entry, "reading", what + ", " + reading.typed(), reading.doubt()));
    } else if (!height.positionCounts()
        || (reading.quantity() == Quantity.WATCH_POINT && point == null)) {
      stands = Standing.OUTSIDE;
    }
    return new SeenReading(
        entry.key(),
        entry.n(),
        entry.at(),
        entry.who(),
        height,
        reading,
        point,
        value(entry, reading, height),
        stands,
        verdict.because());
  }

  private Figure value(Noted entry, Content.Reading reading, SeenHeight height) {
    String place =
        String.join(
            ":",
            cornerKey,
            reading.quantity().name(),
            Objects.toString(reading.point(), ""),
            reading.steering().name(),
            height.name().onePlace()
                ? height.name() + "@" + era(entry, height.name())
                : height.key());
    if (reading.result() == GapResult.GO_NO_GO) {
      return reading.go() == null || reading.noGo() == null
          ? null
          : ToolFigures.between(reading.go(), reading.noGo(), place);
    }
    if (reading.result() != GapResult.NUMBER) {
      return null;
    }
    if (reading.angle() != null) {
      return ToolFigures.angle(reading.angle(), height.round().angleTool(), entry.key(), place);
    }
    TypedLength length = reading.length();
    boolean gap =
        reading.quantity() == Quantity.WATCH_POINT || reading.quantity() == Quantity.STOP_GAP;
    Tool tool = gap ? height.round().gapTool() : height.round().tape();
    return length == null ? null : ToolFigures.length(length, tool, entry.key(), place);
  }

  /** A later reading of the same place stands for earlier ones that no longer hold. */
  private static void replaceEarlier(List<SeenReading> seen, SeenReading later) {
    if (!later.counts() || later.reading().result() == GapResult.NOT_LOOKED) {
      return;
    }
    boolean instead = Boolean.FALSE.equals(later.reading().again());
    boolean again = Boolean.TRUE.equals(later.reading().again());
    for (int i = 0; i < seen.size(); i++) {
      SeenReading earlier = seen.get(i);
      boolean noLongerHolds =
          earlier.stands() == Standing.STALE
              || (earlier.stands() == Standing.PUT_BACK && !again)
              || earlier.reading().result() == GapResult.NOT_LOOKED;
      if (earlier.samePlace(later) && (noLongerHolds || (instead && earlier.stands().counts()))) {
        seen.set(i, replaced(earlier));
      }
    }
  }

  private static SeenReading replaced(SeenReading r) {
    return new SeenReading(
        r.key(),
        r.n(),
        r.at(),
        r.who(),
        r.height(),
        r.reading(),
        r.point(),
        r.value(),
        Standing.REPLACED,
        r.because());
  }
}
