package spindlebook.round;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.card.Shown;
import spindlebook.corner.Card;
import spindlebook.corner.EntryWords;
import spindlebook.corner.ReadingText;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenReading;
import spindlebook.corner.Standing;
import spindlebook.corner.Steering;
import spindlebook.web.Field;
import spindlebook.web.FormKey;
import spindlebook.web.Pick;
import spindlebook.web.Posted;
import spindlebook.web.ReadingRow;

/**
 * What can be read at a height and steering, each with its rule, the last time and what is said.
 */
final class ReadingRows {
  private ReadingRows() {}

  static List<HeightView.Row> of(
      Card card,
      Optional<Card> mirror,
      SeenHeight height,
      Steering steering,
      List<Asked> asked,
      Posted posted,
      String wrongRow,
      FormKey wrongKey) {
    List<HeightView.Row> rows = new ArrayList<>();
    boolean focused = !wrongRow.isEmpty();
    for (Asked a : asked) {
      List<SeenReading> here =
          card.readingsAt(height.key()).stream()
              .filter(r -> r.reading().steering() == steering)
              .filter(r -> a.point() == null ? r.of(a.quantity()) : r.of(a.point().point()))
              .toList();
      boolean wrong = a.row().equals(wrongRow);
      boolean focus = wrong || (!focused && here.isEmpty());
      focused |= focus;
      FormKey key = wrong ? wrongKey : FormKey.fresh(card.lastChange());
      rows.add(
          new HeightView.Row(
              a.row(),
              key.key(),
              key.after(),
              new ReadingRow(
                  field(a, height, posted, wrong, focus),
                  rule(a),
                  beside(lastTime(card, height, steering, a), mirror(mirror, height, steering, a)),
                  null),
              here.stream().map(r -> said(r)).toList()));
    }
    return rows;
  }

  /** What was read here of a place that this corner does not watch, or no longer does. */
  static List<HeightView.Said> others(Card card, SeenHeight height, Steering steering) {
    return card.readingsAt(height.key()).stream()
        .filter(r -> r.reading().steering() == steering && r.notWatched())
        .map(
            r ->
                new HeightView.Said(
                    Capital.of(r.what()) + ": " + EntryWords.value(r.reading()),
                    Shown.state(r),
                    "/entries/" + r.key()))
        .toList();
  }

  private static HeightView.Said said(SeenReading r) {
    return new HeightView.Said(
        EntryWords.value(r.reading())
            + (r.stands() == Standing.LIVE ? "" : ", " + r.stands().words()),
        Shown.state(r),
        "/entries/" + r.key());
  }

  private static Field field(
      Asked a, SeenHeight height, Posted posted, boolean wrong, boolean focus) {
    boolean angle = ReadingText.angle(a.quantity(), a.point());
    Field field =
        Field.of("v-" + a.row(), Capital.of(a.words()))
            .unit(angle ? "°" : height.round().round().unit().word());
    if (focus) {
      field = field.focused();
    }
    if (a.gap() && !angle) {
      field =
          field.picks(
              new Pick(field.name(), "well clear", "well clear"),
              new Pick(field.name(), "touches", "touches"),
              new Pick(field.name(), "binds", "binds"),
              new Pick(field.name(), "not looked", "not looked"));
    }
    return wrong ? posted.fill(field) : field;
  }

  static String rule(Asked a) {
    return a.point() == null ? "" : "keep " + EntryWords.keep(a.point().keep());
  }

  private static String lastTime(Card card, SeenHeight height, Steering steering, Asked a) {
    return card.last(
            height.name(),
            height.pairing(),
            steering,
            a.quantity(),
            a.point() == null ? null : a.point().point())
        .filter(r -> !r.height().key().equals(height.key()))
        .map(
            r ->
                "last time "
                    + EntryWords.value(r.reading())
                    + " · "
                    + Days.day(r.at())
                    + (r.stands() == Standing.LIVE ? "" : " · " + r.stands().words()))
        .orElse("");
  }

  /** The other side at the same height, inner lock for inner lock. */
  private static String mirror(
      Optional<Card> mirror, SeenHeight height, Steering steering, Asked a) {
    String point = a.point() == null ? null : a.point().point();
    return mirror
        .flatMap(
            m ->
                m.last(height.name(), height.pairing(), steering.mirrored(), a.quantity(), point)
                    .map(
                        r ->
                            m.place().words()
                                + " "
                                + EntryWords.value(r.reading())
                                + (r.reading().steering().steered()
                                    ? " at " + r.reading().steering().words()
                                    : "")
                                + (r.stands() == Standing.LIVE ? "" : " · " + r.stands().words())))
        .orElse("");
  }

  static String beside(String own, String other) {
    return own + (own.isEmpty() || other.isEmpty() ? "" : " · ") + other;
  }
}
