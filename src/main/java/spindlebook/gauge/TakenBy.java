package spindlebook.gauge;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.alignment.TotalToe;
import spindlebook.card.Capital;
import spindlebook.definition.Dimension;
import spindlebook.entry.AlignmentWay;
import spindlebook.entry.AlignmentWay.Across;
import spindlebook.entry.AlignmentWay.Dials;
import spindlebook.entry.AlignmentWay.Gauge;
import spindlebook.entry.AlignmentWay.Joint;
import spindlebook.entry.AlignmentWay.Lean;
import spindlebook.entry.AlignmentWay.Line;
import spindlebook.entry.AlignmentWay.Spot;
import spindlebook.entry.AlignmentWay.Swing;
import spindlebook.entry.AlignmentWay.Tape;
import spindlebook.entry.LineSide;
import spindlebook.entry.SweptBy;
import spindlebook.fold.Card;
import spindlebook.gauge.WayAsked.Before;
import spindlebook.page.Asked;
import spindlebook.page.Posted;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * The ways of measuring alignment, each with the questions of its form: all that a way asks and
 * what it makes of the answers stands here, once.
 */
enum TakenBy {
  GAUGE(Gauge.class, "camber by gauge", Reads.ANGLES) {
    @Override
    AlignmentWay ask(Asked a, WayAsked w) {
      Before<Gauge> was = w.before(Gauge.class);
      TypedAngle read =
          w.angle("read", "The gauge shows")
              .hint("+ is top outward, − top inward.")
              .was(was.read(Gauge::read))
              .needed("Type what the gauge shows, such as -0.5 or -0° 30'.");
      TypedAngle turned =
          w.angle("turned", "The gauge turned round shows")
              .hint(
                  "Same wheel, gauge turned half a turn, its sign as it shows it: finds its zero."
                      + " May be left empty.")
              .was(was.read(Gauge::turned))
              .read();
      TypedAngle zero =
          a.more(
              "Its zero is known",
              () ->
                  w.angle("zero", "On an upright wheel it shows")
                      .hint(
                          "Taken off what it shows. Leave it empty when the gauge was turned"
                              + " round."
                              + w.zeroFound())
                      .was(was.read(Gauge::zero))
                      .read());
      return a.ok() ? new Gauge(read, turned, turned == null ? zero : null) : null;
    }
  },
  PLATE(Line.class, "toe by plate", Reads.LENGTHS) {
    @Override
    AlignmentWay ask(Asked a, WayAsked w) {
      return line(a, w, "plate", "Along the plate.");
    }
  },
  STRING(Line.class, "toe by string", Reads.LENGTHS) {
    @Override
    AlignmentWay ask(Asked a, WayAsked w) {
      return line(a, w, "rim", "The rim's edge to edge at hub height.");
    }
  },
  SPOT(Spot.class, "toe by a spot of light", Reads.LENGTHS) {
    @Override
    AlignmentWay ask(Asked a, WayAsked w) {
      Before<Spot> was = w.before(Spot.class);
      TypedLength inward =
          a.signed("inward", "The spot falls inward by")
              .hint("Of straight ahead of the hub, towards the car's middle. − is outward.")
              .was(was.read(Spot::inward))
              .needed("Type how far inward the spot falls; − is outward.");
      TypedLength distance =
          a.above("distance", "At this distance ahead of the wheel")
              .was(was.kept(Spot::distance))
              .needed("Type how far ahead of the wheel it falls.");
      if (a.ok() && Math.abs(inward.mm()) >= distance.mm()) {
        a.wrong("inward", "The spot falls further aside than it is away: type it again.");
      }
      return a.ok() ? new Spot(inward, distance) : null;
    }
  },
  DIAL(Dials.class, "toe by dial", Reads.BOTH) {
    @Override
    AlignmentWay ask(Asked a, WayAsked w) {
      Before<Dials> was = w.before(Dials.class);
      TypedLength front =
          a.signed("dial-front", "Front of the plate went outward by")
              .hint("− is inward. Empty: a pivot.")
              .was(was.read(Dials::front))
              .read();
      TypedLength rear =
          a.signed("dial-rear", "Rear of the plate went outward by")
              .hint("− is inward. Empty: a pivot.")
              .was(was.read(Dials::rear))
              .read();
      TypedLength spacing =
          a.above("spacing", "Front place to rear place")
              .hint("Along the plate.")
              .was(was.kept(Dials::spacing))
              .needed("Type how far apart dial and pivot are.");
      TypedAngle from =
          w.angle("from", "Toe when the dials stood at zero")
              .hint("+ is toe-in. Empty: the plate stood straight along the car.")
              .was(was.read(Dials::from))
              .read();
      if (front == null && rear == null && a.ok()) {
        a.wrong("dial-front", "Type what the front dial shows, or the rear one.");
      }
      if (a.ok() && Math.abs(mm(front) - mm(rear)) >= spacing.mm()) {
        a.wrong("dial-front", NO_ANGLE);
      }
      return a.ok() ? new Dials(front, rear, spacing, from) : null;
    }
  },
  TAPE(Tape.class, "total toe by tape", Reads.LENGTHS) {
    @Override
    AlignmentWay ask(Asked a, WayAsked w) {
      Before<Tape> was = w.before(Tape.class);
      a.said(TotalToe.HIDES_SIDES);
      TypedLength front =
          a.above("front", "In front of the axle")
              .hint("Mark to mark across both tyres, at hub height.")
              .was(was.read(Tape::front))
              .needed("Type the length in front of the axle.");
      TypedLength rear =
          a.above("rear", "Behind the axle")
              .hint("The same marks, rolled round to the rear.")
              .was(was.read(Tape::rear))
              .needed("Type the length behind the axle.");
      TypedLength across =
          a.above("across", "Front place to rear place of one tyre")
              .hint("About its diameter there.")
              .was(was.kept(Tape::across))
              .needed("Type how far apart front and rear place of one tyre are.");
      if (a.ok() && Math.abs(front.mm() - rear.mm()) >= 2 * across.mm()) {
        a.wrong("front", NO_ANGLE);
      }
      return a.ok() ? new Tape(front, rear, across) : null;
    }
  },
  SWEEP(Swing.class, "caster and KPI by sweep", Reads.ANGLES) {
    @Override
    AlignmentWay ask(Asked a, WayAsked w) {
      Before<Swing> was = w.before(Swing.class);
      SweptBy by =
          a.<SweptBy>one("by", "The lock angles are")
              .hint("The two differ by about 1 % of caster.")
              .option(SweptBy.WHEEL_HEADING, "the wheel's heading", "as turn plates show it")
              .option(SweptBy.KINGPIN_TURN, "the turn about the kingpin", "of the knuckle itself")
              .was(was.kept(Swing::by))
              .needed("Tap what the lock angles count: the two give different casters.");
      TypedAngle left =
          lock(a, "left", "Steered left by")
              .hint("20 is usual. Left is the driver's left.")
              .was(was.kept(Swing::leftLock))
              .needed(howFar("left"));
      TypedAngle camberLeft =
          w.angle("camber-left", "Camber there")
              .hint("+ is top outward.")
              .was(was.read(Swing::camberLeft))
              .needed("Type what the gauge shows at left lock.");
      TypedAngle straight =
          w.angle("camber-straight", "Camber straight ahead")
              .hint("May be left empty.")
              .was(was.read(Swing::camberStraight))
              .read();
      TypedAngle right =
          lock(a, "right", "Steered right by")
              .hint("Above 0.")
              .was(was.kept(Swing::rightLock))
              .needed(howFar("right"));
      TypedAngle camberRight =
          w.angle("camber-right", "Camber there")
              .hint("With the brake held.")
              .was(was.read(Swing::camberRight))
              .needed("Type what the gauge shows at right lock.");
      TypedAngle kpi =
          w.angle("kpi", "KPI, if it is known")
              .hint("From the drawing, say. Empty: the sweep finds it.")
              .was(was.kept(Swing::kpi))
              .read();
      TypedAngle[] pitch =
          a.more(
              "Pitch was read too",
              () -> {
                a.said(
                    "The gauge laid along the wheel, brake held, + front end up: finds KPI well.");
                return new TypedAngle[] {
                  w.angle("pitch-left", "Pitch at left lock")
                      .was(was.read(Swing::pitchLeft))
                      .read(),
                  w.angle("pitch-straight", "Pitch straight ahead")
                      .was(was.read(Swing::pitchStraight))
                      .read(),
                  w.angle("pitch-right", "Pitch at right lock")
                      .was(was.read(Swing::pitchRight))
                      .read()
                };
              });
      boolean some = Stream.of("left", "straight", "right").anyMatch(p -> a.has("pitch-" + p));
      if (some && Arrays.asList(pitch).contains(null) && a.ok()) {
        a.wrong(
            "pitch-left", "Pitch is read at left lock, straight and right lock: type all three.");
      }
      if (some && kpi != null) {
        a.wrong("kpi", "Leave KPI empty when pitch was read: the sweep finds it.");
      }
      return a.ok()
          ? new Swing(
              by, left, right, camberLeft, straight, camberRight, pitch[0], pitch[1], pitch[2], kpi)
          : null;
    }
  },
  JOINT(Joint.class, "lower joint for scrub and trail", Reads.LENGTHS) {
    @Override
    String heading() {
      return "For scrub and trail";
    }

    @Override
    AlignmentWay ask(Asked a, WayAsked w) {
      Before<Joint> was = w.before(Joint.class);
      a.said("The lower joint's middle, seen from the wheel's centre.");
      String howFar = "Type how far the joint lies from the wheel's centre; 0 will do.";
      TypedLength ahead =
          a.signed("ahead", "Joint ahead of the centre")
              .hint("− is behind.")
              .was(was.read(Joint::ahead))
              .needed(howFar);
      TypedLength inboard =
          a.signed("inboard", "Joint inboard of the centre")
              .was(was.read(Joint::inboard))
              .needed(howFar);
      TypedLength below =
          a.signed("below", "Joint below the centre").was(was.read(Joint::below)).needed(howFar);
      TypedLength given =
          w.card.given(Dimension.TYRE_LOADED_RADIUS).map(g -> g.length()).orElse(null);
      TypedLength radius =
          a.above("radius", "Loaded radius")
              .hint("Wheel's centre to the ground, in the wheel's plane.")
              .was(was.kept(Joint::loadedRadius))
              .was(given)
              .needed("Type from the wheel's centre down to the ground.");
      return a.ok() ? new Joint(ahead, inboard, below, radius) : null;
    }
  },
  ACROSS(Across.class, "track", Reads.LENGTHS) {
    @Override
    AlignmentWay ask(Asked a, WayAsked w) {
      Before<Across> was = w.before(Across.class);
      Boolean outside =
          a.<Boolean>one("over", "The tape was held")
              .option("outside", true, "over the tyres", "at hub height")
              .option("hub-faces", false, "hub face to hub face", "wheels off")
              .startsKey(was.kept(x -> x.outside() ? "outside" : "hub-faces"))
              .needed("Tap where the tape was held.");
      TypedLength length =
          a.above("length", "Across the car")
              .was(was.read(Across::length))
              .needed("Type the length across the car.");
      TypedLength offset =
          a.signed("offset", "The wheel's offset as it sits")
              .hint("+ face outboard of the rim's middle; spacer taken off. mm will do: -12 mm.")
              .was(was.kept(Across::offset))
              .needed("Type the wheel's offset, spacer taken off; 0 will do.");
      TypedLength section =
          a.above("section", "The tyre is wide")
              .hint("Needed over the tyres.")
              .was(was.kept(Across::section))
              .neededIf(
                  Boolean.TRUE.equals(outside),
                  "Type how wide the tyre is: the tape went over it.");
      return a.ok() ? new Across(outside, length, offset, section) : null;
    }
  };

