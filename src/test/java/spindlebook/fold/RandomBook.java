package spindlebook.fold;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import spindlebook.definition.CarDetails;
import spindlebook.definition.Dimension;
import spindlebook.definition.Given;
import spindlebook.definition.Keep;
import spindlebook.definition.Layout;
import spindlebook.definition.Place;
import spindlebook.definition.Retired;
import spindlebook.definition.Setting;
import spindlebook.definition.SettingUnit;
import spindlebook.definition.Starter;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.AlignedFigure;
import spindlebook.entry.AlignmentWay;
import spindlebook.entry.Content;
import spindlebook.entry.GapResult;
import spindlebook.entry.HappeningKind;
import spindlebook.entry.HeightName;
import spindlebook.entry.Joint;
import spindlebook.entry.LineSide;
import spindlebook.entry.Load;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.entry.SweptBy;
import spindlebook.entry.Zeroing;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * Plausible entries of one car, seeded: readings, alignment taken in every way, targets, changes,
 * corrections, answers, late phones.
 */
public final class RandomBook {
  private static final List<WatchPoint> GAPS =
      Starter.watchPoints(Layout.STEERED_DOUBLE_A_ARM).stream()
          .filter(p -> p.keep().mostAngle() == null)
          .toList();

  private final SplittableRandom random;
  private final List<Noted> entries = new ArrayList<>();
  private final List<String> rounds = new ArrayList<>();
  private final List<String> heights = new ArrayList<>();
  private final List<String> readings = new ArrayList<>();
  private final List<String> alignments = new ArrayList<>();
  private final List<String> targets = new ArrayList<>();
  private final List<String> joints = new ArrayList<>();
  private final List<String> changes = new ArrayList<>();
  private final List<String> answers = new ArrayList<>();

  public RandomBook(long seed) {
    random = new SplittableRandom(seed);
  }

  public List<Noted> entries(int howMany) {
    note("car", new Content.Car(details(), Starter.tools()));
    corner("lf", Place.LEFT_FRONT);
    corner("rf", Place.RIGHT_FRONT);
    while (entries.size() < howMany) {
      next();
    }
    return entries;
  }

  private static CarDetails details() {
    return new CarDetails("Dune", LengthUnit.INCH, null, null, null, null, null);
  }

  private void corner(String key, Place place) {
    note(
        key,
        new Content.Corner(
            "car",
            place,
            Layout.STEERED_DOUBLE_A_ARM,
            GAPS,
            Starter.adjusters(Layout.STEERED_DOUBLE_A_ARM),
            List.of(),
            Starter.heldBack()));
  }

  private void note(String key, Content content) {
    long n = entries.size() + 1;
    // One in eight comes from a phone that had heard nothing for a while.
    long after = random.nextInt(8) == 0 ? random.nextLong(n) : n - 1;
    entries.add(new Noted(n, key, Instant.EPOCH.plusSeconds(n), "somebody", after, content));
  }

  private void next() {
    String key = "e" + (entries.size() + 1);
    int what = random.nextInt(100);
    if (rounds.isEmpty() || what < 5) {
      rounds.add(key);
      note(key, round());
    } else if (heights.isEmpty() || what < 22) {
      heights.add(key);
      note(key, height());
    } else if (readings.isEmpty() || what < 62) {
      readings.add(key);
      note(key, reading());
    } else if (what < 70) {
      alignments.add(key);
      note(key, alignment());
    } else if (what < 71) {
      targets.add(key);
      note(key, target());
    } else if (what < 79) {
      changes.add(key);
      note(key, adjustment());
    } else if (what < 82) {
      note(key, happening());
    } else if (what < 87) {
      answers.add(key);
      note(
          key,
          new Content.Answer(
              any(readings, heights, alignments, changes), random.nextBoolean(), null));
    } else if (what < 94) {
      note(key, correction());
      answers.add(key);
    } else if (what < 99) {
      note(key, definition());
    } else {
      joints.add(key);
      note(key, joint());
    }
  }

  private Content.Round round() {
    boolean asItDrives = random.nextInt(3) == 0;
    return new Content.Round(
        corner(),
        asItDrives,
        true,
        asItDrives,
        asItDrives,
        true,
        null,
        maybe(new TypedAngle("1", Math.toRadians(1), "angle-1")),
        null,
        null,
        "tape",
        "drills",
        "angle-finder",
        null,
        null,
        asItDrives ? List.of(Zeroing.SETTLED) : null);
  }

