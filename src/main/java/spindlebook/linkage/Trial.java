package spindlebook.linkage;

import java.util.List;
import java.util.stream.IntStream;

/** A corner as it is today, and as it would be put together with some changes. */
public record Trial(Linkage today, Linkage tried) {

  /** One figure of both; NaN where a side does not get there. */
  public record Beside(String column, double today, double tried) {}

  /**
   * @throws LinkageRefused where the changed parts do not go together
   */
  public static Trial of(Joints today, List<Change> changes) {
    return new Trial(new Linkage(today), new Linkage(Reassembly.of(today, changes)));
  }

  /** Every column at one wheel height above the design (which both have) and one rack position. */
  public List<Beside> at(double heightMm, double rackMm) {
    double[] before = values(today, heightMm, rackMm);
    double[] after = values(tried, heightMm, rackMm);
    return IntStream.range(0, Columns.NAMES.size())
        .mapToObj(i -> new Beside(Columns.NAMES.get(i), before[i], after[i]))
        .toList();
  }

  private static double[] values(Linkage linkage, double heightMm, double rackMm) {
    return linkage.at(heightMm, rackMm) instanceof Pose pose
        ? Columns.of(pose)
        : Columns.NAMES.stream().mapToDouble(name -> Double.NaN).toArray();
  }
}
