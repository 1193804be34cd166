package spindlebook.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gg.jte.generated.precompiled.StaticTemplates;
import java.util.EnumSet;
import org.junit.jupiter.api.Test;

class PlanViewTest {
  private static String drawn(PlanView plan) {
    return new StaticTemplates().webPlan(plan).render();
  }

  @Test
  void the_picture_says_its_corner_in_words() {
    PlanView plan = PlanView.at(DrawnWheel.LEFT_FRONT);
    assertEquals("The car from above: left front", plan.words());
    assertTrue(drawn(plan).contains("<title>" + plan.words() + "</title>"));
  }

  @Test
  void one_wheel_is_filled_and_left_is_left() {
    String svg = drawn(PlanView.at(DrawnWheel.LEFT_REAR));
    assertEquals(2, svg.split("plan-here", -1).length);
    assertTrue(DrawnWheel.LEFT_REAR.x() < DrawnWheel.RIGHT_REAR.x());
    assertTrue(DrawnWheel.LEFT_FRONT.y() < DrawnWheel.LEFT_REAR.y());
    assertTrue(svg.contains("plan-wheel plan-here\" x=\"2\" y=\"68\""), svg);
  }

  @Test
  void the_front_wheels_are_those_that_turn() {
    assertEquals(3, drawn(PlanView.at(DrawnWheel.LEFT_FRONT)).split("plan-front", -1).length);
  }

  @Test
  void both_ends_of_an_axle_are_marked_together() {
    PlanView axle =
        new PlanView(
            EnumSet.allOf(DrawnWheel.class),
            EnumSet.of(DrawnWheel.RIGHT_REAR, DrawnWheel.LEFT_REAR));
    assertEquals("The car from above: left rear and right rear", axle.words());
    assertEquals(3, drawn(axle).split("plan-here", -1).length);
  }

  @Test
  void a_wheel_the_car_does_not_have_is_not_drawn() {
    PlanView three =
        new PlanView(
            EnumSet.complementOf(EnumSet.of(DrawnWheel.RIGHT_REAR)),
            EnumSet.noneOf(DrawnWheel.class));
    assertEquals(4, drawn(three).split("plan-wheel", -1).length);
    assertFalse(drawn(three).contains("x=\"56\" y=\"68\""));
  }
}
