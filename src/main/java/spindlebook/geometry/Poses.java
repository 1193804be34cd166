package spindlebook.geometry;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import spindlebook.definition.Dimension;
import spindlebook.drawing.ChartDrawing.Line;
import spindlebook.drawing.ChartDrawing.Words;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.Rounded;
import spindlebook.entry.Joint;
import spindlebook.fold.Card;
import spindlebook.geometry.CornerSketch.Scale;
import spindlebook.geometry.CornerSketch.View;
import spindlebook.linkage.Linkage;
import spindlebook.linkage.Pose;
import spindlebook.linkage.Vec;
import spindlebook.measured.CornerModel;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Limit;

/**
 * A corner from ahead at heights and locks, every coordinate worked out: what a page shows and what
 * follows the thumb. The tape beside it is at the drawing's own scale, level with the wheel centre.
 *
 * @param racks how the rack stands, in words, each with its poses from droop to bump
 * @param tape its lines, which never move
 */
public record Poses(
    double width, double height, List<Rack> racks, List<Line> tape, List<Words> numerals) {
  private static final double WIDTH = 356;
  private static final double MOST = 330;
  private static final double TAPE = 34;
  private static final int STEPS = 60;

  public record Rack(String word, List<Shown> poses) {}

  /**
   * One pose.
   *
   * @param lines as {@link CornerSketch#lines}
   * @param y where the wheel centre stands on the tape
   * @param says what it comes to there, line by line
   */
  public record Shown(List<Line> lines, String dots, double y, List<String> says) {}

  private record Mark(String name, String mark, double heightMm) {}

  static Poses of(Card card, CornerModel model) {
    return new Drawing(card, model).poses();
  }

  /** How far the rack goes to a lock, mm to the car's left; 0 where nobody said. */
  static double lockMm(Card card) {
    return card.layout().steered()
        ? card.given(Dimension.RACK_TRAVEL).map(g -> g.length().mm()).orElse(0.0)
        : 0;
  }

  /** One of the three drawings that stand for all where nothing follows the thumb. */
  static CornerSketch small(String title, Pose pose, Scale scale) {
    return CornerSketch.of(title, pose.places(), CornerSketch.wheel(pose), scale, false);
  }

  private static final class Drawing {
    private final Card card;
    private final CornerModel model;
    private final ModelRange range;
    private final Lengths lengths;
    private final Scale scale;
    private final List<Mark> marks = new ArrayList<>();

    Drawing(Card card, CornerModel model) {
      this.card = card;
      this.model = model;
      this.range = ModelRange.of(card, model);
      this.lengths = new Lengths(card.details().unit());
      List<Vec> extent = new ArrayList<>();
      for (Pose pose : range.poses(model.linkage(), 4)) {
        extent.addAll(CornerSketch.extent(pose.places(), CornerSketch.wheel(pose), View.FRONT));
      }
      Scale whole = Scale.around(View.FRONT, card.place().left(), extent, WIDTH - TAPE, MOST);
      this.scale =
          new Scale(
              whole.view(),
              whole.left(),
              whole.mm(),
              whole.x() + TAPE,
              whole.y(),
              WIDTH,
              whole.height());
      mark("strap", "stop", range.strapMm());
      mark("bump stop", "stop", range.solidMm());
      mark("ride", "ride", model.joints().positionMm() == null ? Double.NaN : 0);
      limits();
    }

    private void mark(String name, String mark, double heightMm) {
      if (!Double.isNaN(heightMm)) {
        marks.add(new Mark(name, mark, heightMm));
      }
    }

    private void limits() {
      if (model.joints().positionMm() == null) {
        return;
      }
      for (EndFindings end : List.of(CornerTravel.of(card).droop(), CornerTravel.of(card).bump())) {
        for (Limit limit : end.limits()) {
          if (limit.at().positionMm() != null
              && limit.at() instanceof spindlebook.travel.EndLimit.Crosses) {
            String name = new spindlebook.card.TravelWords(card, CornerTravel.of(card)).name(limit);
            mark(name, "limit", limit.at().positionMm().value() - model.positionMm(0));
          }
        }
      }
    }

    private double y(double heightMm) {
      return CornerSketch.tenth(
          scale.y() - scale.mm() * (model.linkage().joints().get(Joint.W).z() + heightMm));
    }

    Poses poses() {
      List<Rack> racks = new ArrayList<>();
      double lock = lockMm(card);
      for (double rack : lock == 0 ? new double[] {0} : new double[] {lock, 0, -lock}) {
        List<Shown> poses = new ArrayList<>();
        for (Pose straight : range.poses(model.linkage(), STEPS)) {
          if (model.linkage().steered(straight, rack) instanceof Pose pose) {
            poses.add(shown(straight, pose));
          }
        }
        if (!poses.isEmpty()) {
          racks.add(
              new Rack(rack == 0 ? "straight" : rack > 0 ? "full left" : "full right", poses));
        }
      }
      return new Poses(WIDTH, CornerSketch.tenth(scale.height()), racks, tape(), numerals());
    }

    private Shown shown(Pose straight, Pose pose) {
      CornerSketch sketch = small("", pose, scale);
      List<String> says = new ArrayList<>();
      says.add(
          "Camber "
              + Rounded.signed(Math.toDegrees(pose.camberRad()), 1)
              + "°, toe "
              + Rounded.signed(Math.toDegrees(pose.toeRad()), 1)
              + "°");
      String shock = Double.isNaN(pose.shockMm()) ? "" : "Shock " + lengths.text(pose.shockMm());
      String strap = Double.isNaN(pose.strapMm()) ? "" : "strap " + lengths.text(pose.strapMm());
      says.add(shock + (shock.isEmpty() || strap.isEmpty() ? "" : ", ") + strap);
      says.add(nearest(straight.heightMm()));
      return new Shown(sketch.lines(), sketch.dots(), y(straight.heightMm()), says);
    }

    /** {@code −7 7/8 in, 1/2 in above the strap}: the nearest thing that ends the travel. */
    private String nearest(double heightMm) {
      String at =
          model.joints().positionMm() == null
              ? lengths.signedText(heightMm)
              : lengths.signedText(heightMm) + " from ride";
      return marks.stream()
          .filter(m -> !m.mark().equals("ride"))
          .min(java.util.Comparator.comparingDouble((Mark m) -> Math.abs(m.heightMm() - heightMm)))
          .map(
              m ->
                  at
                      + ", "
                      + lengths.text(Math.abs(m.heightMm() - heightMm))
                      + (heightMm >= m.heightMm() ? " above " : " below ")
                      + m.name())
          .orElse(at);
    }

    private List<Line> tape() {
      List<Line> lines = new ArrayList<>();
      double low = y(range.lowMm());
      double high = y(range.highMm());
      lines.add(
          new Line(
              "1," + high + " 25," + high + " 25," + low + " 1," + low + " 1," + high, "tape"));
      double tick = card.details().unit().mm() == 25.4 ? 25.4 : 50;
      for (long i = (long) Math.ceil(range.lowMm() / tick); i * tick <= range.highMm(); i++) {
        double y = y(i * tick);
        lines.add(new Line("25," + y + " " + (i % 2 == 0 ? 13 : 18) + "," + y, "tick"));
      }
      for (Mark mark : marks) {
        if (mark.heightMm() >= range.lowMm() && mark.heightMm() <= range.highMm()) {
          double y = y(mark.heightMm());
          lines.add(
              new Line(
                  "0," + y + " " + (mark.mark().equals("ride") ? WIDTH : 32) + "," + y,
                  mark.mark()));
        }
      }
      return lines;
    }

    private List<Words> numerals() {
      double tick = card.details().unit().mm() == 25.4 ? 50.8 : 100;
      int size = card.details().unit().mm() == 25.4 ? 2 : 10;
      List<Words> words = new ArrayList<>();
      double last = Double.POSITIVE_INFINITY;
      for (long i = (long) Math.ceil(range.lowMm() / tick); i * tick <= range.highMm(); i++) {
        double y = y(i * tick);
        if (Math.abs(y - last) > 18 && y - 12 > y(range.highMm()) && y + 12 < y(range.lowMm())) {
          words.add(new Words(3, y + 5, Long.toString(Math.abs(i) * size), "tape-numeral"));
          last = y;
        }
      }
      return words;
    }
  }

  /** The pose that a page is shown with first: nearest to the design, straight ahead. */
  public Shown first() {
    return straight().poses().get(firstAt());
  }

  public Rack straight() {
    return racks.stream().filter(r -> r.word().equals("straight")).findFirst().orElse(racks.get(0));
  }

  public int firstAt() {
    double ride =
        tape.stream()
            .filter(l -> l.mark().equals("ride"))
            .mapToDouble(l -> Double.parseDouble(l.points().split("[ ,]")[1]))
            .findFirst()
            .orElse(height / 2);
    List<Shown> poses = straight().poses();
    int best = 0;
    for (int i = 1; i < poses.size(); i++) {
      if (Math.abs(poses.get(i).y() - ride) < Math.abs(poses.get(best).y() - ride)) {
        best = i;
      }
    }
    return best;
  }

  /** How far each joint with its hardware told swings, over heights and locks. */
  static List<Swing> swings(Card card, CornerModel model) {
    Map<String, java.util.function.ToDoubleFunction<Pose>> joints = new java.util.LinkedHashMap<>();
    joints.put("Lower uniball", Pose::lowerUniballRad);
    joints.put("Upper uniball", Pose::upperUniballRad);
    joints.put("Tie rod, outer end", p -> Math.abs(p.outerRodEndRad()));
    joints.put("Tie rod, inner end", p -> Math.abs(p.innerRodEndRad()));
    ModelRange range = ModelRange.of(card, model);
    double lock = lockMm(card);
    double[] racks = lock == 0 ? new double[] {0} : new double[] {lock, 0, -lock};
    Map<String, Double> heights = new java.util.LinkedHashMap<>();
    heights.put("droop", range.droopMm());
    heights.put("joints' height", 0.0);
    heights.put("bump", range.bumpMm());
    List<Swing> swings = new ArrayList<>();
    joints.forEach(
        (name, of) -> {
          List<SwingRow> rows = new ArrayList<>();
          double[] worst = {-1};
          String[] where = {""};
          heights.forEach(
              (place, height) -> {
                List<String> cells = new ArrayList<>();
                for (double rack : racks) {
                  double at = at(model.linkage(), height, rack, of);
                  cells.add(Double.isNaN(at) ? "—" : Rounded.number(Math.toDegrees(at), 0) + "°");
                  if (at > worst[0]) {
                    worst[0] = at;
                    where[0] =
                        place
                            + (lock == 0
                                ? ""
                                : rack == 0
                                    ? ", straight"
                                    : rack > 0 ? ", full left" : ", full right");
                  }
                }
                rows.add(new SwingRow(place, cells));
              });
          if (worst[0] >= 0) {
            swings.add(
                new Swing(
                    name,
                    Rounded.number(Math.toDegrees(worst[0]), 0) + "°",
                    where[0],
                    lock != 0,
                    rows));
          }
        });
    return swings;
  }

  private static double at(
      Linkage linkage, double height, double rack, java.util.function.ToDoubleFunction<Pose> of) {
    return linkage.at(height, 0) instanceof Pose straight
            && linkage.steered(straight, rack) instanceof Pose pose
        ? of.applyAsDouble(pose)
        : Double.NaN;
  }

  /**
   * @param worst of all places, with where that is
   */
  public record Swing(
      String name, String worst, String where, boolean steered, List<SwingRow> rows) {}

  public record SwingRow(String place, List<String> cells) {}

  /** Hanging, as laid out and at bump: what shows the motion where nothing follows the thumb. */
  static List<CornerSketch> three(Card card, CornerModel model) {
    ModelRange range = ModelRange.of(card, model);
    List<Pose> poses =
        DoubleStream.of(range.droopMm(), 0, range.bumpMm())
            .mapToObj(h -> model.linkage().at(h, 0))
            .flatMap(f -> f instanceof Pose p ? Stream.of(p) : Stream.empty())
            .toList();
    List<Vec> extent = new ArrayList<>();
    poses.forEach(
        p ->
            extent.addAll(
                CornerSketch.extent(new EnumMap<>(p.places()), CornerSketch.wheel(p), View.FRONT)));
    Scale scale = Scale.around(View.FRONT, card.place().left(), extent, 114, 130);
    List<CornerSketch> three = new ArrayList<>();
    for (Pose pose : poses) {
      String title = pose.heightMm() < -1 ? "Droop" : pose.heightMm() > 1 ? "Bump" : "As laid out";
      three.add(small(title, pose, scale));
    }
    return three;
  }
}
