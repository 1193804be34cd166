package spindlebook.align;

import java.util.List;
import java.util.stream.Stream;
import spindlebook.corner.AlignmentWay;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.LineSide;
import spindlebook.corner.Load;
import spindlebook.corner.SweptBy;
import spindlebook.corner.ToolUse;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;
import spindlebook.web.Posted;

/** One measurement of alignment, as it was typed. */
sealed interface AlignmentForm {
  record Accepted(Content.Alignment alignment) implements AlignmentForm {}

  record Problems() implements AlignmentForm {}

  double MOST_ANGLE_RAD = Math.toRadians(45);
  double MOST_LOCK_RAD = Math.toRadians(60);
  double MOST_LEAN_RAD = Math.toRadians(10);
  String ALL_OF_LEAN =
      "Where the line leans needs both distances to the car and how far apart they are.";
  String NO_ANGLE = "Front and rear differ by more than their places lie apart: type them again.";

  static AlignmentForm read(TakenBy by, Posted posted, Card card) {
    LengthUnit unit = card.details().unit();
    AlignmentWay way =
        switch (by) {
          case GAUGE -> gauge(posted);
          case PLATE, STRING -> line(posted, unit, by == TakenBy.PLATE);
          case SPOT -> spot(posted, unit);
          case DIAL -> dials(posted, unit);
          case TAPE -> tape(posted, unit);
          case SWEEP -> sweep(posted);
          case JOINT -> joint(posted, unit);
          case ACROSS -> across(posted, unit);
        };
    String rolled = posted.text("rolled");
    if (!rolled.equals("yes") && !rolled.equals("no")) {
      posted.wrong("rolled", "Tap whether the car was rolled and bounced since the jack.");
    }
    Load load = posted.word("load", Load.class, null);
    String fuel = posted.line("fuel", 80);
    String pressures = posted.line("pressures", 80);
    String words = posted.line("words", 300);
    if (!posted.ok() || way == null) {
      return new Problems();
    }
    Content.Alignment bare =
        new Content.Alignment(
            card.corner(),
            rolled.equals("yes"),
            load,
            fuel,
            pressures,
            by.readsLengths() ? tool(posted, "length-tool", card, ToolUse.TAPE) : null,
            by.readsAngles() ? tool(posted, "angle-tool", card, ToolUse.ANGLES) : null,
            by == TakenBy.SWEEP ? lockTool(posted, card) : null,
            way,
            null,
            words);
    return new Accepted(bare);
  }

  /** As chosen; where there was nothing to choose, the only one the car has. */
  private static String tool(Posted posted, String name, Card card, ToolUse use) {
    List<String> tools =
        card.tools().stream().filter(t -> t.use() == use).map(t -> t.tool()).toList();
    String sent = posted.text(name);
    return tools.contains(sent) ? sent : tools.stream().findFirst().orElse(null);
  }

  /** Turn plates in whole degrees are no tool of the car's: null. */
  private static String lockTool(Posted posted, Card card) {
    String sent = posted.text("lock-tool");
    boolean own =
        card.tools().stream().anyMatch(t -> t.use() == ToolUse.ANGLES && t.tool().equals(sent));
    return own ? sent : null;
  }

  private static AlignmentWay gauge(Posted posted) {
    TypedAngle read = needed(posted, "read", "Type what the gauge shows, such as -0.5 or -0° 30'.");
    TypedAngle turned = angle(posted, "turned");
    TypedAngle zero = turned == null ? angle(posted, "zero") : null;
    return posted.ok() ? new AlignmentWay.Gauge(read, turned, zero) : null;
  }

  private static AlignmentWay line(Posted posted, LengthUnit unit, boolean plate) {
    LineSide side = posted.word("side", LineSide.class, null);
    if (side == null) {
      posted.wrong("side", "Tap on which side of the wheel the line runs.");
    }
    TypedLength front = above(posted, "front", unit, "Type the distance at the front.");
    TypedLength rear = above(posted, "rear", unit, "Type the distance at the rear.");
    TypedLength spacing = above(posted, "spacing", unit, "Type how far apart the two places are.");
    if (posted.ok() && Math.abs(front.mm() - rear.mm()) >= spacing.mm()) {
      posted.wrong("front", NO_ANGLE);
    }
    AlignmentWay.Lean lean = lean(posted, unit, side);
    return posted.ok() ? new AlignmentWay.Line(side, plate, front, rear, spacing, lean) : null;
  }

