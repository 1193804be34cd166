package spindlebook.travel;

import java.util.*;
import spindlebook.uncertainty.Figure;

final class ExpB {
  static final double INCH = 25.4;
  static Random random;

  static double uniform(double a, double b) {
    return a + (b - a) * random.nextDouble();
  }

  static double read(double mm, double step, double hw) {
    return Math.rint((mm + uniform(-hw, hw)) / step) * step;
  }

  static double taped(double mm) {
    return read(mm, INCH / 16, INCH / 32);
  }

  static double gap(double mm, boolean allTaped) {
    return allTaped || mm > INCH / 2 ? taped(mm) : read(mm, INCH / 64, INCH / 64);
  }

  record R(
      double err,
      double u,
      double slopeErr,
      double d,
      double limitErr,
      double uLimit,
      double slope,
      boolean covered) {}

  public static void main(String[] a) {
    int n = Integer.parseInt(a[0]);
    for (String tool : new String[] {"drills", "tape"})
      for (String mode : new String[] {"far", "close"}) {
        boolean allTaped = tool.equals("tape");
        random = new Random(Long.parseLong(a[1]));
        List<R> rs = new ArrayList<>();
        int undecided = 0;
        for (int i = 0; i < n; i++) {
          double limit = uniform(-20, 80), closing = uniform(0.1, 0.16), mark = uniform(900, 1100);
          CornerBench bench =
              CornerBench.shop(tool)
                  .watch("p", "lower-arm-frame", "{\"least\":\"12 mm\"}")
                  .held("impact-reserve", 0)
                  .oneMark()
                  .marksReadOffBy(taped(mark) - 1000);
          double[] at =
              mode.equals("far")
                  ? new double[] {-160, uniform(-110, -80), uniform(-45, -15), uniform(15, 35), 70}
                  : new double[] {-80, uniform(-60, -45), uniform(-25, -10), uniform(10, 20), 40};
          int stop = 2 + random.nextInt(3);
          for (int h = 0; h < at.length; h++) {
            String name = h == stop ? "full-bump" : "in-between";
            bench.height("h" + h, name, taped(mark + limit + at[h]) - 1000);
            bench.gap("p", "h" + h, gap(12 - closing * at[h], allTaped));
          }
          TravelFindings t = bench.travel();
          Optional<Figure> mo = t.bump().marginMm();
          if (mo.isEmpty()) {
            undecided++;
            continue;
          }
          Figure m = mo.get();
          EndLimit lim = t.bump().rules().orElseThrow().at();
          double about = lim instanceof EndLimit.Crosses c ? c.aboutMm() : Double.NaN;
          Figure p = t.bump().rules().orElseThrow().positionMm();
          rs.add(
              new R(
                  m.value() + at[stop],
                  m.u(),
                  0,
                  Math.abs(p.value() - about),
                  p.value() - limit,
                  p.u(),
                  closing,
                  Math.abs(m.value() + at[stop]) <= m.U()));
        }
        double s2 = 0, v = 0, z2 = 0;
        int cov = 0, lc = 0;
        double l2 = 0, lv = 0, mean = 0;
        for (R r : rs) {
          s2 += r.err * r.err;
          v += r.u * r.u;
          z2 += r.err * r.err / r.u / r.u;
          cov += r.covered ? 1 : 0;
          l2 += r.limitErr * r.limitErr;
          lv += r.uLimit * r.uLimit;
          lc += Math.abs(r.limitErr) <= 2 * r.uLimit ? 1 : 0;
          mean += r.err;
        }
        int k = rs.size();
        System.out.printf(
            "%s %s n=%d undecided %d mean err %.3f rms err %.3f rms u %.3f ratio %.3f rms z %.3f"
                + " cover %.2f | limit ratio %.3f cover %.2f%n",
            tool,
            mode,
            k,
            undecided,
            mean / k,
            Math.sqrt(s2 / k),
            Math.sqrt(v / k),
            Math.sqrt(v / s2),
            Math.sqrt(z2 / k),
            100.0 * cov / k,
            Math.sqrt(lv / l2),
            100.0 * lc / k);
        rs.sort(Comparator.comparingDouble(R::u));
        for (int q = 0; q < 5; q++) {
          double e2 = 0, u2 = 0, dd = 0;
          int c = 0, m = 0;
          int up = 0;
          for (int i = q * k / 5; i < (q + 1) * k / 5; i++) {
            R r = rs.get(i);
            e2 += r.err * r.err;
            u2 += r.u * r.u;
            dd += r.d * r.d / 3;
            c += r.covered ? 1 : 0;
            m++;
            if (!r.covered && r.err > 0) up++;
          }
          System.out.printf(
              "   by u: u %.2f err %.2f d/sqrt3 %.2f cover %.1f (missed high %d of %d)%n",
              Math.sqrt(u2 / m), Math.sqrt(e2 / m), Math.sqrt(dd / m), 100.0 * c / m, up, m - c);
        }
      }
  }
}
