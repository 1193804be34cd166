// A round one thing at a time, with or without a network: the outbox brings what was read to the book.
import * as outbox from "./outbox.js";
import { decimals, inches, key, make } from "./guide-pad.js";
import { next, toAsk, walk } from "./guide-plan.js";

const root = document.getElementById("guide");
const header = document.querySelector("header.step");
let plan = JSON.parse(root.dataset.plan);
const TO = "/rounds/" + plan.round + "/sent";
const HERE = "sb:g:" + plan.round;
const me = { text: "", typed: {}, taken: [], skipped: [], ready: [], besides: [], picked: {}, ...JSON.parse(outbox.get(HERE) ?? "{}") };
const answered = [];
const on = { fine: false };

// A key that is being pressed stays the same element: what looks as before is not built again.
const fill = (where, as, build) => {
  if (where.dataset.as === as) return;
  where.dataset.as = as;
  where.replaceChildren(...build());
};
const save = () => outbox.put(HERE, JSON.stringify({ ...me, taken: me.taken.slice(-20) }));

// On the plan with what this phone has sent since.
const mine = () => [
  ...outbox.sent().filter((e) => e.to === TO && e.n > plan.n),
  ...outbox.waiting().filter((e) => e.to === TO),
];

const now = () => (on.notPast ?? ((w) => w))(walk(plan, mine(), on.at ?? (() => NaN), plan.part ? null : on.jack?.(me), on.mended));
let state = now();
const part = () => toAsk(plan, me.typed);
const step = () => state.steps.find((s) => s.id === me.at);
const leave = () => ({ id: me.at, text: me.text, typed: me.typed, note: me.note, fine: on.fine });
const go = (id, kept) => {
  const { text = "", typed = {}, note = null, fine = false } = kept?.id === id ? kept : {};
  Object.assign(me, { at: id, text, typed, note });
  on.came?.(me, state, kept);
  Object.assign(on, { fine, drill: false, menu: "", ask: null, old: !!text });
  save();
  draw();
};
const onward = (from, kept) => {
  state = now();
  go(next(state.steps, from, me.skipped), kept);
};
const send = (body, words, from) => {
  body.key ??= outbox.newKey();
  const s = state.steps.find((s) => s.id === from);
  const turned = s && s.steering !== "straight" && "steering " + s.steering.replace("-", " ");
  const where = s && [plan.where, s.p.words, turned, plan.rows[s.row]?.words].filter(Boolean).join(" · ");
  if (!on.mends?.(me, s, body, TO)) outbox.add(TO, { after: plan.after, claimed: new Date().toISOString(), ...body }, where);
  if (words) {
    me.undone = null;
    me.taken.push({ key: body.key, words, from, body, kept: leave() });
  }
};

const reading = ({ p: { height }, steering, row }, value, note) => ({ what: "reading", height, steering, row, value, note });
const read = (s, value, note) => send(reading(s, value, note), plan.rows[s.row].words + " " + value, s.id);
const answer = (s, said) => {
  const typed = { ...me.typed, ...said };
  if ((typed.markAsAt && typed.spindle) || !toAsk(plan, typed)) return height(s, typed);
  Object.assign(me, { typed, text: "", undone: null });
  on.fine = false;
  save();
  draw();
};
const height = (s, typed) => {
  const { name, label, id: place, pairing, otherName, words } = s.p;
  const body = { what: "height", name, label, place, pairing, otherName, ...typed };
  const keep = (so) => {
    send(body, words + ", spindle " + body.spindle, s.id);
    me.here = place;
    on.kept?.({ s, body, me, send });
    if (so) send({ what: "so", target: body.key });
    onward(s.id, me.left);
  };
  const off = on.off?.({ plan, state, s, body, typed, keep, go });
  if (off) say(...off);
  else keep();
};

const keep = (value) => {
  const s = step();
  value = value.trim();
  if (!s || !value || s.row === "others") return;
  if (s.row === "height") return answer(s, { [part()]: value });
  if (!s.p.height) {
    me.left = { ...leave(), text: value };
    return go(s.p.id + "/straight/height");
  }
  read(s, value, me.note);
  onward(s.id);
  on.judged?.({ s, value, plan, state, me, on, head, make, key, go, draw });
};

const begun = () => Object.entries(me.typed).filter(([p]) => p in plan.boxes).reverse();
const told = ([p, value]) => plan.boxes[p].replace(" above the floor", "").toLowerCase() + " " + (value || "not read");
const menu = (of) => () => ((on.menu = of), draw());
const here = () => ({ me, on, plan, state, s: step(), begun, told, leave, go, send, reading, onward, menu, mine, key, make, keep, save, say, draw, anew: () => (state = now()) });

