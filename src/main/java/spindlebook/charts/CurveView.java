package spindlebook.charts;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import spindlebook.drawing.ChartDrawing;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.State;
import spindlebook.entry.Steering;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.page.Link;
import spindlebook.page.Posted;

/**
 * A curve's page.
 *
 * @param drawn what it is a curve of
 * @param head what it comes to; null where nothing is judged
 * @param steer of toe, laid beside nothing; else null
 * @param told what must be known to read the chart at all, above it
 * @param chart null with nothing to draw
 * @param notes sentences under it
 * @param reading what a table's last column counts and what a + of it means
 * @param states what the marks in the tables mean, those that are there
 */
public record CurveView(
    String action,
    String drawn,
    CurveHead head,
    BumpSteerView steer,
    List<Pickable> things,
    List<Pickable> steerings,
    List<Pickable> against,
    List<Told> told,
    ChartDrawing chart,
    List<String> notes,
    String reading,
    List<Table> tables,
    List<StateSaid> states) {

  /** One thing's readings: drawn, compared, and as a table. */
  static CurveView of(
      Card card, CarBook book, String thing, String steering, String against, String middle) {
    List<Curved> all = Curved.all(card);
    Curved curved = all.stream().filter(c -> c.word().equals(thing)).findFirst().orElse(all.get(0));
    List<Steering> swung =
        List.of(Steering.values()).stream().filter(s -> Posted.word(s).equals(steering)).toList();
    List<Steering> steerings = swung.isEmpty() ? List.of(Steering.values()) : swung;
    CurvePair pair =
        CurvePair.read(card, curved, steerings, Compared.of(card, book, curved, against));
    BumpSteerView steer =
        curved.equals(Curved.TOE) && pair.other() == null
            ? new BumpSteerView(pair.chart(), card, book, middle)
            : null;
    CurveNotes notes = new CurveNotes(pair, steerings);
    List<Told> told = notes.told();
    ReadingTables readings = new ReadingTables(pair, steerings);
    List<Table> tables = readings.tables();
    return new CurveView(
        "/corners/" + card.corner() + "/curves",
        curved.words(),
        CurveHead.of(pair, steer).orElse(null),
        steer,
        all.stream().map(c -> new Pickable(c.word(), c.words(), c.equals(curved))).toList(),
        steerings(card, swung),
        Compared.choices(card, book, against),
        told,
        pair.draw(told.stream().map(t -> t.words() + " ").collect(Collectors.joining()), steer),
        notes.notes(),
        readings.head(),
        tables,
        ReadingTables.states(tables));
  }

  /** Whether another curve is laid under it. */
  boolean compared() {
    return !against.get(0).chosen();
  }

  /** The same page of another thing. */
  public String href(Pickable thing) {
    return action + "?of=" + thing.value();
  }

  /** What is drawn. */
  public String thing() {
    return things.stream().filter(Pickable::chosen).findFirst().orElseThrow().value();
  }

  public int readings() {
    return tables.stream().flatMap(t -> t.groups().stream()).mapToInt(g -> g.rows().size()).sum();
  }

  /** The chosen of a list, in words. */
  public static String chosen(List<Pickable> options) {
    return options.stream().filter(Pickable::chosen).findFirst().map(Pickable::word).orElse("");
  }

  private static List<Pickable> steerings(Card card, List<Steering> swung) {
    List<Pickable> steerings = new ArrayList<>();
    steerings.add(new Pickable("", "every steering", swung.isEmpty()));
    for (Steering s : Steering.values()) {
      if (card.layout().steered() || s == Steering.STRAIGHT) {
        steerings.add(new Pickable(Posted.word(s), CurveRead.words(s), swung.contains(s)));
      }
    }
    return steerings;
  }

  /** One entry of a list to choose from. */
  public record Pickable(String value, String word, boolean chosen) {}

  /**
   * @param link what to do about it; null where there is nothing to do
   */
  public record Told(String words, Link link) {}

  /**
   * What was read: here, or of what it is compared with.
   *
   * @param from what its positions are counted from: "from ride"
   */
  public record Table(String caption, String from, List<Group> groups) {}

  /**
   * @param name how the steering stood, or an axle's ends; empty where the caption says it
   */
  public record Group(String name, List<Row> rows) {}

  /**
   * One reading.
   *
   * @param where the height, by the owner's own words for it where there are any
   * @param more what that does not say of the height; may be empty
   * @param values the same reading in each unit it is said in; empty where it is no number
   */
  public record Row(
      String where,
      String more,
      FigureText position,
      List<FigureText> values,
      String typed,
      State state,
      String href) {}

  public record StateSaid(State state, String words) {}
}
