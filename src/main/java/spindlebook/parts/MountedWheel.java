package spindlebook.parts;

/**
 * A wheel with its tyre on a hub.
 *
 * @param spacerMm between hub and wheel, ≥ 0
 * @param spokeBackMm from the mounting face out to the back of the spokes where the nearest part
 *     stands, + outboard
 */
public record MountedWheel(Wheel wheel, double spacerMm, double spokeBackMm, Tyre tyre) {
  public MountedWheel {
    if (!(spacerMm >= 0) || !Double.isFinite(spokeBackMm)) {
      throw new IllegalArgumentException(
          "a spacer is not negative: " + spacerMm + "; spokes at " + spokeBackMm);
    }
  }

  /** The wheel as it sits. */
  Wheel asItSits() {
    return wheel.onSpacer(spacerMm);
  }
}
