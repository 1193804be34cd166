// A round one thing at a time. The plan is all on the page: with the network gone the phone walks
// on, and the outbox brings what was read to the book when it can.
import * as outbox from "./outbox.js";

const root = document.getElementById("guide");
const header = document.querySelector("header.step");
let plan = JSON.parse(root.dataset.plan);
const TO = "/rounds/" + plan.round + "/sent";
const HERE = "sb:g:" + plan.round;
const me = { text: "", taken: [], ...JSON.parse(outbox.get(HERE) ?? "{}") };
const answered = [];
let fine = false;
let menu = "";
let ask = null;

const make = (tag, cls, text) => {
  const e = document.createElement(tag);
  if (cls) e.className = cls;
  if (text) e.textContent = text;
  return e;
};
// A key that is being pressed stays the same element: what looks as before is not built again.
const fill = (where, as, build) => {
  if (where.dataset.as === as) return;
  where.dataset.as = as;
  where.replaceChildren(...build());
};
const save = () => outbox.put(HERE, JSON.stringify({ ...me, taken: me.taken.slice(-20) }));

// --- the plan with what this phone has not sent, or sent after the plan was made
const mine = () => [
  ...outbox.sent().filter((e) => e.to === TO && e.n > plan.n),
  ...outbox.waiting().filter((e) => e.to === TO),
];
const now = () => {
  const places = plan.places.map((p) => ({ ...p }));
  const done = { ...plan.done };
  for (const { body: b } of mine()) {
    if (b.what === "height" && !places.some((p) => p.height === b.key)) {
      const free = (p) => !p.height && p.name === b.name;
      const p = places.find((p) => free(p) && p.id === b.place) ?? places.find(free);
      if (p) Object.assign(p, { height: b.key, say: "spindle " + b.spindle, at: at(b) });
    } else if (b.what === "reading") {
      done[b.height + "/" + b.steering + "/" + b.row] = { say: b.value, key: b.key };
    } else if (b.what === "take-back") {
      for (const k in done) if (done[k].key === b.target) delete done[k];
      for (const p of places) if (p.height === b.target) p.height = p.at = null;
    }
  }
  const steps = [];
  for (const p of places) {
    steps.push({ id: p.id + "/straight/height", p, steering: "straight", row: "height" });
    for (const s in p.asked)
      for (const row of p.asked[s]) steps.push({ id: p.id + "/" + s + "/" + row, p, steering: s, row });
  }
  for (const s of steps)
    s.done = s.row === "height" ? s.p.height && { say: s.p.say } : done[s.p.height + "/" + s.steering + "/" + s.row];
  return { places, steps };
};

