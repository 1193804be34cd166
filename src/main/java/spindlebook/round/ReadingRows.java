package spindlebook.round;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Standing;
import spindlebook.page.Field;
import spindlebook.page.FormKey;
import spindlebook.page.Posted;
import spindlebook.page.ReadingRow;
import spindlebook.words.EntryWords;

/**
 * What can be read at a height and steering, each with its rule, the last time and what is said.
 */
final class ReadingRows {
  private ReadingRows() {}

  /**
   * @param sentBack the row that is wrong; empty when none was sent
   */
  static List<HeightView.Row> of(
      Sitting at,
      SeenHeight height,
      Steering steering,
      List<Slot> slots,
      Posted posted,
      String sentBack) {
    List<HeightView.Row> rows = new ArrayList<>();
    boolean focused = !sentBack.isEmpty();
    long after = at.card().lastChange();
    for (Slot slot : slots) {
      Optional<SeenHeight> seen = at.end(slot).height(height.key());
      if (seen.isEmpty()) {
        continue;
      }
      List<SeenReading> here = at.readings(height.key(), steering, slot);
      boolean wrong = slot.row().equals(sentBack);
      boolean focus = wrong || (!focused && here.isEmpty());
      focused |= focus;
      FormKey key =
          wrong ? posted.formKey().orElseGet(() -> FormKey.fresh(after)) : FormKey.fresh(after);
      Field field = slot.field("v-" + slot.row(), at.unit());
      field = focus ? field.focused() : field;
      rows.add(
          new HeightView.Row(
              slot.row(),
              key.key(),
              key.after(),
              new ReadingRow(
                  wrong ? posted.fill(field) : field,
                  slot.rule(),
                  at.lastTime(seen.get().name(), height.pairing(), steering, slot, height.key()),
                  null),
              here.stream().map(r -> said("", r, r.stands())).toList()));
    }
    return rows;
  }

  /** What was read here of a place that this corner does not watch, or no longer does. */
  static List<HeightView.Said> others(Sitting at, SeenHeight height, Steering steering) {
    return Stream.concat(Stream.of(at.card()), at.otherEnd().stream())
        .map((Card c) -> c.readingsAt(height.key()))
        .flatMap(List::stream)
        .filter(r -> r.reading().steering() == steering && r.notWatched())
        .map(r -> said(Capital.of(r.what()) + ": ", r, Standing.LIVE))
        .toList();
  }

  private static HeightView.Said said(String what, SeenReading r, Standing stands) {
    String words = what + EntryWords.value(r.reading());
    return new HeightView.Said(
        stands == Standing.LIVE ? words : words + ", " + stands.words(),
        Shown.state(r),
        "/entries/" + r.key());
  }
}