  private Content.Height height() {
    TypedLength mark = random.nextInt(3) > 0 ? mm(random.nextInt(500, 540)) : null;
    String asAt = mark == null && !heights.isEmpty() ? any(heights) : null;
    return new Content.Height(
        any(rounds),
        any(HeightName.values()),
        null,
        mm(random.nextInt(200, 500)),
        mark,
        asAt,
        random.nextInt(12) == 0 ? "It is far off." : null,
        again(),
        null,
        null);
  }

  private Content.Reading reading() {
    Quantity quantity = any(Quantity.values());
    boolean angle = quantity == Quantity.CAMBER;
    boolean looked = angle || random.nextInt(5) > 0;
    return new Content.Reading(
        any(heights),
        any(Steering.values()),
        quantity,
        quantity == Quantity.WATCH_POINT ? any(GAPS).point() : null,
        looked
            ? GapResult.NUMBER
            : any(GapResult.WELL_CLEAR, GapResult.TOUCHES, GapResult.NOT_LOOKED),
        null,
        looked && !angle ? mm(random.nextInt(0, 60)) : null,
        angle ? new TypedAngle("2", Math.toRadians(random.nextInt(-3, 3)), "angle-1") : null,
        null,
        null,
        random.nextInt(12) == 0 ? "It is far off." : null,
        again(),
        null,
        null);
  }

  private Content.Alignment alignment() {
    return new Content.Alignment(
        corner(),
        random.nextInt(6) > 0,
        maybe(any(Load.values())),
        null,
        null,
        maybe("tape"),
        maybe("angle-finder"),
        null,
        way(),
        random.nextInt(12) == 0 ? "It is far off." : null,
        null);
  }

  private AlignmentWay way() {
    return switch (random.nextInt(8)) {
      case 0 -> gauge();
      case 1 ->
          new AlignmentWay.Line(
              any(LineSide.values()),
              random.nextBoolean(),
              near(100),
              near(100),
              mm(600),
              maybe(lean()));
      case 2 -> new AlignmentWay.Tape(near(1580), near(1580), mm(700));
      case 3 -> new AlignmentWay.Dials(maybe(near(0)), near(0), mm(500), maybe(degrees(1)));
      case 4 -> new AlignmentWay.Spot(near(0), mm(2000));
      case 5 -> sweep();
      case 6 -> new AlignmentWay.Joint(near(8), near(110), near(115), near(380));
      default ->
          random.nextBoolean()
              ? new AlignmentWay.Across(true, near(1940), near(-12), mm(317))
              : new AlignmentWay.Across(false, near(1600), near(-12), maybe(mm(317)));
    };
  }

  private AlignmentWay.Lean lean() {
    return new AlignmentWay.Lean(
        any(LineSide.values()), near(120), near(120), mm(2800), maybe(near(0)));
  }

  private AlignmentWay gauge() {
    return switch (random.nextInt(3)) {
      case 0 -> new AlignmentWay.Gauge(degrees(3), null, null);
      case 1 -> new AlignmentWay.Gauge(degrees(3), degrees(3), null);
      default -> new AlignmentWay.Gauge(degrees(3), null, degrees(1));
    };
  }

  /** Of an axis of 4° to 8° of caster, so that most are one that a wheel can have. */
  private AlignmentWay sweep() {
    TypedAngle lock = angle(20);
    int out = random.nextInt(-2, 0);
    int in = random.nextInt(1, 4);
    boolean pitched = random.nextInt(3) == 0;
    return new AlignmentWay.Swing(
        any(SweptBy.values()),
        lock,
        lock,
        angle(out),
        maybe(angle(0)),
        angle(in),
        pitched ? angle(2) : null,
        pitched ? angle(0) : null,
        pitched ? angle(-2) : null,
        pitched ? null : maybe(angle(random.nextInt(4, 12))));
  }

