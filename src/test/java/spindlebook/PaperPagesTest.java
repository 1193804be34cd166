package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rod ends on paper; the numbers are the worked examples of docs/methods-alignment.md. */
class PaperPagesTest {
  private static final Map<String, String> ARM =
      Map.of("thread", "1/2-20", "apart", "300 mm", "arm", "385.29 mm", "spread", "350 mm");

  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop);
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private Page paper(String page, Map<String, String> typed) {
    String query =
        typed.entrySet().stream()
            .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
            .collect(Collectors.joining("&"));
    return shop.get("/corners/" + marmot.left + "/" + page + "?" + query);
  }

  private String rodEnds(Map<String, String> more) {
    Map<String, String> typed = new java.util.HashMap<>(ARM);
    typed.putAll(more);
    return paper("rod-ends", typed).is(200).text();
  }

  @Test
  void two_turns_in_at_both_ends_are_half_a_degree_of_camber() {
    String text = rodEnds(Map.of("front", "-2", "rear", "-2"));
    // 2 √((1.5875/300)² + 0.4²)/√3 of it: the joints' distance, and the short formula's own 0.4.
    assertTrue(text.contains("top outward; short formula −0.49° ± 0.23"), text);
    // Nothing, ± 2/√3 · 0.15 of the camber.
    assertTrue(text.contains("top rearward; short formula 0.000° ± 0.085"), text);
    assertTrue(text.contains("+ outboard; by the pitches alone, no ± −1/8 in"), text);
  }

  @Test
  void one_end_in_and_the_other_out_is_caster() {
    String text = rodEnds(Map.of("front", "-0.5", "rear", "0.5"));
    // 2/√3 · √(1.5875² (1/300² + 1/385.29² + 1/350²) + 0.03²) of it.
    assertTrue(text.contains("short formula −0.2670° ± 0.0096"), text);
  }

  @Test
  void a_wanted_change_comes_back_as_turns_that_can_be_set() {
    String text = rodEnds(Map.of("camber", "-0.4851"));
    // Two turns, ± 2/√3 √(0.4² + (0.15 · 350/(2 · 385.29))² + (1.5875/300)²) of them.
    assertTrue(
        text.contains(
            "Front rod end + out, − in: clockwise, seen from its ball; half turns nearest to −2.00"
                + " ± 0.94 −2.0 turns"),
        text);
    assertTrue(text.contains("−0.49°"), text);
  }

  @Test
  void thread_left_is_held_against_one_and_a_half_diameters() {
    // 30 mm less two turns of 5/8-18 is 27.18 mm, 1.07 in; four turns more leave 21.53 < 23.81 mm.
    String enough =
        rodEnds(Map.of("thread", "5/8-18", "engaged", "30 mm", "front", "2", "rear", "2"));
    assertTrue(enough.matches(".*surely keep that 1 1/16 in [^.]{0,60}clear.*"), enough);
    String few = rodEnds(Map.of("thread", "5/8-18", "engaged", "30 mm", "front", "6", "rear", "6"));
    assertTrue(few.matches(".*surely (keep|have) that 7/8 in [^.]{0,60}not enough.*"), few);
  }

  @Test
  void threads_along_converging_tubes_bind_and_square_ones_do_not() {
    assertTrue(rodEnds(Map.of("front", "1", "rear", "1")).contains("Within the tabs' slack."));
    // cos 65.9° is 0.408: two times 1.27 mm of it is 1.04 mm, more than the half assumed.
    String text = rodEnds(Map.of("front", "1", "rear", "1", "thread-angle", "65.9"));
    assertTrue(text.contains("a welded arm binds"), text);
  }

  @Test
  void toe_comes_along_once_the_rack_and_the_rod_are_known() {
    marmot.send("/cars/" + marmot.car + "/details", Map.of("rack", "behind-axle"));
    Map<String, String> toe = Map.of("outer-above", "55 mm", "steering-arm", "158 mm");
    Map<String, String> typed = new java.util.HashMap<>(toe);
    typed.put("front", "1");
    typed.put("rear", "1");
    // One turn out is 1.27/300 rad, 0.2425° of camber; − 0.2425 · 55/158 = −0.0844°.
    String text = rodEnds(typed);
    // 0.3 of the camber is not known: 2 · 0.3/√3 · 0.2425°.
    assertTrue(text.contains("a level tie rod assumed. Set toe last. −0.084° ± 0.085"), text);
  }

  @Test
  void a_link_says_what_a_turn_of_it_whole_does() {
    String text = rodEnds(Map.of("thread", "3/4-16", "rear-thread", "3/4-16 LH"));
    assertTrue(
        text.contains("both pitches, left- and right-hand; 3.18 mm; by the stamp, no ± 0.125 in"),
        text);
    assertTrue(rodEnds(Map.of()).contains("does nothing: one hand and one pitch at both ends"));
    String differ = rodEnds(Map.of("thread", "3/4-16", "rear-thread", "5/8-18"));
    // 25.4/16 less 25.4/18 mm.
    assertTrue(
        differ.contains("difference of the pitches, one hand at both ends; 0.18 mm"), differ);
  }

  @Test
  void a_left_hand_end_is_turned_the_other_way_to_come_out_and_to_go_in() {
    Map<String, String> hands = Map.of("thread", "5/8-18", "rear-thread", "5/8-18 LH");
    Map<String, String> typed = new java.util.HashMap<>(hands);
    typed.put("camber", "1");
    String longer = rodEnds(typed);
    assertTrue(longer.contains("Front rod end + out, − in: anticlockwise, seen"), longer);
    assertTrue(longer.contains("Rear rod end + out, − in: clockwise, seen"), longer);
    typed.put("camber", "-1");
    String shorter = rodEnds(typed);
    assertTrue(shorter.contains("Front rod end + out, − in: clockwise, seen"), shorter);
    assertTrue(shorter.contains("Rear rod end + out, − in: anticlockwise, seen"), shorter);
  }

  @Test
  void an_arm_with_converging_threads_by_hand() {
    // 5/8-18 is 25.4/18 = 1.41111 mm a turn. h 292.1, a 387.35, S 330.2 mm, threads at 70°.
    Map<String, String> typed = new java.util.HashMap<>();
    typed.putAll(Map.of("thread", "5/8-18", "rear-thread", "5/8-18 LH", "thread-angle", "70"));
    typed.putAll(Map.of("apart", "11 1/2", "arm", "15 1/4", "spread", "13"));
    typed.putAll(Map.of("front", "-1/2", "rear", "-1 1/2", "engaged", "1 1/4", "slack", "1/32"));
    String text = paper("rod-ends", typed).is(200).text();
    double sin = Math.sin(Math.toRadians(70));
    double cos = Math.cos(Math.toRadians(70));
    double camber = Math.toDegrees(-2 * 1.411111 * sin / 2 / 292.1);
    assertEquals(-0.2601, camber, 5e-5);
    assertTrue(text.contains("short formula −0.26° ± 0.23"), text);
    double caster =
        Math.toDegrees((-0.5 + 1.5) * 1.411111 * (387.35 * sin / 330.2 + cos / 2) / 292.1);
    assertEquals(0.3524, caster, 5e-5);
    assertTrue(text.contains("short formula +0.352°"), text);
    // Both in by 2 turns together: 2 · 1.411111 · cos 70° closer, 0.97 mm, slack 0.79.
    assertTrue(text.contains("+ apart, − together; 0.79 mm of slack in the tabs. −0.97"), text);
    assertTrue(text.contains("More than the tabs' slack: a welded arm binds"), text);
    // 31.75 mm and half a turn: 32.46 mm, 1 1/4 in; a turn and a half: 33.87, 1 5/16 in.
    assertTrue(
        text.matches(".*Front at least 15/16 in,.*turns and surely keep that 1 1/4 in.*"), text);
    assertTrue(
        text.matches(".*Rear at least 15/16 in,.*turns and surely keep that 1 5/16 in.*"), text);
  }

  @Test
  void a_rod_end_that_comes_out_of_its_arm_is_told_so_and_each_end_has_its_own_thread() {
    Map<String, String> typed = Map.of("engaged", "1/2", "front", "15", "engaged-rear", "2");
    String text = rodEnds(typed);
    // 12.7 less 15 of 1.27 mm is 6.35 below nothing.
    assertTrue(text.contains("Front it comes out of the arm −1/4 in"), text);
    assertTrue(text.matches(".*Rear at least [^ ]+ in,.* 2 in ± 1/8.*"), text);
    assertTrue(text.contains("Over 4 turns the short formula"), text);
  }

  @Test
  void the_lower_arm_turns_every_sign_round() {
    String text = rodEnds(Map.of("which", "lower", "front", "-2", "rear", "-1"));
    // + 3 · 1.27/600 rad; caster + 1.27 · 385.29/(350 · 300).
    assertTrue(text.contains("short formula +0.36°"), text);
    assertTrue(text.contains("short formula +0.267°"), text);
  }

  @Test
  void what_no_rod_end_does_is_said_in_one_sentence_and_kept_as_typed() {
    String[][] nasty = {
      {"thread", " ", "Type the thread of the front rod end"},
      {"thread", "5/8", "Which pitch? Listed are 5/8-11, 5/8-18."},
      {"thread", "M16", "Which pitch? Listed are M16x2, M16x1.5."},
      {"rear-thread", "5/8-99", "Which pitch?"},
      {"apart", "0", "Type how far the upper joint stands above the lower, from 1 in"},
      {"apart", "999", "Type how far the upper joint stands above the lower, from 1 in"},
      {"arm", "-4", "is below nothing"},
      {"spread", "1/3", "has a fraction other than"},
      {"spread", "", "Type pivot to pivot, along the car, from 1 in"},
      {"front", "1000", "Type turns as a number"},
      {"front", "1e1", "Type turns as a number"},
      {"rear", "two", "Type turns as a number"},
      {"rear", "1/0", "Type turns as a number"},
      {"rear", "81/4", "Type turns as a number"},
      {"lower-joint", "8 mm, 790 mm", "Type three lengths with ; between"},
      {"lower-joint", "1; 2; 3", "Exact turns need all nine points: type this one as well."},
      {"camber", "45", "Rod ends do not change that much"},
      {"caster", "lots", "cannot be read"},
      {"engaged", "40", "No rod end has that much thread"},
      {"engaged-rear", "-1", "is below nothing"},
      {"thread-angle", "120", "Type an angle from 10° to 90°"},
      {"thread-angle", "-70", "Type an angle from 10° to 90°"},
      {"slack", "2", "Tabs that loose hold nothing"},
      {"rod-slope", "3", "Type a number between −1 and 1"},
      {"steering-arm", "1/4", "Type the steering arm's length, from 1 in"},
      {"good", "<b>", "cannot be read"},
      {"good-angle", "-1", "Type an angle from 0 to 2°"}
    };
    for (String[] one : nasty) {
      Map<String, String> typed = new java.util.HashMap<>(ARM);
      typed.put(one[0], one[1]);
      Page page = paper("rod-ends", typed).is(422);
      assertTrue(page.text().contains(one[2]), one[0] + " " + one[1] + ": " + page.text());
      assertEquals(1, page.html().split("class=\"problem\"", -1).length - 1, one[0] + " " + one[1]);
      assertTrue(page.html().contains("value=\"" + one[1].replace("<", "&lt;") + "\""), one[1]);
    }
    Map<String, String> both = new java.util.HashMap<>(ARM);
    both.put("front", "1");
    both.put("camber", "1");
    assertTrue(
        paper("rod-ends", both).is(422).text().contains("Type turns, or a change of camber"));
    assertTrue(paper("rod-ends", Map.of("front", "1")).is(422).text().contains("Type the thread"));
  }

  @Test
  void what_is_wrong_stays_as_typed_with_a_sentence() {
    Map<String, String> typed = new java.util.HashMap<>(ARM);
    typed.put("thread", "17 fine");
    typed.put("apart", "much");
    Page page = paper("rod-ends", typed).is(422);
    assertTrue(page.text().contains("No such thread is listed"), page.text());
    assertTrue(page.html().contains("value=\"17 fine\""));
    int entries = shop.entries();
    paper("rod-ends", ARM).is(200);
    assertEquals(entries, shop.entries());
  }

  /** The reference corner of the tests, in mm; what its turns do is in the reference rows. */
  private static final Map<String, String> G1 =
      Map.ofEntries(
          Map.entry("lower-front", "210 mm; 320 mm; 330 mm"),
          Map.entry("lower-rear", "-190 mm; 320 mm; 330 mm"),
          Map.entry("lower-joint", "8 mm; 790 mm; 290 mm"),
          Map.entry("upper-front", "150 mm; 360 mm; 575 mm"),
          Map.entry("upper-rear", "-200 mm; 360 mm; 575 mm"),
          Map.entry("upper-joint", "-22 mm; 745 mm; 590 mm"),
          Map.entry("tie-inner", "-152 mm; 335.5 mm; 372 mm"),
          Map.entry("tie-outer", "-150 mm; 778 mm; 345 mm"),
          Map.entry("wheel-centre", "0 mm; 900 mm; 405 mm"),
          Map.entry("camber-now", "-0.5°"),
          Map.entry("toe-now", "0.1°"),
          Map.entry("good", "0.1 mm"));

  @Test
  void with_the_pivots_the_turns_are_exact_beside_the_short_formula() {
    Map<String, String> typed = new java.util.HashMap<>(G1);
    typed.put("front", "-2");
    typed.put("rear", "-2");
    String text = rodEnds(typed);
    // Reference row: camber −0.9787, toe 0.2744 from −0.5 and 0.1.
    assertTrue(text.contains("from the pivots Camber + top outward −0.4787"), text);
    assertTrue(text.contains("kept at its height +0.174"), text);
  }

  @Test
  void threads_typed_as_90_degrees_are_square_and_leave_the_turns_exact() {
    Map<String, String> typed = new java.util.HashMap<>(G1);
    typed.put("front", "-2");
    typed.put("rear", "-2");
    String assumed = rodEnds(typed);
    typed.put("thread-angle", "90");
    String text = rodEnds(typed);
    assertTrue(text.contains("from the pivots Camber + top outward −0.4787"), text);
    assertFalse(text.contains("Camber + top outward; short formula"), text);
    String square = "; threads square to the pivot line assumed";
    assertTrue(assumed.contains(square), assumed);
    assertFalse(text.contains(square), "it was typed");
    typed.put("thread-angle", "89");
    assertTrue(rodEnds(typed).contains("with threads square to the pivot line only"));
  }

  /**
   * 2 turns in at both ends of the lower arm: the reference corner upside down in ShortRodEndsTest.
   */
  @Test
  void a_lower_arm_has_its_exact_turns_too() {
    Map<String, String> typed = new java.util.HashMap<>(G1);
    typed.putAll(Map.of("which", "lower", "front", "-2", "rear", "-2"));
    String text = rodEnds(typed);
    assertTrue(text.contains("from the pivots Camber + top outward +0."), text);
    assertFalse(text.contains("short formula 0"), text);
  }

  @Test
  void turns_for_a_wanted_change_are_exact_with_the_pivots() {
    Map<String, String> typed = new java.util.HashMap<>(G1);
    typed.put("camber", "-0.4787");
    // Two turns in at both took caster with them by 5.7176° less what it was: nothing near 0.01°.
    String text = rodEnds(typed);
    assertTrue(
        text.matches(".*Front rod end .*half turns nearest to −2\\.0\\d ± 0\\.\\d\\d −2\\.0.*"),
        text);
  }

  @Test
  void pivots_that_do_not_go_together_are_told_of() {
    Map<String, String> typed = new java.util.HashMap<>(G1);
    typed.putAll(ARM);
    typed.put("camber", "1°");
    typed.put("lower-joint", "8 mm, 790 mm");
    assertTrue(paper("rod-ends", typed).is(422).text().contains("Type three lengths with ;"));
    typed.put("camber", "");
    G1.keySet().stream().filter(k -> k.contains("-")).forEach(k -> typed.put(k, "1; 1; 1"));
    typed.put("camber-now", "0°");
    typed.put("toe-now", "0°");
    assertTrue(paper("rod-ends", typed).is(422).text().contains("the corner does not go together"));
  }

  @Test
  void what_is_typed_is_as_good_as_the_owner_says() {
    Map<String, String> typed = Map.of("front", "-2", "rear", "-2", "good", "1/4", "arm", "15");
    // Four times 1/16 in: U of caster is 2/√3 · √(6.35² (1/300² + 1/381² + 1/350²) + 0.03²) of it,
    // 0.0135°.
    Map<String, String> caster = new java.util.HashMap<>(typed);
    caster.put("front", "-0.5");
    caster.put("rear", "0.5");
    assertTrue(rodEnds(caster).contains("short formula −0.264° ± 0.014"), rodEnds(caster));
    Map<String, String> rough = new java.util.HashMap<>(ARM);
    rough.put("good", "3");
    assertTrue(paper("rod-ends", rough).is(422).text().contains("Lengths that rough say nothing"));
  }
}
