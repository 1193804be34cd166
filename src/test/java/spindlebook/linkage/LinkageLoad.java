package spindlebook.linkage;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleSupplier;
import java.util.stream.IntStream;

/**
 * What a pose, a sheet and a calibration cost, turn about in one program: medians of batches in
 * processor time, the first third of them left out as the compiler's. See docs/benchmarks.md.
 */
public final class LinkageLoad {
  private static final double[] RACKS = {-60, 0, 60};
  private static final double STEP_MM = 10;
  private static final int HEIGHTS = 57;
  private static final int POSES = HEIGHTS * RACKS.length;

  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

  private static double taken;

  private LinkageLoad() {}

  /** {@code batches}, 150 if not said. */
  public static void main(String[] args) {
    int batches = args.length > 0 ? Integer.parseInt(args[0]) : 150;
    Linkage linkage = new Linkage(ReferenceLinkage.g1());
    List<Pose> neighbours = neighbours(linkage);
    NineEquations nine = new NineEquations(linkage);
    List<double[]> starts = neighbours.stream().map(NineEquations::start).toList();
    check(linkage, neighbours, nine, starts);
    List<Double> heights = IntStream.range(0, HEIGHTS).mapToObj(i -> -280 + i * STEP_MM).toList();
    List<Double> racks = Arrays.stream(RACKS).boxed().toList();

    ReadCorner corner = ReadCorner.drawn(new Random(20261128));

    Map<String, Double> ns =
        medians(
            batches,
            Map.of(
                "pose",
                () -> poses(linkage, neighbours),
                "nine equations",
                () -> solutions(neighbours, nine, starts),
                "calibration",
                () -> calibrated(corner),
                "sheet",
                () -> all(Sheet.of(linkage, heights, racks))));
    double pose = ns.get("pose") / (20 * POSES);
    double marquardt = ns.get("nine equations") / POSES;
    System.out.printf(
        Locale.ROOT,
        "pose %.0f ns, nine equations %.0f ns: %.1f times; sheet of %d poses %.3f ms;"
            + " calibration %.2f ms%n",
        pose,
        marquardt,
        marquardt / pose,
        POSES,
        ns.get("sheet") / 1e6,
        ns.get("calibration") / 1e6);
    System.out.println("(" + taken + ")");
  }

  static Map<String, Double> medians(int batches, Map<String, DoubleSupplier> work) {
    Map<String, List<Double>> times = new LinkedHashMap<>();
    for (int i = 0; i < batches; i++) {
      work.forEach(
          (name, one) -> {
            long from = THREADS.getCurrentThreadCpuTime();
            taken += one.getAsDouble();
            double took = THREADS.getCurrentThreadCpuTime() - from;
            times.computeIfAbsent(name, n -> new ArrayList<>()).add(took);
          });
    }
    Map<String, Double> medians = new LinkedHashMap<>();
    times.forEach(
        (name, all) -> {
          double[] kept =
              all.subList(batches / 3, batches).stream().mapToDouble(t -> t).sorted().toArray();
          medians.put(name, kept[kept.length / 2]);
        });
    return medians;
  }

  /** A step of height below each pose of the sheet, at its rack position. */
  private static List<Pose> neighbours(Linkage linkage) {
    List<Pose> poses = new ArrayList<>();
    for (double rack : RACKS) {
      for (int i = 0; i < HEIGHTS; i++) {
        poses.add(linkage.at(-280 + (i - 1) * STEP_MM, rack).pose());
      }
    }
    return poses;
  }

  private static double poses(Linkage linkage, List<Pose> neighbours) {
    double sum = 0;
    for (int k = 0; k < 20; k++) {
      for (Pose near : neighbours) {
        sum += linkage.at(near.heightMm() + STEP_MM, near).pose().hub().y();
      }
    }
    return sum;
  }

  private static double all(Sheet sheet) {
    double sum = 0;
    for (Sheet.Row row : sheet.rows()) {
      sum += Columns.of(row.found().pose())[12];
    }
    return sum;
  }

  /** 6 coordinates to 30 readings. */
  private static double calibrated(ReadCorner corner) {
    return Calibration.of(corner.given(), corner.taped(), corner.readings()).redundancy();
  }

  private static double solutions(
      List<Pose> neighbours, NineEquations nine, List<double[]> starts) {
    double sum = 0;
    for (int i = 0; i < starts.size(); i++) {
      Pose near = neighbours.get(i);
      sum += nine.solved(starts.get(i), near.heightMm() + STEP_MM, near.rackMm())[1];
    }
    return sum;
  }

  /** Both come to the same joints. */
  private static void check(
      Linkage linkage, List<Pose> neighbours, NineEquations nine, List<double[]> starts) {
    double worst = 0;
    for (int i = 0; i < starts.size(); i++) {
      Pose near = neighbours.get(i);
      double height = near.heightMm() + STEP_MM;
      double[] closed = NineEquations.start(linkage.at(height, near).pose());
      double[] solved = nine.solved(starts.get(i), height, near.rackMm());
      for (int k = 0; k < 9; k++) {
        worst = Math.max(worst, Math.abs(closed[k] - solved[k]));
      }
    }
    System.out.printf(Locale.ROOT, "closed form and nine equations differ by %.1e mm%n", worst);
  }
}
