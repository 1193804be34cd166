package spindlebook.linkage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import spindlebook.entry.Joint;
import spindlebook.linkage.Coordinate.Along;
import spindlebook.linkage.Coordinate.Axis;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * A corner whose joints are not where they were given, read with tape and angle finder: ten jack
 * settings, at each camber, toe and shock length.
 */
record ReadCorner(Joints given, Joints real, List<CornerReading> readings) {
  static final List<Coordinate> SIX =
      List.of(
          new Along(Joint.TI, Axis.Z),
          new Along(Joint.TO, Axis.Z),
          new Along(Joint.U, Axis.Y),
          new Along(Joint.U, Axis.Z),
          new Along(Joint.UF, Axis.Z),
          new Along(Joint.SU, Axis.Z));

  private static final double SIXTEENTH_MM = 25.4 / 16;

  /**
   * Joints off as a tape lays them out; every error drawn from the sources that its figure carries.
   */
  static ReadCorner drawn(Random random) {
    return drawn(random, SIX);
  }

  static ReadCorner drawn(Random random, List<Coordinate> coordinates) {
    return drawn(random, coordinates, 0);
  }

  /**
   * @param lockMm how far the rack goes to a lock, as read by a tape: camber and toe at both locks
   *     of four of the settings too, after the others; 0 for none
   */
  static ReadCorner drawn(Random random, List<Coordinate> coordinates, double lockMm) {
    Joints given = ReferenceLinkage.g1();
    Joints real = given;
    for (Coordinate coordinate : coordinates) {
      real = coordinate.moved(real, coordinate.byTape() / Figure.K * random.nextGaussian());
    }
    Linkage linkage = new Linkage(real);
    Errors errors = new Errors(random);
    List<CornerReading> readings = new ArrayList<>();
    for (int i = 0; i < 10; i++) {
      double height = -225 + 50 * i;
      Pose pose = linkage.at(height, 0).pose();
      Figure read = errors.tape(height, "height" + i, "mark");
      for (Quantity quantity : List.of(Quantity.CAMBER, Quantity.TOE, Quantity.SHOCK)) {
        String key = quantity + " " + i;
        Figure value =
            quantity == Quantity.SHOCK
                ? errors.tape(quantity.of(pose), key, "tape")
                : errors.finder(quantity.of(pose), key, quantity + " zero");
        readings.add(new CornerReading(key, quantity, read, 0, value));
      }
    }
    Figure rack = Figure.exact(0);
    for (int i = 0; lockMm > 0 && i < 4; i++) {
      Figure read = readings.get(9 * i).heightMm();
      Pose straight = linkage.at(-225 + 150 * i, 0).pose();
      rack = i == 0 ? errors.rack(lockMm) : rack;
      for (int way : new int[] {1, -1}) {
        // The tape's error of the rack is in what is read, not in where the rack is said to be.
        Pose real1 = linkage.steered(straight, way * (2 * lockMm - rack.value())).pose();
        Pose said = linkage.steered(straight, way * lockMm).pose();
        Pose more = linkage.steered(straight, way * lockMm - 1).pose();
        for (Quantity quantity : List.of(Quantity.CAMBER, Quantity.TOE)) {
          String key = quantity + " at lock " + way + " " + i;
          Figure value = errors.finder(quantity.of(real1), key, quantity + " zero");
          Figure off =
              rack.plus(-rack.value()).times(-way * (quantity.of(said) - quantity.of(more)));
          readings.add(new CornerReading(key, quantity, read, way * lockMm, value.plus(off)));
        }
      }
    }
    return new ReadCorner(given, real, readings);
  }

  List<CoordinateFigure> taped() {
    return taped(SIX);
  }

  List<CoordinateFigure> taped(List<Coordinate> coordinates) {
    return coordinates.stream().map(c -> CoordinateFigure.asGiven(c, given)).toList();
  }

  /** One reading off by so much. */
  List<CornerReading> with(int wrong, double by) {
    List<CornerReading> spoilt = new ArrayList<>(readings);
    CornerReading one = readings.get(wrong);
    spoilt.set(
        wrong,
        new CornerReading(
            one.key(), one.quantity(), one.heightMm(), one.rackMm(), one.value().plus(by)));
    return spoilt;
  }

  /** The same source is the same error wherever it enters. */
  private static final class Errors {
    private final Random random;
    private final Map<Source, Double> drawn = new HashMap<>();

    Errors(Random random) {
      this.random = random;
    }

    Figure tape(double mm, String key, String shared) {
      return read(
          mm,
          Map.of(
              new Source(key, SourceKind.RESOLUTION), SIXTEENTH_MM / 2,
              new Source(key, SourceKind.PLACING), SIXTEENTH_MM / 2,
              new Source(shared, SourceKind.TOOL), 0.5));
    }

    Figure rack(double mm) {
      return read(mm, Map.of(new Source("rack", SourceKind.PLACING), SIXTEENTH_MM));
    }

    Figure finder(double rad, String key, String shared) {
      return read(
          rad,
          Map.of(
              new Source(key, SourceKind.RESOLUTION), Math.toRadians(0.05),
              new Source(key, SourceKind.PLACING), Math.toRadians(0.1),
              new Source(shared, SourceKind.TOOL), Math.toRadians(0.1)));
    }

    private Figure read(double real, Map<Source, Double> halfWidths) {
      double value = real;
      Map<Source, Double> parts = new HashMap<>();
      // In an order that does not hang on hashes, so that a seed is a corner.
      List<Map.Entry<Source, Double>> sources = new ArrayList<>(halfWidths.entrySet());
      sources.sort(Comparator.comparing(source -> source.getKey().toString()));
      for (Map.Entry<Source, Double> source : sources) {
        double half = source.getValue();
        value += half * drawn.computeIfAbsent(source.getKey(), s -> 2 * random.nextDouble() - 1);
        parts.put(source.getKey(), half / Math.sqrt(3));
      }
      return Figure.of(value, parts);
    }
  }
}
