package spindlebook.entry;

import java.util.Map;
import java.util.Objects;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/** The ways in which a garage takes alignment, each with what was read, as typed. */
public sealed interface AlignmentWay {
  /** By the names under which they stand in the file. */
  Map<String, Class<? extends AlignmentWay>> NAMES =
      Map.of(
          "gauge", Gauge.class,
          "line", Line.class,
          "tape", Tape.class,
          "dials", Dials.class,
          "spot", Spot.class,
          "sweep", Swing.class,
          "joint", Joint.class,
          "across", Across.class);

  AlignedThing thing();

  /** What it is taken with: {@code gauge}. */
  String words();

  /** What was read, as typed. */
  String said();

  /** What toe was read across; null for anything else, and for a spot of light. */
  default TypedLength across() {
    return null;
  }

  /**
   * Camber by a gauge on the wheel.
   *
   * @param turned the same place with the gauge turned half a turn, as it shows it; null when it
   *     was read once
   * @param zero what the gauge is known to show on an upright wheel; null when nobody knows
   */
  record Gauge(TypedAngle read, TypedAngle turned, TypedAngle zero) implements AlignmentWay {
    public Gauge {
      Objects.requireNonNull(read, "read");
      if (turned != null && zero != null) {
        throw new IllegalArgumentException(
            "a gauge that was turned round finds its zero: 'turned' or 'zero', not both");
      }
    }

    @Override
    public AlignedThing thing() {
      return AlignedThing.CAMBER;
    }

    @Override
    public String words() {
      if (zero != null) {
        return "gauge, its zero known";
      }
      return turned == null ? "gauge" : "gauge, turned round";
    }

    @Override
    public String said() {
      return read.words()
          + (turned == null ? "" : ", turned round " + turned.words())
          + (zero == null ? "" : ", its zero " + zero.words());
    }
  }

  /**
   * Toe of one wheel by two distances from a line along the car.
   *
   * @param plate true to a plate against the wheel, false to the rim itself
   * @param spacing between the two places, along the wheel
   * @param lean how the line was found to lean; null when it was set along the car
   */
  record Line(
      LineSide side,
      boolean plate,
      TypedLength front,
      TypedLength rear,
      TypedLength spacing,
      Lean lean)
      implements AlignmentWay {
    /** By a line that was set along the car. */
    public Line(
        LineSide side, boolean plate, TypedLength front, TypedLength rear, TypedLength spacing) {
      this(side, plate, front, rear, spacing, null);
    }

    public Line {
      Objects.requireNonNull(side, "side");
      above("front", front);
      above("rear", rear);
      above("spacing", spacing);
      angleOf(front.mm() - rear.mm(), spacing);
    }

    @Override
    public AlignedThing thing() {
      return AlignedThing.TOE;
    }

    @Override
    public TypedLength across() {
      return spacing;
    }

    @Override
    public String words() {
      return (plate ? "toe plate" : "string to the rim") + (lean == null ? "" : ", leaning line");
    }

    @Override
    public String said() {
      return "line "
          + side.words()
          + ", front "
          + front.words()
          + ", rear "
          + rear.words()
          + ", "
          + spacing.words()
          + " apart"
          + (lean == null ? "" : lean.said());
    }
  }

  /**
   * Where a line that leans runs: from it to a place of the car, at a front and a rear station.
   *
   * @param places on which side of the line both lie: hubs outboard of a line that runs inboard of
   *     the wheel; inboard where it was not said
   * @param apart from station to station along the car
   * @param frontWider how much further from the car's middle the front place stands; null for alike
   */
  record Lean(
      LineSide places,
      TypedLength front,
      TypedLength rear,
      TypedLength apart,
      TypedLength frontWider) {
    public Lean {
      places = places == null ? LineSide.INBOARD : places;
      above("front", front);
      above("rear", rear);
      above("apart", apart);
      angleOf(inwardMm(places, front, rear, frontWider), apart);
    }

    /** By how much the line is nearer to the car's middle at the front station than at the rear. */
    public static double inwardMm(
        LineSide places, TypedLength front, TypedLength rear, TypedLength frontWider) {
      double differMm = rear.mm() - front.mm();
      return (places == LineSide.INBOARD ? differMm : -differMm)
          - (frontWider == null ? 0 : frontWider.mm());
    }

    private String said() {
      return ", from the line "
          + (places == LineSide.INBOARD ? "in" : "out")
          + " to the car "
          + front.words()
          + " in front, "
          + rear.words()
          + " behind, "
          + apart.words()
          + " apart"
          + (frontWider == null ? "" : ", front " + frontWider.words() + " wider");
    }
  }

