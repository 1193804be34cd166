package spindlebook.entry;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import spindlebook.definition.Adjuster;
import spindlebook.definition.CarDetails;
import spindlebook.definition.Defined;
import spindlebook.definition.Given;
import spindlebook.definition.HeldBack;
import spindlebook.definition.Layout;
import spindlebook.definition.Place;
import spindlebook.definition.Setting;
import spindlebook.definition.Tool;
import spindlebook.definition.WatchPoint;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAmount;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * What an entry of the book says. Lists are copied and never null; other absent things are null,
 * and what an entry cannot do without is refused when it is absent. All references are keys of
 * earlier entries.
 */
public sealed interface Content {
  /** Whether it may be withdrawn; what others hang on for good stays: a car, a corner, a round. */
  default boolean withdrawable() {
    return !STAYS.contains(getClass());
  }

  /** What is never withdrawn. */
  Set<Class<? extends Content>> STAYS =
      Set.of(
          Car.class,
          Corner.class,
          Definition.class,
          Round.class,
          Correction.class,
          Answer.class,
          Kept.class);

  /** Why it does not count until somebody answers; null where nothing is doubted. */
  default String doubt() {
    return null;
  }

  /** The same, doubted for that reason, where its kind can be. */
  default Content withDoubt(String why) {
    return this;
  }

  /** A car, and the tools that lie beside it. */
  record Car(CarDetails details, List<Tool> tools) implements Content {
    public Car {
      Objects.requireNonNull(details, "details");
      tools = tools == null ? List.of() : List.copyOf(tools);
    }
  }

  /** A corner with what it starts with. */
  record Corner(
      String car,
      Place place,
      Layout layout,
      List<WatchPoint> watchPoints,
      List<Adjuster> adjusters,
      List<Given> given,
      List<HeldBack> heldBack)
      implements Content {
    public Corner {
      Objects.requireNonNull(place, "place");
      Objects.requireNonNull(layout, "layout");
      watchPoints = watchPoints == null ? List.of() : List.copyOf(watchPoints);
      adjusters = adjusters == null ? List.of() : List.copyOf(adjusters);
      given = given == null ? List.of() : List.copyOf(given);
      heldBack = heldBack == null ? List.of() : List.copyOf(heldBack);
    }
  }

  /** A new version of one thing, counting from here on: of a car or a corner. */
  record Definition(String car, String corner, Defined what) implements Content {
    public static Definition of(String key, Defined what) {
      return new Definition(what.ofCar() ? key : null, what.ofCar() ? null : key, what);
    }
  }

  /**
   * One sitting on one corner. Tilts: nose down +, left side up +; null when not entered.
   *
   * @param zeroed what was put right before it was read; a thing that is not named was not done, or
   *     nobody said
   */
  record Round(
      String corner,
      boolean springIn,
      boolean bumpStopIn,
      boolean wheelOn,
      boolean onTyres,
      boolean steeringLinked,
      TypedAngle rake,
      TypedAngle roll,
      String pressure,
      LengthUnit unit,
      String tape,
      String gapTool,
      String angleTool,
      List<ToRead> toRead,
      String note,
      List<Zeroing> zeroed)
      implements Content {
    public Round {
      Objects.requireNonNull(corner, "corner");
      unit = unit == null ? LengthUnit.INCH : unit;
      toRead = toRead == null ? List.of() : List.copyOf(toRead);
      zeroed = zeroed == null ? List.of() : List.copyOf(zeroed);
    }

    /** The same sitting, on another corner. */
    public Round withCorner(String other) {
      return with(other, gapTool);
    }

    /** The same sitting, its gaps read with another tool. */
    public Round withGapTool(String other) {
      return with(corner, other);
    }

    private Round with(String ofCorner, String gapsWith) {
      return new Round(
          ofCorner,
          springIn,
          bumpStopIn,
          wheelOn,
          onTyres,
          steeringLinked,
          rake,
          roll,
          pressure,
          unit,
          tape,
          gapsWith,
          angleTool,
          toRead,
          note,
          zeroed);
    }
  }

  /**
   * One reading a round sets out to take. {@code quantity} null: the height itself.
   *
   * @param pairing crossed, when it is to be read so on a solid axle; null for both together, and
   *     for a wheel hung alone
   */
  record ToRead(
      HeightName name,
      String label,
      Steering steering,
      Quantity quantity,
      String point,
      Pairing pairing) {
    public ToRead {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(steering, "steering");
    }

    public ToRead(
        HeightName name, String label, Steering steering, Quantity quantity, String point) {
      this(name, label, steering, quantity, point, null);
    }

    /** The same thing, to be read at another height. */
    public ToRead at(HeightName other) {
      return new ToRead(other, null, steering, quantity, point, pairing);
    }
  }

