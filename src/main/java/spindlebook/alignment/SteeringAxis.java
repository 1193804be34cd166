package spindlebook.alignment;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import spindlebook.uncertainty.Figure;

/**
 * How the kingpin leans.
 *
 * <pre>  tan C = −(xU − xL) / (zU − zL)      tan K = −σ (yU − yL) / (zU − zL)</pre>
 *
 * C caster, + top rearward; K KPI, + top inboard; U upper, L lower joint, mm; σ = +1 left, −1
 * right. Both projected, in the body's axes. Source: ISO 8855's terms, from memory.
 *
 * <p>Worked example: L (8, 790, 290), U (−22, 745, 590) on the left: C = 5.7106°, K = 8.5308°.
 */
public record SteeringAxis(Figure casterRad, Figure kpiRad) {
  static Vector3D upwards(double casterRad, double kpiRad) {
    return new Vector3D(-Math.tan(casterRad), -Math.tan(kpiRad), 1);
  }
}