  private Content.Target target() {
    AlignedFigure figure = any(AlignedFigure.values());
    if (random.nextInt(5) == 0) {
      return new Content.Target(corner(), figure, null, null, null, null);
    }
    boolean angles = figure.angle() && (!figure.length() || random.nextBoolean());
    int least = random.nextInt(-3, 1);
    return angles
        ? new Content.Target(corner(), figure, angle(least), maybe(angle(least + 2)), null, null)
        : new Content.Target(
            corner(), figure, null, null, maybe(mm(least)), mm(least + random.nextInt(1, 30)));
  }

  private Content.JointPlace joint() {
    return new Content.JointPlace(
        corner(),
        any(Joint.values()),
        near(400),
        near(900),
        near(350),
        maybe(any(heights)),
        maybe(angle(18)));
  }

  private TypedLength near(int mm) {
    return mm(mm + random.nextInt(-6, 7));
  }

  private TypedAngle degrees(int most) {
    return angle(random.nextInt(-most, most + 1));
  }

  private static TypedAngle angle(int degrees) {
    return new TypedAngle(Integer.toString(degrees), Math.toRadians(degrees), "angle-1");
  }

  private Content.Adjustment adjustment() {
    // Few adjusters and few settings, so that some are put back.
    String adjuster = any("limit-strap", "upper-rod-ends", "tie-rod", "bump-stop-spacer", "tyre");
    return new Content.Adjustment(
        corner(),
        adjuster,
        setting(adjuster, "a"),
        setting(adjuster, any("a", "b")),
        null,
        random.nextInt(8) == 0 ? "Somebody else set it." : null);
  }

  /** A spacer says by how much; of all else nobody knows. */
  private static Setting setting(String adjuster, String words) {
    if (!adjuster.equals("bump-stop-spacer")) {
      return Setting.words(words);
    }
    double mm = words.equals("a") ? 10 : 16;
    return new Setting(mm + " mm", SettingUnit.LENGTH, mm);
  }

  private Content.Happening happening() {
    return new Content.Happening("car", maybe(corner()), any(HappeningKind.values()), null);
  }

  private Content.Correction correction() {
    String target = any(rounds, heights, readings, alignments, targets, joints, changes, answers);
    Content before =
        entries.stream().filter(e -> e.key().equals(target)).findFirst().orElseThrow().content();
    Content body = null;
    if (before instanceof Content.Round && random.nextBoolean()) {
      body = round();
    } else if (before instanceof Content.Height) {
      body = height();
    } else if (before instanceof Content.Reading) {
      body = reading();
    } else if (before instanceof Content.Alignment) {
      body = alignment();
    } else if (before instanceof Content.Target && random.nextBoolean()) {
      body = target();
    } else if (before instanceof Content.JointPlace && random.nextBoolean()) {
      body = joint();
    } else if (before instanceof Content.Adjustment && random.nextBoolean()) {
      body = adjustment();
    }
    return new Content.Correction(target, body, "seen wrong");
  }

  private Content.Definition definition() {
    WatchPoint point = any(GAPS);
    return switch (random.nextInt(4)) {
      case 0 ->
          Content.Definition.of(
              corner(),
              new WatchPoint(
                  point.point(),
                  point.place(),
                  null,
                  Keep.atLeast(mm(random.nextInt(3, 30))),
                  null));
      case 1 ->
          Content.Definition.of(
              corner(), new Given(Dimension.READ_POINT_OUTBOARD, mm(random.nextInt(0, 150)), null));
      case 2 -> Content.Definition.of("car", Starter.tape());
      default -> Content.Definition.of(corner(), new Retired(point.point(), null, null));
    };
  }

  private static TypedLength mm(int mm) {
    return new TypedLength(mm + " mm", mm, LengthUnit.MM, "tape-1");
  }

  private String corner() {
    return any("lf", "lf", "rf");
  }

  private Boolean again() {
    return random.nextInt(6) > 0 ? null : random.nextBoolean();
  }

  private <T> T maybe(T thing) {
    return random.nextBoolean() ? thing : null;
  }

  @SafeVarargs
  private final <T> T any(T... things) {
    return things[random.nextInt(things.length)];
  }

  private <T> T any(List<T> things) {
    return things.get(random.nextInt(things.size()));
  }

  @SafeVarargs
  private final String any(List<String>... lists) {
    List<String> all = new ArrayList<>();
    for (List<String> list : lists) {
      all.addAll(list);
    }
    return any(all);
  }
}
