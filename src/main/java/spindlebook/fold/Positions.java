package spindlebook.fold;

import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import spindlebook.definition.Dimension;
import spindlebook.definition.Place;
import spindlebook.definition.Starter;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * Where the wheel stood at each height of a corner, with its sources: the spindle and the mark as
 * read, the tape they share, the camber and the tilt of the frame.
 *
 * <p>The steps of the scale are one source for all heights of one name between two changes of its
 * place: reading the same place again with the same tape errs the same way. A mark taken as at an
 * earlier height is the earlier height's, source for source.
 */
final class Positions {
  private final String corner;
  private final Place place;
  private final CarBook book;
  private final Settings settings;
  private final Map<String, SeenRound> rounds;
  private final Map<String, Written<Content.Height>> heights;
  private final Map<String, List<Written<Content.Reading>>> readings;
  private final Map<Dimension, Versions<SeenGiven.Then>> given;
  private final Map<String, Optional<Written<Content.Height>>> marks = new HashMap<>();
  private final Set<String> sharedMarks = new HashSet<>();

  Positions(
      String corner,
      Place place,
      CarBook book,
      Settings settings,
      Map<String, SeenRound> rounds,
      Map<String, Written<Content.Height>> heights,
      Map<String, List<Written<Content.Reading>>> readings,
      Map<Dimension, Versions<SeenGiven.Then>> given) {
    this.corner = corner;
    this.place = place;
    this.book = book;
    this.settings = settings;
    this.rounds = rounds;
    this.heights = heights;
    this.readings = readings;
    this.given = given;
    for (Written<Content.Height> height : heights.values()) {
      Optional<Written<Content.Height>> readAt = readAt(height);
      marks.put(height.key(), readAt);
      if (height.content().mark() == null) {
        readAt.ifPresent(earlier -> sharedMarks.add(earlier.key()));
      }
    }
  }

  /** The same with further rounds or heights. */
  private Positions(
      Positions earlier,
      Map<String, SeenRound> rounds,
      Map<String, Written<Content.Height>> heights,
      CarBook book) {
    corner = earlier.corner;
    place = earlier.place;
    this.book = book;
    settings = earlier.settings;
    this.rounds = rounds;
    this.heights = heights;
    readings = earlier.readings;
    given = earlier.given;
    marks.putAll(earlier.marks);
    sharedMarks.addAll(earlier.sharedMarks);
  }

  /** With a round that no height names yet. */
  Positions with(Map<String, SeenRound> longer, CarBook longerBook) {
    return new Positions(this, longer, heights, longerBook);
  }

  Positions with(
      Written<Content.Height> height,
      Map<String, Written<Content.Height>> longer,
      CarBook longerBook) {
    Positions with = new Positions(this, rounds, longer, longerBook);
    with.marks.put(height.key(), readAt(height));
    return with;
  }

  /** Whether a further height shares no mark that nobody shared before. */
  boolean leavesMarks(Written<Content.Height> height) {
    return height.content().mark() != null
        || readAt(height).filter(r -> !sharedMarks.contains(r.key())).isEmpty();
  }

  /**
   * Empty when the spindle or the mark was not read, or the mark it was taken as does not count.
   */
  Optional<Figure> at(Written<Content.Height> height, SeenRound round) {
    Optional<Figure> mark = marks.get(height.key()).map(this::mark);
    if (height.content().spindle() == null || mark.isEmpty()) {
      return Optional.empty();
    }
    Figure spindle =
        ToolError.ofLengths(round.tape())
            .read(
                height.content().spindle().mm(),
                id(height) + ":spindle",
                stepsOf(height) + ":spindle");
    double inboardMm = mm(Dimension.MARK_INBOARD, height);
    double outboardMm = mm(Dimension.READ_POINT_OUTBOARD, height);
    Content.Round conditions = round.round();
    return Optional.of(
        WheelPosition.mm(
            spindle,
            mark.get(),
            outboardMm,
            outboardMm == 0 ? Figure.exact(0) : camber(height, round),
            inboardMm,
            place.left() ? 1 : -1,
            roll(round, inboardMm),
            conditions.rake() == null ? 0 : conditions.rake().rad()));
  }

  /** The mark as it was read, wherever that was; null where it does not count. */
  Double markMm(Written<Content.Height> height) {
    return marks.get(height.key()).map(readAt -> readAt.content().mark().mm()).orElse(null);
  }

