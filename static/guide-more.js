// What comes after the first screen of a guided round: what is drawn, what is asked back, what is
// under More, undo, and the end.
export * from "./guide-order.js";
export * from "./guide-sketch.js";
export * from "./guide-stop.js";
import { at, mm } from "./guide-order.js";
import { asking, inches, stop as shown } from "./guide-stop.js";
import { next } from "./guide-plan.js";
import { judge } from "./guide-sketch.js";
import * as outbox from "./outbox.js";

// Pressed twice in a blink, a key answers once: the second press would be of the question that just came.
const pad = document.querySelector(".pad");
const asked = () => document.querySelector(".g-ask").dataset.at;
let answered = {};
let before;
const pressed = (e) => e.target.closest(".key")?.dataset.key;
pad.addEventListener(
  "click",
  (e) => {
    if (pressed(e) && pressed(e) === answered.key && e.timeStamp - answered.at < 350) e.stopPropagation();
    before = asked();
  },
  true,
);
pad.addEventListener("click", (e) => (answered = before === asked() ? {} : { key: pressed(e), at: performance.now() }));

// Come to again, what was answered is mended; read again after its verdict, it counts too.
export const came = (me, state, kept) => {
  me.mend = kept?.repeat ? null : state.steps.find((s) => s.id === me.at && s.done) && me.at;
};
// What is sent names what it mends; what the book did not take is mended on the phone.
export const mends = (me, s, body, to) => {
  if (s && me.mend === s.id) body.corrects = s.row === "height" ? s.p.height : s.done?.key;
  const refused = outbox.aside().find((e) => e.to === to && (e.body.key === body.corrects || (body.place && e.body.place === body.place)));
  if (refused) outbox.again(refused, { ...refused.body, ...body, key: (body.key = refused.body.key), corrects: undefined });
  return refused;
};
export const mended = (b, places, done, plan) => {
  if (b.what === "take-back") {
    const p = places.find((p) => p.by === b.target);
    const k = Object.keys(done).find((k) => done[k]?.by === b.target);
    if (p) Object.assign(p, p.then);
    if (k) done[k] = done[k].then;
    return p || k;
  }
  if (!b.corrects) return false;
  const p = places.find((p) => p.height === b.corrects);
  const k = b.height + "/" + b.steering + "/" + b.row;
  if (b.what === "reading") done[k] = { say: b.value, key: b.corrects, by: b.key, then: done[k] };
  else if (p) Object.assign(p, { say: "spindle " + b.spindle, at: at(plan, b), by: b.key, then: { ...p } });
  return true;
};

// The jack goes no further up than where something touched; the book says why at the end.
export const notPast = ({ places, steps }) => {
  const strap = places.find((p) => p.rank === 1 && p.height)?.at;
  const touched = steps.find(
    (s) => s.p.height && s.p.pairing !== "crossed" && !(s.p.rank === 0 || s.p.rank === 1) && /^(touches|binds)$/.test(s.done?.say) && !(s.p.at <= strap),
  )?.p;
  const i = places.indexOf(touched);
  const past = (p) => touched && !p.height && p.pairing === touched.pairing && p.rank !== 0 && p.rank !== 1 && places.indexOf(p) > i;
  return { places, steps: steps.filter((s) => !past(s.p)) };
};

// Many well clear in one tap: one thing to undo.
const allClear = ({ s, me, send, reading, onward }, left, what) => {
  const [first, ...rest] = left.map((o) => reading(o, "well clear"));
  rest.forEach((b) => send(b));
  send(first, what + " well clear", s.id);
  me.taken[me.taken.length - 1].rest = rest;
  onward(s.id);
};

// Of the rule's shank; of another once its size was tapped.
export const drills = ({ me, key, keep }, drill) =>
  ["goes", "does not"].map((w) => {
    const said = (me.text || drill) + " " + w;
    return key(said, () => keep(said), "five");
  });

