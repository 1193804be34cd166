package spindlebook.travel;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.apache.commons.math3.analysis.interpolation.SplineInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import spindlebook.uncertainty.TravelReference;

/**
 * How lengths and angles of a corner truly run against wheel position: 25 curves of the reference
 * corner, straight ahead and at either rack end. The smooth curve through a table's 29 rows is held
 * to be the truth itself, so nothing about it is approximate.
 */
public final class TrueCurves {
  public static final double FROM_MM = -280;
  public static final double TO_MM = 280;

  /**
   * @param angle in rad, else mm
   */
  public record Curve(String of, boolean angle, PolynomialSplineFunction value) {
    public double at(double positionMm) {
      return value.value(positionMm);
    }

    public double slope(double positionMm) {
      return value.polynomialSplineDerivative().value(positionMm);
    }
  }

  private static final JsonNode TABLE = TravelReference.cornerCurves();
  public static final List<Curve> ALL =
      TravelReference.each(TABLE.get("curves")).map(TrueCurves::curve).toList();
  public static final Curve STRAP = named("strap_length");

  private TrueCurves() {}

  public static Curve named(String of) {
    return ALL.stream().filter(c -> c.of().equals(of)).findFirst().orElseThrow();
  }

  private static Curve curve(JsonNode row) {
    boolean angle = row.get("unit").asText().equals("deg");
    double[] values = TravelReference.numbers(row.get("values"));
    for (int i = 0; angle && i < values.length; i++) {
      values[i] = Math.toRadians(values[i]);
    }
    double[] positions = TravelReference.numbers(TABLE.get("wheel_position_mm"));
    return new Curve(
        row.get("of").asText(), angle, new SplineInterpolator().interpolate(positions, values));
  }
}
