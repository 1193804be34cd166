package spindlebook.travel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.curve.Bound;
import spindlebook.curve.Node;
import spindlebook.curve.Rule;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/** A finding that fails says so, and the rest stands. */
class WorkedOutTest {
  private static final Rule RULE = new Rule.AtLeast(6);

  /** Values of no world: their difference is no number any more. */
  private static List<Node> noCurve() {
    return List.of(node(-500, -9e307), node(-450, 9e307), node(-400, 9.1e307));
  }

  private static Node node(double positionMm, double value) {
    return new Node(
        Figure.exact(positionMm), Figure.exact(value), Bound.EXACT, List.of("@" + positionMm));
  }

  @Test
  void readings_that_make_no_curve_leave_their_limit_unread_and_say_so() {
    EndLimit at = RuleAlongTravel.along(noCurve(), RULE).droop();
    EndLimit.NotRead not = assertInstanceOf(EndLimit.NotRead.class, at);
    assertTrue(not.because().get(0).startsWith("could not be worked out: "), not.toString());
    RuleReadings of = new RuleReadings(Limit.Kind.SHOCK, null, null, null, RULE, noCurve());
    CornerLimits.Found found = new CornerLimits.Found(of, at, null, List.of());
    Limit limit = Judged.of(End.DROOP, found, Figure.exact(-480));
    assertEquals(Outcome.NEEDS, limit.outcome());
    assertEquals(not.because(), limit.needs().get(0).because());
  }

  @Test
  void a_fault_is_told_in_place_of_its_finding_and_the_next_is_told() {
    List<String> told = new ArrayList<>();
    WorkedOut.part(() -> noSuchCurve(), told::add);
    WorkedOut.part(() -> told.add("sound"), told::add);
    assertEquals(List.of("could not be worked out: no such curve", "sound"), told);
    assertEquals("sound", WorkedOut.or(() -> "sound", why -> why));
  }

  private static void noSuchCurve() {
    throw new IllegalArgumentException("no such curve");
  }
}