  private enum Reads {
    LENGTHS,
    ANGLES,
    BOTH
  }

  private static final double MOST_LOCK_RAD = Math.toRadians(60);
  private static final double MOST_LEAN_RAD = Math.toRadians(10);
  private static final String ALL_OF_LEAN =
      "Where the line leans needs both distances to the car and how far apart they are.";
  private static final String NO_ANGLE =
      "Front and rear differ by more than their places lie apart: type them again.";

  private final Class<? extends AlignmentWay> type;
  private final String link;
  private final Reads reads;

  TakenBy(Class<? extends AlignmentWay> type, String link, Reads reads) {
    this.type = type;
    this.link = link;
    this.reads = reads;
  }

  /** What is made of the answers. */
  Class<? extends AlignmentWay> type() {
    return type;
  }

  String link() {
    return link;
  }

  String heading() {
    return Capital.of(link);
  }

  boolean took(AlignmentWay way) {
    return way instanceof Line line
        ? this == (line.plate() ? PLATE : STRING)
        : type.isInstance(way);
  }

  /** Asks what this way reads; null as long as it is not told without a fault. */
  abstract AlignmentWay ask(Asked a, WayAsked w);

  /** Whether only a wheel that steers is measured so. */
  boolean steered() {
    return this == SWEEP || this == JOINT;
  }

