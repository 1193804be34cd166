package spindlebook.linkage;

import spindlebook.entry.Joint;

/** One number of a corner that may be other than it was given. */
public sealed interface Coordinate {

  double of(Joints joints);

  Joints with(Joints joints, double value);

  /** How far off it may well be as a tape lays it out, U: half an inch, a degree. No source. */
  double byTape();

  String words();

  default Joints moved(Joints joints, double by) {
    return with(joints, of(joints) + by);
  }

  /** Which way a joint's coordinate counts. */
  enum Axis {
    X("forward", new Vec(1, 0, 0)),
    Y("left", new Vec(0, 1, 0)),
    Z("up", new Vec(0, 0, 1));

    private final String words;
    private final Vec unit;

    Axis(String words, Vec unit) {
      this.words = words;
      this.unit = unit;
    }
  }

  /** Of a joint as it stands at the design, mm. */
  record Along(Joint joint, Axis axis) implements Coordinate {
    @Override
    public double of(Joints joints) {
      return joints.get(joint).dot(axis.unit);
    }

    @Override
    public Joints with(Joints joints, double value) {
      return joints.with(joint, joints.get(joint).plus(value - of(joints), axis.unit));
    }

    @Override
    public double byTape() {
      return 12.7;
    }

    @Override
    public String words() {
      return joint.key + " " + axis.words;
    }
  }

  /** Of the wheel in its knuckle, as it stands at the design, rad. */
  enum WheelAngle implements Coordinate {
    TOE(Quantity.TOE),
    CAMBER(Quantity.CAMBER);

    /** What a reading of it is called. */
    public final Quantity quantity;

    WheelAngle(Quantity quantity) {
      this.quantity = quantity;
    }

    @Override
    public double of(Joints joints) {
      return this == TOE ? joints.toeRad() : joints.camberRad();
    }

    @Override
    public Joints with(Joints joints, double value) {
      return new Joints(
          joints.left(),
          joints.at(),
          this == TOE ? value : joints.toeRad(),
          this == CAMBER ? value : joints.camberRad(),
          joints.radiusMm());
    }

    @Override
    public double byTape() {
      return Math.toRadians(1);
    }

    @Override
    public String words() {
      return this == TOE ? "toe" : "camber";
    }
  }
}
