package spindlebook.linkage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.infra.Blackhole;

/**
 * What a pose, a sheet and a calibration cost; docs/benchmarks.md. A pose is sought 10 mm of wheel
 * height from its neighbour, by closed form and by nine equations to the same 1e-10 mm.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(2)
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
public class LinkageBenchmark {
  private static final double[] RACKS = {-60, 0, 60};
  private static final double STEP_MM = 10;
  private static final int HEIGHTS = 57;
  private static final int POSES = HEIGHTS * 3;

  private final Linkage linkage = new Linkage(ReferenceLinkage.g1());
  private final NineEquations nine = new NineEquations(linkage);
  private final List<Pose> neighbours = neighbours(linkage);
  private final List<double[]> starts = neighbours.stream().map(NineEquations::start).toList();
  private final List<Double> heights =
      IntStream.range(0, HEIGHTS).mapToObj(i -> -280 + i * STEP_MM).toList();
  private final List<Double> racks = Arrays.stream(RACKS).boxed().toList();
  private final ReadCorner corner = ReadCorner.drawn(new Random(20261128));

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

  @Benchmark
  @OperationsPerInvocation(POSES)
  public void pose(Blackhole to) {
    for (Pose near : neighbours) {
      to.consume(linkage.at(near.heightMm() + STEP_MM, near));
    }
  }

  @Benchmark
  @OperationsPerInvocation(POSES)
  public void nineEquations(Blackhole to) {
    for (int i = 0; i < POSES; i++) {
      Pose near = neighbours.get(i);
      to.consume(nine.solved(starts.get(i), near.heightMm() + STEP_MM, near.rackMm()));
    }
  }

  /** 57 heights × 3 rack positions with every column. */
  @Benchmark
  public void sheet(Blackhole to) {
    for (Sheet.Row row : Sheet.of(linkage, heights, racks).rows()) {
      to.consume(Columns.of(row.found().pose()));
    }
  }

  /** 6 coordinates to 30 readings. */
  @Benchmark
  public Calibration calibration() {
    return Calibration.of(corner.given(), corner.taped(), corner.readings());
  }
}