export const more = (here) => {
  const { s, plan, state, me, key, make, keep, go, save, say, menu, mine } = here;
  const all = [key("Something touches here", menu("touch"), "full")];
  if (plan.rows[s.row]?.kind === "gap") all.push(key("not looked", () => keep("not looked"), "full"));
  // A whole round asks for all others in one look.
  const rest = state.places.some((p) => p.all)
    ? []
    : state.steps.filter((o) => o.p === s.p && o.steering === s.steering && !o.done && o.p.height && plan.rows[o.row]?.kind === "gap");
  if (rest.length) {
    const n = rest.length === 1 ? "the one" : "the " + rest.length;
    const yes = () => allClear(here, rest, rest.length + " more");
    const ask = () => say("Well clear for " + n + " not read yet here?", [["Yes, well clear", yes], ["No", () => say()]]);
    all.push(key("Well clear for " + n + " not read here", ask, "full"));
  }
  const note = make("label", "g-note", "Note to this reading");
  const words = make("input");
  Object.assign(words, { type: "text", value: me.note ?? "", maxLength: 200 });
  words.addEventListener("input", () => ((me.note = words.value), save()));
  note.append(words);
  if (plan.rows[s.row]) all.push(note);
  const jump = make("div", "g-jump");
  for (const p of state.places) {
    const open = state.steps.filter((o) => o.p === p && !o.done);
    const first = open[0] ?? state.steps.find((o) => o.p === p);
    const same = state.places.filter((o) => o.words === p.words);
    const name = p.words + (same.length > 1 ? " " + (same.indexOf(p) + 1) : "");
    jump.append(key(name + (open.length ? ", " + open.length + " to read" : ", read"), () => go(first.id), "full"));
    if (!p.height) jump.append(make("p", "t1", aim({ plan, p, mine })));
  }
  const steer = [...new Set(state.steps.filter((o) => o.p === s.p).map((o) => o.steering))];
  for (const t of steer)
    jump.append(
      key("steering " + t.replace("-", " "), () => go(state.steps.find((o) => o.p === s.p && o.steering === t && o.row !== "height")?.id ?? s.id), "full"),
    );
  all.push(jump);
  if (plan.mirror) {
    const move = make("form");
    Object.assign(move, { method: "post", action: "/rounds/" + plan.round + "/other-side" });
    for (const [name, value] of [["key", outbox.newKey()], ["after", plan.after]])
      move.append(Object.assign(make("input"), { type: "hidden", name, value }));
    move.append(key("these were the " + plan.mirror, () => move.submit(), "full"));
    all.push(move);
  }
  const links = [["One more height", "/heights/new"], ["The round", ""]].map(([t, h]) =>
    Object.assign(make("a", "key full", t), { href: "/rounds/" + plan.round + h }),
  );
  return [...links, ...all];
};

// What a whole round asks at a place: what was kept for sure further out is not asked further in, what
// was not is; all others are looked at in one; something may have touched besides.
export const jack = (me) =>
  Object.assign(
    (plan, p, places, done, add) => {
      const here = (o, s, row) => done[o.height + "/" + s + "/" + row];
      const asked = p.asked ?? plan.asked;
      const wants = (s, row) => {
        const d = here(p, s, row);
        if (d && !(p.all && (d.wc || d.say === "well clear"))) return true;
        for (const id of (row.startsWith("o-") ? p.outO : p.out) ?? []) {
          const out = here(places.find((o) => o.id === id), s, row);
          const first = asked[s]?.includes(row);
          // Whether a shock has its reserve the book alone knows.
          if (out && out.say !== "not looked") return !(out.ok ?? (plan.rows[row].kind === "tape" ? !first : judge(plan, plan.rows[row], out.say) === "clear"));
        }
        return me.picked[p.id]?.includes(s + "/" + row) || asked[s]?.includes(row);
      };
      const left = [];
      let others = 0;
      const gaps = p.gaps ?? plan.gaps ?? {};
      for (const s of new Set([...Object.keys(gaps), ...Object.keys(asked)]))
        for (const row of new Set([...(gaps[s] ?? []), ...(asked[s] ?? []), ...(plan.lengths?.[s] ?? [])])) {
          if (wants(s, row)) add(p, s, row);
          else if (p.all && plan.rows[row].kind === "gap" && ++others && !here(p, s, row)) left.push({ p, steering: s, row, id: p.id + "/" + s + "/" + row });
        }
      if (others) add(p, "straight", "others", { left, done: p.height && !left.length && {} });
    },
    {
      besides: (places) => {
        for (const b of me.besides)
          if (!places.some((p) => p.height && p.height === b.key))
            places.splice(places.findIndex((p) => p.id === b.after) + 1, 0, { ...b, asked: { [b.steering]: [b.row] } });
      },
    },
  );

