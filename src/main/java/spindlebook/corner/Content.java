package spindlebook.corner;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * What an entry of the book says. Lists are copied and never null; other absent things are null,
 * and what an entry cannot do without is refused when it is absent. All references are keys of
 * earlier entries.
 */
public sealed interface Content {

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

  /**
   * A new version of one thing, counting from here on. Exactly one of the last seven is there;
   * {@code details} and {@code tool} belong to a car, the others to a corner. A retirement names
   * the watch point, adjuster or tool that is no longer asked for.
   */
  record Definition(
      String car,
      String corner,
      CarDetails details,
      Tool tool,
      WatchPoint watchPoint,
      Adjuster adjuster,
      Given given,
      HeldBack heldBack,
      Retired retired)
      implements Content {
    public Definition {
      long said =
          Stream.of(details, tool, watchPoint, adjuster, given, heldBack, retired)
              .filter(Objects::nonNull)
              .count();
      if (said != 1) {
        throw new IllegalArgumentException("a definition says one thing, and this one " + said);
      }
    }
  }

  /** What is retired, by its short name; the other two are null. */
  record Retired(String watchPoint, String adjuster, String tool) {}

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
      return new Round(
          other,
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
          gapTool,
          angleTool,
          toRead,
          note,
          zeroed);
    }
  }

  /** One reading a round sets out to take. {@code quantity} null: the height itself. */
  record ToRead(HeightName name, String label, Steering steering, Quantity quantity, String point) {
    public ToRead {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(steering, "steering");
    }
  }

  /**
   * One jack setting, read straight ahead: spindle and frame mark above the floor. The mark may be
   * taken as at an earlier height, named by its key; it is then one source for both.
   *
   * @param doubt why it does not count until somebody answers; null when nothing is doubted
   * @param again true or false overrules whether it repeats an earlier height or stands for it
   */
  record Height(
      String round,
      HeightName name,
      String label,
      TypedLength spindle,
      TypedLength mark,
      String markAsAt,
      String doubt,
      Boolean again)
      implements Content {
    public Height {
      Objects.requireNonNull(round, "round");
      Objects.requireNonNull(name, "name");
    }

    public Height withMarkAsAt(String height) {
      return new Height(round, name, label, spindle, mark, height, doubt, again);
    }

    public Height withDoubt(String why) {
      return new Height(round, name, label, spindle, mark, markAsAt, why, again);
    }

    public Height withAgain(Boolean overruled) {
      return new Height(round, name, label, spindle, mark, markAsAt, doubt, overruled);
    }
  }

  /**
   * One value at a height and steering, kept as typed.
   *
   * @param go the thickest shank that goes (GO_NO_GO), {@code noGo} the thinnest that does not;
   *     either may be missing
   * @param doubt why it does not count until somebody answers
   * @param again true or false overrules whether it repeats the earlier reading or stands for it
   * @param note what was seen besides; null when nothing was
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
      String note)
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

    public Reading withDoubt(String why) {
      return new Reading(
          height, steering, quantity, point, result, typed, length, angle, go, noGo, why, again,
          note);
    }

    public Reading withAgain(Boolean overruled) {
      return new Reading(
          height, steering, quantity, point, result, typed, length, angle, go, noGo, doubt,
          overruled, note);
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
          note);
    }

    public Reading withNote(String words) {
      return new Reading(
          height, steering, quantity, point, result, typed, length, angle, go, noGo, doubt, again,
          words);
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

  /** An entry of a kind this version only keeps. */
  record Kept(String kind) implements Content {}
}
