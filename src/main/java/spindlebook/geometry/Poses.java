package spindlebook.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.TravelWords;
import spindlebook.drawing.ChartDrawing.Line;
import spindlebook.drawing.ChartDrawing.Words;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.Rounded;
import spindlebook.drawing.State;
import spindlebook.entry.Joint;
import spindlebook.finding.Finding;
import spindlebook.finding.Findings;
import spindlebook.fold.Card;
import spindlebook.geometry.CornerSketch.Scale;
import spindlebook.geometry.CornerSketch.View;
import spindlebook.linkage.Pose;
import spindlebook.linkage.Vec;
import spindlebook.measured.CornerModel;
import spindlebook.measured.JointSwing;
import spindlebook.measured.ModelRange;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.EndFindings;
import spindlebook.travel.EndLimit;
import spindlebook.travel.Limit;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;

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

  static Poses of(Card card, CornerModel model, List<JointSwing> swings) {
    return new Drawing(card, model, swings).poses();
  }

  private static final class Drawing {
    private final Card card;
    private final CornerModel model;
    private final ModelRange range;
    private final Lengths lengths;
    private final Scale scale;
    private final List<Mark> marks = new ArrayList<>();

    Drawing(Card card, CornerModel model, List<JointSwing> swings) {
      this.card = card;
      this.model = model;
      this.range = ModelRange.of(card, model);
      this.lengths = new Lengths(card.details().unit());
      Scale whole = around(card, range.poses(model.linkage(), 4), WIDTH - TAPE, MOST);
      this.scale =
          new Scale(
              whole.view(),
              whole.left(),
              whole.mm(),
              whole.x() + TAPE,
              whole.y(),
              WIDTH,
              whole.height());
      mark("strap", "stop", range.strapMm() == null ? Double.NaN : range.droopMm());
      mark("bump stop", "stop", range.solidMm() == null ? Double.NaN : range.bumpMm());
      mark("ride", "ride", range.rideMm());
      limits();
      for (JointSwing swing : swings) {
        if (swing.meetsMm() != null) {
          mark(
              "where the " + swing.joint().swings() + " is at its limit",
              "limit",
              swing.meetsMm().value());
        }
      }
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
      TravelFindings travel = CornerTravel.of(card);
      for (EndFindings end : List.of(travel.droop(), travel.bump())) {
        for (Limit limit : end.limits()) {
          if (limit.at().positionMm() != null && limit.at() instanceof EndLimit.Crosses) {
            String name = new TravelWords(card, travel).name(limit);
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
      for (double rack : range.racksMm()) {
        List<Shown> poses = new ArrayList<>();
        for (Pose straight : range.poses(model.linkage(), STEPS)) {
          if (model.linkage().steered(straight, rack) instanceof Pose pose) {
            poses.add(shown(straight, pose));
          }
        }
        if (!poses.isEmpty()) {
          racks.add(new Rack(AgreeView.lock(range, rack), poses));
        }
      }
      return new Poses(WIDTH, CornerSketch.tenth(scale.height()), racks, tape(), numerals());
    }

    private Shown shown(Pose straight, Pose pose) {
      CornerSketch sketch =
          CornerSketch.of("", pose.places(), CornerSketch.wheel(pose), scale, false);
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
          Double.isNaN(range.rideMm())
              ? lengths.signedText(heightMm)
              : lengths.signedText(heightMm - range.rideMm()) + " from ride";
      return marks.stream()
          .filter(m -> !m.mark().equals("ride"))
          .min(Comparator.comparingDouble((Mark m) -> Math.abs(m.heightMm() - heightMm)))
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
          last = y;
          if (marks.stream()
              .allMatch(m -> m.mark().equals("ride") || Math.abs(y(m.heightMm()) - y) >= 10)) {
            words.add(new Words(3, y + 5, Long.toString(Math.abs(i) * size), "tape-numeral"));
          }
        }
      }
      return words;
    }
  }

  private static Scale around(Card card, List<Pose> poses, double width, double most) {
    List<Vec> extent =
        poses.stream()
            .flatMap(
                p -> CornerSketch.extent(p.places(), CornerSketch.wheel(p), View.FRONT).stream())
            .toList();
    return Scale.around(View.FRONT, card.place().left(), extent, width, most);
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

  /** How far each rod end and uniball swings, over heights and locks, against what it allows. */
  static List<Swing> swings(Card card, ModelRange range, List<JointSwing> swings) {
    List<String> places = List.of("droop", "as laid out", "bump");
    return swings.stream()
        .map(
            swing -> {
              List<SwingRow> rows = new ArrayList<>();
              for (int i = 0; i < places.size(); i++) {
                rows.add(
                    new SwingRow(
                        places.get(i),
                        swing.atPlaces().get(i).stream()
                            .map(
                                rad ->
                                    rad.isNaN()
                                        ? "—"
                                        : Rounded.number(Math.toDegrees(rad), 0) + "°")
                            .toList()));
              }
              Finding finding = Findings.of(swing);
              return new Swing(
                  Capital.of(swing.joint().swings()),
                  Rounded.plainDegrees(swing.worst()).words(),
                  where(card, range, swing),
                  finding.verdict() == null
                      ? null
                      : spindlebook.card.Shown.state(finding.verdict()),
                  finding.word(),
                  swing.allows() == null ? "" : "allows " + swing.allows().words(),
                  met(card, range, swing.meetsMm()),
                  LinkageView.href(card, swing.joint()),
                  rows);
            })
        .toList();
  }

  /** {@code Met on the way there at +4 1/2 in ± 3/8 from ride.}; empty where it is not met. */
  private static String met(Card card, ModelRange range, Figure meetsMm) {
    if (meetsMm == null) {
      return "";
    }
    boolean ride = !Double.isNaN(range.rideMm());
    Figure from = meetsMm.plus(ride ? -range.rideMm() : 0);
    return "Met on the way there at "
        + new Lengths(card.details().unit()).signedFigure(from).words()
        + (ride ? " from ride." : " from where they were laid out.");
  }

  private static String where(Card card, ModelRange range, JointSwing swing) {
    double height = swing.heightMm();
    double left = range.leftMm().value();
    double share = left == 0 ? 0 : swing.rackMm() / left;
    String side = share > 0 ? ", left" : ", right";
    double from = Double.isNaN(range.rideMm()) ? 0 : range.rideMm();
    String at =
        new Lengths(card.details().unit()).signedText(height - from)
            + (from == 0 ? " from where they were laid out" : " from ride");
    return (height == range.droopMm()
            ? "in droop"
            : height == range.bumpMm() ? "in bump" : "at " + at)
        + (left == 0 ? "" : share == 0 ? ", straight" : side)
        + (share == 0 ? "" : Math.abs(share) == 1 ? " lock" : ", part lock");
  }

  /**
   * @param worst wherever that is, which {@code where} says
   * @param state null where nobody said what its hardware allows
   * @param met where it comes to that; empty where it does not
   * @param joint where that is said
   */
  public record Swing(
      String name,
      String worst,
      String where,
      State state,
      String word,
      String allows,
      String met,
      String joint,
      List<SwingRow> rows) {}

  public record SwingRow(String place, List<String> cells) {}

  /** Hanging, as laid out and at bump: what shows the motion where nothing follows the thumb. */
  static List<CornerSketch> three(Card card, CornerModel model) {
    ModelRange range = ModelRange.of(card, model);
    List<Pose> poses =
        DoubleStream.of(range.droopMm(), 0, range.bumpMm())
            .mapToObj(h -> model.linkage().at(h, 0))
            .flatMap(f -> f instanceof Pose p ? Stream.of(p) : Stream.empty())
            .toList();
    Scale scale = around(card, poses, 114, 130);
    List<CornerSketch> three = new ArrayList<>();
    for (Pose pose : poses) {
      String title = pose.heightMm() < -1 ? "Droop" : pose.heightMm() > 1 ? "Bump" : "As laid out";
      three.add(CornerSketch.of(title, pose.places(), CornerSketch.wheel(pose), scale, false));
    }
    return three;
  }
}