const aside = ({ me, leave, go }, to) => {
  const kept = me.left;
  me.left = leave();
  go(to, kept);
};
// Not this time: a height with all that is read there, or one reading.
export const skip = (here) => {
  const { s, me, state } = here;
  const all = s.row === "height" && !s.done ? state.steps.filter((o) => o.p === s.p) : [s];
  const ids = all.filter((o) => !o.done).map((o) => o.id);
  me.skipped.push(...ids);
  const to = state.steps[state.steps.indexOf(all[all.length - 1]) + 1]?.id ?? next(state.steps, s.id, me.skipped);
  me.past = { from: s.id, to, ids };
  aside(here, to);
};
export const back = (here) => {
  const { me, state } = here;
  const i = state.steps.findIndex((s) => s.id === me.at);
  const past = me.past?.to === me.at ? me.past : null;
  const to = past?.from ?? state.steps[(i < 0 ? state.steps.length : i) - 1]?.id;
  if (!to) return;
  if (past) me.skipped = me.skipped.filter((id) => !past.ids.includes(id));
  me.past = null;
  aside(here, to);
};

// "Tyre to frame · tie rod to upper arm, right": each once, its locks where they are not all.
const names = ({ gaps, rows }, left) =>
  [...new Set(left.map((o) => o.row))]
    .map((row) => {
      const locks = left.filter((o) => o.row === row).map((o) => o.steering.replace("full-", "").replace("-", " "));
      const all = Object.values(gaps).filter((there) => there.includes(row)).length;
      return rows[row].words + (locks.length < all ? ", " + locks.join(" and ") : "");
    })
    .join(" · ");
// One look at all others; what is not well clear is read alone.
export const others = (here) => {
  const { s, plan, key, menu, make } = here;
  const n = s.left.length > 1 ? s.left.length + " others" : "others";
  const all = key("All " + n + " well clear", () => allClear(here, s.left, n), "key-main full");
  // Its count changes, the key does not.
  all.dataset.key = "All others well clear";
  return [
    all,
    key("One is not", menu("one"), "full"),
    key("Something touches here", menu("touch"), "full"),
    make("p", "g-names t1", names(plan, s.left)),
  ];
};
const named = (plan, o) => plan.rows[o.row].words + (o.steering === "straight" ? "" : ", " + o.steering.replace("-", " "));
export const one = ({ s, plan, me, key, go, anew }) =>
  s.left.map((o) =>
    key(named(plan, o), () => {
      (me.picked[s.p.id] ??= []).push(o.steering + "/" + o.row);
      anew();
      go(o.id);
    }, "full"),
  );
// Jacked until it binds: what it is and at which lock, then where that is, which the tape says.
export const touch = ({ s, plan, state, me, key, make, go, send, reading, onward, anew }) => {
  const locks = ["full-left", "part-left", "straight", "part-right", "full-right"];
  const all = locks.filter((t) => plan.gaps?.[t]).map((t) => [t, plan.gaps[t]]);
  // Where its wheel stands already it touches there, and what is still to read there stays asked.
  const touches = (row, steering) => () => {
    if (s.p.height) {
      const was = state.steps.find((o) => o.p === s.p && o.steering === steering && o.row === row)?.done;
      send({ ...reading({ p: s.p, steering, row }, "touches"), corrects: was?.key }, named(plan, { row, steering }) + " touches", s.id);
      anew();
      return s.done ? onward(s.id) : go(s.id);
    }
    const id = "touch-" + (me.besides.length + 1);
    const past = s.p.rank === 0 || s.p.rank === 6;
    const label = named(plan, { row, steering }).toLowerCase() + " touches";
    me.besides.push({
      ...{ id, after: s.p.id, label, words: "Where it touches", find: label, row, steering, rank: -1 },
      ...{ name: past ? s.p.name : "in-between", back: s.p.back, pairing: s.p.pairing, otherName: s.p.otherName },
    });
    anew();
    go(id + "/straight/height");
  };
  const rows = [...new Set(all.flatMap(([, rows]) => rows))].filter((row) => plan.rows[row].kind === "gap");
  const one = (row, t, face, cls) => key(face, touches(row, t), cls, named(plan, { row, steering: t }));
  if (all.length === 1) return rows.map((row) => one(row, all[0][0], plan.rows[row].words, "full"));
  return rows.flatMap((row) => [
    make("p", "", plan.rows[row].words),
    ...all.filter(([, there]) => there.includes(row)).map(([t]) => one(row, t, t.replace("full-", ""), t)),
  ]);
};
export const kept = ({ s, body, me, send }) => {
  const at = me.besides.find((b) => b.id === s.p.id);
  if (!at) return;
  at.key = body.key;
  const touches = { what: "reading", height: body.key, steering: at.steering, row: at.row, value: "touches" };
  send(touches);
  me.taken[me.taken.length - 1].rest = [touches];
};

