package spindlebook.web;

import static org.assertj.core.api.Assertions.assertThat;

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
    TypedLength rear = a.length("rear", "Rear").was(before).needed("Type the rear.");
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
    assertThat(ask(a, "no length at all")).isNull();
    assertThat(a.ok()).isFalse();
    assertThat(a.posted().problems()).isEmpty();
    assertThat(a.parts()).hasSize(4);
    assertThat(field(a, 0).hint()).isEqualTo("Square.");
    assertThat(field(a, 0).unit()).isEqualTo("in");
    assertThat(field(a, 2).typed()).isEqualTo("no length at all");
    assertThat(a.key().after()).isEqualTo(7);
  }

  @Test
  void what_was_sent_is_its_answer_and_what_was_before_is_not() {
    Asked a = sent("front", "3 1/2", "side", "far-off", "rear", "2", "words", "so");
    Answer answer = ask(a, "9");
    assertThat(answer.front().mm()).isEqualTo(88.9);
    assertThat(answer.rear().mm()).isEqualTo(50.8);
    assertThat(answer.side()).isEqualTo(Side.FAR_OFF);
    assertThat(answer.words()).isEqualTo("so");
  }

  @Test
  void every_fault_stands_at_its_question_the_late_ones_too() {
    Asked a = sent("front", "1", "side", "near", "rear", "2");
    assertThat(ask(a, null)).isNull();
    assertThat(field(a, 0).problem()).isEqualTo("It is behind.");
    assertThat(field(a, 0).typed()).isEqualTo("1");

    Asked none = sent();
    ask(none, "2");
    assertThat(none.posted().problems())
        .containsExactly("Type the front.", "Tap the side.", "Type the rear.");
    Asked zero = sent("front", "0");
    ask(zero, null);
    assertThat(field(zero, 0).problem()).isEqualTo("This length is more than 0.");
  }

  @Test
  void what_is_folded_opens_where_something_in_it_is_answered_or_wrong() {
    Asked a = sent("front", "2");
    ask(a, null);
    assertThat(((FormPart.More) a.parts().get(3)).open()).isFalse();
    Asked wrong = sent("words", "too long by far");
    ask(wrong, null);
    FormPart.More more = (FormPart.More) wrong.parts().get(3);
    assertThat(more.open()).isTrue();
    assertThat(((FormPart.Typed) more.parts().get(0)).field().problem()).contains("longer than 5");
  }

  @Test
  void of_a_few_keys_the_first_holds_until_another_is_tapped() {
    Asked fresh = Asked.fresh(LengthUnit.INCH, 0);
    Asked.Keys<Side> keys = fresh.one("side", "Side", Side.class, Side::name).first(Side.FAR_OFF);
    assertThat(keys.read()).isEqualTo(Side.FAR_OFF);
    Choice choice = ((FormPart.Chosen) fresh.parts().get(0)).choice();
    assertThat(choice.options()).extracting(Choice.Option::chosen).containsExactly(false, true);

    Asked odd = sent("side", "nowhere");
    odd.one("side", "Side", Side.class, Side::name).unknown("There is no such side.").read();
    assertThat(odd.posted().problems()).containsExactly("There is no such side.");
  }
}
