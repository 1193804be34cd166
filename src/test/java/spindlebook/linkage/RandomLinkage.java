package spindlebook.linkage;

import java.util.EnumMap;
import java.util.Map;
import java.util.Random;
import spindlebook.entry.Joint;

/** Invented corners about the reference one, their pivot axes inclined, on either side. */
final class RandomLinkage {
  private RandomLinkage() {}

  /**
   * @param spreadMm how far each joint may lie from the reference's, each way
   */
  static Joints near(Random random, double spreadMm) {
    Joints g1 = ReferenceLinkage.g1();
    Map<Joint, Vec> at = new EnumMap<>(Joint.class);
    g1.at()
        .forEach(
            (joint, p) ->
                at.put(joint, p.plus(joint.direction() ? 0.2 : spreadMm, somewhere(random))));
    Joints joints =
        new Joints(
            true,
            at,
            Math.toRadians(2 * random.nextDouble() - 1),
            Math.toRadians(2 * random.nextDouble() - 1.5),
            350 + 100 * random.nextDouble());
    return random.nextBoolean() ? joints : mirrored(joints);
  }

  static Vec somewhere(Random random) {
    return new Vec(draw(random), draw(random), draw(random));
  }

  private static double draw(Random random) {
    return 2 * random.nextDouble() - 1;
  }

  /** The same corner on the other side of the car. */
  static Joints mirrored(Joints joints) {
    Map<Joint, Vec> other = new EnumMap<>(joints.at());
    other.replaceAll((joint, p) -> new Vec(p.x(), -p.y(), p.z()));
    return new Joints(
        !joints.left(), other, joints.toeRad(), joints.camberRad(), joints.radiusMm());
  }
}
