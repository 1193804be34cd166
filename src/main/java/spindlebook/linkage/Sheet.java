package spindlebook.linkage;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.linkage.Found.StopsAssembling;

/** A corner over travel and rack: every {@link Column} at each height and each rack position. */
public record Sheet(List<Row> rows) {
  private static final int DECIMALS = 12;

  /**
   * @param values in the order of {@link Column#ALL}; none where it does not assemble
   * @param why in words, where it does not assemble
   */
  public record Row(double heightMm, double rackMm, double[] values, Optional<String> why) {}

  public Sheet {
    rows = List.copyOf(rows);
  }

  /** Rack by rack, each in the order of the heights. */
  public static Sheet of(Linkage linkage, List<Double> heightsMm, List<Double> racksMm) {
    List<Row> rows = new ArrayList<>(heightsMm.size() * racksMm.size());
    for (double rackMm : racksMm) {
      Pose near = null;
      for (double heightMm : heightsMm) {
        Found found = near == null ? linkage.at(heightMm, rackMm) : linkage.at(heightMm, near);
        if (found instanceof Pose pose) {
          near = pose;
          rows.add(new Row(heightMm, rackMm, values(pose), Optional.empty()));
        } else {
          String why = ((StopsAssembling) found).words();
          rows.add(new Row(heightMm, rackMm, new double[0], Optional.of(why)));
        }
      }
    }
    return new Sheet(rows);
  }

  /** Comma-separated values: a line a row, empty where there is nothing; docs/format-linkage.md. */
  public String csv() {
    StringBuilder csv = new StringBuilder("dz,rack,feasible");
    Column.ALL.forEach(column -> csv.append(',').append(column.name()));
    csv.append(",why\r\n");
    for (Row row : rows) {
      csv.append(plain(row.heightMm)).append(',').append(plain(row.rackMm));
      csv.append(',').append(row.why.isEmpty());
      for (int i = 0; i < Column.ALL.size(); i++) {
        csv.append(',').append(i < row.values.length ? plain(row.values[i]) : "");
      }
      csv.append(',').append(row.why.orElse("")).append("\r\n");
    }
    return csv.toString();
  }

  private static String plain(double value) {
    return Double.isNaN(value)
        ? ""
        : BigDecimal.valueOf(value)
            .setScale(DECIMALS, RoundingMode.HALF_EVEN)
            .stripTrailingZeros()
            .toPlainString();
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
