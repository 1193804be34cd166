package spindlebook.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import spindlebook.drawing.BladeDrawing.Box;
import spindlebook.drawing.BladeDrawing.Label;
import spindlebook.drawing.TapeBlade.Band;
import spindlebook.drawing.TapeBlade.Mark;

class BladeDrawingTest {
  private static final String[] WORDS = {
    "tie rod",
    "Tie rod to upper arm, full right",
    "Strap stops here today",
    "",
    "shock",
    "Frame 2 in off the ground",
    "Unbreakablylongnameofawatchpointwithoutanyspace"
  };

  private static Mark mark(double positionMm, Mark.Kind kind, double uncertaintyMm) {
    return new Mark(positionMm, FigureText.of("+1 1/2", ""), "tie rod", kind, uncertaintyMm, null);
  }

  private static TapeBlade blade(List<Mark> marks) {
    return new TapeBlade("b", -200, 200, LengthScale.INCH, List.of(), marks, "t", "d");
  }

  private static TapeBlade random(Random random) {
    double from = -50 - random.nextInt(400);
    double to = from + 40 + random.nextInt(700);
    Mark.Kind[] kinds = Mark.Kind.values();
    State[] states = State.values();
    List<Mark> marks = new ArrayList<>();
    int n = random.nextInt(26);
    for (int i = 0; i < n; i++) {
      boolean tie = i > 0 && random.nextInt(3) == 0;
      double at = from - 20 + random.nextDouble() * (to - from + 40);
      marks.add(
          new Mark(
              tie ? marks.get(i - 1).positionMm() : at,
              random.nextInt(4) == 0 ? null : FigureText.of("−11 13/16", ""),
              WORDS[random.nextInt(WORDS.length)],
              kinds[random.nextInt(kinds.length)],
              random.nextInt(2) * random.nextDouble() * 9,
              random.nextBoolean() ? null : states[random.nextInt(states.length)]));
    }
    LengthScale scale = random.nextBoolean() ? LengthScale.INCH : LengthScale.MM;
    return new TapeBlade("b", from, to, scale, List.of(), marks, "t", "d");
  }

  @Test
  void labels_never_overlap_and_stay_inside_the_drawing() {
    Random random = new Random(22);
    for (int round = 0; round < 1500; round++) {
      TapeBlade blade = random(random);
      for (BladeDrawing drawing :
          List.of(BladeDrawing.standing(blade), BladeDrawing.lying(blade))) {
        Box all = new Box(0, 0, drawing.width(), drawing.height());
        List<Label> labels = drawing.labels();
        for (int i = 0; i < labels.size(); i++) {
          Box box = labels.get(i).box();
          assertTrue(box.within(all), drawing.mark() + " round " + round + ": " + box);
          assertFalse(box.overlaps(drawing.tape()), drawing.mark() + " round " + round);
          for (int j = 0; j < i; j++) {
            assertFalse(
                box.overlaps(labels.get(j).box()),
                drawing.mark() + " round " + round + ": " + box + labels.get(j).box());
          }
        }
      }
    }
  }

  @Test
  void every_mark_gets_its_label_and_standing_ones_keep_the_order_of_the_positions() {
    Random random = new Random(23);
    for (int round = 0; round < 500; round++) {
      TapeBlade blade = random(random);
      List<Label> labels = BladeDrawing.standing(blade).labels();
      List<Mark> marks =
          blade.marks().stream()
              .sorted(Comparator.comparingDouble(Mark::positionMm).reversed())
              .toList();
      assertEquals(marks.size(), labels.size());
      for (int i = 0; i < labels.size(); i++) {
        assertEquals(
            "m-" + marks.get(i).kind().name().toLowerCase(java.util.Locale.ROOT),
            labels.get(i).mark());
        if (i > 0) {
          assertTrue(labels.get(i - 1).box().y() < labels.get(i).box().y());
        }
      }
      boolean ride = marks.stream().anyMatch(mark -> mark.kind() == Mark.Kind.RIDE);
      assertEquals(marks.size() - (ride ? 1 : 0), BladeDrawing.lying(blade).labels().size());
    }
  }

