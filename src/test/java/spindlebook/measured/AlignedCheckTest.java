package spindlebook.measured;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.fold.CarLines.CAR;
import static spindlebook.fold.CarLines.LF;
import static spindlebook.fold.CarLines.line;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.advice.DriveCheck;
import spindlebook.advice.ThingFirst;
import spindlebook.advice.ThingFirst.Why;
import spindlebook.fold.CarBook;
import spindlebook.fold.HandBooks;

/** Targets among what is to see to before a drive, from small books. */
class AlignedCheckTest {
  private static final String RF =
      LF.replace("\"lf\"", "\"rf\"").replace("left-front", "right-front");
  private static final String WANTED =
      line(
          "{'kind':'target','body':{'corner':'lf','figure':'camber','leastAngle':'-1°',"
              + "'mostAngle':'0°'}}");

  private static String camber(String read) {
    return line(
        "{'kind':'alignment','body':{'corner':'lf','rolled':true,'gauge':{'read':'"
            + read
            + "','zero':'0°'}}}");
  }

  private static DriveCheck check(String... later) {
    return AlignedCheck.of(book(later));
  }

  private static CarBook book(String... later) {
    List<String> lines = new ArrayList<>(List.of(CAR, LF, RF));
    lines.addAll(List.of(later));
    return HandBooks.of(lines);
  }

  private static List<Why> why(DriveCheck check) {
    return check.things().stream()
        .filter(ThingFirst.OffTarget.class::isInstance)
        .map(ThingFirst::why)
        .toList();
  }

  @Test
  void without_a_target_nothing_of_alignment_is_asked() {
    assertEquals(List.of(), why(check(camber("3°"))));
    CarBook book = book(camber("3°"));
    assertEquals(DriveCheck.of(book), AlignedCheck.of(book));
  }

  @Test
  void a_target_is_kept_missed_undecided_or_not_known() {
    assertEquals(List.of(), why(check(WANTED, camber("-0.5°"))));
    assertEquals(List.of(Why.SHORT), why(check(WANTED, camber("0.5°"))));
    // 0.1° off the end, with u of 0.09°.
    assertEquals(List.of(Why.CANT_TELL), why(check(WANTED, camber("-0.1°"))));
    assertEquals(List.of(Why.MISSING), why(check(WANTED)));
  }

  @Test
  void a_figure_that_went_stale_is_to_be_measured_again() {
    String turned =
        line("{'kind':'adjustment','body':{'corner':'lf','adjuster':'upper','to':'1 turn'}}");
    String back =
        line("{'kind':'adjustment','body':{'corner':'lf','adjuster':'upper','to':'0 turns'}}");
    assertEquals(List.of(Why.STALE), why(check(WANTED, camber("-0.5°"), turned)));
    assertEquals(List.of(Why.NOT_CONFIRMED), why(check(WANTED, camber("-0.5°"), turned, back)));
    assertEquals(List.of(), why(check(WANTED, camber("-0.5°"), turned, camber("-0.6°"))));
  }

  @Test
  void what_waits_for_an_answer_is_asked_for_once() {
    String jack = camber("0.5°").replace("true", "false");
    DriveCheck check = check(WANTED, jack);
    assertEquals(List.of(), why(check));
    assertTrue(check.things().stream().anyMatch(ThingFirst.InDoubt.class::isInstance));
  }

  @Test
  void the_axle_s_is_told_once_and_never_makes_the_worst_corner() {
    String total =
        line("{'kind':'target','body':{'corner':'rf','figure':'total-toe','most':'1/8 in'}}");
    DriveCheck check = check(total);
    List<ThingFirst> off =
        check.things().stream().filter(ThingFirst.OffTarget.class::isInstance).toList();
    assertEquals(1, off.size());
    assertEquals("lf", off.get(0).corner());
    assertFalse(off.get(0).ofReadings());
  }
}
