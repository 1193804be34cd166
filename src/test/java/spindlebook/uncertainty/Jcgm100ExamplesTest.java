package spindlebook.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Source: JCGM 100:2008, examples H.1 and H.3; inputs and results from memory. */
class Jcgm100ExamplesTest {

  /** H.1: l = ls + d − ls (δα θ + αs δθ), in nanometres; the ls is 50.000623 mm. */
  @Test
  void the_end_gauge_of_h1_has_a_standard_uncertainty_of_32_nm() {
    double lengthNm = 50.000623e6;
    double alpha = 11.5e-6;
    Figure standard = own("standard", lengthNm, 25);
    Figure difference =
        own("repeats", 215, 5.8).plus(own("comparator random", 0, 3.9)).plus(own("syst", 0, 6.7));
    Figure expansionDifference = own("expansion", 0, 0.58e-6);
    Figure temperatureDifference = own("temperature difference", 0, 0.029);
    Figure gauge =
        Figure.linear(
            lengthNm + 215,
            List.of(standard, difference, expansionDifference, temperatureDifference),
            new double[] {1, 1, -lengthNm * -0.1, -lengthNm * alpha});
    assertEquals(50.000838e6, gauge.value(), 0.5);
    assertEquals(9.7, difference.u(), 0.05);
    assertEquals(32, gauge.u(), 0.5);
  }

  /**
   * H.3: a straight line through eleven corrections of a thermometer. The two coefficients share
   * every reading, and only with that does the correction at 30 °C come out.
   */
  @Test
  void the_thermometer_of_h3_keeps_the_correlation_of_its_coefficients() {
    double[] t = {
      21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511
    };
    double[] b = {
      -0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160
    };
    double n = t.length;
    double sum = 0;
    double squares = 0;
    for (double ti : t) {
      sum += ti - 20;
      squares += (ti - 20) * (ti - 20);
    }
    double d = n * squares - sum * sum;
    List<Figure> readings = new ArrayList<>();
    double[] toIntercept = new double[t.length];
    double[] toSlope = new double[t.length];
    double intercept = 0;
    double slope = 0;
    for (int i = 0; i < t.length; i++) {
      readings.add(own("reading " + i, b[i], 0.0035));
      toIntercept[i] = (squares - sum * (t[i] - 20)) / d;
      toSlope[i] = (n * (t[i] - 20) - sum) / d;
      intercept += toIntercept[i] * b[i];
      slope += toSlope[i] * b[i];
    }
    Figure y1 = Figure.linear(intercept, readings, toIntercept);
    Figure y2 = Figure.linear(slope, readings, toSlope);
    assertEquals(-0.1712, y1.value(), 5e-5);
    assertEquals(0.0029, y1.u(), 5e-5);
    assertEquals(0.00218, y2.value(), 5e-6);
    assertEquals(0.00067, y2.u(), 5e-6);
    assertEquals(-0.930, y1.correlation(y2), 5e-4);
    Figure at30 = y1.plus(y2.times(10));
    assertEquals(-0.1494, at30.value(), 5e-5);
    assertEquals(0.0041, at30.u(), 5e-5);
  }

  private static Figure own(String id, double value, double u) {
    return Figure.of(value, new Source(id, SourceKind.PLACING), u);
  }
}
