// What was typed stays on this phone until the book has it. Plain http is enough: no worker, no
// lock, no secure context. One entry is sent at a time, under its own key, so that the book gets
// them in order and each once, however often an answer is lost.
const OUT = "sb:o:";
const SENT = "sb:s:";
const KEPT = 300;
const LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";
const TAB = Math.random().toString(36).slice(2);

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

let tell = () => {};
export const listen = (f) => (tell = f);

export const add = (to, body) => {
  const next = Math.max(0, ...[...names(OUT), ...names(SENT)].map(number)) + 1;
  put(OUT + String(next).padStart(9, "0") + ":" + body.key, JSON.stringify({ to, body }));
  soon(0);
  show();
};
// Typed again after it was not accepted: the same entry, in its old place.
export const replace = (id, to, body) => {
  put(id, JSON.stringify({ to, body }));
  soon(0);
  show();
};
export const remember = (round, start) => put("sb:r:" + round, JSON.stringify(start));

// Another generation: the book was put back from an older copy and may lack what it once had.
export const seen = (book) => {
  const known = get("sb:book");
  if (known === book) return;
  put("sb:book", book);
  if (!known) return;
  for (const { id, to, body } of sent()) {
    put(id.replace(SENT, OUT), JSON.stringify({ to, body }));
    drop(id);
  }
  soon(0);
};

const GONE = "no connection, trying again";
let trouble = "";
let busy = false;
let timer = 0;
let wait = 400;
const soon = (ms) => {
  clearTimeout(timer);
  timer = setTimeout(pump, ms);
};
const later = () => {
  wait = Math.min(wait * 1.7, 12000);
  soon(wait * (0.7 + 0.6 * Math.random()));
};

// The book was heard of another way.
export const heard = () => trouble === GONE && soon(0);

// Of several tabs one sends; a lease that claims to end far ahead is a clock that was set back.
const mine = () => {
  const [tab, until] = (get("sb:lease") ?? "").split(" ");
  const now = Date.now();
  if (tab && tab !== TAB && until > now && until < now + 20000) return false;
  put("sb:lease", TAB + " " + (now + 12000));
  return true;
};
addEventListener("pagehide", () => (get("sb:lease") ?? "").startsWith(TAB) && drop("sb:lease"));

const post = async (to, body) => {
  const stop = new AbortController();
  const clock = setTimeout(() => stop.abort(), 8000);
  try {
    const fields = Object.entries(body).filter(([, v]) => v != null);
    const r = await fetch(to, {
      method: "POST",
      body: new URLSearchParams(fields),
      signal: stop.signal,
    });
    const json = (r.headers.get("content-type") ?? "").includes("json") ? await r.json() : {};
    return { status: r.status, json };
  } finally {
    clearTimeout(clock);
  }
};

const WORDS = {
  401: "This phone is not paired any more; pair it again, nothing is lost",
  403: "This phone may only look",
  404: "The book does not know this round",
};

const undone = (e) =>
  pending().find((o) => o.body.what === "take-back" && o.body.target === e.body.key);

const pump = async () => {
  if (busy) return;
  busy = true;
  try {
    for (let e = pending()[0]; e; e = pending()[0]) {
      if (!mine()) return soon(2000);
      trouble = "";
      show();
      let { status, json } = await post(e.to, { ...e.body, book: get("sb:book") });
      if (status === 404) {
        const start = JSON.parse(get("sb:r:" + e.to.split("/")[2]) ?? "null");
        if (start && (await post(start.to, start.body)).status < 400)
          ({ status, json } = await post(e.to, e.body));
      }
      if (status === 200 && json.key === e.body.key) {
        const taken = { to: e.to, body: e.body, n: json.n };
        put(e.id.replace(OUT, SENT), JSON.stringify(taken));
        drop(e.id);
        names(SENT).slice(0, -KEPT).forEach(drop);
        wait = 400;
        seen(json.book);
        tell(e.body, json);
      } else if (status === 409 && json.book) {
        seen(json.book);
      } else if (status === 422 && undone(e)) {
        // Never in the book and not wanted there: neither it nor its taking back is sent.
        drop(undone(e).id);
        drop(e.id);
      } else if (status < 500 && status !== 429) {
        trouble = json.sentence ?? WORDS[status] ?? "The book did not take it";
        put(e.id, JSON.stringify({ to: e.to, body: e.body, sentence: trouble }));
        return later();
      } else {
        throw status;
      }
    }
    trouble = "";
  } catch {
    trouble = GONE;
    later();
  } finally {
    busy = false;
    show();
  }
};

let line = null;
const show = () => {
  const n = pending().length;
  if (!line) {
    line = document.getElementById("outbox") ?? document.createElement("p");
    line.className = "outbox";
    line.setAttribute("role", "status");
    if (!line.isConnected) document.getElementById("main").prepend(line);
  }
  const words = !n
    ? ""
    : (lasting ? n + " on this phone" : n + " on this page only, keep it open") +
      (busy && !trouble ? ", sending …" : trouble ? ": " + trouble + "." : "");
  if (line.textContent !== words) line.textContent = words;
  line.hidden = !n;
  tell(null, null);
};

for (const event of ["online", "pageshow"]) addEventListener(event, () => soon(0));
document.addEventListener("visibilitychange", () => document.hidden || soon(0));
addEventListener("storage", (e) => {
  if (!e.key?.startsWith("sb:")) return;
  show();
  setTimeout(pump, 2000);
});
