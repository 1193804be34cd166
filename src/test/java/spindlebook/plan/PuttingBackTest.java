package spindlebook.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.Place;
import spindlebook.definition.Setting;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.HandBooks;
import spindlebook.fold.InForce;
import spindlebook.fold.Noted;
import spindlebook.fold.RandomBook;
import spindlebook.plan.PuttingBack.Turn;

/** By hand, and on seeded books; the order is common practice, no source. */
class PuttingBackTest {
  private static final List<String> DUNE =
      List.of(
          line("car", "car", "{'details':{'name':'Dune'}}"),
          line(
              "lf",
              "corner",
              "{'car':'car','place':'left-front','layout':'steered-double-a-arm','adjusters':[{'adjuster':'strap','kind':'limit-strap','unit':'holes','moreShortens':true,'first':'hole"
                  + " 3'},{'adjuster':'upper','kind':'upper-rod-ends','unit':'turns','moreShortens':false,'first':'0"
                  + " turns'},{'adjuster':'tie','kind':'tie-rod-length','unit':'turns','moreShortens':false,'first':'0"
                  + " turns'},"
                  + "{'adjuster':'tyre','kind':'tyre','unit':'words','moreShortens':false}]}"),
          line("todo", "to-do", "{'car':'car','words':'look'}"));

  private static String line(String key, String kind, String body) {
    return "{\"key\":\"%s\",\"kind\":\"%s\",\"body\":%s}"
        .formatted(key, kind, body.replace('\'', '"'));
  }

  private static String set(String key, String adjuster, String to) {
    return line(
        key, "adjustment", "{'corner':'lf','adjuster':'" + adjuster + "','to':'" + to + "'}");
  }

  /** Back to the entry before the lines. */
  private static PuttingBack back(String... lines) {
    List<String> all = new ArrayList<>(DUNE);
    all.addAll(List.of(lines));
    return PuttingBack.to(HandBooks.of(all), DUNE.size());
  }

  private static List<String> steps(PuttingBack back) {
    return back.steps().stream()
        .map(s -> s.adjuster().adjuster() + " " + s.then().inWords())
        .toList();
  }

  private static List<String> cannot(PuttingBack back) {
    return back.cannot().stream().map(c -> c.what() + ": " + c.why()).toList();
  }

  @Test
  void arms_come_first_then_the_steering_and_the_strap_last() {
    PuttingBack back =
        back(set("a1", "strap", "hole 4"), set("a2", "tie", "2 turns"), set("a3", "upper", "1"));
    assertEquals(List.of("upper 0 turns", "tie 0 turns", "strap hole 3"), steps(back));
    assertEquals(List.of(), cannot(back));
  }

  @Test
  void every_kind_of_adjuster_has_its_turn() {
    Arrays.stream(AdjusterKind.values()).forEach(Turn::of);
    assertEquals(Turn.PARTS, Turn.of(AdjusterKind.ARM));
    assertEquals(Turn.CARRIED, Turn.of(AdjusterKind.SPRING_PRELOAD));
    assertEquals(Turn.STOPS, Turn.of(AdjusterKind.BUMP_STOP_SPACER));
  }

  @Test
  void what_was_set_back_already_is_no_step() {
    PuttingBack back = back(set("a1", "strap", "hole 4"), set("a2", "strap", "hole 3"));
    assertEquals(new PuttingBack(List.of(), List.of()), back);
  }

  @Test
  void a_setting_that_was_never_said_then_is_told() {
    PuttingBack back = back(set("a1", "tyre", "new ones"));
    assertEquals(List.of(), steps(back));
    assertEquals(List.of("tyre: what it was set to was not said then"), cannot(back));
  }

  @Test
  void what_the_first_change_since_says_it_came_from_is_where_it_stood() {
    PuttingBack back =
        back(
            line(
                "a1",
                "adjustment",
                "{'corner':'lf','adjuster':'tyre','from':'old ones','to':'new ones'}"));
    assertEquals(List.of("tyre old ones"), steps(back));
  }

  @Test
  void a_setting_mistyped_then_and_corrected_since_is_put_back_as_corrected() {
    List<String> all = new ArrayList<>(DUNE);
    all.add(set("a1", "strap", "hole 33"));
    long n = all.size();
    all.add(
        line(
            "c1",
            "correction",
            "{'target':'a1','kind':'adjustment','body':{'corner':'lf','adjuster':'strap','to':'hole"
                + " 2'},'reason':'slip'}"));
    all.add(set("a2", "strap", "hole 5"));
    CarBook book = HandBooks.of(all);
    assertEquals(List.of("strap hole 2"), steps(PuttingBack.to(book, n)));
  }

