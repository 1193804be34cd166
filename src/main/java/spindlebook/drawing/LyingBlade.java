package spindlebook.drawing;

import static spindlebook.drawing.BladeDrawing.box;
import static spindlebook.drawing.BladeDrawing.line;
import static spindlebook.drawing.BladeDrawing.tenth;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import spindlebook.drawing.BladeDrawing.Area;
import spindlebook.drawing.BladeDrawing.Label;
import spindlebook.drawing.BladeDrawing.Line;
import spindlebook.drawing.BladeDrawing.Words;
import spindlebook.drawing.TapeBlade.Band;
import spindlebook.drawing.TapeBlade.Mark;

/**
 * The blade along the page: ride above it, the other marks as flags below, droop flags left, bump
 * flags right.
 */
final class LyingBlade {
  private static final double WIDTH = 340;
  private static final double INSET = 1.5;
  private static final double TOP = 17;
  private static final double TAPE_HEIGHT = 36;
  private static final double BOTTOM = TOP + TAPE_HEIGHT;
  private static final double FIRST_ROW = BOTTOM + 9;
  private static final double FIGURE = 16.5;
  private static final double WORDS = 14;
  private static final double LINE = 16.5;
  private static final double TAG_WIDTH = 58;
  private static final double SHAPE = 14;
  private static final double POLE_GAP = 8;
  private static final double TEXT_INSET = 5;

  private final TapeBlade blade;
  private final Optional<Mark> ride;
  private final double split;
  private final double length = WIDTH - 2 * INSET;
  private final BladeTape tape;
  private final List<Line> lines = new ArrayList<>();
  private final List<Label> labels = new ArrayList<>();

  LyingBlade(TapeBlade blade) {
    this.blade = blade;
    this.ride = blade.marks().stream().filter(mark -> mark.kind() == Mark.Kind.RIDE).findFirst();
    this.split = Math.max(WIDTH * 0.4, Math.min(WIDTH * 0.6, x(0)));
    this.tape = new BladeTape(blade, length);
  }

  BladeDrawing draw() {
    List<Mark> flagged = new ArrayList<>(blade.marks());
    ride.ifPresent(flagged::remove);
    flagged.sort(Comparator.comparingDouble(Mark::positionMm));
    List<Mark> left = flagged.stream().filter(mark -> x(mark.positionMm()) < split).toList();
    List<Mark> right = new ArrayList<>(flagged.subList(left.size(), flagged.size()));
    Collections.reverse(right);
    double height = Math.max(flags(left, split - 4, false), flags(right, WIDTH - split - 4, true));
    List<Line> ticks = new ArrayList<>();
    List<Words> numerals = new ArrayList<>();
    for (BladeTape.Tick tick : tape.ticks(mm -> x(mm) - INSET, 15, length)) {
      double x = tick.at() + INSET;
      ticks.add(line("", x, BOTTOM, x, BOTTOM - 15 * tick.share()));
      if (!tick.numeral().isEmpty() && tape.free(x, 10, this::x, mark -> true)) {
        numerals.add(new Words(tenth(x), TOP + 15, tick.numeral(), "mid"));
      }
    }
    numerals.add(new Words(INSET, TOP - 5, "droop", "end-word at-start"));
    numerals.add(new Words(WIDTH - INSET, TOP - 5, "bump", "end-word at-end"));
    ride.ifPresent(
        mark -> {
          double x = x(mark.positionMm());
          lines.add(line("across m-ride", x, TOP - 3, x, BOTTOM));
          double middle = Math.max(60, Math.min(WIDTH - 60, x));
          numerals.add(new Words(tenth(middle), TOP - 5, "ride", "end-word at-ride"));
        });
    return new BladeDrawing(
        blade.id(),
        "blade-lying",
        blade.title(),
        blade.description(),
        WIDTH,
        tenth(height),
        box(INSET, TOP, length, TAPE_HEIGHT),
        areas(),
        ticks,
        numerals,
        lines,
        labels);
  }

  private double x(double positionMm) {
    return INSET + length * blade.share(positionMm);
  }

  private List<Area> areas() {
    List<Area> areas = new ArrayList<>();
    for (Band band : blade.bands()) {
      double from = x(Math.min(band.fromMm(), band.toMm()));
      double to = x(Math.max(band.fromMm(), band.toMm()));
      areas.add(
          new Area(
              box(from, TOP, to - from, TAPE_HEIGHT),
              band.mark(),
              band.kind() == Band.Kind.HELD_BACK));
    }
    return areas;
  }