  /** Null where nothing was said of it: the line was set along the car. */
  private static AlignmentWay.Lean lean(Posted posted, LengthUnit unit, LineSide side) {
    if (Stream.of("front", "rear", "apart", "wider").noneMatch(n -> posted.has("lean-" + n))) {
      return null;
    }
    TypedLength front = above(posted, "lean-front", unit, ALL_OF_LEAN);
    TypedLength rear = above(posted, "lean-rear", unit, ALL_OF_LEAN);
    TypedLength apart = above(posted, "lean-apart", unit, ALL_OF_LEAN);
    TypedLength wider = posted.length("lean-wider", unit);
    LineSide places = places(posted, side);
    if (!posted.ok()) {
      return null;
    }
    double inwardMm = AlignmentWay.Lean.inwardMm(places, front, rear, wider);
    if (Math.abs(inwardMm) > apart.mm() * Math.sin(MOST_LEAN_RAD)) {
      posted.wrong("lean-front", "That line would lean by more than 10 degrees: type them again.");
      return null;
    }
    return new AlignmentWay.Lean(places, front, rear, apart, wider);
  }

  /** The car lies inboard of a line outboard of the wheel; of one inboard it may be either side. */
  private static LineSide places(Posted posted, LineSide side) {
    LineSide places = posted.word("lean-places", LineSide.class, null);
    if (side == LineSide.INBOARD && places == null) {
      posted.wrong(
          "lean-places", "Tap on which side of the line the two places lie: its lean turns on it.");
    }
    if (side == LineSide.OUTBOARD && places == LineSide.OUTBOARD) {
      posted.wrong("lean-places", "This line runs outboard of the wheel: the car lies inboard.");
    }
    return side == LineSide.OUTBOARD ? LineSide.INBOARD : places;
  }

  private static AlignmentWay spot(Posted posted, LengthUnit unit) {
    TypedLength inward = posted.length("inward", unit);
    if (inward == null) {
      posted.wrong("inward", "Type how far inward the spot falls; − is outward.");
    }
    TypedLength distance =
        above(posted, "distance", unit, "Type how far ahead of the wheel it falls.");
    if (posted.ok() && Math.abs(inward.mm()) >= distance.mm()) {
      posted.wrong("inward", "The spot falls further aside than it is away: type it again.");
    }
    return posted.ok() ? new AlignmentWay.Spot(inward, distance) : null;
  }

  private static AlignmentWay dials(Posted posted, LengthUnit unit) {
    TypedLength front = posted.length("dial-front", unit);
    TypedLength rear = posted.length("dial-rear", unit);
    TypedLength spacing = above(posted, "spacing", unit, "Type how far apart dial and pivot are.");
    TypedAngle from = angle(posted, "from");
    if (front == null && rear == null && posted.ok()) {
      posted.wrong("dial-front", "Type what the front dial shows, or the rear one.");
    }
    if (posted.ok() && Math.abs(mm(front) - mm(rear)) >= spacing.mm()) {
      posted.wrong("dial-front", NO_ANGLE);
    }
    return posted.ok() ? new AlignmentWay.Dials(front, rear, spacing, from) : null;
  }

  private static double mm(TypedLength length) {
    return length == null ? 0 : length.mm();
  }

  private static AlignmentWay tape(Posted posted, LengthUnit unit) {
    TypedLength front = above(posted, "front", unit, "Type the length in front of the axle.");
    TypedLength rear = above(posted, "rear", unit, "Type the length behind the axle.");
    TypedLength across =
        above(posted, "across", unit, "Type how far apart front and rear place of one tyre are.");
    if (posted.ok() && Math.abs(front.mm() - rear.mm()) >= 2 * across.mm()) {
      posted.wrong("front", NO_ANGLE);
    }
    return posted.ok() ? new AlignmentWay.Tape(front, rear, across) : null;
  }