// What stands there already goes with the first key; its sign may be turned before.
const set = (text, old) => {
  me.text = text;
  on.old = old;
  save();
  draw();
};
const turn = (what) => () => {
  on[what] = !on[what];
  draw();
  if (what === "typed" && on.typed) box.focus();
};
const minus = () => me.text[0] === "-";
const flip = (less) => set((less ? "-" : "") + me.text.replace("-", ""), on.old && 2);
const whole = () => (!on.old ? me.text : on.old > 1 && minus() ? "-" : "");
const keys = () => ({
  ...on,
  whole,
  text: () => me.text,
  keep: on.drill ? (t) => set(t, 1) : keep,
  type: (t) => set(whole() + t),
  sign: () => flip(!minus()),
  back: () => set(me.text.slice(0, -1)),
  typing: turn("typed"),
});
const wordKeys = (kind, drill) => {
  if (kind === "gap" && on.drill) return on.drills?.(here(), drill);
  if (kind === "gap")
    return ["well clear", "touches", "binds"].map((w, i) => key(w, () => keep(w), i ? "three" : "four"));
  if (kind !== "toe" && kind !== "signed") return null;
  const out = minus();
  const [plus, less] = kind === "toe" ? ["front edge in", "front edge out"] : ["+", "−"];
  return [key(plus, () => flip(false), "five" + (out ? "" : " key-on")), key(less, () => flip(true), "five" + (out ? " key-on" : ""))];
};
const padKeys = (kind, drill, numbers) => {
  const row = wordKeys(kind, drill);
  if (numbers) return decimals(keys(), row ?? [], []);
  return inches(keys(), drill && key("drill", turn("drill"), "small" + (on.drill ? " key-on" : "")), row);
};
const g = make("div", "g");
const head = make("div", "g-top");
const asks = make("section", "g-ask");
asks.ariaLive = "polite";
const figure = make("p", "g-fig t5");
figure.ariaHidden = true;
const box = make("input");
Object.assign(box, { id: "g-box", autocomplete: "off", autocapitalize: "off", spellcheck: false });
box.setAttribute("aria-labelledby", "g-what");
const enter = key("Keep", () => keep(box.value), "key-ink", "keep");
const typed = make("p", "g-typed");
typed.append(box, enter);
const lines = make("div", "g-lines");
const side = make("div", "g-side");
const said = make("div", "g-said");
said.setAttribute("role", "status");
const status = make("p", "outbox");
status.id = "outbox";
const last = make("div", "g-last");
last.append(said, status);
head.append(asks, figure, typed, lines, side, last);
const pad = make("div", "pad");
pad.setAttribute("role", "group");
pad.setAttribute("aria-label", "Keys");
const foot = make("div", "g-foot");
const stop = make("section", "g-stop");
stop.setAttribute("role", "alert");
stop.hidden = true;
g.append(head, pad, foot, stop);
root.replaceChildren(g);
document.body.classList.add("guided");
document.querySelector("footer.foot")?.remove();

box.oninput = box.onchange = () => {
  me.text = box.value;
  on.old = 0;
  save();
};
box.addEventListener("keydown", (e) => e.key === "Enter" && keep(box.value));
document.addEventListener("keydown", (e) => {
  if (e.target !== document.body || e.key.length > 1 || e.ctrlKey || e.metaKey || e.altKey) return;
  on.typed = true;
  draw();
  box.focus();
});

const band = (s) => {
  // What an open end needs, or touches, comes besides: the count stays.
  const all = state.places.filter((p) => !/^[ct]/.test(p.id));
  const of = all.length;
  const n = all.findIndex((p) => p.id === s.p.id) + 1;
  const same = state.places.filter((p) => p.words === s.p.words);
  const up = s.p.rank < 0 ? 2 : s.p.rank;
  header.querySelector(".step-at").setAttribute("transform", `translate(0 ${11 * (3 - up)})`);
  if (header.dataset.turned) header.dataset.turned = s.steering;
  const put = (css, text) => (header.querySelector(css).textContent = text);
  const name = s.p.words.replace(/ \(.*?\)/, "") + (same.length > 1 ? " " + (same.findIndex((p) => p.id === s.p.id) + 1) : "");
  put(".step-height", name);
  header.classList.toggle("step-long", name.length > 18);
  if (header.dataset.turned) put(".step-lock b", s.steering.replace("-", " "));
  put(".step-n", n ? "height " + n + " of " + of : "");
  header.querySelector(".step-ticks rect").setAttribute("width", (1000 * n) / of);
};
// What is typed so far, whole large and fraction smaller, and a blank for what is to come.
const written = (unit) => {
  const [, whole, part, rest] = /^\s*(-?[\d.,]*)\s*(\d+\/\d+)?(.*)$/.exec(me.text);
  const shown = whole + rest ? [make("b", "", whole.replace("-", "−") + rest)] : [];
  if (part) shown.push(make("b", whole ? "frac" : "", part));
  else shown.push(make("i"));
  figure.classList.toggle("g-old", !!on.old);
  figure.replaceChildren(...shown, make("span", "entry-unit", whole && unit === "in" && !part ? "in and …" : unit));
};

const top = () => {
  g.classList.toggle("undone", !!me.undone);
  if (me.undone) return on.undone?.(here(), fill, said);
  const half = begun()[0];
  const last = half ? { words: told(half) } : me.taken[me.taken.length - 1];
  const held = last && outbox.waiting().find((e) => e.body.key === last.key);
  const words = last ? last.words + (last.key ? (held ? " · on this phone" : " · in the book") : "") : outbox.waiting().length ? "" : "✓ all in the book";
  fill(said, words, () => (words ? [make("p", "", words)] : []));
};

