package spindlebook.linkage;

/**
 * A point or a direction, x forward, y left, z up, mm. Commons Math's Vector3D sums its products to
 * the last digit, which makes a pose cost several times as much.
 */
public record Vec(double x, double y, double z) {
  static final Vec NONE = new Vec(0, 0, 0);

  public Vec plus(Vec other) {
    return new Vec(x + other.x, y + other.y, z + other.z);
  }

  /** This and so many times the other. */
  public Vec plus(double times, Vec other) {
    return new Vec(x + times * other.x, y + times * other.y, z + times * other.z);
  }

  public Vec minus(Vec other) {
    return new Vec(x - other.x, y - other.y, z - other.z);
  }

  Vec times(double factor) {
    return new Vec(factor * x, factor * y, factor * z);
  }

  double dot(Vec other) {
    return x * other.x + y * other.y + z * other.z;
  }

  public Vec cross(Vec other) {
    return new Vec(y * other.z - z * other.y, z * other.x - x * other.z, x * other.y - y * other.x);
  }

  public double length() {
    return Math.sqrt(dot(this));
  }

  public double distance(Vec other) {
    return minus(other).length();
  }

  public Vec unit() {
    return times(1 / length());
  }

  /** From 0 to π, well conditioned at both ends. */
  double angle(Vec other) {
    return Math.atan2(cross(other).length(), dot(other));
  }
}