  boolean readsAngles() {
    return reads != Reads.LENGTHS;
  }

  boolean readsLengths() {
    return reads != Reads.ANGLES;
  }

  boolean readsLocks() {
    return this == SWEEP;
  }

  /** Which form one was typed in. */
  static TakenBy of(AlignmentWay way) {
    return Arrays.stream(values()).filter(by -> by.took(way)).findFirst().orElseThrow();
  }

  /** Those that make sense here. */
  static List<TakenBy> at(Card card) {
    return Arrays.stream(values()).filter(w -> card.layout().steered() || !w.steered()).toList();
  }

  static Optional<TakenBy> named(String word, Card card) {
    return at(card).stream().filter(w -> Posted.word(w).equals(word)).findFirst();
  }

  // --- what more than one asks

  /** Two distances from a line along the car, to a plate or to the rim itself. */
  private static AlignmentWay line(Asked a, WayAsked w, String to, String spacingHint) {
    Before<Line> was = w.before(Line.class);
    LineSide side =
        a.<LineSide>one("side", "The line runs")
            .option(LineSide.OUTBOARD, LineSide.OUTBOARD.words())
            .option(LineSide.INBOARD, LineSide.INBOARD.words())
            .hint("Along the car, level with the hub.")
            .was(was.kept(Line::side))
            .needed("Tap on which side of the wheel the line runs.");
    TypedLength front =
        a.above("front", "Line to the " + to + ", front")
            .hint("Square to the line.")
            .was(was.read(Line::front))
            .needed("Type the distance at the front.");
    TypedLength rear =
        a.above("rear", "Line to the " + to + ", rear")
            .was(was.read(Line::rear))
            .needed("Type the distance at the rear.");
    TypedLength spacing =
        a.above("spacing", "Front place to rear place")
            .hint(spacingHint)
            .was(was.kept(Line::spacing))
            .needed("Type how far apart the two places are.");
    if (a.ok() && Math.abs(front.mm() - rear.mm()) >= spacing.mm()) {
      a.wrong("front", NO_ANGLE);
    }
    List<Lean> leans = was.earlier().stream().map(Line::lean).filter(l -> l != null).toList();
    Lean lean =
        a.more(
            "The line does not run straight along the car",
            () -> lean(a, side, new Before<>(leans, was.again())));
    return a.ok() ? new Line(side, to.equals("plate"), front, rear, spacing, lean) : null;
  }

