package spindlebook.linkage;

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
    X,
    Y,
    Z
  }

  /** Of a joint as it stands at the design, mm. */
  record Along(Joint joint, Axis axis) implements Coordinate {
    @Override
    public double of(Joints joints) {
      Vec at = joints.get(joint);
      return switch (axis) {
        case X -> at.x();
        case Y -> at.y();
        case Z -> at.z();
      };
    }

    @Override
    public Joints with(Joints joints, double value) {
      Vec at = joints.get(joint);
      return joints.with(
          joint,
          new Vec(
              axis == Axis.X ? value : at.x(),
              axis == Axis.Y ? value : at.y(),
              axis == Axis.Z ? value : at.z()));
    }

    @Override
    public double byTape() {
      return 12.7;
    }

    @Override
    public String words() {
      return joint.key
          + switch (axis) {
            case X -> " forward";
            case Y -> " left";
            case Z -> " up";
          };
    }
  }

  /** Of the wheel in its knuckle, as it stands at the design, rad. */
  enum WheelAngle implements Coordinate {
    TOE,
    CAMBER;

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
