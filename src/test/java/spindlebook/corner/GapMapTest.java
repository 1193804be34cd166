package spindlebook.corner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.card.TravelWords;
import spindlebook.corner.GapMap.Row;
import spindlebook.corner.GapMap.Value;
import spindlebook.drawing.State;
import spindlebook.fold.Card;
import spindlebook.fold.HandBooks;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.TravelFindings;

/** What stands in the columns of a corner's gaps. */
class GapMapTest {
  private final List<String> lines =
      new ArrayList<>(
          List.of(
              "{\"key\":\"car\",\"kind\":\"car\",\"body\":{\"details\":{\"name\":\"Dune\",\"unit\":\"mm\"}}}",
              """
              {"key":"lf","kind":"corner","body":{"car":"car","place":"left-front","layout":"steered-double-a-arm",\
              "watchPoints":[{"point":"arm","place":"lower-arm-frame","name":"arm","keep":{"least":"6 mm"}}],\
              "adjusters":[{"adjuster":"strap","kind":"limit-strap","unit":"length","moreShortens":false,"first":"500 mm"}]}}\
              """,
              "{\"key\":\"r\",\"kind\":\"round\",\"body\":{\"corner\":\"lf\",\"springIn\":false,\"bumpStopIn\":false,\"wheelOn\":true,\"onTyres\":false,\"steeringLinked\":true}}"));

  /** 10 mm of wheel apart, within the half inch of one column; the one that binds is read first. */
  @Test
  void the_worst_of_the_heights_in_a_column_stands_in_it() {
    height("low", "in-between", 300);
    height("out", "stop-out", 510);
    height("out2", "stop-out", 500);
    gap("low", "\"number\",\"length\":\"30 mm\"");
    gap("out", "\"binds\"");
    gap("out2", "\"number\",\"length\":\"20 mm\"");
    Row row = row();
    assertEquals(List.of("30.0", "binds"), values(row));
    assertEquals(State.SHORT, row.worst());
    assertEquals(State.SHORT, row.cells().get(1).state());
    assertFalse(row.cells().get(1).column().beyond());
    assertEquals("3 readings", row.readings());
  }

  /**
   * The stop touches at 450 mm and is solid at 470 mm; at 490 mm, past it, nothing is left of 8 mm.
   * Whether the rule breaks before the stop is told by its cell as much as by its row.
   */
  @Test
  void a_row_that_is_too_close_has_a_cell_that_is() {
    height("low", "in-between", 300);
    height("touch", "stop-touch", 450);
    height("solid", "full-bump", 470);
    height("out", "stop-out", 490);
    gap("low", "\"number\",\"length\":\"30 mm\"");
    gap("solid", "\"number\",\"length\":\"8 mm\"");
    gap("out", "\"number\",\"length\":\"0 mm\"");
    List<State> worst = new ArrayList<>();
    for (String allowed : new String[] {"1 mm", "14 mm", "40 mm"}) {
      lines.add(
          "{\"key\":\"%s\",\"kind\":\"definition\",\"body\":{\"corner\":\"lf\",\"heldBack\":{\"allowance\":\"impact-reserve\",\"length\":\"%s\"}}}"
              .formatted("held" + worst.size(), allowed));
      Row row = row();
      worst.add(row.worst());
      assertEquals(
          row.worst() == State.SHORT,
          row.cells().stream().anyMatch(c -> c.state() == State.SHORT && !c.column().beyond()),
          allowed + row);
    }
    assertEquals(List.of(State.CLEAR, State.SHORT, State.SHORT), worst);
  }

  @Test
  void where_the_strap_stood_before_stays_a_column_while_its_readings_count() {
    height("strap", "on-the-strap", 254);
    gap("strap", "\"number\",\"length\":\"30 mm\"");
    lines.add(
        "{\"key\":\"a\",\"kind\":\"adjustment\",\"body\":{\"corner\":\"lf\",\"adjuster\":\"strap\",\"to\":\"450"
            + " mm\"}}");
    height("shorter", "on-the-strap", 300);
    gap("shorter", "\"number\",\"length\":\"20 mm\"");
    Row row = row();
    assertEquals(List.of("30.0", "20.0"), values(row));
    assertEquals("strap", row.cells().get(1).column().word());
    assertEquals("2 readings", row.readings());
  }

  /** −15 3/4 stood as −15 1/2, and 262 mm as 266.7. */
  @Test
  void a_column_is_named_as_near_its_height_as_there_is_room_for() {
    height("low", "in-between", 262);
    gap("low", "\"number\",\"length\":\"30 mm\"");
    assertEquals("+260", row().cells().get(0).column().word());
    lines.set(0, lines.get(0).replace("\"mm\"", "\"inch\""));
    lines.set(3, lines.get(3).replace("1262 mm", "24 1/4 in").replace("1000 mm", "40 in"));
    assertEquals("−15 3/4", row().cells().get(0).column().word());
  }

  private void height(String key, String name, int positionMm) {
    lines.add(
        "{\"key\":\"%s\",\"kind\":\"height\",\"body\":{\"round\":\"r\",\"name\":\"%s\",\"spindle\":\"%d mm\",\"mark\":\"1000 mm\"}}"
            .formatted(key, name, 1000 + positionMm));
  }

  private void gap(String height, String result) {
    lines.add(
        "{\"key\":\"g-%s\",\"kind\":\"reading\",\"body\":{\"height\":\"%s\",\"steering\":\"straight\",\"quantity\":\"watch-point\",\"point\":\"arm\",\"result\":%s}}"
            .formatted(height, height, result));
  }

  private Row row() {
    Card card = HandBooks.of(lines).card("lf");
    TravelFindings travel = CornerTravel.of(card);
    return GapMap.of(card, travel, new TravelWords(card, travel), false).rows().get(0);
  }

  private static List<String> values(Row row) {
    return row.locks().stream()
        .flatMap(l -> l.values().stream())
        .map(Value::text)
        .filter(t -> !t.isEmpty())
        .toList();
  }
}
