package spindlebook.fold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static spindlebook.fold.CarLines.CAR;
import static spindlebook.fold.CarLines.LF;
import static spindlebook.fold.CarLines.line;
import static spindlebook.fold.CarLines.upper;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.definition.Place;
import spindlebook.entry.Content;
import spindlebook.entry.PhotoSide;
import spindlebook.entry.TelltaleKind;
import spindlebook.entry.UseUnit;
import spindlebook.words.EntryWords;

/** Drives, things to do and fasteners, folded from small books. */
class LifeOfTheCarTest {
  private static final String TIGHT =
      line(
          "{'kind':'fastener','key':'tight','body':{'corner':'lf','adjuster':'upper','tight':true,"
              + "'marked':true}}");

  private static CarBook book(String... later) {
    List<String> lines = new ArrayList<>(List.of(CAR, LF));
    lines.addAll(List.of(later));
    return HandBooks.of(lines);
  }

  private static SeenFastener.State upperEnds(CarBook book) {
    return book.fasteners().get(0).state();
  }

  @Test
  void nobody_has_said_how_a_fastener_is_that_was_never_touched() {
    assertEquals(SeenFastener.State.NOT_SAID, upperEnds(book()));
    assertEquals(List.of(), book().fasteners().stream().filter(SeenFastener::open).toList());
  }

  @Test
  void a_change_opens_its_fastener_until_it_is_said_to_be_tight_and_marked() {
    assertEquals(SeenFastener.State.OPENED, upperEnds(book(upper("a", "1 turn"))));
    String notMarked =
        line(
            "{'kind':'fastener','body':{'corner':'lf','adjuster':'upper','tight':true,"
                + "'marked':false}}");
    CarBook half = book(upper("a", "1 turn"), notMarked);
    assertEquals(SeenFastener.State.NOT_MARKED, upperEnds(half));
    assertEquals(1, half.fasteners().stream().filter(SeenFastener::open).toList().size());
    CarBook whole = book(upper("a", "1 turn"), notMarked, TIGHT);
    assertEquals(SeenFastener.State.MARKED, upperEnds(whole));
    assertEquals(List.of(), whole.fasteners().stream().filter(SeenFastener::open).toList());
    CarBook again = book(upper("a", "1 turn"), TIGHT, upper("b", "2 turns"));
    assertEquals(SeenFastener.State.OPENED, upperEnds(again));
    assertEquals(
        "b", again.fasteners().stream().filter(SeenFastener::open).toList().get(0).opened().key());
  }

  @Test
  void the_same_number_said_again_turns_nothing() {
    assertEquals(SeenFastener.State.NOT_SAID, upperEnds(book(upper("a", "0 turns"))));
  }

  @Test
  void a_change_that_was_taken_back_opens_nothing() {
    String back = line("{'kind':'correction','body':{'target':'a','reason':'the other corner'}}");
    assertEquals(SeenFastener.State.NOT_SAID, upperEnds(book(upper("a", "1 turn"), back)));
  }

  @Test
  void tight_said_without_knowing_of_the_change_does_not_close_it() {
    CarBook before = book();
    CarBook changed = book(upper("a", "1 turn"));
    Content.Fastener tight = new Content.Fastener("lf", "upper", null, true, true, null);
    long knew = before.n();
    Noted late = new Noted(changed.n() + 1, "late", Instant.EPOCH, "Ada", knew, tight);
    assertEquals(SeenFastener.State.OPENED, upperEnds(changed.with(late)));
    Noted knowing = new Noted(changed.n() + 1, "late", Instant.EPOCH, "Ada", changed.n(), tight);
    assertEquals(SeenFastener.State.MARKED, upperEnds(changed.with(knowing)));
  }

  @Test
  void found_loose_is_open_though_nothing_was_changed_and_a_torque_figure_stays() {
    String torque =
        line("{'kind':'fastener','body':{'corner':'lf','adjuster':'upper','torque':'65 ft-lb'}}");
    String loose =
        line("{'kind':'fastener','body':{'corner':'lf','adjuster':'upper','tight':false}}");
    SeenFastener upper =
        book(torque, TIGHT, loose).fasteners().stream().filter(SeenFastener::open).toList().get(0);
    assertEquals(SeenFastener.State.LOOSE, upper.state());
    assertEquals("65 ft-lb", upper.torque());
    String none = line("{'kind':'fastener','body':{'corner':'lf','adjuster':'upper','torque':''}}");
    assertEquals(null, book(torque, none).fasteners().get(0).torque());
    assertEquals(SeenFastener.State.NOT_SAID, upperEnds(book(torque)));
  }

