package spindlebook.linkage;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import spindlebook.linkage.Found.StopsAssembling;

/** A corner over travel and rack; its table has all {@link Columns}. */
public record Sheet(List<Row> rows) {
  private static final int DECIMALS = 12;

  /** A height and a rack position asked for, and what came of it. */
  public record Row(double heightMm, double rackMm, Found found) {}

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
        near = found instanceof Pose pose ? pose : near;
        rows.add(new Row(heightMm, rackMm, found));
      }
    }
    return new Sheet(rows);
  }

  /** Comma-separated values: a line a row, empty where there is nothing; docs/format-linkage.md. */
  public String csv() {
    StringBuilder csv = new StringBuilder("dz,rack,feasible");
    Columns.NAMES.forEach(name -> csv.append(',').append(name));
    csv.append(",why\r\n");
    for (Row row : rows) {
      csv.append(plain(row.heightMm)).append(',').append(plain(row.rackMm));
      if (row.found instanceof Pose pose) {
        csv.append(",true");
        for (double value : Columns.of(pose)) {
          csv.append(',').append(plain(value));
        }
        csv.append(',');
      } else {
        csv.append(",false").append(",".repeat(Columns.NAMES.size() + 1));
        csv.append(((StopsAssembling) row.found).words());
      }
      csv.append("\r\n");
    }
    return csv.toString();
  }

  private static String plain(double value) {
    return !Double.isFinite(value)
        ? ""
        : BigDecimal.valueOf(value)
            .setScale(DECIMALS, RoundingMode.HALF_EVEN)
            .stripTrailingZeros()
            .toPlainString();
  }
}