  /**
   * One jack setting, read straight ahead: spindle and frame mark above the floor. The mark may be
   * taken as at an earlier height, named by its key; it is then one source for both.
   *
   * @param doubt why it does not count until somebody answers; null when nothing is doubted
   * @param again true or false overrules whether it repeats an earlier height or stands for it
   * @param otherEnd the other end of a solid axle at the same jack setting; null when it was not
   *     read, and for a wheel hung alone
   * @param pairing how the ends of a solid axle stood; null for both together, and for a wheel hung
   *     alone
   */
  record Height(
      String round,
      HeightName name,
      String label,
      TypedLength spindle,
      TypedLength mark,
      String markAsAt,
      String doubt,
      Boolean again,
      OtherEnd otherEnd,
      Pairing pairing)
      implements Content {
    public Height {
      Objects.requireNonNull(round, "round");
      Objects.requireNonNull(name, "name");
    }

    /** Whether it was read on a solid axle, and says something of its other end. */
    public boolean ofAxle() {
      return otherEnd != null || pairing != null;
    }

    public Height withAxle(OtherEnd other, Pairing stood) {
      return new Height(round, name, label, spindle, mark, markAsAt, doubt, again, other, stood);
    }

    /** Where the other end is: as said; else the same place both together, in between crossed. */
    private HeightName otherName() {
      if (otherEnd != null && otherEnd.name() != null) {
        return otherEnd.name();
      }
      return pairing == Pairing.CROSSED ? HeightName.IN_BETWEEN : name;
    }

    /** The same jack setting with the ends changed over. */
    public Height fromOtherEnd() {
      return new Height(
          round,
          otherName(),
          label,
          otherEnd == null ? null : otherEnd.spindle(),
          otherEnd == null ? null : otherEnd.mark(),
          markAsAt,
          doubt,
          again,
          new OtherEnd(name, spindle, mark),
          pairing);
    }

    public Height withMarkAsAt(String height) {
      return new Height(round, name, label, spindle, mark, height, doubt, again, otherEnd, pairing);
    }

    @Override
    public Height withDoubt(String why) {
      return new Height(round, name, label, spindle, mark, markAsAt, why, again, otherEnd, pairing);
    }

    /** What an earlier one really was; the mark stays where none is said. */
    public Height insteadOf(Height was) {
      OtherEnd there = otherEnd;
      if (there != null && there.mark() == null && was.otherEnd != null) {
        there = new OtherEnd(there.name(), there.spindle(), was.otherEnd.mark());
      }
      boolean said = mark != null || markAsAt != null;
      return new Height(
          round,
          name,
          label == null ? was.label : label,
          spindle,
          said ? mark : was.mark,
          said ? markAsAt : was.markAsAt,
          doubt,
          was.again,
          said ? otherEnd : there,
          pairing);
    }

    public Height withAgain(Boolean overruled) {
      return new Height(
          round, name, label, spindle, mark, markAsAt, doubt, overruled, otherEnd, pairing);
    }
  }

  /**
   * Spindle and frame mark above the floor at the other end of a solid axle; either may be missing.
   * Its name may be too: both together it is this end's, crossed nobody said at which place it is.
   * A mark taken as at an earlier height is the earlier height's at this end.
   */
  record OtherEnd(HeightName name, TypedLength spindle, TypedLength mark) {}

