package spindlebook.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedLength;

class AskedTest {
  private enum Side {
    NEAR,
    FAR_OFF
  }

  private record Answer(TypedLength front, TypedLength rear, Side side, String words) {}

  private static Answer ask(Asked a, String before) {
    TypedLength front = a.above("front", "Front").hint("Square.").needed("Type the front.");
    Side side = a.one("side", "Side", Side.class, Side::name).needed("Tap the side.");
    TypedLength rear = a.length("rear", "Rear").starts(before).needed("Type the rear.");
    String words = a.more("In words", () -> a.line("words", "Words", 5).read());
    if (a.ok() && rear.mm() > front.mm()) {
      a.wrong("front", "It is behind.");
    }
    return a.ok() ? new Answer(front, rear, side, words) : null;
  }

  private static Asked sent(String... pairs) {
    Map<String, List<String>> values = new LinkedHashMap<>();
    for (int i = 0; i < pairs.length; i += 2) {
      values.put(pairs[i], List.of(pairs[i + 1]));
    }
    return Asked.of(new Posted(values), LengthUnit.INCH, 7);
  }

  private static Field field(Asked a, int at) {
    return ((FormPart.Typed) a.parts().get(at)).field();
  }

  @Test
  void before_it_is_sent_nothing_is_demanded_and_nothing_wrong() {
    Asked a = Asked.fresh(LengthUnit.INCH, 7);
    assertNull(ask(a, "no length at all"));
    assertFalse(a.ok());
    assertTrue(a.posted().problems().isEmpty());
    assertEquals(4, a.parts().size());
    assertEquals("Square.", field(a, 0).hint());
    assertEquals("in", field(a, 0).unit());
    assertEquals("no length at all", field(a, 2).typed());
    assertEquals(7, a.key().after());
  }

  @Test
  void what_was_sent_is_its_answer_and_what_was_before_is_not() {
    Asked a = sent("front", "3 1/2", "side", "far-off", "rear", "2", "words", "so");
    Answer answer = ask(a, "9");
    assertEquals(88.9, answer.front().mm());
    assertEquals(50.8, answer.rear().mm());
    assertEquals(Side.FAR_OFF, answer.side());
    assertEquals("so", answer.words());
  }

  @Test
  void every_fault_stands_at_its_question_the_late_ones_too() {
    Asked a = sent("front", "1", "side", "near", "rear", "2");
    assertNull(ask(a, null));
    assertEquals("It is behind.", field(a, 0).problem());
    assertEquals("1", field(a, 0).typed());

    Asked none = sent();
    ask(none, "2");
    assertEquals(
        List.of("Type the front.", "Tap the side.", "Type the rear."), none.posted().problems());
    Asked zero = sent("front", "0");
    ask(zero, null);
    assertEquals("This length is more than 0.", field(zero, 0).problem());
  }

  @Test
  void what_is_folded_opens_where_something_in_it_is_answered_or_wrong() {
    Asked a = sent("front", "2");
    ask(a, null);
    assertFalse(((FormPart.More) a.parts().get(3)).open());
    Asked wrong = sent("words", "too long by far");
    ask(wrong, null);
    FormPart.More more = (FormPart.More) wrong.parts().get(3);
    assertTrue(more.open());
    assertTrue(((FormPart.Typed) more.parts().get(0)).field().problem().contains("longer than 5"));
  }

  @Test
  void of_a_few_keys_the_first_holds_until_another_is_tapped() {
    Asked fresh = Asked.fresh(LengthUnit.INCH, 0);
    Asked.Keys<Side> keys = fresh.one("side", "Side", Side.class, Side::name).first(Side.FAR_OFF);
    assertEquals(Side.FAR_OFF, keys.read());
    Choice choice = ((FormPart.Chosen) fresh.parts().get(0)).choice();
    assertEquals(
        List.of(false, true), choice.options().stream().map(Choice.Option::chosen).toList());

    Asked odd = sent("side", "nowhere");
    odd.one("side", "Side", Side.class, Side::name).unknown("There is no such side.").read();
    assertEquals(List.of("There is no such side."), odd.posted().problems());
  }
}