  /** Draws one side's flags, outermost first, and says how far down they reach. */
  private double flags(List<Mark> marks, double room, boolean mirrored) {
    int n = marks.size();
    double[] wanted = new double[n];
    double[] widths = new double[n];
    List<List<String>> words = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      Mark mark = marks.get(i);
      double x = x(mark.positionMm());
      wanted[i] = mirrored ? WIDTH - x : x;
      words.add(TextWidth.wrap(mark.words(), WORDS, bold(mark), room - 2 * POLE_GAP, 2));
      widths[i] = Math.min(room, width(mark, words.get(i)));
    }
    Flags.Set set = Flags.plant(wanted, widths, room, POLE_GAP);
    double[] rowTop = rowTops(marks, words, set.row());
    double lowest = BOTTOM + 2;
    for (int i = 0; i < n; i++) {
      double pole = mirrored ? WIDTH - set.pole()[i] : set.pole()[i];
      double top = rowTop[set.row()[i]];
      double height = height(marks.get(i), words.get(i).size());
      pole(marks.get(i), pole, top + height - 4);
      labels.add(label(marks.get(i), words.get(i), pole, top, widths[i], height, mirrored));
      lowest = Math.max(lowest, top + height);
    }
    return lowest;
  }

  private static boolean bold(Mark mark) {
    return mark.kind() == Mark.Kind.RULES;
  }

  private static double lead(Mark mark) {
    return (bold(mark) ? TAG_WIDTH + 5 : 0) + (mark.state() == null ? 0 : SHAPE + 4);
  }

  private static boolean figureLine(Mark mark) {
    return mark.figure() != null || lead(mark) > 0;
  }

  private static double width(Mark mark, List<String> words) {
    double figure = mark.figure() == null ? 0 : BladeDrawing.figureWidth(mark.figure(), FIGURE);
    double widest = lead(mark) + figure;
    for (String line : words) {
      widest = Math.max(widest, TextWidth.of(line, WORDS, bold(mark)));
    }
    return widest + TEXT_INSET;
  }

  private static double height(Mark mark, int lines) {
    return (figureLine(mark) ? 20 : 0) + lines * LINE + 6;
  }

  private static double[] rowTops(List<Mark> marks, List<List<String>> words, int[] row) {
    int rows = 0;
    for (int r : row) {
      rows = Math.max(rows, r + 1);
    }
    double[] tall = new double[rows];
    for (int i = 0; i < row.length; i++) {
      tall[row[i]] = Math.max(tall[row[i]], height(marks.get(i), words.get(i).size()));
    }
    double[] top = new double[rows];
    double y = FIRST_ROW;
    for (int r = 0; r < rows; r++) {
      top[r] = y;
      y += tall[r];
    }
    return top;
  }

  private void pole(Mark mark, double pole, double foot) {
    double x = x(mark.positionMm());
    String tone = mark.mark() + (mark.state() == null ? "" : " " + mark.state().mark());
    lines.add(line("across " + tone, x, TOP, x, BOTTOM));
    lines.add(line("leader " + tone, x, BOTTOM, pole, FIRST_ROW - 1, pole, foot));
    if (mark.uncertaintyMm() > 0) {
      double half = tape.bracketUnits(mark);
      double from = Math.max(INSET, x - half);
      double to = Math.min(WIDTH - INSET, x + half);
      lines.add(line("bracket", from, BOTTOM, from, BOTTOM + 4, to, BOTTOM + 4, to, BOTTOM));
    }
  }

  private static Label label(
      Mark mark,
      List<String> lines,
      double pole,
      double top,
      double width,
      double height,
      boolean mirrored) {
    double way = mirrored ? -1 : 1;
    double edge = pole + way * TEXT_INSET;
    String anchor = mirrored ? "end" : "start";
    double tagX = mirrored ? edge - TAG_WIDTH : edge;
    double shapeAt = edge + way * (bold(mark) ? TAG_WIDTH + 5 : 0);
    double firstY = top + (figureLine(mark) ? 20 : 0) + 13;
    List<Words> words = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      words.add(new Words(tenth(edge), tenth(firstY + i * LINE), lines.get(i), anchor));
    }
    return new Label(
        box(mirrored ? pole - width : pole, top, width, height),
        mark.mark(),
        anchor,
        mark.figure(),
        tenth(edge + way * lead(mark)),
        tenth(top + 15),
        words,
        bold(mark) ? box(tagX, top + 1, TAG_WIDTH, 17) : null,
        mark.state(),
        mark.state() == null
            ? null
            : box(mirrored ? shapeAt - SHAPE : shapeAt, top + 3, SHAPE, SHAPE));
  }
}
