package spindlebook.fold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.definition.Setting;
import spindlebook.definition.SettingUnit;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;

class SettingsInForceTest {
  private static final String CAR =
      """
      {"key":"car","kind":"car","body":{"details":{"name":"Dune"}}}\
      """;
  private static final String CORNER =
      """
      {"key":"lf","kind":"corner","body":{"car":"car","place":"left-front","layout":"steered-double-a-arm",\
      "adjusters":[{"adjuster":"strap","kind":"limit-strap","name":"the long strap","unit":"holes","moreShortens":true}]}}\
      """;

  private static Card card(String... lines) {
    List<String> all = new ArrayList<>(List.of(CAR, CORNER));
    all.addAll(List.of(lines));
    return HandBooks.of(all).card("lf");
  }

  private static String adjust(String key, String from, String to) {
    return "{\"key\":\""
        + key
        + "\",\"kind\":\"adjustment\",\"body\":{\"corner\":\"lf\",\"adjuster\":\"strap\",\"from\":\""
        + from
        + "\",\"to\":\""
        + to
        + "\"}}";
  }

  private static final String DEFINED =
      """
      {"key":"d1","kind":"definition","body":{"corner":"lf","adjuster":{"adjuster":"strap","kind":"limit-strap","unit":"holes","step":"1 in","moreShortens":true,"first":"hole 3"}}}\
      """;

  private static InForce strap(Card card) {
    return card.adjuster("strap").orElseThrow();
  }

  @Test
  void nobody_said_is_no_setting() {
    assertNull(strap(card()).setting());
  }

  @Test
  void the_last_adjustment_is_in_force() {
    Card card = card(adjust("a1", "hole 3", "hole 4"), adjust("a2", "hole 4", "hole 5"));
    assertEquals("hole 5", strap(card).setting().inWords());
    assertEquals(4, strap(card).since());
    assertEquals(4, card.lastChange());
    assertEquals("the long strap from hole 4 to hole 5", card.changes().get(1).words());
  }

  @Test
  void a_new_version_of_an_adjuster_says_its_first_setting_when_none_was_known() {
    assertEquals("hole 3", strap(card(DEFINED)).setting().inWords());
    assertEquals("1 in", strap(card(DEFINED)).adjuster().step().typed());
  }

  @Test
  void a_new_version_keeps_what_was_set_before() {
    Card card = card(adjust("a1", "hole 3", "hole 4"), DEFINED);
    assertEquals("hole 4", strap(card).setting().inWords());
    assertEquals(1, card.changes().size());
  }

  @Test
  void a_retired_adjuster_is_no_longer_asked_for_but_what_it_moved_stays_moved() {
    String round =
        """
        {"key":"r1","kind":"round","body":{"corner":"lf","springIn":false,"bumpStopIn":true,"wheelOn":false,"onTyres":false,"steeringLinked":true}}\
        """;
    String height =
        """
        {"key":"h1","kind":"height","body":{"round":"r1","name":"on-the-strap","spindle":"8 in","mark":"20 in"}}\
        """;
    String retired =
        """
        {"key":"d2","kind":"definition","body":{"corner":"lf","retired":{"adjuster":"strap"}}}\
        """;
    Card card = card(round, height, adjust("a1", "hole 3", "hole 4"), retired);
    assertTrue(card.adjuster("strap").isEmpty());
    assertEquals(Standing.STALE, card.height("h1").orElseThrow().stop());
  }

  @Test
  void an_adjustment_in_doubt_waits_beside_its_adjuster() {
    String clash =
        """
        {"key":"a2","kind":"adjustment","body":{"corner":"lf","adjuster":"strap","from":"hole 3","to":"hole 6","doubt":"Somebody set it to hole 4."}}\
        """;
    Card waiting = card(adjust("a1", "hole 3", "hole 4"), clash);
    assertEquals("hole 4", strap(waiting).setting().inWords());
    assertEquals(List.of("a2"), strap(waiting).inDoubt().stream().map(Doubted::key).toList());
    assertEquals(waiting.doubts(), strap(waiting).inDoubt());

    String yes =
        """
        {"key":"w1","kind":"answer","body":{"target":"a2","itIsSo":true}}\
        """;
    Card so = card(adjust("a1", "hole 3", "hole 4"), clash, yes);
    assertEquals("hole 6", strap(so).setting().inWords());
    assertTrue(so.doubts().isEmpty());
    Card not = card(adjust("a1", "hole 3", "hole 4"), clash, yes.replace("true", "false"));
    assertEquals("hole 4", strap(not).setting().inWords());
    assertTrue(not.doubts().isEmpty());
  }

