package spindlebook.align;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import spindlebook.align.OnPaperView.Block;
import spindlebook.align.OnPaperView.Line;
import spindlebook.alignment.WheelGap;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.GuardBand;
import spindlebook.uncertainty.Outcome;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedLength;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Lengths;
import spindlebook.web.Posted;

/** Gaps measured around the wheel that is on, and what becomes of them. */
final class WheelGapPaper {
  private static final double MOST_GAP_MM = 40 * 25.4;

  private final Posted typed;
  private final LengthUnit unit;
  private final Lengths lengths;
  private final TypedFigures good;
  private final Map<WheelGap, Figure> measured = new EnumMap<>(WheelGap.class);

  WheelGapPaper(Posted typed, LengthUnit unit, TypedFigures good) {
    this.typed = typed;
    this.unit = unit;
    this.lengths = new Lengths(unit);
    this.good = good;
  }

  boolean asked() {
    return Stream.of(WheelGap.values()).map(Posted::word).anyMatch(typed::has);
  }

  /** Reads the fields; what is wrong is told of in them. */
  void read() {
    for (WheelGap gap : WheelGap.values()) {
      String name = Posted.word(gap);
      TypedLength mm = typed.lengthFromZero(name, unit);
      if (mm != null && mm.mm() > MOST_GAP_MM) {
        typed.wrong(name, "That is no gap at a wheel: type 40 in (1 m) or less.");
      } else if (mm != null) {
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

  FormPart part() {
    return new FormPart.More(
        "Gaps measured around the wheel that is on",
        asked(),
        Stream.of(WheelGap.values()).map(this::field).toList());
  }

  private FormPart field(WheelGap gap) {
    Field field = Field.of(Posted.word(gap), Capital.of(gap.words()));
    return new FormPart.Typed(
        typed.fill(field.hint(Capital.of(gap.measured()) + ".").unit(unit.word())));
  }
}