  /** Total toe by a tape across both tyres, in front of and behind the axle. */
  record Tape(TypedLength front, TypedLength rear, TypedLength across) implements AlignmentWay {
    public Tape {
      above("front", front);
      above("rear", rear);
      above("across", across);
      angleOf((front.mm() - rear.mm()) / 2, across);
    }

    @Override
    public AlignedThing thing() {
      return AlignedThing.TOTAL_TOE;
    }

    @Override
    public String words() {
      return "tape across the tyres";
    }

    @Override
    public String said() {
      return "front "
          + front.words()
          + ", rear "
          + rear.words()
          + ", held "
          + across.words()
          + " apart";
    }
  }

  /**
   * Toe of one wheel by dials on a plate.
   *
   * @param front how far the plate's front went outward since the dials stood at zero; null for a
   *     pivot
   * @param rear likewise
   * @param from toe of this wheel when they did; null when the plate stood along the car
   */
  record Dials(TypedLength front, TypedLength rear, TypedLength spacing, TypedAngle from)
      implements AlignmentWay {
    public Dials {
      above("spacing", spacing);
      if (front == null && rear == null) {
        throw new IllegalArgumentException("at least one dial was read: 'front' or 'rear'");
      }
      angleOf(mm(rear) - mm(front), spacing);
    }

    @Override
    public AlignedThing thing() {
      return AlignedThing.TOE;
    }

    @Override
    public TypedLength across() {
      return spacing;
    }

    @Override
    public String words() {
      return "dial";
    }

    @Override
    public String said() {
      return (front == null ? "" : "front " + front.words() + ", ")
          + (rear == null ? "" : "rear " + rear.words() + ", ")
          + spacing.words()
          + " apart"
          + (from == null ? "" : ", from " + from.words());
    }

    private static double mm(TypedLength length) {
      return length == null ? 0 : length.mm();
    }
  }

  /** Toe of one wheel by a spot of light ahead of it. Inward of straight ahead is +. */
  record Spot(TypedLength inward, TypedLength distance) implements AlignmentWay {
    public Spot {
      Objects.requireNonNull(inward, "inward");
      above("distance", distance);
    }

    @Override
    public AlignedThing thing() {
      return AlignedThing.TOE;
    }

    @Override
    public String words() {
      return "spot of light";
    }

    @Override
    public String said() {
      return inward.words() + " inward at " + distance.words();
    }
  }