// After the first screen, each by itself.
const late = (ask, use) =>
  ask().then(
    (m) => (use(m), draw()),
    () => setTimeout(late, 3000, ask, use),
  );
const later = () => {
  late(() => import("./guide-more.js"), (m) => {
    Object.assign(on, m);
    if (!plan.part) (state = now()), begin(!root.dataset.step);
  });
  late(() => import("./guide-news.js"), (m) => m.listen(here, (p) => ((plan = p), (state = now())), root, begin));
};
const say = (words, keys, more) => {
  on.menu = "";
  on.ask = words ? { of: outbox.newKey(), words, keys, ...more } : null;
  draw();
};

const draw = () => {
  state = now();
  // A box hidden with what was typed in it would say so again.
  if (box.value !== me.text) box.value = me.text;
  if (on.stopped?.({ ...here(), answered, band, fill, root, rest: [head, pad, foot], stop })) return;
  const s = step();
  const row = s?.row === "others" ? { words: "All others well clear?", kind: "others" } : plan.rows[s?.row];
  const numbers = plan.mm || row?.kind === "angle";
  const none = !begun().length && !me.taken.length;
  fill(foot, [none, !on.undo, !!s, on.menu, !!on.more, numbers, on.fine].join(), () => {
    const five = [
      key("‹ Back", () => on.back(here())),
      key("Undo", () => on.undo(here()), "", "undo"),
      key("Skip", () => on.skip(here())),
      key("32nds", turn("fine"), on.fine ? "key-on" : ""),
      key(on.menu ? "Keys" : "More", menu(on.menu ? "" : "more"), on.menu ? "key-on" : ""),
    ];
    five[3].setAttribute("aria-pressed", on.fine);
    [!on.back, none || !on.undo, !s || !on.skip, !s || numbers, !s || !on.more].forEach((off, k) => (five[k].disabled = off));
    return five;
  });
  top();
  g.classList.toggle("typing", !!on.typed && !!s && !on.menu);
  figure.hidden = lines.hidden = side.hidden = !s;
  if (row?.kind === "others") figure.hidden = true;
  if (!s) {
    asks.dataset.at = "";
    pad.className = "pad pad-end";
    return on.end?.({ ...here(), asks, fill, pad });
  }
  band(s);
  const kind = row?.kind ?? "tape";
  const which = part();
  const seen = s.id + (which ?? "");
  const readHere = s.done?.say ? "Read here: " + s.done.say + (s.done.who ? ", " + s.done.who : "") : "";
  const last = row ? plan.last[s.p.id + "/" + s.steering + "/" + s.row] : s.p.was?.[which];
  if (asks.dataset.at !== seen + readHere) {
    const what = make("h2", "", row?.words ?? plan.boxes[which]);
    what.id = "g-what";
    asks.replaceChildren(what);
    asks.dataset.at = seen + readHere;
  }
  const under = [row?.rule, row ? "" : on.aim?.({ plan, p: s.p, which, mine }), row?.kind === "others" && s.left.length + " places" + (header.dataset.turned ? ", lock to lock" : ""), last, !row && s.p.other, readHere].filter(Boolean);
  const takes = row ? [] : (on.instead?.({ which, plan, state, me, mine, key, answer: (said) => answer(s, said) }) ?? []);
  fill(lines, seen + under + takes.map((k) => k.dataset.key), () => (takes.length ? takes : [make("p", "", under.join(" · "))]));
  fill(side, !!on.sketch + (row ? s.row : which), () => on.sketch?.({ make, row, which }) ?? []);
  root.dataset.step = s.id;
  root.dataset.kind = row ? (plan.mm && row.kind !== "angle" ? "mm" : row.kind) : which;
  if (on.old) box.select();
  written(row?.kind === "angle" ? "°" : plan.mm ? "mm" : "in");
  if (on.menu) {
    pad.className = "pad g-more";
    fill(pad, on.menu + s.id + !plan.part, () => on[on.menu](here()));
    return;
  }
  pad.className = "pad pad-keys";
  fill(pad, [s.id, kind, which, on.fine, on.drill && "d" + me.text, on.typed, minus(), !!on.others].join("|"), () =>
    kind === "others" ? (on.others?.(here()) ?? []) : padKeys(kind, row?.drill, numbers),
  );
};

outbox.listen((body, json) => {
  if (json?.doubt) answered.push({ ...json, key: json.as ?? json.key });
  if (json) return draw();
  top();
});
outbox.remember(plan.round, plan.start);
outbox.seen(plan.book);

setTimeout(later, 0);
setTimeout(outbox.load, 0);

const asked = new URLSearchParams(location.search).get("at");
me.at = [asked, me.at].find((id) => state.steps.some((s) => s.id === id)) ?? me.at ?? plan.here;
function begin(now) {
  if (now) !step() || (step().done && !me.text) ? onward(me.at) : draw();
}
begin(step());
