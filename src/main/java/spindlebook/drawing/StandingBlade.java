package spindlebook.drawing;

import static spindlebook.drawing.BladeDrawing.box;
import static spindlebook.drawing.BladeDrawing.line;
import static spindlebook.drawing.BladeDrawing.tenth;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import spindlebook.drawing.BladeDrawing.Area;
import spindlebook.drawing.BladeDrawing.Box;
import spindlebook.drawing.BladeDrawing.Label;
import spindlebook.drawing.BladeDrawing.Line;
import spindlebook.drawing.BladeDrawing.Words;
import spindlebook.drawing.TapeBlade.Band;
import spindlebook.drawing.TapeBlade.Mark;

/** The blade upright: tape on the left, labels on the right pushed apart, leaders between. */
final class StandingBlade {
  private static final double WIDTH = 340;
  private static final double TAPE_X = 2;
  private static final double TAPE_WIDTH = 58;
  private static final double TOP = 20;
  private static final double SHORTEST = 430;
  private static final double FIGURE_X = 94;
  private static final double FIGURE = 20;
  private static final double WORDS = 14.5;
  private static final double LINE = 17;
  private static final double TAG_WIDTH = 58;
  private static final double TAG_HEIGHT = 17;
  private static final double SHAPE = 15;

  private final TapeBlade blade;
  private final List<Mark> marks;
  private final double wordsX;
  private final List<List<String>> words = new ArrayList<>();
  private final double[] extents;
  private final double length;
  private final BladeTape tape;

  StandingBlade(TapeBlade blade) {
    this.blade = blade;
    this.marks =
        blade.marks().stream()
            .sorted(Comparator.comparingDouble(Mark::positionMm).reversed())
            .toList();
    double widest = 56;
    for (Mark mark : marks) {
      if (mark.figure() != null) {
        widest = Math.max(widest, BladeDrawing.figureWidth(mark.figure(), FIGURE));
      }
    }
    this.wordsX = FIGURE_X + Math.min(widest, 110) + 8;
    this.extents = new double[marks.size()];
    double sum = 0;
    for (int i = 0; i < extents.length; i++) {
      words.add(wrapped(marks.get(i)));
      extents[i] = extent(marks.get(i), words.get(i).size());
      sum += extents[i];
    }
    this.length = Math.max(SHORTEST, sum - 2 * TOP + 4);
    this.tape = new BladeTape(blade, length);
  }

  BladeDrawing draw() {
    double height = length + 2 * TOP;
    double[] wanted = marks.stream().mapToDouble(mark -> y(mark.positionMm())).toArray();
    double[] centres = Spread.apart(wanted, extents, 2, height - 2);
    List<Line> lines = new ArrayList<>();
    List<Label> labels = new ArrayList<>();
    for (int i = 0; i < centres.length; i++) {
      leader(marks.get(i), wanted[i], centres[i], lines);
      labels.add(label(marks.get(i), words.get(i), centres[i], extents[i]));
    }
    List<Line> ticks = new ArrayList<>();
    List<Words> numerals = new ArrayList<>();
    for (BladeTape.Tick tick : tape.ticks(mm -> y(mm) - TOP, 15, length)) {
      double y = tick.at() + TOP;
      ticks.add(line("", TAPE_X, y, TAPE_X + 22 * tick.share(), y));
      if (!tick.numeral().isEmpty() && tape.free(y, 9, this::y, mark -> true)) {
        numerals.add(new Words(TAPE_X + TAPE_WIDTH - 16, tenth(y + 5.4), tick.numeral(), "mid"));
      }
    }
    double middle = TAPE_X + TAPE_WIDTH / 2;
    numerals.add(new Words(middle, TOP - 6, "bump", "end-word"));
    numerals.add(new Words(middle, tenth(height - 5), "droop", "end-word"));
    return new BladeDrawing(
        blade.id(),
        "blade-standing",
        blade.title(),
        blade.description(),
        WIDTH,
        tenth(height),
        box(TAPE_X, TOP, TAPE_WIDTH, length),
        areas(),
        ticks,
        numerals,
        lines,
        labels);
  }

  private double y(double positionMm) {
    return TOP + length * (1 - blade.share(positionMm));
  }

  private List<String> wrapped(Mark mark) {
    double room = WIDTH - wordsX - 2 - (mark.state() == null ? 0 : SHAPE + 4);
    return TextWidth.wrap(mark.words(), WORDS, mark.kind() == Mark.Kind.RULES, room, 3);
  }

  private static double extent(Mark mark, int lines) {
    double figure = mark.kind() == Mark.Kind.RULES ? 24 + TAG_HEIGHT + 2 : 24;
    return Math.max(figure, lines * LINE) + 7;
  }

  private List<Area> areas() {
    List<Area> areas = new ArrayList<>();
    for (Band band : blade.bands()) {
      double top = y(Math.max(band.fromMm(), band.toMm()));
      double bottom = y(Math.min(band.fromMm(), band.toMm()));
      Box where = box(TAPE_X, top, TAPE_WIDTH, bottom - top);
      areas.add(new Area(where, band.mark(), band.kind() == Band.Kind.HELD_BACK));
    }
    return areas;
  }

  private void leader(Mark mark, double y, double labelY, List<Line> lines) {
    double edge = TAPE_X + TAPE_WIDTH;
    double onto = mark.kind() == Mark.Kind.LIMIT || mark.kind() == Mark.Kind.END ? 30 : TAPE_WIDTH;
    lines.add(line("across " + mark.mark() + tone(mark), edge - onto, y, edge, y));
    String points = "leader " + mark.mark() + tone(mark);
    lines.add(line(points, edge, y, edge + 9, y, FIGURE_X - 12, labelY, FIGURE_X - 4, labelY));
    if (mark.uncertaintyMm() > 0) {
      double half = tape.bracketUnits(mark);
      double low = Math.min(TOP + length, y + half);
      double high = Math.max(TOP, y - half);
      double x = edge + 5;
      lines.add(line("bracket", x - 3, high, x, high, x, low, x - 3, low));
    }
  }

  private static String tone(Mark mark) {
    return mark.state() == null ? "" : " " + mark.state().mark();
  }

  private Label label(Mark mark, List<String> lines, double centre, double extent) {
    boolean rules = mark.kind() == Mark.Kind.RULES;
    double figureY = rules ? centre - 3 : centre + 7;
    double shapeRoom = mark.state() == null ? 0 : SHAPE + 4;
    double firstY = centre - (lines.size() - 1) * LINE / 2 + 5;
    List<Words> words = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      words.add(
          new Words(tenth(wordsX + shapeRoom), tenth(firstY + i * LINE), lines.get(i), "start"));
    }
    return new Label(
        box(FIGURE_X, centre - extent / 2, WIDTH - FIGURE_X, extent),
        mark.mark(),
        "start",
        mark.figure(),
        FIGURE_X,
        tenth(figureY),
        words,
        rules ? box(FIGURE_X, centre + 3, TAG_WIDTH, TAG_HEIGHT) : null,
        mark.state(),
        mark.state() == null ? null : box(wordsX, firstY - 12.5, SHAPE, SHAPE));
  }
}
