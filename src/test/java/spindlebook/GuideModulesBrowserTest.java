package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The guided round's modules, each alone: the plan, the order of heights, the keys. */
class GuideModulesBrowserTest {
  @TempDir static Path folder;
  private static Shop shop;
  private static Screen phone;

  /** Two places, one with a watch point; an axle's has its pairings. */
  private static final String PLANS =
      """
      const asked = { straight: ['p-a', 'q-b'] };
      const wheel = { mm: false, boxes: { spindle: 'a', mark: 'b' }, marks: [{ key: 'm', typed: '30' }], done: {}, places: [
        { id: 'strap-1', name: 'strap', rank: 1, asked },
        { id: 'touch-1', name: 'touch', rank: 4, asked }] };
      const axle = { ...wheel, boxes: { spindle: 'a', otherSpindle: 'b', mark: 'c', otherMark: 'd' }, places: [
        { id: 'strap-1', name: 'strap', rank: 1, pairing: 'both-together', asked },
        { id: 'strap-2', name: 'strap', rank: 1, pairing: 'crossed', asked }] };
      const { walk, next, toAsk } = await import('/static/guide-plan.js');
      const { at, wrong } = await import('/static/guide-order.js');
      const sent = (...all) => all.map((body) => ({ body }));
      const height = (key, name, more) => ({ what: 'height', key, name, spindle: '20', mark: '30', ...more });
      """;

  @BeforeAll
  static void open() {
    shop = new Shop(folder.resolve("book"));
    phone = new Screen(shop, 390, 844);
    phone.go("/cars");
  }

  @AfterAll
  static void close() {
    if (phone != null) {
      phone.close();
    }
    if (shop != null) {
      shop.close();
    }
  }

  private static Object ask(String script) {
    return phone.ask("return (async () => {" + PLANS + script + "})()");
  }

  @Test
  void the_plan_takes_in_what_this_phone_has_sent() {
    String steps = "JSON.stringify(state.steps.filter((s) => s.done).map((s) => s.id))";
    String first =
        "const one = height('h', 'strap');const read = { what: 'reading', key: 'r', height: 'h',"
            + " steering: 'straight', row: 'p-a', value: '3/8' };const back = { what: 'take-back',"
            + " target: 'r' };";
    assertEquals(
        "[\"strap-1/straight/height\",\"strap-1/straight/p-a\"]",
        ask(first + "const state = walk(wheel, sent(one, read), at); return " + steps));
    assertEquals(
        "[\"strap-1/straight/height\"]",
        ask(first + "const state = walk(wheel, sent(one, read, back), at); return " + steps));
    assertEquals(
        "[]",
        ask(
            first
                + "const state = walk(wheel, sent(one, read, { what: 'take-back', target: 'h' }),"
                + " at); return "
                + steps));
    assertEquals(
        -254.0,
        ((Number) ask(first + "return walk(wheel, sent(one), at).places[0].at")).doubleValue(),
        1e-9);
  }

  @Test
  void what_comes_next_is_the_first_not_done_and_what_was_skipped_last() {
    String of =
        "const s = [['a', 1], ['b', 0], ['c', 1], ['d', 0]].map(([id, done]) => ({ id, done }));";
    assertEquals("b", ask(of + "return next(s, 'a')"));
    assertEquals("d", ask(of + "return next(s, 'b')"));
    assertEquals("b", ask(of + "return next(s, 'd')"));
    assertEquals("end", ask("return next([{ id: 'a', done: 1 }], 'a')"));
  }

