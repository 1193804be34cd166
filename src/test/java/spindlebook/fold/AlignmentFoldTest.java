package spindlebook.fold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.fold.CarLines.CAR;
import static spindlebook.fold.CarLines.line;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.entry.AlignedFigure;
import spindlebook.entry.AlignedThing;
import spindlebook.entry.AlignmentWay;
import spindlebook.entry.Content;
import spindlebook.log.BookRefused;

/** Alignment as measured, folded from small books written by hand. */
class AlignmentFoldTest {
  private static final List<String> EVERY_ADJUSTER =
      List.of(
          "upper-rod-ends",
          "tie-rod-length",
          "spring-preload",
          "tyre",
          "wheel",
          "tyre-pressure",
          "limit-strap",
          "steering-stop",
          "rack-position");

  private static final String CAMBER = of("camber", "lf", "'gauge':{'read':'-0.5°'}");
  private static final String TOE =
      of("toe", "lf", "'spot':{'inward':'10 mm','distance':'2000 mm'}");
  private static final String TAPE =
      of("tape", "lf", "'tape':{'front':'1577 mm','rear':'1580 mm','across':'700 mm'}");
  private static final String SWEEP =
      of(
          "sweep",
          "lf",
          "'sweep':{'by':'wheel-heading','leftLock':'20°','rightLock':'20°','camberLeft':'1°',"
              + "'camberRight':'-0.3°','kpi':'6°'}");
  private static final String JOINT =
      of(
          "joint",
          "lf",
          "'joint':{'ahead':'8 mm','inboard':'110 mm','below':'115 mm','loadedRadius':'380 mm'}");
  private static final String TRACK =
      of("track", "lf", "'across':{'outside':false,'length':'1600 mm','offset':'-12 mm'}");
  private static final List<String> ALL =
      List.of("camber", "toe", "tape", "sweep", "joint", "track");

  private static String of(String key, String corner, String way) {
    return line(
        "{'kind':'alignment','key':'"
            + key
            + "','body':{'corner':'"
            + corner
            + "','rolled':true,"
            + way
            + "}}");
  }

  private static String corner(String key, String place) {
    StringBuilder adjusters = new StringBuilder();
    for (String kind : EVERY_ADJUSTER) {
      adjusters
          .append(adjusters.isEmpty() ? "" : ",")
          .append("{'adjuster':'" + kind + "','kind':'" + kind + "','unit':'words',")
          .append("'moreShortens':false,'first':'as built'}");
    }
    return line(
        "{'key':'"
            + key
            + "','kind':'corner','body':{'car':'car','place':'"
            + place
            + "','layout':'steered-double-a-arm','adjusters':["
            + adjusters
            + "]}}");
  }

  private static String changed(String corner, String adjuster, String to) {
    return line(
        "{'kind':'adjustment','body':{'corner':'"
            + corner
            + "','adjuster':'"
            + adjuster
            + "','to':'"
            + to
            + "'}}");
  }

  private static CarBook book(String... later) {
    List<String> lines =
        new ArrayList<>(
            List.of(
                CAR,
                corner("lf", "left-front"),
                corner("rf", "right-front"),
                corner("lr", "left-rear"),
                CAMBER,
                TOE,
                TAPE,
                SWEEP,
                JOINT,
                TRACK));
    lines.addAll(List.of(later));
    return HandBooks.of(lines);
  }

  private static List<String> stale(CarBook book, String corner) {
    return book.card(corner).aligned().read().stream()
        .filter(r -> r.stands() == Standing.STALE)
        .map(SeenAlignment::key)
        .toList();
  }

  @Test
  void all_of_it_holds_while_nothing_is_changed_and_the_axle_s_is_on_both_cards() {
    Aligned here = book().card("lf").aligned();
    assertEquals(ALL, here.read().stream().map(SeenAlignment::key).toList());
    assertTrue(here.read().stream().allMatch(r -> r.stands() == Standing.LIVE));
    Aligned across = book().card("rf").aligned();
    assertEquals(List.of("tape", "track"), across.read().stream().map(SeenAlignment::key).toList());
    assertEquals(List.of(), book().card("lr").aligned().read());
  }