  /** Null where nothing was said of it: the line was set along the car. */
  private static Lean lean(Asked a, LineSide side, Before<Lean> was) {
    boolean told = Stream.of("front", "rear", "apart", "wider").anyMatch(n -> a.has("lean-" + n));
    a.said(
        "From the line to the car at two places, such as the hubs of both axles: how far it leans"
            + " comes out of that.");
    LineSide places =
        a.<LineSide>one("lean-places", "The two places lie")
            .hint("Asked of a line inboard of the wheel; of one outboard they lie inboard.")
            .option(LineSide.OUTBOARD, "outboard of the line", "the hubs")
            .option(LineSide.INBOARD, "inboard of the line", "marks on the frame")
            .was(was.read(Lean::places))
            .neededIf(
                told && side == LineSide.INBOARD,
                "Tap on which side of the line the two places lie: its lean turns on it.");
    // The car lies inboard of a line outboard of the wheel.
    if (told && side == LineSide.OUTBOARD && places == LineSide.OUTBOARD) {
      a.wrong("lean-places", "This line runs outboard of the wheel: the car lies inboard.");
    }
    TypedLength front =
        a.above("lean-front", "Line to the front place")
            .hint("Square to the line.")
            .was(was.read(Lean::front))
            .neededIf(told, ALL_OF_LEAN);
    TypedLength rear =
        a.above("lean-rear", "Line to the rear place")
            .was(was.read(Lean::rear))
            .neededIf(told, ALL_OF_LEAN);
    TypedLength apart =
        a.above("lean-apart", "The two places apart")
            .hint("Along the car.")
            .was(was.read(Lean::apart))
            .neededIf(told, ALL_OF_LEAN);
    TypedLength wider =
        a.signed("lean-wider", "The front place is further out by")
            .hint(
                "From the car's middle; of hubs half of what the front ones stand wider. − is"
                    + " further in. Empty: alike.")
            .was(was.read(Lean::frontWider))
            .read();
    if (!told || !a.ok()) {
      return null;
    }
    LineSide lie = side == LineSide.OUTBOARD ? LineSide.INBOARD : places;
    if (Math.abs(Lean.inwardMm(lie, front, rear, wider)) > apart.mm() * Math.sin(MOST_LEAN_RAD)) {
      a.wrong("lean-front", "That line would lean by more than 10 degrees: type them again.");
      return null;
    }
    return new Lean(lie, front, rear, apart, wider);
  }

  private static Asked.Box<TypedAngle> lock(Asked a, String side, String label) {
    return a.angle(side + "-lock", label)
        .check(l -> l.rad() >= Swing.LEAST_LOCK_RAD && l.rad() <= MOST_LOCK_RAD, howFar(side));
  }

  private static String howFar(String side) {
    return "Type how far the wheel was steered to the " + side + ", 3 to 60 degrees.";
  }

  private static double mm(TypedLength length) {
    return length == null ? 0 : length.mm();
  }
}