  /** Its key was pressed on the way out; on the way back it holds no longer. */
  @Test
  void undo_back_over_a_change_of_state_asks_for_that_change_again() {
    String script =
        "document.body.append(Object.assign(document.createElement('div'), { className: 'pad' }));"
            + "const { undo, ready } = await import('/static/guide-more.js');"
            + "const state = walk(wheel, sent(height('h', 'strap')), at);"
            + "Object.assign(state.places[1], { words: 'Touch', ready: 'Take the stop out' });"
            + "const me = { at: 'touch-1/straight/height', text: '', ready: ['strap-1', 'touch-1'],"
            + " taken: [{ key: 'h', from: 'strap-1/straight/height', body: height('h', 'strap'),"
            + " kept: { text: '20', typed: {} } }] };"
            + "const no = () => null;"
            + "const s = state.steps.find((s) => s.id === me.at);"
            + "const here = { s, me, on: {}, plan: wheel, state, begun: () => [], mine: () => [],"
            + " told: no, leave: no, go: no, send: no, anew: no, save: no, draw: no };"
            + "const before = ready(here); undo(here);"
            + "return [before?.words, ready(here)?.words, me.ready.join()];";
    assertEquals(Arrays.asList(null, "Take the stop out", "strap-1"), ask(script));
  }

  /** Two inches of travel past its reserve were planned from two lengths; only the book knows. */
  @Test
  void a_shock_not_clear_past_its_stop_is_asked_further_in_once_the_book_has_said_so() {
    assertEquals(
        List.of("q-s", "", ""),
        ask(
            "document.body.append(Object.assign(document.createElement('div'), { className: 'pad'"
                + " })); const { jack } = await import('/static/guide-more.js'); const plan = {"
                + " ...wheel, lengths: { straight: ['q-s'] }, asked: { straight: [] }, rows: {"
                + " 'q-s': { kind: 'tape' } } }; const out = { id: 'out-1', height: 'o' }; const"
                + " solid = { id: 'solid-1', height: 's', out: ['out-1'] }; return [0, 1,"
                + " undefined].map((ok) => { const all = []; jack({ picked: {} })(plan, solid,"
                + " [solid, out], { 'o/straight/q-s': { say: '18', ok } }, (p, s, row) =>"
                + " all.push(row)); return all.join(); });"));
  }

  @Test
  void an_axle_s_height_is_its_own_pairing_s_and_asks_both_ends() {
    assertEquals(
        List.of("strap-2"),
        ask(
            "return walk(axle, sent(height('h', 'strap', { pairing: 'crossed' })), at)"
                + ".places.filter((p) => p.height).map((p) => p.id)"));
    assertEquals(
        List.of("spindle", "mark"),
        ask("return [toAsk(wheel, {}), toAsk(wheel, { spindle: '20' })]"));
    assertEquals(
        List.of("spindle", "otherSpindle", "mark", "otherMark"),
        ask(
            "const typed = {}; const all = []; for (let b; (b = toAsk(axle, typed)); typed[b] ="
                + " '1') all.push(b); return all;"));
    assertNull(ask("return toAsk(axle, { spindle: '20', otherSpindle: '', mark: '30' }) ?? null"));
  }

  /** When what it was taken from is left out, a mark is kept as read: of an axle, at each end. */
  @Test
  void a_mark_taken_as_at_a_height_left_out_is_of_both_ends_of_an_axle() {
    String left =
        "const out = await import('/static/outbox.js');"
            + "const left = (more) => {"
            + " [height('a'), { what: 'height', key: 'b', markAsAt: 'a', ...more }].forEach("
            + "(body, i) => out.put('sb:x:00000000' + i + ':' + body.key,"
            + " JSON.stringify({ to: '/rounds/r/sent', body, sentence: 'no' })));"
            + " out.leaveOut(out.aside()[0]);"
            + " const { markAsAt, mark, otherMark } = out.waiting()[0].body;"
            + " localStorage.clear();"
            + " return JSON.stringify({ markAsAt, mark, otherMark }); };";
    String pairing = ", pairing: 'crossed' })";
    assertEquals("{\"mark\":\"30 1/4\"}", ask(left + "return left({ markTyped: '30 1/4' })"));
    assertEquals(
        "{\"mark\":\"30\",\"otherMark\":\"30 1/16\"}",
        ask(left + "return left({ markTyped: '30 and 30 1/16'" + pairing));
    assertEquals(
        "{\"mark\":\"30\"}", ask(left + "return left({ markTyped: '30 and not read'" + pairing));
  }