  @Test
  void each_change_makes_stale_what_its_row_says_and_no_more() {
    assertEquals(ALL, stale(book(changed("lf", "upper-rod-ends", "one out")), "lf"));
    assertEquals(ALL, stale(book(changed("rf", "rack-position", "1/8 left")), "lf"));
    assertEquals(ALL, stale(book(changed("lr", "spring-preload", "one more")), "lf"));
    assertEquals(List.of("toe", "tape"), stale(book(changed("rf", "tie-rod-length", "out")), "lf"));
    for (String tyre : List.of("tyre", "wheel", "tyre-pressure")) {
      assertEquals(List.of("joint", "track"), stale(book(changed("lf", tyre, "new")), "lf"), tyre);
    }
    for (String nothing : List.of("limit-strap", "steering-stop")) {
      assertEquals(List.of(), stale(book(changed("lf", nothing, "new")), "lf"), nothing);
    }
    String hit =
        line("{'kind':'happening','body':{'car':'car','corner':'lf','what':'hit-or-bent'}}");
    assertEquals(ALL, stale(book(hit), "lf"));
    String driven = line("{'kind':'use','body':{'car':'car','unit':'hours','amount':2}}");
    assertEquals(List.of(), stale(book(driven), "lf"));
  }

  @Test
  void what_belongs_to_the_axle_is_moved_from_either_side() {
    CarBook other = book(changed("rf", "upper-rod-ends", "one out"));
    assertEquals(List.of("tape", "track"), stale(other, "lf"));
    assertEquals(List.of("tape", "track"), stale(other, "rf"));
    assertEquals(List.of("track"), stale(book(changed("rf", "wheel", "new")), "lf"));
    assertEquals(List.of(), stale(book(changed("lr", "wheel", "new")), "lf"));
  }

  @Test
  void a_setting_put_back_is_not_confirmed_until_it_is_measured_again() {
    CarBook back =
        book(
            changed("lf", "upper-rod-ends", "one out"),
            changed("lf", "upper-rod-ends", "as built"));
    assertEquals(Standing.PUT_BACK, stands(back, "camber"));
    CarBook again =
        book(
            changed("lf", "upper-rod-ends", "one out"),
            changed("lf", "upper-rod-ends", "as built"),
            of("camber-2", "lf", "'gauge':{'read':'-0.6°'}"));
    assertEquals(Standing.REPLACED, stands(again, "camber"));
    assertEquals(List.of("camber-2"), camber(again));
  }

  /** Design.md 3: a later one counts again, as a repeat, when the earlier one is live. */
  @Test
  void repeats_stay_repeats_when_what_was_changed_after_them_is_put_back() {
    String second = of("camber-2", "lf", "'gauge':{'read':'-0.6°'}");
    CarBook back =
        book(
            second,
            changed("lf", "upper-rod-ends", "one out"),
            changed("lf", "upper-rod-ends", "as built"));
    assertEquals(List.of("camber-2", "camber"), camber(back));
    CarBook between =
        book(
            changed("lf", "upper-rod-ends", "one out"),
            changed("lf", "upper-rod-ends", "as built"),
            second,
            changed("lf", "upper-rod-ends", "two out"),
            changed("lf", "upper-rod-ends", "as built"));
    assertEquals(List.of("camber-2"), camber(between));
  }

  private static List<String> camber(CarBook book) {
    return book.card("lf").aligned().of(AlignedThing.CAMBER).stream()
        .map(SeenAlignment::key)
        .toList();
  }

  private static Standing stands(CarBook book, String key) {
    return book.card("lf").aligned().read(key).orElseThrow().stands();
  }

  @Test
  void a_late_phone_that_had_not_heard_of_a_change_brings_what_is_stale() {
    CarBook before = book();
    CarBook changed = book(changed("lf", "upper-rod-ends", "one out"));
    Content camber = before.standing("camber").orElseThrow();
    Noted late = new Noted(changed.n() + 1, "late", Instant.EPOCH, "Ada", before.n(), camber);
    assertEquals(Standing.STALE, stands(changed.with(late), "late"));
    Noted knowing = new Noted(changed.n() + 1, "late", Instant.EPOCH, "Ada", changed.n(), camber);
    assertEquals(Standing.LIVE, stands(changed.with(knowing), "late"));
  }

  @Test
  void entry_by_entry_and_all_at_once_give_the_same_cards() {
    CarBook whole =
        book(
            changed("rf", "tie-rod-length", "out"),
            target("lf", "camber", ",'mostAngle':'0°'"),
            of("camber-2", "lf", "'gauge':{'read':'-0.6°'}"),
            changed("rf", "tie-rod-length", "as built"));
    CarBook growing = CarBook.empty();
    for (Noted entry : whole.entries()) {
      growing = growing.with(entry);
      for (String corner : growing.corners()) {
        assertEquals(whole.asOf(entry.n()).card(corner), growing.card(corner));
      }
    }
    assertEquals(Standing.PUT_BACK, stands(growing, "toe"));
  }