  @Test
  void what_has_no_thread_has_no_fastener_and_what_is_retired_has_none_any_more() {
    String tyre =
        line(
            "{'kind':'definition','body':{'corner':'lf','adjuster':{'adjuster':'tyre',"
                + "'kind':'tyre','unit':'words','moreShortens':false}}}");
    assertEquals(1, book(tyre).fasteners().size());
    String retired =
        line("{'kind':'definition','body':{'corner':'lf','retired':{'adjuster':'upper'}}}");
    assertEquals(List.of(), book(tyre, retired).fasteners());
  }

  @Test
  void a_thing_to_do_is_done_with_one_entry_and_to_do_again_with_another() {
    String grind =
        line("{'kind':'to-do','key':'g','body':{'corner':'lf','point':'tie','words':'grind tab'}}");
    String done = line("{'kind':'to-do','key':'d','body':{'target':'g','done':true}}");
    String again = line("{'kind':'to-do','body':{'target':'g','done':false}}");
    SeenToDo toDo = book(grind).toDos().get(0);
    assertTrue(toDo.open());
    assertEquals(Place.LEFT_FRONT, toDo.place());
    assertFalse(book(grind, done).toDos().get(0).open());
    assertEquals("d", book(grind, done).toDos().get(0).done().key());
    assertTrue(book(grind, done, again).toDos().get(0).open());
    String back = line("{'kind':'correction','body':{'target':'d','reason':'not yet'}}");
    assertTrue(book(grind, done, back).toDos().get(0).open());
  }

  @Test
  void a_drive_is_in_the_use_log_and_makes_a_strap_read_on_it_stale() {
    String use =
        line(
            "{'kind':'use','key':'u','body':{'car':'car','unit':'hours','amount':4.5,"
                + "'typed':'4 1/2','words':'dunes'}}");
    String driven = line("{'kind':'happening','body':{'car':'car','what':'driven'}}");
    CarBook twice = book(use, driven);
    assertEquals(2, twice.uses().size());
    assertEquals("driven, 4 1/2 hours: dunes", twice.uses().get(0).words());
    assertEquals(null, twice.lastUse().orElseThrow().use());
    assertTrue(book().lastUse().isEmpty());

    String strap =
        line(
            "{'kind':'reading','key':'s','body':{'height':'h','steering':'straight',"
                + "'quantity':'strap-length','result':'number','length':'20 in'}}");
    CarBook read = book(CarLines.R1, CarLines.height("h", "on-the-strap", "10 in"), strap);
    assertEquals(Standing.LIVE, read.card("lf").reading("s").orElseThrow().stands());
    CarBook out = book(CarLines.R1, CarLines.height("h", "on-the-strap", "10 in"), strap, use);
    assertEquals(Standing.STALE, out.card("lf").reading("s").orElseThrow().stands());
    assertEquals(
        "driven, 4 1/2 hours: dunes",
        out.card("lf").reading("s").orElseThrow().because().get(0).words());
  }

  @Test
  void each_is_told_in_words() {
    CarBook book = book();
    EntryWords words = new EntryWords(book);
    assertEquals(
        "left front · fastener of upper ends · tight, not marked · torque 65 ft-lb: new nut",
        words.of(new Content.Fastener("lf", "upper", "65 ft-lb", true, false, "new nut")));
    assertEquals(
        "left front · tie rod to arm · to do: grind tab",
        words.of(new Content.ToDo(null, "lf", "tie", "grind tab", null, null)));
    assertEquals(
        "the whole car · driven, 1 day out",
        words.of(new Content.Use("car", UseUnit.DAYS, 1, null, null)));
    assertEquals(
        "left front · tyre pressure as found · 18 psi",
        words.of(
            new Content.Telltale(
                "lf", TelltaleKind.TYRE_PRESSURE, null, "18 psi", null, null, null, null, null)));
    assertEquals(
        "left front · photo before · tie rod to arm: the tab",
        words.of(
            new Content.Photo(
                "lf", null, "tie", "a0".repeat(32), 8, 6, PhotoSide.BEFORE, "the tab")));
  }
}
