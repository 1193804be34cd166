package spindlebook.alignment;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import spindlebook.parts.Pivots;

/**
 * The invented corner "G1" of the reference files (linkage.json, inputs): mm, left side, rack
 * behind the axle, camber −0.5°, toe 0.1°.
 */
public final class ReferenceCorner {
  public static final Pivots G1 =
      new Pivots(
          new Vector3D(210, 320, 330),
          new Vector3D(-190, 320, 330),
          new Vector3D(8, 790, 290),
          new Vector3D(150, 360, 575),
          new Vector3D(-200, 360, 575),
          new Vector3D(-22, 745, 590),
          new Vector3D(-152, 335.5, 372),
          new Vector3D(-150, 778, 345),
          new Vector3D(0, 900, 405),
          Math.toRadians(-0.5),
          Math.toRadians(0.1));

  private ReferenceCorner() {}
}
