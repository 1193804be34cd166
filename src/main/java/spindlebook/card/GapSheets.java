package spindlebook.card;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import spindlebook.definition.Keep;
import spindlebook.definition.WatchPoint;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.GapSheet;
import spindlebook.drawing.State;
import spindlebook.entry.GapResult;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Standing;
import spindlebook.units.AngleFormat;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeFormat;

/** The gaps of a corner by height and steering. */
public final class GapSheets {
  /** Of unknown position before all. */
  static final Comparator<SeenHeight> HIGHEST_FIRST =
      Comparator.comparingDouble(
          h -> h.positionMm() == null ? Double.MAX_VALUE : -h.positionMm().value());

  private static final int SIXTY_FOURTHS = 64;
  private static final List<State> WORST_FIRST =
      List.of(
          State.SHORT, State.CANT_TELL, State.IN_DOUBT, State.STALE, State.PUT_BACK, State.CLEAR);

  private GapSheets() {}

  static List<CornerView.GapBlock> of(Card card, TravelWords words) {
    List<Steering> steerings =
        card.layout().steered()
            ? List.of(Steering.FULL_LEFT, Steering.STRAIGHT, Steering.FULL_RIGHT)
            : List.of(Steering.STRAIGHT);
    List<CornerView.GapBlock> blocks = new ArrayList<>();
    List<SeenHeight> heights = card.heights().stream().sorted(HIGHEST_FIRST).toList();
    for (SeenHeight height : heights) {
      List<GapSheet.Row> rows = new ArrayList<>();
      for (WatchPoint point : card.watchPoints()) {
        List<GapSheet.Cell> cells =
            steerings.stream().map(s -> cell(card, words, height, point, s)).toList();
        if (cells.stream().anyMatch(c -> c.state() != State.NOT_MEASURED)) {
          rows.add(new GapSheet.Row(point.name(), rule(words, point.keep()), cells));
        }
      }
      if (!rows.isEmpty()) {
        blocks.add(block(words, height, steerings, rows));
      }
    }
    return blocks;
  }

  private static CornerView.GapBlock block(
      TravelWords words, SeenHeight height, List<Steering> steerings, List<GapSheet.Row> rows) {
    FigureText position =
        height.positionMm() == null
            ? null
            : FigureText.of(
                words.lengths().signed(words.zero().from(height.positionMm().value())),
                words.lengths().unit().word());
    List<CornerView.Count> counts = new ArrayList<>();
    for (State state : WORST_FIRST) {
      long of =
          rows.stream().flatMap(r -> r.cells().stream()).filter(c -> c.state() == state).count();
      if (of > 0) {
        counts.add(new CornerView.Count(state, (int) of));
      }
    }
    String name = Capital.of(height.words());
    return new CornerView.GapBlock(
        name,
        position,
        counts,
        counts.stream().anyMatch(c -> c.state() == State.SHORT),
        new GapSheet(
            "",
            steerings.stream().map(GapSheets::head).toList(),
            List.of(new GapSheet.Height(name, null, rows))));
  }

  private static String head(Steering steering) {
    return switch (steering) {
      case FULL_LEFT -> "left";
      case FULL_RIGHT -> "right";
      default -> steering.words();
    };
  }

  public static String rule(TravelWords words, Keep keep) {
    List<String> parts = new ArrayList<>();
    if (keep.least() != null) {
      parts.add("at least " + words.lengths().text(keep.least().mm()));
    }
    if (keep.most() != null) {
      parts.add("at most " + words.lengths().text(keep.most().mm()));
    }
    if (keep.mostAngle() != null) {
      parts.add("at most " + AngleFormat.degrees(keep.mostAngle().rad(), 1));
    }
    return String.join(", ", parts);
  }

  /** To the 64th: a drill tells 15/64 from the 1/4 that must be kept. */
  static String gap(TravelWords words, double mm) {
    return words.lengths().unit() == LengthUnit.INCH
        ? TapeFormat.inches(mm, SIXTY_FOURTHS)
        : words.lengths().bare(mm);
  }

  private static GapSheet.Cell cell(
      Card card, TravelWords words, SeenHeight height, WatchPoint point, Steering steering) {
    SeenReading last = null;
    for (SeenReading r : card.readingsAt(height.key())) {
      if (r.of(point.point())
          && r.reading().steering() == steering
          && r.stands() != Standing.REPLACED) {
        last = r;
      }
    }
    if (last == null) {
      return GapSheet.Cell.word(State.NOT_MEASURED, "");
    }
    State state = Shown.state(last);
    if (last.reading().result() == GapResult.NUMBER && last.value() != null) {
      String text =
          last.reading().angle() != null
              ? AngleFormat.degrees(last.value().value(), 1)
              : gap(words, last.value().value());
      return GapSheet.Cell.of(state, text);
    }
    if (last.reading().result() == GapResult.GO_NO_GO) {
      return GapSheet.Cell.word(state, last.reading().typed());
    }
    return GapSheet.Cell.word(state, last.reading().result().words());
  }
}