  /**
   * One value at a height and steering, kept as typed.
   *
   * @param go the thickest shank that goes (GO_NO_GO), {@code noGo} the thinnest that does not;
   *     either may be missing
   * @param doubt why it does not count until somebody answers
   * @param again true or false overrules whether it repeats the earlier reading or stands for it
   * @param note what was seen besides; null when nothing was
   * @param atOtherEnd true when it was taken at the other end of the solid axle than its round is
   *     of
   */
  record Reading(
      String height,
      Steering steering,
      Quantity quantity,
      String point,
      GapResult result,
      String typed,
      TypedLength length,
      TypedAngle angle,
      TypedLength go,
      TypedLength noGo,
      String doubt,
      Boolean again,
      String note,
      Boolean atOtherEnd)
      implements Content {
    public Reading {
      Objects.requireNonNull(height, "height");
      Objects.requireNonNull(steering, "steering");
      Objects.requireNonNull(quantity, "quantity");
      Objects.requireNonNull(result, "result");
      if (quantity == Quantity.WATCH_POINT) {
        Objects.requireNonNull(point, "point");
      }
      if (result == GapResult.NUMBER && (length == null) == (angle == null)) {
        throw new IllegalArgumentException("a number that was read is one length or one angle");
      }
      if (result == GapResult.GO_NO_GO && go == null && noGo == null) {
        throw new IllegalArgumentException(
            "go / no-go needs a shank that goes or one that does not");
      }
    }

    @Override
    public Reading withDoubt(String why) {
      return with(why, again, note);
    }

    public Reading withAgain(Boolean overruled) {
      return with(doubt, overruled, note);
    }

    /** What an earlier one really said; what was noted stays where nothing is. */
    public Reading insteadOf(Reading was) {
      return with(doubt, was.again, note == null ? was.note : note);
    }

    private Reading with(String why, Boolean overruled, String noted) {
      return new Reading(
          height,
          steering,
          quantity,
          point,
          result,
          typed,
          length,
          angle,
          go,
          noGo,
          why,
          overruled,
          noted,
          atOtherEnd);
    }

    /** The same reading, which really said this; no longer doubted. */
    public Reading withText(String text, ReadingText.Says says) {
      return new Reading(
          height,
          steering,
          quantity,
          point,
          says.result(),
          text,
          says.length(),
          says.angle(),
          says.go(),
          says.noGo(),
          null,
          again,
          note,
          atOtherEnd);
    }
  }

  /** One change of one adjuster. */
  record Adjustment(
      String corner, String adjuster, Setting from, Setting to, String why, String doubt)
      implements Content {
    public Adjustment {
      Objects.requireNonNull(corner, "corner");
      Objects.requireNonNull(adjuster, "adjuster");
      Objects.requireNonNull(to, "to");
    }
  }

  /** What befell a corner, or the whole car when {@code corner} is null. */
  record Happening(String car, String corner, HappeningKind what, String words) implements Content {
    public Happening {
      Objects.requireNonNull(what, "what");
    }
  }

  /** A whole new body for an earlier entry, or the taking back of it ({@code body} null). */
  record Correction(String target, Content body, String reason) implements Content {
    public Correction {
      Objects.requireNonNull(target, "target");
      reason = reason == null ? "" : reason;
    }
  }

  /** The answer to a doubt: it is so, or it does not count. */
  record Answer(String target, boolean itIsSo, String words) implements Content {
    public Answer {
      Objects.requireNonNull(target, "target");
    }
  }

  /** One drive of the car: how long, how far, or how many days out. */
  record Use(String car, UseUnit unit, double amount, String typed, String words)
      implements Content {
    public Use {
      Objects.requireNonNull(car, "car");
      Objects.requireNonNull(unit, "unit");
      if (!(amount > 0) || amount > 1e6) {
        throw new IllegalArgumentException("a drive is more than nothing and less than a million");
      }
    }

    /** As typed: {@code 4 1/2 hours}. */
    public String howMuch() {
      return typed == null ? unit.said(amount) : typed + " " + unit.words(amount);
    }
  }

  /**
   * What a drive left to be read at a corner. It has no wheel position of its own.
   *
   * @param point the watch point that clay or a mark was at; null for none
   * @param typed as it was typed
   * @param length how far the ring sits from the shock's body, how thick the clay is, how long the
   *     strap; null when it is no length
   * @param shockLength eye to eye as the ring was read
   * @param at where the wheel stood as the ring was read, when that is a named place
   * @param pull what the strap was pulled with as it was measured; null for the corner's own weight
   */
  record Telltale(
      String corner,
      TelltaleKind what,
      String point,
      String typed,
      TypedLength length,
      TypedLength shockLength,
      HeightName at,
      TypedAmount pull,
      String words)
      implements Content {
    public Telltale {
      Objects.requireNonNull(corner, "corner");
      Objects.requireNonNull(what, "what");
      if (typed == null && length == null && words == null) {
        throw new IllegalArgumentException(
            "a telltale says something: 'typed', 'length' or 'words'");
      }
      if (pull != null && !(pull.si(false) > 0 && what == TelltaleKind.STRAP_LENGTH)) {
        throw new IllegalArgumentException("a strap is measured under a 'pull', nothing else");
      }
    }
  }

  /**
   * Something to do, or, with {@code target}, that it is done or to do again.
   *
   * @param corner null for the whole car
   * @param point the watch point it is tied to; null for none
   */
  record ToDo(String car, String corner, String point, String words, String target, Boolean done)
      implements Content {
    public ToDo {
      if ((target == null) != (done == null) || (target == null) != (words != null)) {
        throw new IllegalArgumentException(
            "it says what is to do in 'words', or 'target' and whether it is 'done'");
      }
    }
  }

