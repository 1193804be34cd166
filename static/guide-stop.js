// What stands in the way until it is answered: a doubt, at the question it is of, drawn on the tape
// with what was typed and what was read last time; and what is asked before much is said at once.
import { at } from "./guide-order.js";

const INCH = 25.4;
const MARK = '<svg class="shape" viewBox="0 0 20 20" aria-hidden="true"><path d="M1.5 1.5h17v17h-17zM6.8 7.6c.2-4.4 6.6-4 6.4-.3-.1 2.3-3.2 2.4-3.2 5M10 13.8v2.4"/></svg>';
export const inches = (mm) => {
  const n = Math.round((Math.abs(mm) / INCH) * 8);
  let [top, of] = [n % 8, 8];
  while (top && top % 2 === 0) [top, of] = [top / 2, of / 2];
  const whole = Math.floor(n / 8);
  return (mm < 0 && n ? "−" : "") + (whole || !top ? whole : "") + (top ? (whole ? " " : "") + top + "/" + of : "") + " in";
};

// What the book doubts of this round, each until it is answered.
export const asking = ({ answered, plan, state, mine, me, send, go, draw }) => {
  // What the plan knows of, it tells itself whether it is still open.
  const open = [...answered.filter((d) => d.n > plan.n), ...plan.doubts].find(
    (d) => !mine().some((e) => e.body.target === d.key && e.body.what !== "reading"),
  );
  if (!open) return null;
  const at = state.steps.find((s) => (s.row === "height" ? s.p.height : s.done?.key) === open.key);
  const body = [...mine(), ...me.taken].reverse().find((e) => [e.body?.key, e.body?.corrects].includes(open.key))?.body;
  const again = (box) => () => {
    me.taken = me.taken.filter((t) => t.key !== open.key);
    send({ what: "take-back", target: open.key });
    const { spindle, otherSpindle, mark, otherMark } = body ?? {};
    const typed = box ? { spindle, otherSpindle, mark, otherMark, [box]: undefined } : {};
    if (at) go(at.id, { id: at.id, text: open.unread ? body?.value : "", typed: JSON.parse(JSON.stringify(typed)) });
    else draw();
  };
  const height = body?.what === "height" && !body.markAsAt;
  return {
    of: open.key,
    at,
    body,
    mm: open.at,
    words: at ? open.doubt : open.words + ". " + open.doubt,
    keys: [
      ...(height
        ? [["Read spindle again", again("spindle")], ["Read frame mark again", again("mark")]]
        : [["Read it again", again()]]),
      // What says nothing cannot be right.
      ...(open.unread ? [] : [["It is right, count it", () => (send({ what: "so", target: open.key }), draw())]]),
    ],
  };
};

// The corner's heights where they came out, of an axle those read as this one was; the doubted one
// and last time's among them.
const tape = (p, state, zero) => {
  const read = state.places.filter((o) => o.height && isFinite(o.at) && o.id !== p.id && o.pairing === p.pairing);
  const all = read.map((o) => ({ at: o.at, words: o.words, as: "" }));
  if (isFinite(p.at)) all.push({ at: p.at, words: "as typed", as: "typed" });
  if (p.was?.at) all.push({ at: p.was.at, words: p.was.day, as: "was" });
  if (all.length < 2) return "";
  all.sort((a, b) => b.at - a.at);
  const tall = Math.max(240, 16 + 24 * all.length);
  const [high, low] = [all[0].at + INCH, all[all.length - 1].at - INCH];
  const y = (mm) => 8 + ((tall - 16) * (high - mm)) / (high - low);
  let ticks = "";
  for (let t = Math.ceil((low - zero) / INCH) * INCH + zero; t < high; t += INCH) ticks += "M9 " + y(t) + "h14M74 " + y(t) + "h-14";
  let label = -20;
  const spread = all.map((a, i) => {
    label = Math.min(Math.max(y(a.at), label + 24), tall - 10 - 24 * (all.length - 1 - i));
    return (
      `<path class="at ${a.as}" d="M2 ${y(a.at)}h80"/><path class="lead ${a.as}" d="M82 ${y(a.at)} 96 ${label}H358"/>` +
      `<text x="100" y="${label - 5}">${a.words.replace(/ \(.*|, (both together|crossed)$/, "")}</text><text class="far" x="358" y="${label - 5}">${a.at === zero ? "" : inches(a.at - zero)}</text>`
    );
  });
  return `<svg class="g-tape" viewBox="0 0 358 ${tall}" role="img" aria-label="${all.map((a) => a.words + " " + inches(a.at - zero)).join("; ")}"><path class="dye" d="M8 ${y(high)}h67v${y(low) - y(high)}H8z"/><path class="ticks" d="${ticks}"/>${spread.join("")}</svg>`;
};

export const stop = (q, { make, key, plan, state }) => {
  const all = [make("h2", "t4", q.at ? "Check this" : q.words)];
  if (q.at) {
    all[0].insertAdjacentHTML("afterbegin", MARK);
    all.push(make("p", "", q.words));
    if (q.at.row === "height") {
      const t = make("div");
      const { p } = q.at;
      const typed = q.body ? at(plan, q.body) : (q.mm ?? p.at);
      t.innerHTML = tape({ ...p, at: typed }, state, plan.ride ?? typed);
      all.push(...t.children);
    }
  }
  for (const line of q.lines ?? []) if (line) all.push(make("p", "", line));
  if (q.list) {
    const list = make("ol", "g-heights t1");
    for (const line of q.list) list.append(make("li", "", line));
    all.push(list);
  }
  const was = (w) => {
    const box = w.includes("spindle") ? "spindle" : w.includes("mark") ? "mark" : null;
    const typed = box ? q.body?.[box] : q.body?.value;
    const last = box ? q.at.p.was?.[box] : plan.last[q.at.p.id + "/" + q.at.steering + "/" + q.at.row];
    return [typed && "typed " + typed, last].filter(Boolean).join(", ");
  };
  for (const [w, f] of q.keys) {
    const k = key(w, f, q.lines && f === q.keys[0][1] ? "key-main" : "", w);
    if (w.startsWith("Read") && q.at && was(w)) k.append(make("small", "t1", was(w)));
    all.push(k);
  }
  return all;
};