  /** What keeps the steps of a scale at one named place apart from those at another. */
  String stepsOf(Written<Content.Height> height) {
    String crossed = height.content().pairing() == Pairing.CROSSED ? ":crossed" : "";
    return height.content().name().onePlace()
        ? corner + ":" + height.content().name() + crossed + "@" + era(height)
        : id(height);
  }

  /** The two ends of an axle are read by two looks at a tape: one key, two errors. */
  private String id(Written<Content.Height> height) {
    return ofOtherEnd(height) ? height.key() + ":other-end" : height.key();
  }

  private boolean ofOtherEnd(Written<Content.Height> height) {
    SeenRound round = rounds.get(height.content().round());
    return height.content().ofAxle() && round != null && !corner.equals(round.round().corner());
  }

  /** The last change that moved, or wore, the place a height names. */
  long era(Written<Content.Height> height) {
    return settings.era(place, height.after(), stop(height.content()));
  }

  /** The named place a height says; crossed, it lies where it does by the other end's stop too. */
  static Subject.StopPosition stop(Content.Height height) {
    if (height.pairing() != Pairing.CROSSED) {
      return new Subject.StopPosition(height.name());
    }
    HeightName other = height.otherEnd() == null ? null : height.otherEnd().name();
    return new Subject.StopPosition(
        height.name(), other == null ? EnumSet.allOf(HeightName.class) : EnumSet.of(other));
  }

  /** The height at which the mark of this one was read: for earlier ones it is known. */
  private Optional<Written<Content.Height>> readAt(Written<Content.Height> height) {
    if (height.content().mark() != null) {
      return Optional.of(height);
    }
    Written<Content.Height> earlier = heights.get(height.content().markAsAt());
    return earlier == null || earlier.n() >= height.n() || !book.counts(earlier)
        ? Optional.empty()
        : marks.get(earlier.key());
  }

  private Figure mark(Written<Content.Height> readAt) {
    SeenRound round = rounds.get(readAt.content().round());
    return ToolError.ofLengths(round == null ? Starter.tape() : round.tape())
        .read(
            readAt.content().mark().mm(),
            id(readAt) + ":mark",
            stepsOf(readAt) + ":mark",
            sharedMarks.contains(readAt.key()) ? SourceKind.MARK : SourceKind.PLACING);
  }

  private double mm(Dimension dimension, Written<Content.Height> height) {
    Versions<SeenGiven.Then> versions = given.get(dimension);
    return versions == null
        ? 0
        : versions
            .at(height.n(), g -> g.sameEra(place, settings, height.after()))
            .given()
            .length()
            .mm();
  }

  private static Figure roll(SeenRound round, double inboardMm) {
    String id = round.key() + ":roll";
    if (round.round().roll() != null) {
      return ToolError.ofAngles(round.angleTool(), 0).read(round.round().roll().rad(), id, id);
    }
    return inboardMm == 0
        ? Figure.exact(0)
        : Figure.of(
            0, new Source(id, SourceKind.TILT), Rectangular.u(WheelPosition.UNSAID_TILT_RAD));
  }

  /** The camber last read straight ahead at the height. */
  private Figure camber(Written<Content.Height> height, SeenRound round) {
    Figure camber = null;
    List<Written<Content.Reading>> here = readings.getOrDefault(height.key(), List.of());
    for (Written<Content.Reading> raw : here) {
      Content.Reading r = raw.content();
      if (r.quantity() == Quantity.CAMBER
          && r.steering() == Steering.STRAIGHT
          && r.angle() != null
          && book.counts(raw)) {
        camber =
            ToolError.ofAngles(round.angleTool(), 0)
                .read(r.angle().rad(), raw.key(), stepsOf(r, stepsOf(height)));
      }
    }
    return camber != null
        ? camber
        : Figure.of(
            0,
            new Source(id(height) + ":camber", SourceKind.TILT),
            Rectangular.u(WheelPosition.UNSAID_CAMBER_RAD));
  }

  /** The same for one thing read there. */
  static String stepsOf(Content.Reading reading, String stepsOfHeight) {
    return stepsOfHeight
        + ":"
        + reading.quantity()
        + ":"
        + reading.steering()
        + (reading.point() == null ? "" : ":" + reading.point());
  }
}