  @Test
  void a_text_line_stays_in_the_room_set_aside_for_its_label() {
    Random random = new Random(24);
    for (int round = 0; round < 300; round++) {
      for (Label label : BladeDrawing.standing(random(random)).labels()) {
        Box box = label.box();
        label
            .words()
            .forEach(
                line -> {
                  assertTrue(line.y() <= box.y() + box.height() && line.y() - 10 >= box.y() - 1);
                  assertTrue(
                      line.x() + TextWidth.of(line.text(), 14.5, label.tag() != null)
                          <= box.x() + box.width() + 0.2);
                });
      }
    }
  }

  @Test
  void a_drawing_with_too_many_labels_grows() {
    List<Mark> many = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      many.add(mark(0, Mark.Kind.LIMIT, 0));
    }
    assertTrue(
        BladeDrawing.standing(blade(many)).height()
            > BladeDrawing.standing(blade(many.subList(0, 3))).height());
    assertTrue(
        BladeDrawing.lying(blade(many)).height()
            > BladeDrawing.lying(blade(many.subList(0, 3))).height());
  }

  @Test
  void bump_is_up_when_standing_and_right_when_lying() {
    TapeBlade blade = blade(List.of(mark(150, Mark.Kind.STOP, 0), mark(-150, Mark.Kind.STOP, 0)));
    List<Label> standing = BladeDrawing.standing(blade).labels();
    assertTrue(standing.get(0).box().y() < standing.get(1).box().y());
    List<Label> lying = BladeDrawing.lying(blade).labels();
    assertTrue(lying.get(0).box().x() < lying.get(1).box().x());
  }

  @Test
  void only_the_limit_that_rules_says_so() {
    BladeDrawing drawing =
        BladeDrawing.standing(
            blade(List.of(mark(90, Mark.Kind.RULES, 0), mark(100, Mark.Kind.LIMIT, 0))));
    assertEquals(1, drawing.labels().stream().filter(label -> label.tag() != null).count());
  }

  @Test
  void an_uncertain_position_gets_a_bracket_and_a_chosen_one_none() {
    TapeBlade blade = blade(List.of(mark(90, Mark.Kind.LIMIT, 2), mark(-90, Mark.Kind.STOP, 0)));
    for (BladeDrawing drawing : List.of(BladeDrawing.standing(blade), BladeDrawing.lying(blade))) {
      assertEquals(
          1, drawing.lines().stream().filter(line -> line.mark().equals("bracket")).count());
    }
  }

  @Test
  void a_mark_beyond_the_tape_is_drawn_at_its_end() {
    TapeBlade far = blade(List.of(mark(9000, Mark.Kind.STOP, 0)));
    TapeBlade end = blade(List.of(mark(200, Mark.Kind.STOP, 0)));
    assertEquals(BladeDrawing.lying(end).lines(), BladeDrawing.lying(far).lines());
  }

  @Test
  void bands_lie_on_the_tape_to_scale() {
    TapeBlade blade =
        new TapeBlade(
            "b",
            -200,
            200,
            LengthScale.MM,
            List.of(new Band(-100, 100, Band.Kind.USABLE)),
            List.of(),
            "t",
            "d");
    for (BladeDrawing drawing : List.of(BladeDrawing.standing(blade), BladeDrawing.lying(blade))) {
      Box band = drawing.areas().get(0).box();
      Box tape = drawing.tape();
      assertEquals(
          tape.width() * tape.height() / 2, band.width() * band.height(), 0.2 * tape.width());
      assertTrue(band.within(tape));
    }
  }

  @Test
  void inches_are_numbered_from_zero_both_ways_without_a_sign() {
    List<String> numerals =
        BladeDrawing.standing(
                new TapeBlade("b", -60, 60, LengthScale.INCH, List.of(), List.of(), "t", "d"))
            .numerals()
            .stream()
            .filter(words -> words.mark().equals("mid"))
            .map(BladeDrawing.Words::text)
            .toList();
    assertEquals(List.of("2", "1", "0", "1", "2"), numerals);
  }

  @Test
  void centimetres_are_numbered_by_fives() {
    List<String> numerals =
        BladeDrawing.standing(
                new TapeBlade("b", -110, 110, LengthScale.MM, List.of(), List.of(), "t", "d"))
            .numerals()
            .stream()
            .filter(words -> words.mark().equals("mid"))
            .map(BladeDrawing.Words::text)
            .toList();
    assertEquals(List.of("10", "5", "0", "5", "10"), numerals);
  }

  @Test
  void a_tape_that_runs_downward_is_refused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new TapeBlade("b", 5, 5, LengthScale.MM, List.of(), List.of(), "t", "d"));
  }
}
