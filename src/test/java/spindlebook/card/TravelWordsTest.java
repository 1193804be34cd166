package spindlebook.card;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import spindlebook.corner.Card;
import spindlebook.corner.HandBooks;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.Outcome;
import spindlebook.travel.TravelFindings;

class TravelWordsTest {
  private static String height(String key, String name, int positionMm) {
    return "{\"key\":\"%s\",\"kind\":\"height\",\"body\":{\"round\":\"r\",\"name\":\"%s\",\"spindle\":\"%d mm\",\"mark\":\"1000 mm\"}}"
        .formatted(key, name, 1000 + positionMm);
  }

  private static String gap(String key, String height, String rest) {
    return "{\"key\":\"%s\",\"kind\":\"reading\",\"body\":{\"height\":\"%s\",\"steering\":\"straight\",\"quantity\":\"watch-point\",\"point\":\"arm\",%s}}"
        .formatted(key, height, rest);
  }

  @Test
  void a_limit_somewhere_between_two_heights_is_told_as_up_to_and_not_as_one_place() {
    String corner =
        """
        {"key":"lf","kind":"corner","body":{"car":"car","place":"left-front","layout":"steered-double-a-arm",\
        "watchPoints":[{"point":"arm","place":"lower-arm-frame","name":"arm","keep":{"least":"6 mm"}}],\
        "heldBack":[{"allowance":"impact-reserve","length":"6 mm"}]}}\
        """;
    Card card =
        HandBooks.of(
                "{\"key\":\"car\",\"kind\":\"car\",\"body\":{\"details\":{\"name\":\"Dune\",\"unit\":\"mm\"}}}",
                corner,
                "{\"key\":\"r\",\"kind\":\"round\",\"body\":{\"corner\":\"lf\",\"springIn\":false,\"bumpStopIn\":false,\"wheelOn\":true,\"onTyres\":false,\"steeringLinked\":true}}",
                height("mid", "in-between", 300),
                height("solid", "full-bump", 500),
                gap("g1", "mid", "\"result\":\"well-clear\",\"typed\":\"well clear\""),
                gap("g2", "solid", "\"result\":\"number\",\"length\":\"2 mm\""))
            .card("lf");
    TravelFindings travel = CornerTravel.of(card);
    assertEquals(Outcome.SHORT, travel.bump().outcome());
    // The stop and 6 mm of impact lie 206 mm beyond the last height that was well clear.
    assertEquals(
        "Bump: arm is reached up to 206.0 mm of wheel travel before the stop is solid, impact"
            + " counted; nothing was read between its last two heights.",
        new TravelWords(card, travel).finding(travel.bump()));
  }
}