// What stands in the way of all else until it is answered.
export const stopped = (here) => {
  const { on, s, me, band, fill, root, rest, stop } = here;
  const q = on.ask ?? asking(here) ?? ready(here);
  stop.hidden = !q;
  for (const o of rest) o.hidden = !!q;
  if (q && (q.at ?? s)) band(q.at ?? s);
  if (q && s) root.dataset.step = me.at;
  if (q) fill(stop, "?" + q.of, () => shown(q, here));
  return !!q;
};

// What the car needs before a height can be read, and the way back to one.
const short = (p) => p.words.replace(/ \(.*?\)/, "");
export const ready = (here) => {
  const { s, me, plan, state, mine, save, draw } = here;
  if (!s || (plan.part && !s.p.find)) return null;
  const { p } = s;
  const done = () => {
    me.ready.push(p.id);
    me.here = p.id;
    save();
    draw();
  };
  const stands = state.places.find((o) => o.id === me.here)?.set;
  if (s.row === "height" && !s.done && !me.text && !me.ready.includes(p.id) && (stands ? p.set && stands !== p.set : p.ready)) {
    const first = !state.places.some((o) => o.height);
    const then = first ? "The heights, in order:" : "Then: " + short(p).toLowerCase() + ", " + aim({ plan, p, mine }) + ".";
    const list = first && !plan.part ? state.places.map((o) => short(o) + ": " + aim({ plan, p: o, mine })) : null;
    return { of: "ready" + p.id + plan.part, words: p.ready ?? "Then: " + p.set, lines: [p.caution, p.ready && p.set && "Now: " + p.set + ".", then], list, keys: [["Done", done], ["Not this time", () => skip(here)]] };
  }
  if (s.row !== "height" && p.height && !s.done && me.here && me.here !== p.id)
    return { of: "back" + p.id, words: "Jack back: " + short(p).toLowerCase(), lines: [p.set, p.say], keys: [["It stands there", done], ["Not this time", () => skip(here)]] };
  return null;
};

// Where to aim with the mark as it stands now; else what to find.
export const aim = ({ plan, p, which = "spindle", mine }) => {
  if (which !== "spindle" || p.height) return "";
  const own = mine().filter((e) => e.body.what === "height" && e.body.mark);
  const mark = mm(plan, (own[own.length - 1]?.body.mark ?? plan.marks[0]?.typed)?.split(" and ")[0]);
  const to = p.aim + mark;
  if (isNaN(to)) return p.find ?? "";
  return "about " + (plan.mm ? Math.round(to / 5) * 5 + " mm" : inches(to));
};