  /**
   * How the fastener of an adjuster is.
   *
   * @param torque the figure the owner keeps it to, as typed; empty takes it away
   * @param tight false: found loose; null: nothing is said of it
   */
  record Fastener(
      String corner, String adjuster, String torque, Boolean tight, Boolean marked, String words)
      implements Content {
    public Fastener {
      Objects.requireNonNull(corner, "corner");
      Objects.requireNonNull(adjuster, "adjuster");
      if (torque == null && tight == null) {
        throw new IllegalArgumentException("it says a 'torque', or whether it is 'tight'");
      }
    }
  }

  /**
   * A part of the car or a corner: that it was fitted, looked at or taken off.
   *
   * @param corner null for the whole car
   * @param part short name, unique on its corner
   * @param what it is, in words; with {@code size} and {@code number} it is on the parts list
   * @param adjuster the short name of the adjuster it is: fitted, it moves what a change of that
   *     moves
   * @param unit in which {@code lookAfter} and {@code usedBefore} are counted
   * @param lookAfter after how much use its owner wants it looked at; null for no figure
   * @param usedBefore how much it was used before the book knew it; null for not at all
   */
  record Part(
      String car,
      String corner,
      String part,
      PartDone done,
      String what,
      String size,
      String number,
      String adjuster,
      UseUnit unit,
      Double lookAfter,
      Double usedBefore,
      String words)
      implements Content {
    public Part {
      Objects.requireNonNull(car, "car");
      Objects.requireNonNull(part, "part");
      Objects.requireNonNull(done, "done");
      what = what == null || what.isBlank() ? part : what;
      unit = unit == null ? UseUnit.HOURS : unit;
      if ((lookAfter != null && !(lookAfter > 0)) || (usedBefore != null && !(usedBefore >= 0))) {
        throw new IllegalArgumentException("use is counted from nothing up");
      }
    }

    /** The same part, of which something else is said now. */
    public Part with(PartDone now, String why) {
      return new Part(car, corner, part, now, what, size, number, null, unit, null, null, why);
    }

    /** An amount of its use: {@code 40 hours}. */
    public String used(double amount) {
      return unit.said(amount);
    }

    /** {@code limit strap, 20 in, 4 layers}. */
    public String called() {
      return what + (size == null ? "" : ", " + size) + (number == null ? "" : ", no. " + number);
    }
  }

  /**
   * A photo that lies beside the book, named by the SHA-256 of its file.
   *
   * @param target the reading or adjustment it belongs to; null for none
   * @param point the watch point it shows; null for none
   * @param side of an adjustment: before or after it
   */
  record Photo(
      String corner,
      String target,
      String point,
      String file,
      int widthPx,
      int heightPx,
      PhotoSide side,
      String words)
      implements Content {
    private static final Pattern SHA_256 = Pattern.compile("[0-9a-f]{64}");

    public Photo {
      Objects.requireNonNull(corner, "corner");
      Objects.requireNonNull(file, "file");
      if (!SHA_256.matcher(file).matches()) {
        throw new IllegalArgumentException(
            "its 'file' is the SHA-256 of a photo, 64 small hex letters");
      }
    }
  }

  /**
   * Somebody's word for a car before a drive, with a copy of what it rests on. The copy is of the
   * book at {@code n}: what came later, this entry included, is not in it.
   *
   * @param n the book's position it is of
   * @param hash of the line of entry n; null in a book written by hand
   * @param unit in which the car's owner reads lengths
   * @param open what was left to see to, in the order of the drive check
   * @param why it was signed all the same; needed when something was open
   */
  record SignOff(
      String car,
      long n,
      String hash,
      LengthUnit unit,
      List<SignedCorner> corners,
      List<SignedThing> open,
      String why)
      implements Content {
    public SignOff {
      Objects.requireNonNull(car, "car");
      unit = unit == null ? LengthUnit.INCH : unit;
      corners = corners == null ? List.of() : List.copyOf(corners);
      open = open == null ? List.of() : List.copyOf(open);
      if (n < 1) {
        throw new IllegalArgumentException("its 'n' is the position of an entry, from 1");
      }
      if (!open.isEmpty() && (why == null || why.isBlank())) {
        throw new IllegalArgumentException(
            "something was open, so 'why' says why it was signed all the same");
      }
    }
  }

