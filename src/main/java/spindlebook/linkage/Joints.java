package spindlebook.linkage;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import spindlebook.entry.Joint;

/**
 * The joints of a corner as they stand at the design height, straight ahead.
 *
 * @param left on the car's left, y > 0
 * @param at the first nine {@link Joint}s always; shock, strap and hardware where known, mounts by
 *     pairs, directions of any length
 * @param toeRad, camberRad of the wheel as it stands there
 * @param radiusMm loaded radius in the wheel's plane, > 0
 */
public record Joints(
    boolean left, Map<Joint, Vec> at, double toeRad, double camberRad, double radiusMm) {

  public Joints {
    at = Collections.unmodifiableMap(new EnumMap<>(at));
    for (Joint joint : Joint.values()) {
      if (joint.needed() && !at.containsKey(joint)) {
        throw new LinkageRefused(joint.key + " is missing: " + joint.words + ".");
      }
    }
    at.forEach(
        (joint, p) -> {
          if (joint.direction() && !(p.length() > 1e-9)) {
            throw new LinkageRefused(joint.key + " points nowhere.", joint);
          }
        });
    both(at, Joint.SU, Joint.SL);
    both(at, Joint.KU, Joint.KL);
    both(at, Joint.BOLT_L, Joint.HOUSE_L);
    both(at, Joint.BOLT_U, Joint.HOUSE_U);
    if (!(radiusMm > 0)) {
      throw new LinkageRefused("The tyre's loaded_radius must be given, and more than 0.");
    }
    if (left != at.get(Joint.W).y() > 0) {
      throw new LinkageRefused(
          "The wheel centre's y must be "
              + (left ? "more than 0 on the left." : "less than 0 on the right."),
          Joint.W);
    }
  }

  private static void both(Map<Joint, Vec> at, Joint one, Joint other) {
    if (at.containsKey(one) != at.containsKey(other)) {
      Joint missing = at.containsKey(one) ? other : one;
      throw new LinkageRefused(
          missing.key + " is missing: " + missing.words + ".", missing == one ? other : one);
    }
  }

  public Vec get(Joint joint) {
    return at.get(joint);
  }

  public boolean has(Joint joint) {
    return at.containsKey(joint);
  }

  /** +1 left, −1 right: times this, y is outboard. */
  int side() {
    return left ? 1 : -1;
  }

  /** The wheel's spin axis, of unit length, outboard. */
  Vec spin() {
    return new Vec(
        Math.sin(toeRad) * Math.cos(camberRad),
        side() * Math.cos(toeRad) * Math.cos(camberRad),
        -Math.sin(camberRad));
  }

  public Joints with(Joint joint, Vec place) {
    Map<Joint, Vec> other = new EnumMap<>(at);
    other.put(joint, place);
    return new Joints(left, other, toeRad, camberRad, radiusMm);
  }
}
