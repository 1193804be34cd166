package spindlebook.linkage;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.linkage.Found.StopsAssembling;

/** A corner over travel and rack: every {@link Column} at each height and each rack position. */
public record Sheet(List<Row> rows) {

  /**
   * @param values in the order of {@link Column#ALL}; none where it does not assemble
   * @param why in words, where it does not assemble
   */
  public record Row(double heightMm, double rackMm, double[] values, Optional<String> why) {}

  public Sheet {
    rows = List.copyOf(rows);
  }

  /** The rows in the order of the heights, at each in that of the rack positions. */
  public static Sheet of(Linkage linkage, List<Double> heightsMm, List<Double> racksMm) {
    Pose[] near = new Pose[racksMm.size()];
    List<Row> rows = new ArrayList<>(heightsMm.size() * near.length);
    for (double heightMm : heightsMm) {
      for (int i = 0; i < near.length; i++) {
        double rackMm = racksMm.get(i);
        Found found =
            near[i] == null ? linkage.at(heightMm, rackMm) : linkage.at(heightMm, near[i]);
        if (found instanceof Pose pose) {
          near[i] = pose;
          rows.add(new Row(heightMm, rackMm, values(pose), Optional.empty()));
        } else {
          String why = ((StopsAssembling) found).words();
          rows.add(new Row(heightMm, rackMm, new double[0], Optional.of(why)));
        }
      }
    }
    return new Sheet(rows);
  }

  public static double[] values(Pose pose) {
    OnGround ground = OnGround.of(pose);
    double[] values = new double[Column.ALL.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = Column.ALL.get(i).of().applyAsDouble(pose, ground);
    }
    return values;
  }
}
