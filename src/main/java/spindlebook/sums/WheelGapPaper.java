package spindlebook.sums;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.drawing.Lengths;
import spindlebook.page.Asked;
import spindlebook.page.Posted;
import spindlebook.parts.WheelGap;
import spindlebook.sums.OnPaperView.Block;
import spindlebook.sums.OnPaperView.Line;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.GuardBand;
import spindlebook.uncertainty.Outcome;
import spindlebook.units.TypedLength;

/** Gaps measured around the wheel that is on, and what becomes of them. */
final class WheelGapPaper {
  private static final double MOST_GAP_MM = 40 * 25.4;

  private final Lengths lengths;
  private final Map<WheelGap, Figure> measured = new EnumMap<>(WheelGap.class);

  WheelGapPaper(Asked a, TypedFigures good) {
    this.lengths = new Lengths(a.unit());
    for (WheelGap gap : WheelGap.values()) {
      String name = Posted.word(gap);
      TypedLength mm =
          a.length(name, Capital.of(gap.words()))
              .hint(Capital.of(gap.measured()) + ".")
              .check(
                  l -> l.mm() <= MOST_GAP_MM,
                  "That is no gap at a wheel: type 40 in (1 m) or less.")
              .read();
      if (mm != null) {
        measured.put(gap, good.mm(name, mm));
      }
    }
  }

  void add(List<Block> blocks, List<String> notes, WheelTried tried, boolean spokesTyped) {
    if (measured.isEmpty()) {
      notes.add("Type gaps you measured around the present wheel to see what becomes of them.");
      return;
    }
    List<Line> lines = new ArrayList<>();
    measured.forEach((gap, was) -> lines.add(line(gap, was, tried, spokesTyped)));
    blocks.add(new Block("Gaps as they will be, wheel straight", lines));
    notes.add("At lock the tyre's gaps change by more or less than this: read them once fitted.");
  }

  private Line line(WheelGap gap, Figure was, WheelTried tried, boolean spokesTyped) {
    Figure mm = tried.gap(gap, was);
    Outcome apart = GuardBand.apart(mm);
    return new Line(
        Capital.of(gap.words()),
        lengths.figure(mm),
        "was " + lengths.text(was.value()) + said(mm, apart) + assumed(gap, spokesTyped),
        apart == Outcome.CLEAR ? null : Shown.state(apart));
  }

  private static String said(Figure mm, Outcome apart) {
    return switch (apart) {
      case CLEAR -> "";
      case SHORT -> "; it touches";
      case CANT_TELL, NEEDS ->
          mm.value() <= 0 ? "; it touches, unless the ± helps" : "; within its ± it may touch";
    };
  }

  private static String assumed(WheelGap gap, boolean spokesTyped) {
    return switch (gap) {
      case BARREL -> "; a barrel as thick and a drop centre as placed are assumed";
      case SPOKES -> spokesTyped ? "" : "; spokes as far out on both wheels are assumed";
      default -> "";
    };
  }
}
