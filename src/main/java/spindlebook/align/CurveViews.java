package spindlebook.align;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import spindlebook.align.CurveView.Pickable;
import spindlebook.align.CurveView.Table;
import spindlebook.align.CurveView.Told;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Steering;
import spindlebook.web.Posted;

/** Lays one thing's readings out as a curve's page: drawn, compared, and as a table. */
final class CurveViews {
  private final Card card;
  private final CarBook book;

  CurveViews(Card card, CarBook book) {
    this.card = card;
    this.book = book;
  }

  CurveView view(String thing, String steering, String against) {
    List<Curved> all = Curved.all(card);
    Curved of = all.stream().filter(c -> c.word().equals(thing)).findFirst().orElse(all.get(0));
    List<Steering> swung =
        List.of(Steering.values()).stream().filter(s -> Posted.word(s).equals(steering)).toList();
    List<Steering> steerings = swung.isEmpty() ? List.of(Steering.values()) : swung;
    CurvePair pair = CurvePair.read(card, of, steerings, Compared.of(card, book, of, against));
    CurveNotes notes = new CurveNotes(pair, steerings);
    List<Told> told = notes.told();
    ReadingTables readings = new ReadingTables(pair, steerings);
    List<Table> tables = readings.tables();
    return new CurveView(
        "/corners/" + card.corner() + "/curves",
        of.words(),
        all.stream().map(c -> new Pickable(c.word(), c.words(), c.equals(of))).toList(),
        steerings(swung),
        Compared.choices(card, book, against),
        told,
        pair.draw(told.stream().map(t -> t.words() + " ").collect(Collectors.joining())),
        notes.notes(),
        readings.head(),
        tables,
        ReadingTables.states(tables));
  }

  private List<Pickable> steerings(List<Steering> swung) {
    List<Pickable> steerings = new ArrayList<>();
    steerings.add(new Pickable("", "every steering", swung.isEmpty()));
    for (Steering s : Steering.values()) {
      if (card.layout().steered() || s == Steering.STRAIGHT) {
        steerings.add(new Pickable(Posted.word(s), CurveRead.words(s), swung.contains(s)));
      }
    }
    return steerings;
  }
}
