package spindlebook.alignment;

import java.util.Random;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import spindlebook.definition.RackSide;
import spindlebook.parts.Pivots;

/** Invented corners about the reference one, rack behind or ahead, their tie rods neutral. */
final class RandomCorner {
  private static final double SPREAD_MM = 15;

  private RandomCorner() {}

  static RigidCorner neutral(Random random, RackSide rack) {
    while (true) {
      try {
        return RigidCorner.of(pivots(random, rack)).neutral();
      } catch (IllegalStateException doesNotGoTogether) {
        // Another draw: not every set of pivots has a neutral rod.
      }
    }
  }

  private static Pivots pivots(Random random, RackSide rack) {
    Pivots g = ReferenceCorner.G1;
    double x = (rack == RackSide.AHEAD_OF_AXLE ? 1 : -1) * (120 + 60 * random.nextDouble());
    double heightMm = 330 + 60 * random.nextDouble();
    Vector3D outer = new Vector3D(x, 778 + (x > 0 ? 20 : 0), heightMm);
    Vector3D inner = new Vector3D(x - 2, 330 + 20 * random.nextDouble(), heightMm + 20);
    return new Pivots(
        near(random, g.lowerFront()),
        near(random, g.lowerRear()),
        near(random, g.lower()),
        near(random, g.upperFront()),
        near(random, g.upperRear()),
        near(random, g.upper()),
        inner,
        outer,
        g.wheelCentre(),
        Math.toRadians(-1 + random.nextDouble()),
        Math.toRadians(0.2 * random.nextDouble()));
  }

  private static Vector3D near(Random random, Vector3D point) {
    return point.add(new Vector3D(draw(random), draw(random), draw(random)));
  }

  private static double draw(Random random) {
    return SPREAD_MM * (2 * random.nextDouble() - 1);
  }
}