  private static AlignmentWay sweep(Posted posted) {
    SweptBy by = posted.word("by", SweptBy.class, null);
    if (by == null) {
      posted.wrong("by", "Tap what the lock angles count: the two give different casters.");
    }
    TypedAngle left = lock(posted, "left-lock", "left");
    TypedAngle camberLeft =
        needed(posted, "camber-left", "Type what the gauge shows at left lock.");
    TypedAngle straight = angle(posted, "camber-straight");
    TypedAngle right = lock(posted, "right-lock", "right");
    TypedAngle camberRight =
        needed(posted, "camber-right", "Type what the gauge shows at right lock.");
    TypedAngle kpi = angle(posted, "kpi");
    TypedAngle pitchLeft = angle(posted, "pitch-left");
    TypedAngle pitchStraight = angle(posted, "pitch-straight");
    TypedAngle pitchRight = angle(posted, "pitch-right");
    boolean some =
        posted.has("pitch-left") || posted.has("pitch-straight") || posted.has("pitch-right");
    boolean all = pitchLeft != null && pitchStraight != null && pitchRight != null;
    if (some && !all && posted.ok()) {
      posted.wrong(
          "pitch-left", "Pitch is read at left lock, straight and right lock: type all three.");
    }
    if (some && kpi != null) {
      posted.wrong("kpi", "Leave KPI empty when pitch was read: the sweep finds it.");
    }
    return posted.ok()
        ? new AlignmentWay.Swing(
            by,
            left,
            right,
            camberLeft,
            straight,
            camberRight,
            pitchLeft,
            pitchStraight,
            pitchRight,
            kpi)
        : null;
  }

  private static TypedAngle lock(Posted posted, String name, String side) {
    String sentence = "Type how far the wheel was steered to the " + side + ", 3 to 60 degrees.";
    TypedAngle lock = posted.angle(name);
    if (lock == null
        || lock.rad() < AlignmentWay.Swing.LEAST_LOCK_RAD
        || lock.rad() > MOST_LOCK_RAD) {
      posted.wrong(name, sentence);
      return null;
    }
    return lock;
  }

  private static AlignmentWay joint(Posted posted, LengthUnit unit) {
    TypedLength ahead = signed(posted, "ahead", unit);
    TypedLength inboard = signed(posted, "inboard", unit);
    TypedLength below = signed(posted, "below", unit);
    TypedLength radius =
        above(posted, "radius", unit, "Type from the wheel's centre down to the ground.");
    return posted.ok() ? new AlignmentWay.Joint(ahead, inboard, below, radius) : null;
  }

  private static TypedLength signed(Posted posted, String name, LengthUnit unit) {
    TypedLength length = posted.length(name, unit);
    if (length == null) {
      posted.wrong(name, "Type how far the joint lies from the wheel's centre; 0 will do.");
    }
    return length;
  }

  private static AlignmentWay across(Posted posted, LengthUnit unit) {
    boolean outside = posted.text("over").equals("outside");
    if (!outside && !posted.text("over").equals("hub-faces")) {
      posted.wrong("over", "Tap where the tape was held.");
    }
    TypedLength length = above(posted, "length", unit, "Type the length across the car.");
    TypedLength offset = posted.length("offset", unit);
    if (offset == null) {
      posted.wrong("offset", "Type the wheel's offset, spacer taken off; 0 will do.");
    }
    TypedLength section =
        outside
            ? above(posted, "section", unit, "Type how wide the tyre is: the tape went over it.")
            : posted.has("section") ? above(posted, "section", unit, "") : null;
    return posted.ok() ? new AlignmentWay.Across(outside, length, offset, section) : null;
  }

  private static TypedLength above(Posted posted, String name, LengthUnit unit, String sentence) {
    TypedLength length = posted.neededLength(name, unit, sentence);
    if (length != null && !(length.mm() > 0)) {
      posted.wrong(name, "This length is more than 0.");
      return null;
    }
    return length;
  }

  private static TypedAngle needed(Posted posted, String name, String sentence) {
    TypedAngle angle = angle(posted, name);
    if (angle == null) {
      posted.wrong(name, sentence);
    }
    return angle;
  }

  private static TypedAngle angle(Posted posted, String name) {
    TypedAngle angle = posted.angle(name);
    if (angle != null && Math.abs(angle.rad()) > MOST_ANGLE_RAD) {
      posted.wrong(name, "'" + posted.text(name).strip() + "' is more than 45 degrees.");
      return null;
    }
    return angle;
  }
}
