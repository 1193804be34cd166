// What was typed stays on this phone until the book has it. Here it is kept and counted; sender.js,
// which comes after the first screen, sends it.
const OUT = "sb:o:";
const ASIDE = "sb:x:";
const SENT = "sb:s:";
const KEPT = 300;
const LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";

const memory = new Map();
let lasting = true;
try {
  localStorage.setItem("sb:try", "1");
} catch {
  lasting = false;
}
const kept = (ask, none) => {
  try {
    return ask(localStorage);
  } catch {
    return none;
  }
};
export const get = (k) => memory.get(k) ?? kept((all) => all.getItem(k), null);
export const put = (k, v) => {
  try {
    localStorage.setItem(k, v);
    memory.delete(k);
    lasting = !memory.size;
  } catch {
    lasting = false;
    memory.set(k, v);
  }
};
export const drop = (k) => {
  memory.delete(k);
  kept((all) => all.removeItem(k));
};
const names = (start) =>
  [...new Set([...kept(Object.keys, []), ...memory.keys()])]
    .filter((k) => k.startsWith(start))
    .sort();
const list = (start) =>
  names(start).map((id) => ({ id, ...JSON.parse(get(id)) }));
const number = (id) => Number(id.slice(5, 14));

export const newKey = () =>
  Array.from(crypto.getRandomValues(new Uint8Array(14)), (b) => LETTERS[b % 31]).join("");
export const pending = () => list(OUT);
export const sent = () => list(SENT);
// What the book did not take, with what hangs on it.
export const aside = () => list(ASIDE);
export const waiting = () => [...pending(), ...aside()];

const move = ({ id, to, body, words }, start, more) => {
  put(start + id.slice(5), JSON.stringify({ to, body, words, ...more }));
  if (!id.startsWith(start)) drop(id);
};
export const tried = (e) => move(e, OUT, { tried: true });
export const setAside = (e, sentence) => move(e, ASIDE, { sentence });
export const taken = (e, n) => {
  move(e, SENT, { n });
  names(SENT).slice(0, -KEPT).forEach(drop);
};

const ears = [];
export const listen = (f) => ears.push(f);
export const tell = (body, json) => ears.forEach((f) => f(body, json));

// --- the rest, once the first screen is there
let rest = null;
let asked = null;
export const load = () =>
  (asked ??= import("./sender.js").then(
    (m) => {
      rest = m;
      m.soon(0);
    },
    () => {
      asked = null;
      setTimeout(load, 3000);
    },
  ));
const soon = () => (rest ? rest.soon(0) : load());
// The book was heard of another way.
export const heard = () => rest?.heard();

export const add = (to, body, words) => {
  // What was never sent, or was not taken, is undone on the phone alone.
  const held = body.what === "take-back" && waiting().find((e) => e.body.key === body.target && !e.tried);
  if (held) return leaveOut(held);
  const next = Math.max(0, ...[OUT, ASIDE, SENT].flatMap(names).map(number)) + 1;
  put(OUT + String(next).padStart(9, "0") + ":" + body.key, JSON.stringify({ to, body, words }));
  soon();
  show();
};
// Once more, as it was or mended; what only hung on another tries again with it.
export const again = (e, body = e?.body) => {
  if (e) move({ ...e, body }, OUT);
  for (const w of aside()) if (!w.sentence) move(w, OUT);
  soon();
  show();
};
// Off the phone, with what hangs on it. A mark taken as there is then a mark read as much.
export const leaveOut = (e) => {
  const out = [];
  for (const w of waiting().sort((a, b) => number(a.id) - number(b.id))) {
    const { height, target, markAsAt, markTyped, pairing, corrects } = w.body;
    if (w.id === e.id || [height, target, corrects].some((k) => out.includes(k))) {
      out.push(w.body.key);
      drop(w.id);
    } else if (out.includes(markAsAt)) {
      // An axle's are told together.
      const [mark, far] = pairing ? markTyped.split(" and ") : [markTyped];
      const otherMark = far === "not read" ? undefined : far;
      put(w.id, JSON.stringify({ ...w, body: { ...w.body, markAsAt: undefined, mark, otherMark } }));
    }
  }
  again();
};
export const remember = (round, start) => put("sb:r:" + round, JSON.stringify(start));

// Another generation: the book was put back from an older copy and may lack what it once had.
export const seen = (book) => {
  const known = get("sb:book");
  if (known === book) return;
  put("sb:book", book);
  if (!known) return;
  sent().forEach(tried);
  soon();
};

let line = null;
let state = "";
export const show = (now = state) => {
  state = now;
  const n = pending().length;
  const m = aside().length;
  if (!line) {
    line = document.getElementById("outbox") ?? document.createElement("p");
    line.className = "outbox";
    line.setAttribute("role", "status");
    const a = document.createElement("a");
    a.href = "/waiting";
    // The page itself may be out of reach.
    a.addEventListener("click", (e) => rest?.open(e));
    line.append(a);
    if (!line.isConnected) document.getElementById("main").prepend(line);
  }
  const words = [
    n && (lasting ? n + " on this phone" : n + " on this page only, keep it open") + state,
    m && m + " the book did not take",
  ]
    .filter(Boolean)
    .join(" · ");
  if (line.firstChild.textContent !== words) line.firstChild.textContent = words;
  line.hidden = line.firstChild.hidden = !words;
  tell(null, null);
};

addEventListener("storage", (e) => {
  if (!e.key?.startsWith("sb:")) return;
  show();
  setTimeout(soon, 2000);
});
addEventListener("pageshow", () => {
  if (names(OUT).length) soon();
  if (waiting().length) show();
});
