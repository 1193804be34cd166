// A round one thing at a time. The plan is all on the page: with the network gone the phone walks
// on, and the outbox brings what was read to the book when it can.
import * as outbox from "./outbox.js";
import { decimals, inches, key, make } from "./guide-pad.js";
import { next, toAsk, walk } from "./guide-plan.js";

const root = document.getElementById("guide");
const header = document.querySelector("header.step");
let plan = JSON.parse(root.dataset.plan);
const TO = "/rounds/" + plan.round + "/sent";
const HERE = "sb:g:" + plan.round;
const me = { text: "", typed: {}, taken: [], ...JSON.parse(outbox.get(HERE) ?? "{}") };
const answered = [];
// What is on the screen besides: 32nds, what is under More, a question.
const on = { fine: false, menu: "", ask: null, more: null };
let order = { at: () => NaN, wrong: () => null };

// A key that is being pressed stays the same element: what looks as before is not built again.
const fill = (where, as, build) => {
  if (where.dataset.as === as) return;
  where.dataset.as = as;
  where.replaceChildren(...build());
};
const save = () => outbox.put(HERE, JSON.stringify({ ...me, taken: me.taken.slice(-20) }));

// --- walking, on the plan with what this phone has not sent, or sent after it was made
const mine = () => [
  ...outbox.sent().filter((e) => e.to === TO && e.n > plan.n),
  ...outbox.waiting().filter((e) => e.to === TO),
];

const now = () => walk(plan, mine(), order.at);
let state = now();
const part = () => toAsk(plan, me.typed);
const step = () => state.steps.find((s) => s.id === me.at);
// What was begun at a step and left is found there again.
const leave = () => ({ id: me.at, text: me.text, typed: me.typed, note: me.note, fine: on.fine });
const go = (id, kept) => {
  const { text = "", typed = {}, note = null, fine = false } = kept?.id === id ? kept : {};
  Object.assign(me, { at: id, text, typed, note });
  Object.assign(on, { fine, menu: "", ask: null });
  save();
  draw();
};
const onward = (from, kept) => {
  state = now();
  go(next(state.steps, from), kept);
};
const beside = (by) => {
  const i = state.steps.findIndex((s) => s.id === me.at);
  // Past the last one comes what was skipped before it.
  const open = () => state.steps.find((s) => !s.done && s.id !== me.at)?.id ?? "end";
  const to = state.steps[(i < 0 ? state.steps.length : i) + by]?.id ?? (by > 0 && open());
  if (!to) return;
  const kept = me.left;
  me.left = leave();
  go(to, kept);
};

const send = (body, words, from) => {
  body.key ??= outbox.newKey();
  const s = state.steps.find((s) => s.id === from);
  const turned = s && s.steering !== "straight" && "steering " + s.steering.replace("-", " ");
  const where = s && [plan.where, s.p.words, turned, plan.rows[s.row]?.words].filter(Boolean).join(" · ");
  outbox.add(TO, { after: plan.after, claimed: new Date().toISOString(), ...body }, where);
  if (words) {
    me.undone = null;
    me.taken.push({ key: body.key, words, from, body, kept: leave() });
  }
};

const read = (s, value, note) =>
  send(
    { what: "reading", height: s.p.height, steering: s.steering, row: s.row, value, note },
    plan.rows[s.row].words + " " + value,
    s.id,
  );

// One box of a height after the other; it is whole when its marks are told.
const answer = (s, said) => {
  const typed = { ...me.typed, ...said };
  if (typed.markAsAt || !toAsk(plan, typed)) return height(s, typed);
  Object.assign(me, { typed, text: "", undone: null });
  on.fine = false;
  save();
  draw();
};
const height = (s, typed) => {
  const again = outbox.aside().find((e) => e.to === TO && e.body.place === s.p.id);
  const { name, label, id: place, pairing, otherName, words } = s.p;
  const body = { what: "height", name, label, place, pairing, otherName, ...typed };
  const off = order.wrong(state.places, s.p, order.at(plan, body));
  const keep = (so) => {
    if (again) outbox.again(again, { ...again.body, ...body, key: again.body.key });
    else send(body, words + ", spindle " + body.spindle, s.id);
    if (so) send({ what: "so", target: body.key });
    onward(s.id, me.left);
  };
  if (!off) return keep(false);
  say("'" + words + "' came out " + (off.rank < s.p.rank ? "below" : "above") + " '" + off.words + "'.", [
    ["It is so", () => keep(true)],
    ["Type it again", () => go(s.id)],
  ]);
};

const keep = (value) => {
  const s = step();
  value = value.trim();
  if (!s || !value) return;
  if (s.row === "height") return answer(s, { [part()]: value });
  if (!s.p.height) {
    me.left = { ...leave(), text: value };
    return go(s.p.id + "/straight/height");
  }
  read(s, value, me.note);
  onward(s.id);
};

