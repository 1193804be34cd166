package spindlebook.parts;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/**
 * A corner's pivots as measured, in mm, as on the left side (a right one mirrored: y outboard). x
 * forward, y outboard, z up, from any one place of the frame.
 */
public record Pivots(
    Vector3D lowerFront,
    Vector3D lowerRear,
    Vector3D lower,
    Vector3D upperFront,
    Vector3D upperRear,
    Vector3D upper,
    Vector3D tieInner,
    Vector3D tieOuter,
    Vector3D wheelCentre,
    double camberRad,
    double toeRad) {

  /**
   * The arms in each other's place, so that what is worked out for the upper is the lower one's.
   */
  public Pivots armsSwapped() {
    return new Pivots(
        upperFront,
        upperRear,
        upper,
        lowerFront,
        lowerRear,
        lower,
        tieInner,
        tieOuter,
        wheelCentre,
        camberRad,
        toeRad);
  }
}