  /**
   * Caster and KPI by swinging the wheel from lock to lock. Both locks are more than 0.
   *
   * @param camberStraight null when it was not read: then camber as known is taken
   * @param pitchLeft a gauge laid along the wheel with the brake held, + front up; all three or
   *     none
   * @param kpi as known from elsewhere; null when the sweep has to find it
   */
  record Swing(
      SweptBy by,
      TypedAngle leftLock,
      TypedAngle rightLock,
      TypedAngle camberLeft,
      TypedAngle camberStraight,
      TypedAngle camberRight,
      TypedAngle pitchLeft,
      TypedAngle pitchStraight,
      TypedAngle pitchRight,
      TypedAngle kpi)
      implements AlignmentWay {
    /** Less of a swing than this, each way, tells nothing. */
    public static final double LEAST_LOCK_RAD = Math.toRadians(3);

    private static final double MOST_LOCK_RAD = Math.toRadians(60);

    public Swing {
      Objects.requireNonNull(by, "by");
      lock("leftLock", leftLock);
      lock("rightLock", rightLock);
      Objects.requireNonNull(camberLeft, "camberLeft");
      Objects.requireNonNull(camberRight, "camberRight");
      if ((pitchLeft == null) != (pitchRight == null)
          || (pitchLeft == null) != (pitchStraight == null)) {
        throw new IllegalArgumentException(
            "pitch is read at left, straight and right, or not at all");
      }
      if (pitchLeft != null && kpi != null) {
        throw new IllegalArgumentException("KPI is known or found by pitch, not both");
      }
    }

    private static void lock(String field, TypedAngle lock) {
      Objects.requireNonNull(lock, field);
      if (!(lock.rad() >= LEAST_LOCK_RAD && lock.rad() <= MOST_LOCK_RAD)) {
        throw new IllegalArgumentException("its '" + field + "' is 3 to 60 degrees");
      }
    }

    public boolean pitchRead() {
      return pitchLeft != null;
    }

    @Override
    public AlignedThing thing() {
      return AlignedThing.STEERING_AXIS;
    }

    @Override
    public String words() {
      return "sweep";
    }

    @Override
    public String said() {
      return leftLock.words()
          + " left "
          + camberLeft.words()
          + ", "
          + (camberStraight == null ? "" : "straight " + camberStraight.words() + ", ")
          + rightLock.words()
          + " right "
          + camberRight.words()
          + (pitchRead()
              ? ", pitch "
                  + pitchLeft.words()
                  + ", "
                  + pitchStraight.words()
                  + ", "
                  + pitchRight.words()
              : "")
          + (kpi == null ? "" : ", KPI known " + kpi.words())
          + ", by "
          + by.words();
    }
  }

  /**
   * Where the steering axis lies: its lower joint seen from the wheel's centre, and the tyre's
   * loaded radius in the wheel's plane. Ahead, inboard and below are +.
   */
  record Joint(TypedLength ahead, TypedLength inboard, TypedLength below, TypedLength loadedRadius)
      implements AlignmentWay {
    public Joint {
      Objects.requireNonNull(ahead, "ahead");
      Objects.requireNonNull(inboard, "inboard");
      Objects.requireNonNull(below, "below");
      above("loadedRadius", loadedRadius);
    }

    @Override
    public AlignedThing thing() {
      return AlignedThing.GROUND_POINT;
    }

    @Override
    public String words() {
      return "lower joint from the wheel's centre";
    }

    @Override
    public String said() {
      return ahead.words()
          + " ahead, "
          + inboard.words()
          + " inboard, "
          + below.words()
          + " below, loaded radius "
          + loadedRadius.words();
    }
  }

  /**
   * Track by one length across the car.
   *
   * @param outside true over the outsides of the tyres at hub height, false from hub face to hub
   *     face
   * @param offset of the wheel as it sits, spacer taken off, + face outboard of the rim's middle
   * @param section the tyre's width; null when it is not known (needed for the outside)
   */
  record Across(boolean outside, TypedLength length, TypedLength offset, TypedLength section)
      implements AlignmentWay {
    public Across {
      above("length", length);
      Objects.requireNonNull(offset, "offset");
      if (outside || section != null) {
        above("section", section);
      }
    }

    @Override
    public AlignedThing thing() {
      return AlignedThing.TRACK;
    }

    @Override
    public String words() {
      return outside ? "tape over the tyres" : "tape between the hub faces";
    }

    @Override
    public String said() {
      return length.words()
          + ", offset "
          + offset.words()
          + (section == null ? "" : ", tyre " + section.words() + " wide");
    }
  }

  private static void above(String field, TypedLength length) {
    Objects.requireNonNull(length, field);
    if (!(length.mm() > 0)) {
      throw new IllegalArgumentException("its '" + field + "' is more than 0");
    }
  }

  private static void angleOf(double differenceMm, TypedLength spacing) {
    if (!(Math.abs(differenceMm) < spacing.mm())) {
      throw new IllegalArgumentException(
          "the two differ by more than the places lie apart, which is no angle");
    }
  }
}