// What was typed of a height so far, its last box first.
const begun = () => Object.entries(me.typed).reverse();
const told = ([p, value]) => plan.boxes[p].replace(" above the floor", "").toLowerCase() + " " + (value || "not read");
const undo = () => {
  const kept = leave();
  const [half, ...before] = begun();
  if (half) {
    me.undone = { kept, words: told(half) };
    return go(me.at, { id: me.at, text: half[1], typed: Object.fromEntries(before.reverse()) });
  }
  const last = me.taken.pop();
  if (!last) return;
  send({ what: "take-back", target: last.key });
  state = now();
  me.undone = { ...last, at: kept };
  go(last.from, last.kept);
};

// --- keys
const set = (text) => {
  me.text = text;
  save();
  draw();
};
const keys = () => ({
  fine: on.fine,
  text: () => me.text,
  keep,
  type: (t) => set(me.text + t),
  back: () => set(me.text.slice(0, -1)),
  finer: () => {
    on.fine = !on.fine;
    draw();
  },
});
const words = (s, kind) => {
  const row = [];
  if (s.row === "height") {
    if (part() === "mark")
      for (const m of marks())
        row.push(
          key("as at '" + m.words + "', " + m.typed, () => answer(s, { markAsAt: m.key, markTyped: m.typed }), "full"),
        );
    if (part() === "otherSpindle")
      row.push(key("not read", () => answer(s, { otherSpindle: "" }), "full"));
    return row;
  }
  if (kind === "gap") for (const w of ["well clear", "touches", "binds"]) row.push(key(w, () => keep(w), "word"));
  const drill = plan.rows[s.row].drill;
  if (drill) for (const w of ["goes", "does not"]) row.push(key(drill + " " + w, () => keep(drill + " " + w), "half"));
  if (kind === "toe" || kind === "signed") {
    const out = me.text.startsWith("-");
    const flip = (minus) => () => set((minus ? "-" : "") + me.text.replace("-", ""));
    const [plus, less] = kind === "toe" ? ["front edge in", "front edge out"] : ["+", "−"];
    row.push(key(plus, flip(false), "word " + (out ? "" : "key-on")), key(less, flip(true), "word " + (out ? "key-on" : "")));
  }
  return row;
};
// Heights this phone sent have marks too.
const marks = () => {
  const own = mine().filter((e) => e.body.what === "height" && e.body.mark);
  const b = own.length ? own[own.length - 1].body : null;
  const p = b && state.places.find((p) => p.height === b.key);
  return p ? [{ key: b.key, words: p.words, typed: b.mark + (b.pairing ? " and " + (b.otherMark || "not read") : "") }] : plan.marks;
};

// --- what is seen
const g = make("div", "g");
const asks = make("section", "g-ask");
asks.setAttribute("aria-live", "polite");
const box = make("input");
Object.assign(box, { type: "text", id: "g-box", autocomplete: "off", autocapitalize: "off", spellcheck: false });
box.setAttribute("aria-labelledby", "g-what");
const unit = make("span", "entry-unit");
const typed = make("p", "g-typed");
const enter = key("Keep", () => keep(box.value), "key-ink g-keep");
typed.append(box, unit, enter);
const said = make("div", "g-said");
said.setAttribute("role", "status");
const pad = make("div", "pad");
pad.setAttribute("role", "group");
pad.setAttribute("aria-label", "Keys");
const foot = make("div", "g-foot");
const status = make("p", "outbox");
status.id = "outbox";
g.append(asks, typed, said, pad, status, foot);
root.replaceChildren(g);
document.body.classList.add("guided");
document.querySelector("footer.foot")?.remove();

box.addEventListener("input", () => {
  me.text = box.value;
  save();
});
box.addEventListener("keydown", (e) => e.key === "Enter" && keep(box.value));
document.addEventListener("keydown", (e) => {
  if (e.target === document.body && e.key.length === 1 && !e.ctrlKey && !e.metaKey && !e.altKey) box.focus();
});

// The picture goes with the steering, the mark beside the height with its name.
const picture = (of) => {
  const t = make("template");
  t.innerHTML = plan.bands[of];
  return t.content.querySelector("header");
};
const band = (s, i) => {
  const fresh = picture(s.steering);
  fresh.querySelector("h1 .step-mark").replaceWith(picture(s.p.name).querySelector("h1 .step-mark"));
  header.children[0].replaceWith(fresh.children[0]);
  header.children[1].replaceWith(fresh.children[0]);
  const same = state.places.filter((p) => p.name === s.p.name);
  const line = header.querySelector("h1 span:nth-child(2)");
  line.lastChild.textContent = " " + s.p.words + (same.length > 1 ? " " + (same.indexOf(s.p) + 1) : "");
  const side = header.querySelector(".step-side");
  let p = side.querySelector("p");
  if (!p) side.prepend((p = make("p")));
  p.textContent = i + 1 + " of " + state.steps.length;
};

