package spindlebook.card;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.drawing.State;
import spindlebook.fold.Card;
import spindlebook.fold.HandBooks;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.EndLimit;

/** What a page shows beside one reading is what the travel makes of it; by hand. */
class OneVerdictTest {
  private final List<String> lines = new ArrayList<>();

  private void line(String key, String kind, String body) {
    String json = "{'key':'" + key + "','kind':'" + kind + "','body':" + body + "}";
    lines.add(json.replace('\'', '"'));
  }

  private void keep(String least) {
    line(
        "w" + lines.size(),
        "definition",
        "{'corner':'lr','watchPoint':{'point':'tyre','place':'tyre-frame','keep':{'least':'"
            + least
            + "'}}}");
  }

  /** One height of an unsteered corner, where the tyre is to keep an inch off the frame. */
  private OneVerdictTest atOneHeight() {
    line("car", "car", "{'details':{'name':'Dune'}}");
    line("lr", "corner", "{'car':'car','place':'left-rear','layout':'trailing-arm'}");
    keep("1 in");
    line(
        "r",
        "round",
        "{'corner':'lr','springIn':false,'bumpStopIn':false,'wheelOn':true,'onTyres':false,'steeringLinked':false}");
    line("h", "height", "{'round':'r','name':'in-between','spindle':'1000 mm','mark':'1000 mm'}");
    return this;
  }

  private void read(String result) {
    line(
        "g" + lines.size(),
        "reading",
        "{'height':'h','steering':'straight','quantity':'watch-point','point':'tyre',"
            + result
            + "}");
  }

  private State shown() {
    Card card = HandBooks.of(lines).card("lr");
    return Shown.state(card.readings().get(card.readings().size() - 1));
  }

  private EndLimit droop() {
    return CornerTravel.of(HandBooks.of(lines).card("lr")).droop().limits().stream()
        .filter(l -> l.point() != null)
        .findFirst()
        .orElseThrow()
        .at();
  }

  @Test
  void well_clear_of_an_inch_is_not_clear_of_six() {
    atOneHeight().read("'result':'well-clear'");
    assertEquals(State.CLEAR, shown());
    assertEquals(EndLimit.KeptTo.class, droop().getClass());
    keep("6 in");
    assertEquals(State.CANT_TELL, shown());
    assertEquals(EndLimit.NotRead.class, droop().getClass());
    keep("1/2 in");
    assertEquals(State.CLEAR, shown());
    assertEquals(EndLimit.KeptTo.class, droop().getClass());
  }

  @Test
  void a_drill_as_thick_as_the_rule_keeps_it_where_it_goes_and_breaks_it_where_it_does_not() {
    atOneHeight().read("'result':'go-no-go','go':'1 in'");
    assertEquals(State.CLEAR, shown());
    assertEquals(EndLimit.KeptTo.class, droop().getClass());
    lines.remove(lines.size() - 1);
    read("'result':'go-no-go','noGo':'1 in'");
    assertEquals(State.SHORT, shown());
    assertEquals(EndLimit.BrokenThroughout.class, droop().getClass());
  }

  @Test
  void a_drill_on_the_better_side_of_the_rule_cannot_tell() {
    atOneHeight().read("'result':'go-no-go','go':'3/4 in'");
    assertEquals(State.CANT_TELL, shown());
    assertEquals(EndLimit.NotRead.class, droop().getClass());
    lines.remove(lines.size() - 1);
    read("'result':'go-no-go','noGo':'1 1/4 in'");
    assertEquals(State.CANT_TELL, shown());
    assertEquals(EndLimit.NotRead.class, droop().getClass());
  }

  @Test
  void what_touches_is_short_and_what_nobody_looked_at_is_not_measured() {
    atOneHeight().read("'result':'touches'");
    assertEquals(State.SHORT, shown());
    assertEquals(EndLimit.BrokenThroughout.class, droop().getClass());
    lines.remove(lines.size() - 1);
    read("'result':'not-looked'");
    assertEquals(State.NOT_MEASURED, shown());
    assertEquals(EndLimit.NotRead.class, droop().getClass());
  }
}
