package spindlebook.linkage;

import spindlebook.entry.Joint;

/** What can be tried on a corner before it is cut; all other parts stay as they are. */
public sealed interface Change {

  /** So much of it, from 0 to 1. */
  Change part(double of);

  /**
   * A mount moved on the frame or the lower arm, or a hole moved in the knuckle (L, U, TO, W), mm
   * along the car's axes as the corner stands at the design.
   */
  record Moved(Joint joint, Vec by) implements Change {
    @Override
    public Change part(double of) {
      return new Moved(joint, by.times(of));
    }
  }

  /** A rod end turned out, + longer. */
  record Longer(Rod rod, double byMm) implements Change {
    @Override
    public Change part(double of) {
      return new Longer(rod, of * byMm);
    }
  }

  /** From a pivot to a joint: an arm has two, each as long as it was made. */
  enum Rod {
    LOWER_FRONT(Joint.LF, Joint.L),
    LOWER_REAR(Joint.LR, Joint.L),
    UPPER_FRONT(Joint.UF, Joint.U),
    UPPER_REAR(Joint.UR, Joint.U),
    TIE_ROD(Joint.TI, Joint.TO);

    final Joint inner;
    final Joint outer;

    Rod(Joint inner, Joint outer) {
      this.inner = inner;
      this.outer = outer;
    }

    public double lengthMm(Joints joints) {
      return joints.get(inner).distance(joints.get(outer));
    }
  }
}