const top = () => {
  const q = on.ask ?? on.asking?.({ answered, plan, mine, me, send, draw, undo });
  if (q) {
    fill(said, "?" + q.of, () => [
      make("p", "is-in-doubt", q.words),
      ...q.keys.map(([w, f]) => key(w, f)),
    ]);
    return;
  }
  if (me.undone) {
    const words = "Taken back: " + me.undone.words;
    const redo = () => on.redo({ me, go, send, anew: () => (state = now()) });
    fill(said, words + !on.redo, () => [make("p", "", words), ...(on.redo ? [key("Put back", redo, "", "put back")] : [])]);
    return;
  }
  const half = begun()[0];
  const last = half ? { words: told(half) } : me.taken[me.taken.length - 1];
  const held = last && outbox.waiting().find((e) => e.body.key === last.key);
  const words = last ? last.words + (last.key ? (held ? " · on this phone" : " · in the book") : "") : "";
  fill(said, words, () => (words ? [make("p", "", words)] : []));
};

// What is under More, the order of heights and what others do come after the first screen, each by
// itself: the network may go in between.
const late = (ask, use) =>
  ask().then(
    (m) => (use(m), draw()),
    () => setTimeout(late, 3000, ask, use),
  );
const later = () => {
  late(() => import("./guide-more.js"), (m) => Object.assign(on, m));
  late(() => import("./guide-order.js"), (m) => (order = m));
  late(() => import("./guide-news.js"), (m) => m.listen(() => plan, take));
};
const say = (words, keys) => {
  on.menu = "";
  on.ask = words ? { of: outbox.newKey(), words, keys } : null;
  draw();
};

const draw = () => {
  state = now();
  const i = state.steps.findIndex((s) => s.id === me.at);
  const s = state.steps[i];
  const none = !begun().length && !me.taken.length;
  fill(foot, [none, !!s, on.menu, !!on.more].join(), () => {
    const takes = key("Undo", undo, "", "undo");
    takes.disabled = none;
    const menus = () => ((on.menu = on.menu ? "" : "more"), draw());
    return [
      key("‹ Back", () => beside(-1)),
      takes,
      ...(s ? [key("Skip ›", () => beside(1))] : []),
      ...(s && on.more ? [key(on.menu ? "Keys" : "More", menus, on.menu ? "key-on" : "")] : []),
    ];
  });
  top();
  typed.hidden = !s || !!on.menu;
  if (!s) {
    asks.dataset.at = "";
    pad.className = "pad pad-end";
    return on.end?.({ plan, state, asks, make, key, go, fill, pad });
  }
  band(s, i);
  const row = plan.rows[s.row];
  const kind = plan.mm && row?.kind !== "angle" ? "mm" : (row?.kind ?? "tape");
  const which = part();
  const what = make("h2", "", row?.words ?? plan.boxes[which]);
  what.id = "g-what";
  const last = row ? plan.last[s.p.id + "/" + s.steering + "/" + s.row] : "";
  const readHere = s.done?.say ? "Read here: " + s.done.say + (s.done.who ? ", " + s.done.who : "") : "";
  const lines = [row?.rule, last, !row && s.p.other, readHere].filter(Boolean).map((t) => make("p", "", t));
  if (!asks.dataset.at || asks.dataset.at !== s.id + which + readHere) {
    asks.replaceChildren(what, ...lines);
    asks.dataset.at = s.id + which + readHere;
  }
  root.dataset.step = s.id;
  root.dataset.kind = row ? kind : which;
  if (box.value !== me.text) box.value = me.text;
  unit.textContent = row?.kind === "angle" ? "°" : plan.mm ? "mm" : "in";
  if (on.menu) {
    pad.className = "g-more";
    const here = { s, plan, state, me, key, make, keep, read, go, onward, say, save };
    fill(pad, "more " + s.id, () => on.more(here));
    return;
  }
  const numbers = plan.mm || row?.kind === "angle";
  pad.className = numbers ? "pad pad-4" : "pad pad-12";
  const others = row ? "" : marks().map((m) => m.key + m.typed).join();
  fill(pad, [s.id, kind, which, on.fine, me.text.startsWith("-"), others].join("|"), () => [
    ...(numbers ? decimals(keys()) : inches(row?.drill, keys())),
    ...words(s, row?.kind),
  ]);
};

outbox.listen((body, json) => {
  if (json?.doubt) answered.push({ key: json.as ?? json.key, words: json.words, doubt: json.doubt });
  if (json) return draw();
  top();
});
outbox.remember(plan.round, plan.start);
outbox.seen(plan.book);

const take = (fresh) => {
  plan = fresh;
  outbox.remember(plan.round, plan.start);
  outbox.seen(plan.book);
  const was = step();
  state = now();
  const s = step();
  if (s?.done && was && !was.done && !me.text && !begun().length && !on.menu) {
    on.ask = null;
    onward(s.id);
  } else if (!on.menu) draw();
};
setTimeout(later, 0);
setTimeout(outbox.load, 0);

const asked = new URLSearchParams(location.search).get("at");
if (asked && state.steps.some((s) => s.id === asked)) me.at = asked;
if (!step() || (step().done && !me.text)) onward(me.at ?? "");
else draw();