  /**
   * Alignment as it was measured at ride, one way. In the file the way stands under its own name.
   *
   * @param rolled whether the car was rolled and bounced since it stood on a jack; straight off the
   *     jack it is in doubt
   * @param load null when nobody said
   * @param fuel in the owner's words, like {@code pressures}
   * @param lengthTool the short name of the tool that read lengths; null for the tape a car starts
   *     with
   * @param angleTool that read cambers; null for the angle finder a car starts with
   * @param lockTool that read the locks of a sweep; null for turn plates in whole degrees
   * @param doubt why it does not count until somebody answers
   */
  record Alignment(
      String corner,
      boolean rolled,
      Load load,
      String fuel,
      String pressures,
      String lengthTool,
      String angleTool,
      String lockTool,
      AlignmentWay way,
      String doubt,
      String words)
      implements Content {
    public static final String OFF_THE_JACK =
        "It was read straight off the jack: the suspension has not settled until the car is rolled"
            + " and bounced.";

    public Alignment {
      Objects.requireNonNull(corner, "corner");
      if (way == null) {
        throw new IllegalArgumentException("alignment is taken one way, and this one 0");
      }
      doubt = doubt == null && !rolled ? OFF_THE_JACK : doubt;
    }

    @Override
    public Alignment withDoubt(String why) {
      return new Alignment(
          corner, rolled, load, fuel, pressures, lengthTool, angleTool, lockTool, way, why, words);
    }
  }

  /**
   * What the owner wants a figure of alignment to be, counting from here on. Without an end it is
   * taken away.
   *
   * @param corner either of the axle's for what belongs to the axle
   */
  record Target(
      String corner,
      AlignedFigure figure,
      TypedAngle leastAngle,
      TypedAngle mostAngle,
      TypedLength least,
      TypedLength most)
      implements Content {
    public Target {
      Objects.requireNonNull(corner, "corner");
      Objects.requireNonNull(figure, "figure");
      boolean angles = leastAngle != null || mostAngle != null;
      boolean lengths = least != null || most != null;
      if (angles && lengths) {
        throw new IllegalArgumentException("a target is angles or lengths, not both");
      }
      if ((angles && !figure.angle()) || (lengths && !figure.length())) {
        throw new IllegalArgumentException(
            "a target for " + figure.words() + " is " + (angles ? "a length" : "an angle"));
      }
      if ((leastAngle != null && mostAngle != null && leastAngle.rad() > mostAngle.rad())
          || (least != null && most != null && least.mm() > most.mm())) {
        throw new IllegalArgumentException("its least is no more than its most");
      }
    }

    public boolean asks() {
      return angles() || least != null || most != null;
    }

    public boolean angles() {
      return leastAngle != null || mostAngle != null;
    }

    /** {@code −1° to 0°}, {@code at most 1/8 in}; empty when it asks nothing. */
    public String inWords() {
      String from = leastAngle != null ? leastAngle.words() : least == null ? null : least.words();
      String to = mostAngle != null ? mostAngle.words() : most == null ? null : most.words();
      if (from == null) {
        return to == null ? "" : "at most " + to;
      }
      return to == null ? "at least " + from : from + " to " + to;
    }
  }

  /**
   * Where a joint of a corner's linkage is, with the wheels straight ahead; of a direction how far
   * one end of it lies from the other.
   *
   * @param out from the car's centre line outboard, below 0 across it
   * @param back behind the front datum, the same for all joints of a corner
   * @param up above the floor
   * @param at the key of the height at which the wheel stood; null where nobody said
   */
  record JointPlace(
      String corner,
      Joint joint,
      TypedLength out,
      TypedLength back,
      TypedLength up,
      String at,
      TypedAngle allows)
      implements Content {
    public JointPlace {
      Objects.requireNonNull(corner, "corner");
      Objects.requireNonNull(joint, "joint");
      Objects.requireNonNull(out, "out");
      Objects.requireNonNull(back, "back");
      Objects.requireNonNull(up, "up");
    }

    /** {@code 12 out, 30 1/2 back, 14 in up}. */
    public String inWords() {
      return bare(out)
          + " out, "
          + bare(back)
          + " back, "
          + up.words()
          + " up"
          + (allows == null ? "" : ", swings " + allows.words() + " each way");
    }

    /** Without its unit where the last length says the same. */
    private String bare(TypedLength length) {
      String unit = " " + length.unit().word();
      String words = length.words();
      return up.words().endsWith(unit) && words.endsWith(unit)
          ? words.substring(0, words.length() - unit.length())
          : words;
    }
  }

  /** An entry of a kind this version only keeps. */
  record Kept(String kind) implements Content {}
}