  @Test
  void adjusters_added_and_retired_since_are_told_and_not_set() {
    PuttingBack back =
        back(
            line(
                "d1",
                "definition",
                "{'corner':'lf','adjuster':"
                    + "{'adjuster':'spacer','kind':'bump-stop-spacer','unit':'holes','moreShortens':false}}"),
            line("d2", "definition", "{'corner':'lf','retired':{'adjuster':'strap'}}"),
            set("a1", "spacer", "hole 1"));
    assertEquals(List.of(), steps(back));
    assertEquals(
        List.of(
            "bump-stop spacer: was not in the book then",
            "limit strap: was retired since; it stood at hole 3"),
        cannot(back));
  }

  @Test
  void what_is_counted_another_way_now_is_told() {
    PuttingBack back =
        back(
            line(
                "d1",
                "definition",
                "{'corner':'lf','adjuster':"
                    + "{'adjuster':'strap','kind':'limit-strap','unit':'words','moreShortens':false}}"),
            set("a1", "strap", "long one"));
    assertEquals(List.of(), steps(back));
    assertEquals(
        List.of("limit strap: stood at hole 3 and is counted another way now"), cannot(back));
  }

  @Test
  void what_befell_the_car_is_told_and_drives_as_one() {
    PuttingBack back =
        back(
            line(
                "h1",
                "happening",
                "{'car':'car','corner':'lf','what':'cut-welded-ground','words':'tab'}"),
            line("h2", "happening", "{'car':'car','what':'hit-or-bent'}"),
            line("u1", "use", "{'car':'car','unit':'hours','amount':3}"),
            line("u2", "use", "{'car':'car','unit':'hours','amount':2}"));
    assertEquals(
        List.of(
            "cut, welded or ground: tab: no setting undoes it",
            "hit or bent: no setting straightens it",
            "driven, 2 times: straps may have stretched"),
        cannot(back));
    assertEquals(Place.LEFT_FRONT, back.cannot().get(0).place());
    assertEquals("h1", back.cannot().get(0).entry());
    assertEquals("u2", back.cannot().get(2).entry());
  }

  @Test
  void a_corner_added_since_is_told() {
    PuttingBack back =
        back(
            line(
                "rf",
                "corner",
                "{'car':'car','place':'right-front','layout':'steered-double-a-arm'}"));
    assertEquals(List.of("all of it: was not in the book then"), cannot(back));
    assertEquals(Place.RIGHT_FRONT, back.cannot().get(0).place());
  }

  @Test
  void the_steps_bring_every_setting_of_any_earlier_entry_back_and_then_nothing_is_left() {
    int steps = 0;
    for (long seed = 1; seed <= 60; seed++) {
      CarBook now = CarBook.of(new RandomBook(seed).entries(150));
      for (long n = 5; n < 150; n += 24) {
        PuttingBack back = PuttingBack.to(now, n);
        CarBook done = back.made(now);
        assertEquals(now.n() + back.steps().size(), done.n());
        assertEquals(List.of(), PuttingBack.to(done, n).steps(), "seed " + seed);
        for (PuttingBack.Step step : back.steps()) {
          Setting is =
              done.card(step.corner()).adjuster(step.adjuster().adjuster()).orElseThrow().setting();
          assertTrue(step.then().same(is), "seed " + seed);
        }
        steps += back.steps().size();
      }
    }
    assertTrue(steps > 100, "steps " + steps);
  }

  @Test
  void without_a_correction_since_the_settings_are_those_known_then() {
    int held = 0;
    for (long seed = 1; seed <= 280; seed++) {
      List<Noted> entries = new RandomBook(seed).entries(110);
      CarBook now = CarBook.of(entries);
      // Back to just after the last correction or answer.
      long n =
          entries.stream()
              .filter(
                  e ->
                      e.content() instanceof Content.Correction
                          || e.content() instanceof Content.Answer)
              .mapToLong(Noted::n)
              .max()
              .orElse(3);
      CarBook done = PuttingBack.to(now, n).made(now);
      for (String corner : now.corners()) {
        for (InForce stood : now.asOf(n).card(corner).adjusters()) {
          var is = done.card(corner).adjuster(stood.adjuster().adjuster());
          boolean countedAlike =
              is.isPresent()
                  && stood.setting() != null
                  && is.get().adjuster().unit() == stood.setting().unit();
          if (countedAlike) {
            assertTrue(
                stood.setting().same(is.get().setting()),
                () -> stood + " at " + n + " is " + is + " for " + PuttingBack.to(now, n));
            held++;
          }
        }
      }
    }
    assertTrue(held > 200, "held " + held);
  }
}
