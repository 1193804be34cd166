package spindlebook.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gg.jte.generated.precompiled.StaticTemplates;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

class StateTest {
  private final StaticTemplates parts = new StaticTemplates();

  @Test
  void every_state_has_a_word_and_a_shape_of_its_own() {
    Set<String> words = new HashSet<>();
    Set<String> briefs = new HashSet<>();
    Set<String> shapes = new HashSet<>();
    for (State state : State.values()) {
      words.add(state.word());
      briefs.add(state.brief());
      shapes.add(parts.webShape(state).render().strip());
    }
    assertEquals(State.values().length, words.size());
    assertEquals(State.values().length, briefs.size());
    assertEquals(State.values().length, shapes.size());
  }

  @Test
  void a_state_is_never_shown_by_colour_alone() {
    for (State state : State.values()) {
      for (boolean quiet : new boolean[] {true, false}) {
        String html = parts.webState(state, quiet, false, null).render();
        assertTrue(html.contains(">" + state.word() + "</span>"), html);
        assertTrue(html.contains("<svg class=\"shape\""), html);
        assertTrue(html.contains(state.mark()), html);
      }
    }
  }
}
