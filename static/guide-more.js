// What comes after the first screen of a guided round: what is drawn, what is asked back, what is
// under More, undo, and the end.
export * from "./guide-order.js";
export * from "./guide-sketch.js";
export * from "./guide-stop.js";
import { newKey } from "./outbox.js";

export const more = ({ s, plan, state, me, key, make, keep, read, go, onward, say, save }) => {
  const left = state.steps.filter(
    (o) => o.p === s.p && o.steering === s.steering && !o.done && o.p.height && plan.rows[o.row]?.kind === "gap",
  );
  const rest = () =>
    say("Well clear for " + (left.length === 1 ? "the one" : "the " + left.length) + " not read yet here?", [
      ["Yes, well clear", () => (left.forEach((o) => read(o, "well clear")), onward(s.id))],
      ["No", () => say()],
    ]);
  const all = [];
  if (plan.rows[s.row]?.kind === "gap") all.push(key("not looked", () => keep("not looked"), "full"));
  if (left.length) all.push(key("well clear for the rest here", rest, "full"));
  const note = make("label", "g-note", "Note to this reading");
  const words = make("input");
  Object.assign(words, { type: "text", value: me.note ?? "", maxLength: 200 });
  words.addEventListener("input", () => ((me.note = words.value), save()));
  note.append(words);
  if (s.row !== "height") all.push(note);
  const jump = make("div", "g-jump");
  for (const p of state.places) {
    const open = state.steps.filter((o) => o.p === p && !o.done);
    const first = open[0] ?? state.steps.find((o) => o.p === p);
    jump.append(key(p.words + (open.length ? ", " + open.length + " to read" : ", read"), () => go(first.id), "full"));
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
    for (const [name, value] of [["key", newKey()], ["after", plan.after]])
      move.append(Object.assign(make("input"), { type: "hidden", name, value }));
    move.append(key("these were the " + plan.mirror, () => move.submit(), "full"));
    all.push(move);
  }
  const links = make("p", "more-links");
  for (const [t, h] of [["One more height", "/heights/new"], ["The round", ""]]) {
    const a = make("a", "", t);
    a.href = "/rounds/" + plan.round + h;
    links.append(a);
  }
  all.unshift(links);
  return all;
};

export const end = ({ plan, state, asks, make, key, go, fill, pad }) => {
  const left = state.steps.filter((o) => !o.done);
  asks.replaceChildren(make("h2", "", left.length ? left.length + " not read." : "All that was asked for has been read."));
  fill(pad, "end" + left.length, () => {
    const a = make("a", "key key-main", "To the round");
    a.href = "/rounds/" + plan.round;
    return [...(left.length ? [key("To the first not read", () => go(left[0].id))] : []), a];
  });
};

// What may be taken over instead of being read: heights this phone sent have marks too.
export const instead = ({ which, plan, state, mine, key, answer }) => {
  if (which === "otherSpindle") return [key("not read", () => answer({ otherSpindle: "" }))];
  if (which !== "mark") return [];
  const own = mine().filter((e) => e.body.what === "height" && e.body.mark);
  const b = own.length ? own[own.length - 1].body : null;
  const p = b && state.places.find((p) => p.height === b.key);
  const marks = p
    ? [{ key: b.key, words: p.words, typed: b.mark + (b.pairing ? " and " + (b.otherMark || "not read") : "") }]
    : plan.marks;
  return marks.map((m) =>
    key("as at '" + m.words + "', " + m.typed, () => answer({ markAsAt: m.key, markTyped: m.typed })),
  );
};

// The last thing said: a box of a height, or what was kept.
export const undo = ({ me, begun, told, leave, go, send, anew }) => {
  const kept = leave();
  const [half, ...before] = begun();
  if (half) {
    me.undone = { kept, words: told(half) };
    return go(me.at, { id: me.at, text: half[1], typed: Object.fromEntries(before.reverse()) });
  }
  const last = me.taken.pop();
  if (!last) return;
  send({ what: "take-back", target: last.key });
  anew();
  me.undone = { ...last, at: kept };
  go(last.from, last.kept);
};

// Undo pressed by mistake: the same again, as a new entry, and on to where that was.
export const redo = ({ me, go, send, anew }) => {
  const { kept, at, body, words, from } = me.undone;
  me.undone = null;
  if (!body) return go(kept.id, kept);
  const { key, ...same } = body;
  send(same, words, from);
  me.taken[me.taken.length - 1].kept = kept;
  anew();
  go(at.id, at);
};