const UNIT = { '"': 25.4, in: 25.4, mm: 1, cm: 10 };
// Only to ask at once about an order that cannot be; the book reads the text itself.
const mm = (text) => {
  const m = /^(?:(\d+(?:[.,]\d+)?)[ -]*)?(?:(\d+)\/(\d+))?\s*(in|"|mm|cm)?$/.exec((text ?? "").trim());
  if (!m || (!m[1] && !m[2])) return NaN;
  return (Number((m[1] ?? "0").replace(",", ".")) + (m[2] ? m[2] / m[3] : 0)) * (UNIT[m[4]] ?? (plan.mm ? 1 : 25.4));
};
const at = (b) => {
  const mark = b.mark ?? plan.marks.find((m) => m.key === b.markAsAt)?.typed ?? b.markTyped;
  return mm(b.spindle) - mm(mark);
};

// --- walking
let state = now();
const step = () => state.steps.find((s) => s.id === me.at);
// What was begun at a step and left is found there again.
const leave = () => ({ id: me.at, text: me.text, spindle: me.spindle, note: me.note, fine });
const go = (id, kept) => {
  const { text = "", spindle = null, note = null, fine: small = false } = kept?.id === id ? kept : {};
  Object.assign(me, { at: id, text, spindle, note });
  fine = small;
  menu = "";
  ask = null;
  save();
  draw();
};
const onward = (from, kept) => {
  state = now();
  const i = state.steps.findIndex((s) => s.id === from);
  const rest = [...state.steps.slice(i + 1), ...state.steps.slice(0, i + 1)];
  go((state.steps.slice(i + 1).find((s) => !s.done) ?? rest.find((s) => !s.done))?.id ?? "end", kept);
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

const height = (s, mark) => {
  const again = outbox.aside().find((e) => e.to === TO && e.body.place === s.p.id);
  const body = { what: "height", name: s.p.name, label: s.p.label, place: s.p.id, spindle: me.spindle, ...mark };
  const here = at(body);
  const wrong =
    s.p.rank >= 0 &&
    state.places.find(
      (p) => p.height && p.rank >= 0 && p.rank !== s.p.rank && (p.rank < s.p.rank ? here < p.at : here > p.at),
    );
  const keep = (so) => {
    if (again) outbox.again(again, { ...again.body, ...body, key: again.body.key });
    else send(body, s.p.words + ", spindle " + me.spindle, s.id);
    if (so) send({ what: "so", target: body.key });
    onward(s.id, me.left);
  };
  if (!wrong) return keep(false);
  say("'" + s.p.words + "' came out " + (wrong.rank < s.p.rank ? "below" : "above") + " '" + wrong.words + "'.", [
    ["It is so", () => keep(true)],
    ["Type it again", () => go(s.id)],
  ]);
};

const keep = (value) => {
  const s = step();
  value = value.trim();
  if (!s || !value) return;
  if (s.row === "height") {
    if (me.spindle) return height(s, { mark: value });
    Object.assign(me, { spindle: value, text: "", undone: null });
    fine = false;
    save();
    return draw();
  }
  if (!s.p.height) {
    me.left = { ...leave(), text: value };
    return go(s.p.id + "/straight/height");
  }
  read(s, value, me.note);
  onward(s.id);
};

const undo = () => {
  const kept = leave();
  if (me.spindle) {
    me.undone = { kept, words: "spindle " + me.spindle };
    return go(me.at, { id: me.at, text: me.spindle });
  }
  const last = me.taken.pop();
  if (!last) return;
  send({ what: "take-back", target: last.key });
  state = now();
  me.undone = { ...last, at: kept };
  go(last.from, last.kept);
};
// Undo pressed by mistake: the same again, as a new entry, and on to where that was.
const redo = () => {
  const { kept, at, body, words, from } = me.undone;
  me.undone = null;
  if (!body) return go(kept.id, kept);
  const { key, ...same } = body;
  send(same, words, from);
  me.taken[me.taken.length - 1].kept = kept;
  state = now();
  go(at.id, at);
};

// --- keys
const key = (face, does, cls, label) => {
  const b = make("button", "key " + (cls ?? ""));
  b.type = "button";
  const f = /^(\d+)\/(\d+)$/.exec(face);
  if (f) {
    const fr = make("span", "frac frac-alone");
    fr.append(make("sup", "", f[1]), "⁄", make("sub", "", f[2]));
    b.append(fr);
  } else b.textContent = face;
  b.dataset.key = label ?? face;
  if (f || label) b.setAttribute("aria-label", label ?? face);
  b.addEventListener("click", does);
  return b;
};
const type = (t) => () => {
  me.text += t;
  save();
  draw();
};
const back = () => {
  me.text = me.text.slice(0, -1);
  save();
  draw();
};
const lowest = (n, d) => (n % 2 ? n + "/" + d : lowest(n / 2, d / 2));
const sixteenth = (i) => {
  const f = fine ? 2 * i + 1 + "/32" : i ? lowest(i, 16) : "";
  return key(f || "0", () => keep((me.text + " " + f).trim() || "0"), "cell", f || "even");
};
// A gap is small: its keys leave room for the drill that tells whether the rule is kept.
const inches = (small) => {
  const pad = [];
  for (const d of small ? "1234" : "12345") pad.push(key(d, type(d), "whole"));
  pad.push(key("⌫", back, "whole", "take the last back"));
  if (!small) for (const d of "67890") pad.push(key(d, type(d), "whole"));
  const th = key("32nds", () => ((fine = !fine), draw()), "whole " + (fine ? "key-on" : ""));
  th.setAttribute("aria-pressed", fine);
  pad.push(th);
  for (let i = 0; i < 16; i++) pad.push(sixteenth(i));
  return pad;
};
const decimals = () => {
  const pad = [];
  for (const d of ["1", "2", "3", "⌫", "4", "5", "6", "−", "7", "8", "9", ".", "0"])
    pad.push(
      key(d, d === "⌫" ? back : type(d === "−" ? "-" : d), "cell", { "⌫": "take the last back", "−": "minus" }[d]),
    );
  pad.push(key("Keep", () => keep(me.text), "key-main wide"));
  return pad;
};
const words = (s, kind) => {
  const row = [];
  if (s.row === "height") {
    if (me.spindle)
      for (const m of marks())
        row.push(
          key("as at '" + m.words + "', " + m.typed, () => height(s, { markAsAt: m.key, markTyped: m.typed }), "full"),
        );
    return row;
  }
  if (kind === "gap") for (const w of ["well clear", "touches", "binds"]) row.push(key(w, () => keep(w), "word"));
  const drill = plan.rows[s.row].drill;
  if (drill) for (const w of ["goes", "does not"]) row.push(key(drill + " " + w, () => keep(drill + " " + w), "half"));
  if (kind === "toe" || kind === "signed") {
    const out = me.text.startsWith("-");
    const flip = (minus) => () => {
      me.text = (minus ? "-" : "") + me.text.replace("-", "");
      save();
      draw();
    };
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
  return p ? [{ key: b.key, words: p.words, typed: b.mark }] : plan.marks;
};

// --- what is seen
const g = make("div", "g");
const told = make("section", "g-ask");
told.setAttribute("aria-live", "polite");
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
g.append(told, typed, said, pad, status, foot);
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

const asking = () => {
  const open = [...answered, ...plan.doubts].find(
    (d) => !mine().some((e) => e.body.target === d.key && e.body.what !== "reading"),
  );
  if (ask || !open) return ask;
  return {
    of: open.key,
    words: "In doubt, not counted: " + open.words + ". " + open.doubt,
    keys: [
      ["It is so", () => (send({ what: "so", target: open.key }), draw())],
      ["Take it back", () => (open.key === me.taken[me.taken.length - 1]?.key ? undo() : (send({ what: "take-back", target: open.key }), draw()))],
    ],
  };
};

const top = () => {
  const q = asking();
  if (q) {
    fill(said, "?" + q.of, () => [
      make("p", "is-in-doubt", q.words),
      ...q.keys.map(([w, f]) => key(w, f)),
    ]);
    return;
  }
  if (me.undone) {
    const words = "Taken back: " + me.undone.words;
    fill(said, words, () => [make("p", "", words), key("Put back", redo, "", "put back")]);
    return;
  }
  const last = me.spindle ? { words: "spindle " + me.spindle } : me.taken[me.taken.length - 1];
  const held = last && outbox.waiting().find((e) => e.body.key === last.key);
  const words = last ? last.words + (last.key ? (held ? " · on this phone" : " · in the book") : "") : "";
  fill(said, words, () => (words ? [make("p", "", words)] : []));
};

// What is under More comes after the first screen is there.
let more = null;
const fetchMore = () =>
  import("./guide-more.js").then(
    (m) => {
      more = m.more;
      draw();
    },
    () => setTimeout(fetchMore, 3000),
  );
const say = (words, keys) => {
  menu = "";
  ask = words ? { of: outbox.newKey(), words, keys } : null;
  draw();
};

const draw = () => {
  state = now();
  const i = state.steps.findIndex((s) => s.id === me.at);
  const s = state.steps[i];
  const none = !me.spindle && !me.taken.length;
  fill(foot, [none, !!s, menu, !!more].join(), () => {
    const takes = key("Undo", undo, "", "undo");
    takes.disabled = none;
    const menus = () => ((menu = menu ? "" : "more"), draw());
    return [
      key("‹ Back", () => beside(-1)),
      takes,
      ...(s ? [key("Skip ›", () => beside(1))] : []),
      ...(s && more ? [key(menu ? "Keys" : "More", menus, menu ? "key-on" : "")] : []),
    ];
  });
  top();
  typed.hidden = !s || !!menu;
  if (!s) {
    told.dataset.at = "";
    const left = state.steps.filter((o) => !o.done);
    told.replaceChildren(make("h2", "", left.length ? left.length + " not read." : "All that was asked for has been read."));
    pad.className = "pad pad-end";
    fill(pad, "end" + left.length, () => {
      const a = make("a", "key key-main", "To the round");
      a.href = "/rounds/" + plan.round;
      return [...(left.length ? [key("To the first not read", () => go(left[0].id))] : []), a];
    });
    return;
  }
  band(s, i);
  const row = plan.rows[s.row];
  const kind = plan.mm && row?.kind !== "angle" ? "mm" : (row?.kind ?? "tape");
  const what = make("h2", "", row?.words ?? (me.spindle ? "Frame mark above the floor" : "Spindle above the floor"));
  what.id = "g-what";
  const last = row ? plan.last[s.p.name + "/" + s.steering + "/" + s.row] : "";
  const readHere = s.done?.say ? "Read here: " + s.done.say + (s.done.who ? ", " + s.done.who : "") : "";
  const lines = [row?.rule, last, readHere].filter(Boolean).map((t) => make("p", "", t));
  if (!told.dataset.at || told.dataset.at !== s.id + me.spindle + readHere) {
    told.replaceChildren(what, ...lines);
    told.dataset.at = s.id + me.spindle + readHere;
  }
  root.dataset.step = s.id;
  root.dataset.kind = row ? kind : me.spindle ? "mark" : "spindle";
  if (box.value !== me.text) box.value = me.text;
  unit.textContent = row?.kind === "angle" ? "°" : plan.mm ? "mm" : "in";
  if (menu) {
    pad.className = "g-more";
    const here = { s, plan, state, me, key, make, keep, read, go, onward, say, save };
    fill(pad, "more " + s.id, () => more(here));
    return;
  }
  const numbers = plan.mm || row?.kind === "angle";
  pad.className = numbers ? "pad pad-4" : "pad pad-12";
  const others = row ? "" : marks().map((m) => m.key + m.typed).join();
  fill(pad, [s.id, kind, me.spindle ?? "", fine, me.text.startsWith("-"), others].join("|"), () => [
    ...(numbers ? decimals() : inches(row?.drill)),
    ...words(s, row?.kind),
  ]);
};

outbox.listen((body, json) => {
  if (json?.doubt) answered.push({ key: json.as ?? json.key, words: json.words, doubt: json.doubt });
  if (json) return draw();
  top();
});
if (plan.start) outbox.remember(plan.round, plan.start);
outbox.seen(plan.book);

const news = async () => {
  if (!document.hidden) {
    try {
      const r = await fetch("/rounds/" + plan.round + "/news?n=" + (plan.part ? -1 : plan.n) + "&book=" + plan.book);
      outbox.heard();
      if (r.status === 409) {
        plan.book = (await r.json()).book;
        outbox.seen(plan.book);
      } else if (r.status === 200) {
        plan = await r.json();
        outbox.remember(plan.round, plan.start);
        outbox.seen(plan.book);
        const was = step();
        state = now();
        const s = step();
        if (s?.done && was && !was.done && !me.text && !me.spindle && !menu) {
          ask = null;
          onward(s.id);
        } else if (!menu) draw();
      }
    } catch {}
  }
  setTimeout(news, 1500);
};
setTimeout(news, plan.part ? 300 : 1500);
setTimeout(fetchMore, 0);
setTimeout(outbox.load, 0);

const asked = new URLSearchParams(location.search).get("at");
if (asked && state.steps.some((s) => s.id === asked)) me.at = asked;
if (!step() || (step().done && !me.text)) onward(me.at ?? "");
else draw();