  @Test
  void straight_off_the_jack_waits_for_an_answer_whoever_wrote_it() {
    String jack = CAMBER.replace("\"camber\"", "\"jack\"").replace("true", "false");
    CarBook doubted = book(jack);
    assertEquals(Standing.IN_DOUBT, stands(doubted, "jack"));
    Doubted doubt = doubted.card("lf").doubts().get(0);
    assertEquals("jack", doubt.key());
    assertEquals(Content.Alignment.OFF_THE_JACK, doubt.doubt());
    String so = line("{'kind':'answer','body':{'target':'jack','itIsSo':true}}");
    assertEquals(Standing.LIVE, stands(book(jack, so), "jack"));
    String not = line("{'kind':'answer','body':{'target':'jack','itIsSo':false}}");
    assertTrue(book(jack, not).card("lf").aligned().read("jack").isEmpty());
    assertEquals(List.of(), book(jack, not).card("lf").doubts());
  }

  @Test
  void a_doubt_about_the_axle_s_is_listed_once() {
    String jack = TAPE.replace("\"tape\",\"body\"", "\"jack\",\"body\"").replace("true", "false");
    CarBook doubted = book(jack);
    assertEquals(1, doubted.card("lf").doubts().size());
    assertEquals(0, doubted.card("rf").doubts().size());
    assertEquals(
        Standing.IN_DOUBT, doubted.card("rf").aligned().read("jack").orElseThrow().stands());
  }

  @Test
  void a_correction_and_a_taking_back_count() {
    String corrected =
        line(
            "{'kind':'correction','body':{'target':'camber','kind':'alignment','body':"
                + "{'corner':'lf','rolled':true,'gauge':{'read':'-0.8°'}},'reason':'read wrong'}}");
    AlignmentWay.Gauge gauge =
        (AlignmentWay.Gauge)
            book(corrected).card("lf").aligned().read("camber").orElseThrow().way();
    assertEquals("-0.8°", gauge.read().typed());
    String back = line("{'kind':'correction','body':{'target':'camber','reason':'not this car'}}");
    assertTrue(book(back).card("lf").aligned().read("camber").isEmpty());
  }

  private static String target(String corner, String figure, String ends) {
    return line(
        "{'kind':'target','body':{'corner':'"
            + corner
            + "','figure':'"
            + figure
            + "'"
            + ends
            + "}}");
  }

  @Test
  void a_target_counts_from_its_entry_on_and_is_taken_away_by_one_without_ends() {
    CarBook book =
        book(
            target("lf", "camber", ",'leastAngle':'-1°','mostAngle':'0°'"),
            target("lf", "camber", ",'mostAngle':'-0.5°'"),
            target("lf", "camber", ""),
            target("rf", "total-toe", ",'most':'1/8 in'"));
    assertEquals("−1° to 0°", asked(book.asOf(book.n() - 3)));
    assertEquals("at most −0.5°", asked(book.asOf(book.n() - 2)));
    assertTrue(book.card("lf").aligned().target(AlignedFigure.CAMBER).isEmpty());
    assertFalse(book.card("lf").aligned().target(AlignedFigure.TOTAL_TOE).isEmpty());
    assertTrue(book.card("lr").aligned().target(AlignedFigure.TOTAL_TOE).isEmpty());
  }

  private static String asked(CarBook book) {
    return book.card("lf").aligned().target(AlignedFigure.CAMBER).orElseThrow().content().inWords();
  }

  @Test
  void what_cannot_be_is_refused_in_a_sentence() {
    assertRefused(
        of("x", "lf", "'gauge':{'read':'1°'},'spot':{'inward':'1 mm','distance':'9 mm'}"));
    assertRefused(of("x", "lf", "'gauge':{'read':'1°','turned':'1°','zero':'0°'}"));
    assertRefused(of("x", "lf", "'sweep':" + "{'by':'wheel-heading'}"));
    assertRefused(of("x", "lf", "'tape':{'front':'2000 mm','rear':'100 mm','across':'700 mm'}"));
    assertRefused(target("lf", "scrub", ",'mostAngle':'1°'"));
    assertRefused(target("lf", "caster", ",'most':'1 in'"));
    assertRefused(target("lf", "caster", ",'leastAngle':'6°','mostAngle':'4°'"));
  }

  private static void assertRefused(String line) {
    BookRefused refused = assertThrows(BookRefused.class, () -> book(line));
    assertTrue(refused.getMessage().startsWith("Entry 11 ("), refused.getMessage());
  }
}