  @Test
  void a_height_on_the_wrong_side_of_another_is_told_from_its_typed_text() {
    String of =
        "const state = walk(wheel, sent(height('h', 'strap')), at);"
            + "const off = (spindle, more) => wrong(state.places, state.places[1],"
            + " at(wheel, { spindle, mark: '30', ...more }))?.id ?? null;";
    assertEquals("strap-1", ask(of + "return off('19 1/2')"));
    assertNull(ask(of + "return off('20 1/2')"));
    assertNull(ask(of + "return off('533,4 mm')"));
    assertEquals("strap-1", ask(of + "return off('48 cm')"));
    assertEquals("strap-1", ask(of + "return off('19', { mark: undefined, markAsAt: 'm' })"));
    assertNull(ask(of + "return off('a bit')"), "what cannot be read here the book reads");
    assertNull(
        ask(
            "const state = walk(axle, sent(height('h', 'strap', { pairing: 'both-together' })),"
                + " at);return wrong(state.places, { ...state.places[1], rank: 4 }, -999) ?? null"),
        "crossed is another order");
  }

  @Test
  void a_doubt_of_another_phone_s_height_is_drawn_with_figures_among_heights_of_its_pairing() {
    String drawn =
        "const { stop } = await import('/static/guide-stop.js');"
            + "const { make } = await import('/static/guide-pad.js');"
            + "const place = (id, at, pairing) => ({ id, at, height: id, pairing,"
            + " words: id + ', ' + pairing.replace('-', ' ') });"
            + "const all = [place('touch', -200, 'both-together'), place('solid', -180,"
            + " 'both-together'), place('out', -90, 'crossed')];"
            + "const p = { ...all[0], id: 'strap', at: undefined };"
            + "const q = { at: { row: 'height', p }, mm: -190, words: 'low', keys: [] };"
            + "return stop(q, { make, key: make, plan: {}, state: { places: all } })"
            + ".map((e) => e.textContent).join('|');";
    assertEquals("Check this|low|solid3/8 inas typedtouch−3/8 in", ask(drawn));
  }

  @Test
  void the_pad_has_a_key_for_every_sixteenth_and_gives_what_was_typed_with_it() {
    String pad =
        "const { inches, decimals } = await import('/static/guide-pad.js');const kept = []; let"
            + " text = '3';const on = { fine: false, text: () => text, whole: () => text, keep: (v)"
            + " => kept.push(v), type: (t) => (text += t), sign: () => (text = '-' + text), back:"
            + " () => (text = text.slice(0, -1)), typing: () => kept.push('typing') };const press ="
            + " (keys, face) => keys.find((k) => k.dataset.key === face).click();";
    assertEquals(
        List.of("3 1/16", "3 1/2", "3", "typing"),
        ask(
            pad
                + "const keys = inches(on);"
                + "for (const f of ['1/16', '1/2', 'even', 'Type']) press(keys, f); return kept"));
    assertEquals(
        List.of("3 31/32"),
        ask(pad + "press(inches({ ...on, fine: true }), '31/32'); return kept"));
    assertEquals(
        List.of("-31."),
        ask(
            pad
                + "const keys = decimals(on, [], []);"
                + "for (const f of ['1', '.', 'minus', 'Keep']) press(keys, f); return kept"));
  }

  /** Guard band of ISO 14253-1, as in the book: at the limit within its doubt nobody can tell. */
  @Test
  void a_gap_typed_is_judged_against_its_rule_with_the_doubt_of_its_tool() {
    assertEquals(
        List.of("short", "cant-tell", "cant-tell", "clear", "short", "clear"),
        ask(
            "const { judge } = await import('/static/guide-sketch.js');"
                + "return ['7/8', '15/16', '1 1/32', '1 1/8', 'touches', 'well clear'].map("
                + "(v) => judge(wheel, { drill: '1 in', pm: '1/16 in' }, v))"));
    assertNull(ask("return (await import('/static/guide-sketch.js')).judge(wheel, {}, '1')"));
  }
}
