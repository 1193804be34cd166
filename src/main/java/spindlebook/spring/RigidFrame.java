package spindlebook.spring;

import java.util.ArrayList;
import java.util.List;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Propagated;

/**
 * What raising one corner does to all four: the frame does not twist, so it stands on its springs
 * as a table on four legs.
 *
 * <pre>
 *   n = (1/tf, −1/tf, −1/tr, 1/tr)     λ = Σ n u/Σ (n²/k)     more load on a corner: λ n
 *   it rises by u − λ n/k
 * </pre>
 *
 * <p>In the order left front, right front, left rear, right rear: u how far the corner would rise
 * under its own load, mm; k its rate at the wheel with the tyre's beneath it, N/mm; tf and tr the
 * tracks, of which only their ratio counts; loads in N. λ n is the one way in which four loads may
 * change without moving the car's weight. No anti-roll bar, small angles. Source: statics, any
 * textbook; derived here. Worked example: 20 N/mm at all four, equal tracks, left front raised by
 * 10 mm: 50 N more on it and on the right rear, as much less on the others; it rises 7.5 mm, the
 * other two next to it 2.5 mm, and the right rear sinks 2.5 mm.
 */
public final class RigidFrame {
  private static final int CORNERS = 4;

  private RigidFrame() {}

  /** Of four corners each. */
  public static List<Figure> moreLoadN(
      List<Figure> raisedMm, List<Figure> rateNPerMm, double frontTrackOverRear) {
    List<Figure> inputs = new ArrayList<>(raisedMm);
    inputs.addAll(rateNPerMm);
    double r = frontTrackOverRear;
    double[] n = {1, -1, -r, r};
    List<Figure> loads = new ArrayList<>();
    for (int i = 0; i < CORNERS; i++) {
      double of = n[i];
      loads.add(
          Propagated.of(
              inputs,
              v -> {
                double twist = 0;
                double gives = 0;
                for (int k = 0; k < CORNERS; k++) {
                  twist += n[k] * v[k];
                  gives += n[k] * n[k] / v[CORNERS + k];
                }
                return of * twist / gives;
              }));
    }
    return loads;
  }
}
