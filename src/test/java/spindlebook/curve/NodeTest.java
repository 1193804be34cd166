package spindlebook.curve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static spindlebook.travel.Readings.MARK;
import static spindlebook.travel.Readings.exact;
import static spindlebook.travel.Readings.own;
import static spindlebook.travel.Readings.read;
import static spindlebook.travel.Readings.touches;
import static spindlebook.travel.Readings.wellClear;

import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.travel.Readings;
import spindlebook.uncertainty.Figure;

class NodeTest {
  @Test
  void the_same_place_read_again_is_one_node_as_the_worked_example_says() {
    List<Node> merged = Node.merge(List.of(read(-99.5, 0.45, 21, 0.3), read(-100, 0.45, 20, 0.3)));
    assertEquals(1, merged.size());
    assertEquals(-99.75, merged.get(0).positionMm().value(), 1e-12);
    assertEquals(20.5, merged.get(0).value().value(), 1e-12);
    assertEquals(0.3 / Math.sqrt(2), merged.get(0).value().u(), 1e-12);
    assertEquals(List.of("@-100.0", "@-99.5"), merged.get(0).readings());
  }

  @Test
  void places_further_apart_than_their_uncertainty_stay_apart() {
    assertEquals(
        2, Node.merge(List.of(read(-100, 0.45, 20, 0.3), read(-98.7, 0.45, 21, 0.3))).size());
  }

  @Test
  void a_shared_mark_does_not_make_two_places_one() {
    Figure lower = Figure.of(-100, MARK, 5).plus(own("lower", 0, 0.1));
    Figure upper = Figure.of(-99, MARK, 5).plus(own("upper", 0, 0.1));
    List<Node> merged =
        Node.merge(
            List.of(
                Readings.node(lower, Figure.exact(10), Bound.EXACT),
                Readings.node(upper, Figure.exact(11), Bound.EXACT)));
    assertEquals(2, merged.size());
  }

  @Test
  void a_number_beats_a_bound_at_the_same_place() {
    Node number = exact(0, 14);
    assertSame(number.value(), Node.merge(List.of(wellClear(0, 12), number)).get(0).value());
    assertEquals(1, Node.merge(List.of(number, touches(0))).size());
  }

  @Test
  void of_bounds_of_one_sense_the_tightest_stays() {
    List<Node> merged = Node.merge(List.of(wellClear(0, 3), wellClear(0, 12), touches(0)));
    assertEquals(2, merged.size());
    assertEquals(12, merged.get(0).value().value());
    assertEquals(Bound.AT_LEAST, merged.get(0).bound());
    assertEquals(Bound.AT_MOST, merged.get(1).bound());
  }

  @Test
  void what_was_merged_is_merged() {
    // By hand: 1.0 exactly and 1.1 with u 2 are 1.05 with u 1, and so no further than 2 from 0.
    List<Node> merged = Node.merge(List.of(exact(0, 1), exact(1, 2), read(1.1, 2, 3, 0.3)));
    assertEquals(1, merged.size());
    assertEquals(merged, Node.merge(merged));
  }

  @Test
  void merging_sorts_from_droop_to_bump() {
    List<Node> merged = Node.merge(List.of(exact(50, 1), exact(-50, 2), exact(0, 3)));
    assertEquals(
        List.of(-50.0, 0.0, 50.0), merged.stream().map(n -> n.positionMm().value()).toList());
  }
}
