package spindlebook.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import spindlebook.fold.Card;
import spindlebook.fold.HandBooks;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

class TravelWordsTest {
  private static String height(String key, String name, double positionMm) {
    return "{\"key\":\"%s\",\"kind\":\"height\",\"body\":{\"round\":\"r\",\"name\":\"%s\",\"spindle\":\"%s mm\",\"mark\":\"1000 mm\"}}"
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
            + " counted; nothing read between its last two heights tells.",
        new TravelWords(card, travel).finding(travel.bump()));
  }

  /** 20.3 mm to spare, 206.2 mm too far: said to half a millimetre, and never better than it is. */
  @Test
  void what_is_to_spare_is_rounded_down_and_what_is_too_far_up() {
    String corner =
        """
        {"key":"lf","kind":"corner","body":{"car":"car","place":"left-front",\
        "layout":"steered-double-a-arm","watchPoints":[{"point":"arm","name":"arm",\
        "place":"lower-arm-frame","keep":{"least":"6 mm"}}],\
        "heldBack":[{"allowance":"impact-reserve","length":"6 mm"}]}}\
        """;
    String car =
        "{\"key\":\"car\",\"kind\":\"car\",\"body\":{\"details\":{\"name\":\"Dune\",\"unit\":\"mm\"}}}";
    String round =
        "{\"key\":\"r\",\"kind\":\"round\",\"body\":{\"corner\":\"lf\",\"springIn\":false,\"bumpStopIn\":false,\"wheelOn\":true,\"onTyres\":false,\"steeringLinked\":true}}";
    String solid = height("solid", "full-bump", 500);
    Card spare =
        HandBooks.of(
                car,
                corner,
                round,
                solid,
                height("past", "stop-out", 526.3),
                gap("g1", "past", "\"result\":\"well-clear\",\"typed\":\"well clear\""))
            .card("lf");
    TravelFindings clear = CornerTravel.of(spare);
    assertEquals(
        "At least 20.0 mm beyond where the bump stop lets the wheel go.",
        new TravelWords(spare, clear).told(clear.bump(), clear.bump().limits().get(0)));
    Card past =
        HandBooks.of(
                car,
                corner,
                round,
                solid,
                height("mid", "in-between", 299.8),
                gap("g1", "mid", "\"result\":\"well-clear\",\"typed\":\"well clear\""),
                gap("g2", "solid", "\"result\":\"number\",\"length\":\"2 mm\""))
            .card("lf");
    TravelFindings tooFar = CornerTravel.of(past);
    String finding = new TravelWords(past, tooFar).finding(tooFar.bump());
    assertTrue(finding.contains("reached up to 206.5 mm of wheel travel"), finding);
  }

  /** Kept at the last height read, 206 mm short of where the wheel goes: unread, no shortfall. */
  @Test
  void travel_that_nobody_read_is_no_margin_and_has_no_minus() {
    String corner =
        """
        {"key":"lf","kind":"corner","body":{"car":"car","place":"left-front",\
        "layout":"steered-double-a-arm","watchPoints":[{"point":"arm","name":"arm",\
        "place":"lower-arm-frame","keep":{"least":"6 mm"}}],"heldBack":[{"allowance":\
        "impact-reserve","length":"6 mm"}]}}\
        """;
    Card card =
        HandBooks.of(
                "{\"key\":\"car\",\"kind\":\"car\",\"body\":{\"details\":{\"name\":\"Dune\",\"unit\":\"mm\"}}}",
                corner,
                "{\"key\":\"r\",\"kind\":\"round\",\"body\":{\"corner\":\"lf\",\"springIn\":false,\"bumpStopIn\":false,\"wheelOn\":true,\"onTyres\":false,\"steeringLinked\":true}}",
                height("mid", "in-between", 300),
                height("solid", "full-bump", 500),
                gap("g1", "mid", "\"result\":\"well-clear\",\"typed\":\"well clear\""))
            .card("lf");
    TravelFindings travel = CornerTravel.of(card);
    TravelWords words = new TravelWords(card, travel);
    Figure margin = travel.bump().marginMm().orElseThrow();
    assertEquals(-206, margin.value(), 1e-9);
    assertEquals("not read, the last", TravelWords.marginName(travel.bump()));
    assertEquals("206.0", words.margin(travel.bump(), margin).plain());
  }

  @Test
  void hardly_kept_in_mid_travel_is_too_close_to_call_and_says_what_would_settle_it() {
    String corner =
        "{\"key\":\"lf\",\"kind\":\"corner\",\"body\":{\"car\":\"car\",\"place\":\"left-front\",\"layout\":\"steered-double-a-arm\",\"watchPoints\":[{\"point\":\"arm\",\"name\":\"arm\",\"place\":\"lower-arm-frame\",\"keep\":{\"least\":\"6"
            + " mm\"}}]}}";
    Card card =
        HandBooks.of(
                "{\"key\":\"car\",\"kind\":\"car\",\"body\":{\"details\":{\"name\":\"Dune\",\"unit\":\"mm\"},\"tools\":[{\"tool\":\"tape\",\"name\":\"tape\",\"use\":\"tape\",\"graduation\":\"0"
                    + " mm\",\"placingHalfWidth\":\"0"
                    + " mm\"},{\"tool\":\"drills\",\"name\":\"shanks\",\"use\":\"gaps\",\"graduation\":\"1/16"
                    + " in\",\"placingHalfWidth\":\"1/32 in\"}]}}",
                corner,
                "{\"key\":\"r\",\"kind\":\"round\",\"body\":{\"corner\":\"lf\",\"springIn\":false,\"bumpStopIn\":false,\"wheelOn\":true,\"onTyres\":false,\"steeringLinked\":true,\"tape\":\"tape\",\"gapTool\":\"drills\"}}",
                height("low", "in-between", 300),
                height("ride", "ride", 400),
                height("solid", "full-bump", 500),
                gap("g1", "low", "\"result\":\"number\",\"length\":\"20 mm\""),
                gap("g2", "ride", "\"result\":\"number\",\"length\":\"6.9 mm\""),
                gap("g3", "solid", "\"result\":\"number\",\"length\":\"20 mm\""))
            .card("lf");
    TravelFindings travel = CornerTravel.of(card);
    assertEquals(Outcome.CANT_TELL, travel.midTravel().get(0).outcome());
    assertEquals(
        "arm is too close to call in mid-travel, at 0.0 mm from ride. Read it 2 times in all, with"
            + " a finer tool: one that reads to 1/32 in or finer, not 1/16 in.",
        new TravelWords(card, travel).midTravel(travel.midTravel().get(0)));
  }
}