export const end = ({ plan, state, me, mine, asks, make, key, go, fill, pad }) => {
  const left = state.steps.filter((o) => !o.done);
  const open = mine().length;
  const { verdicts, next, href, last } = plan.end;
  const as = [left.length, open, me.here, JSON.stringify(plan.end)].join();
  fill(asks, "end" + as, () => [make("h2", "", state.steps.length - left.length + " read, " + left.length + " skipped")]);
  fill(pad, "end" + as, () => {
    const link = (words, to, cls) => Object.assign(make("a", "key " + cls, words), { href: to });
    const not = plan.end.touched.map((t) => make("p", "", t));
    const said = open
      ? [make("p", "", "The verdict comes when all is in the book.")]
      : verdicts.flatMap((v) => [make("p", "g-state t3 " + v.is, v.end + ": " + v.state), make("p", "", v.finding)]);
    // Where this phone left the jack, and where the book was read last: the one may not know of the other.
    const stood = [me.here, last].map((id) => state.places.find((p) => p.id === id)?.back ?? []);
    const lines = [...new Set(stood.flat())];
    const within = (line, other) => line !== other && other.toLowerCase().includes(line.toLowerCase());
    const back = lines.filter((l) => !lines.some((o) => within(l, o))).map((line) => make("p", "", line));
    const more = left.length ? [key("Read what was skipped", () => ((me.skipped = []), go(left[0].id)))] : [];
    return [...said, ...not, ...back, ...(open ? [] : [link(next, href, "key-main")]), ...more, link("To the round", "/rounds/" + plan.round, "")];
  });
};

// What may be taken over instead of being read: heights this phone sent have marks too.
export const instead = ({ which, plan, state, me, mine, key, answer }) => {
  if (which === "otherSpindle") return [key("not read", () => answer({ otherSpindle: "" }))];
  if (which !== "mark") return [];
  const own = mine().filter((e) => e.body.what === "height" && e.body.mark);
  const b = own.length ? own[own.length - 1].body : null;
  // Mended, a height keeps its own mark; that of a later one is none it can take.
  if (state.places.some((p) => p.height && me.mend?.startsWith(p.id + "/"))) return [key("mark as it was", () => answer({ mark: "", otherMark: "" }))];
  const of = b && (b.corrects ?? b.key);
  const p = b && state.places.find((p) => p.height === of);
  const marks = p
    ? [{ key: of, words: p.words, typed: b.mark + (b.pairing ? " and " + (b.otherMark || "not read") : "") }]
    : plan.marks;
  return marks.map((m) =>
    key("as at '" + m.words + "', " + m.typed, () => answer({ markAsAt: m.key, markTyped: m.typed })),
  );
};

// The last thing said: a box of a height, or what was kept.
export const undo = ({ me, on, plan, state, begun, told, leave, go, send, anew, draw }) => {
  const kept = leave();
  const [half, ...before] = begun();
  if (half) {
    me.undone = { kept, words: told(half) };
    return go(me.at, { id: me.at, text: half[1], typed: Object.fromEntries(before.reverse()) });
  }
  const last = me.taken.pop();
  if (!last) return;
  for (const b of [...(last.rest ?? []), last]) send({ what: "take-back", target: b.key });
  anew();
  me.undone = { ...last, at: kept };
  const { body, kept: then, from } = last;
  // What changes on the way from there on is said again.
  const at = state.places.findIndex((p) => from.startsWith(p.id + "/"));
  me.ready = me.ready.filter((id) => state.places.findIndex((p) => p.id === id) <= at);
  const box = Object.keys(plan.boxes).find((b) => !(b in then.typed));
  go(from, then);
  // What was begun goes on from there; what was typed whole goes with the first key.
  on.old = then.text && then.text === (body.value ?? body[box]);
  draw();
};

export const undone = (here, fill, said) => {
  const words = "Withdrawn: " + here.me.undone.words;
  fill(said, words, () => [here.make("p", "", words), here.key("Put back", () => redo(here), "", "put back")]);
};

// Undo pressed by mistake: the same again, as a new entry, and on to where that was.
export const redo = ({ me, go, send, anew }) => {
  const { kept, at, body, words, from, rest = [] } = me.undone;
  me.undone = null;
  if (!body) return go(kept.id, kept);
  const fresh = ({ key, ...same }) => same;
  const first = fresh(body);
  send(first, words, from);
  const again = rest.map((b) => (body.what === "height" ? { ...fresh(b), height: first.key } : fresh(b)));
  again.forEach((b) => send(b));
  Object.assign(me.taken[me.taken.length - 1], { kept, rest: again });
  anew();
  go(at.id, at);
};