  @Test
  void the_same_setting_is_told_by_its_amount_or_its_words() {
    assertTrue(
        new Setting("3", SettingUnit.HOLES, 3.0).same(new Setting("03", SettingUnit.HOLES, 3.0)));
    assertFalse(
        new Setting("3", SettingUnit.HOLES, 3.0).same(new Setting("3", SettingUnit.TURNS, 3.0)));
    assertTrue(Setting.words("37s ").same(Setting.words("37S")));
    assertFalse(Setting.words("37s").same(null));
  }

  private static final String ROUND =
      """
      {"key":"r","kind":"round","body":{"corner":"lf","springIn":false,"bumpStopIn":true,"wheelOn":true,"onTyres":false,"steeringLinked":true}}\
      """;
  private static final String ON_THE_STRAP =
      """
      {"key":"h","kind":"height","body":{"round":"r","name":"on-the-strap","spindle":"14 in","mark":"30 in"}}\
      """;

  private static Standing strapHeight(String... later) {
    List<String> all =
        new ArrayList<>(List.of(adjust("a1", "hole 2", "hole 3"), ROUND, ON_THE_STRAP));
    all.addAll(List.of(later));
    return card(all.toArray(String[]::new)).height("h").orElseThrow().stop();
  }

  @Test
  void a_number_said_again_turned_nothing_and_moves_nothing() {
    assertEquals(Standing.LIVE, strapHeight(adjust("a2", "hole 3", "hole 3")));
    assertEquals(
        Standing.PUT_BACK,
        strapHeight(adjust("a2", "hole 3", "hole 4"), adjust("a3", "hole 4", "hole 3")));
  }

  @Test
  void a_thing_read_twice_is_offered_after_each_change_that_moved_either() {
    String second =
        """
        {"key":"d2","kind":"definition","body":{"corner":"lf","adjuster":{"adjuster":"second","kind":"limit-strap","unit":"holes","moreShortens":true,"first":"hole 1"}}}\
        """;
    String later = ON_THE_STRAP.replace("\"key\":\"h\"", "\"key\":\"h2\",\"after\":7");
    String secondTo2 = adjust("b1", "hole 1", "hole 2").replace("strap", "second");
    Card card =
        card(
            second,
            ROUND,
            ON_THE_STRAP,
            adjust("a1", "hole 3", "hole 4"),
            secondTo2,
            later,
            adjust("a2", "hole 4", "hole 3"));
    assertEquals(Standing.STALE, card.height("h").orElseThrow().stop());
    assertEquals(Standing.STALE, card.height("h2").orElseThrow().stop());
    assertEquals(List.of(HeightName.ON_THE_STRAP), names(card.toReadAgainAfter("b1")));
    assertEquals(List.of(HeightName.ON_THE_STRAP), names(card.toReadAgainAfter("a2")));
  }

  @Test
  void after_a_change_exactly_what_it_moved_is_offered_to_be_read_again() {
    String ride =
        """
        {"key":"ride","kind":"height","body":{"round":"r","name":"ride","spindle":"22 in","mark":"30 in"}}\
        """;
    String hit =
        """
        {"key":"hit","kind":"happening","body":{"car":"car","corner":"lf","what":"hit-or-bent"}}\
        """;
    Card card = card(ROUND, ON_THE_STRAP, ride, adjust("a2", "hole 3", "hole 4"), hit);
    List<HeightName> both = List.of(HeightName.ON_THE_STRAP, HeightName.RIDE);
    assertEquals(both, names(card.toReadAgain()));
    assertEquals(both, names(card.toReadAgainAfter("hit")));
    assertEquals(List.of(HeightName.ON_THE_STRAP), names(card.toReadAgainAfter("a2")));
    assertEquals(List.of(), names(card.toReadAgainAfter("never-was")));
  }

  private static List<HeightName> names(List<Content.ToRead> toRead) {
    return toRead.stream().map(Content.ToRead::name).toList();
  }
}
