// Sends what waits on this phone. Plain http is enough: no worker, no lock, no secure context. One
// entry is sent at a time, under its own key, so that the book gets them in order and each once,
// however often an answer is lost. What the book does not take steps aside, with what hangs on it.
import * as outbox from "./outbox.js";
export { open } from "./waiting.js";

const TAB = Math.random().toString(36).slice(2);
const GONE = "no connection";
let trouble = "";
let busy = false;
let timer = 0;
let wait = 150;
export const soon = (ms) => {
  clearTimeout(timer);
  timer = setTimeout(pump, ms);
};
const later = () => {
  wait = Math.min(wait * 1.7, 12000);
  soon(wait * (0.7 + 0.6 * Math.random()));
};
export const heard = () => trouble === GONE && soon(0);

// Of several tabs one sends; a lease that claims to end far ahead is a clock that was set back.
const mine = () => {
  const [tab, until] = (outbox.get("sb:lease") ?? "").split(" ");
  const now = Date.now();
  if (tab && tab !== TAB && until > now && until < now + 20000) return false;
  outbox.put("sb:lease", TAB + " " + (now + 12000));
  return true;
};
addEventListener("pagehide", () => (outbox.get("sb:lease") ?? "").startsWith(TAB) && outbox.drop("sb:lease"));

const post = async (to, body) => {
  const stop = new AbortController();
  const clock = setTimeout(() => stop.abort(), 8000);
  try {
    const fields = Object.entries(body).flatMap(([k, v]) => (v == null ? [] : [v].flat().map((one) => [k, one])));
    const r = await fetch(to, {
      method: "POST",
      headers: { Accept: "application/json" },
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
  401: "this phone is not paired any more; pair it again, nothing is lost",
  403: "This phone may only look.",
  404: "The book does not know this round.",
};
// Not about this entry: all wait.
const unheard = (status) => status < 400 || status >= 500 || [408, 425, 429].includes(status);

const step = async (e) => {
  const on = outbox.aside().map((a) => a.body.key);
  const { height, target, markAsAt, corrects, key } = e.body;
  if ([height, target, markAsAt, corrects].some((k) => on.includes(k))) return outbox.setAside(e);
  outbox.tried(e);
  let { status, json } = await post(e.to, { ...e.body, book: outbox.get("sb:book") });
  if (status === 404) {
    const start = JSON.parse(outbox.get("sb:r:" + e.to.split("/")[2]) ?? "null");
    if (start) {
      const put = await post(start.to, start.body);
      if (put.status >= 500 || put.status === 429) throw put.status;
      ({ status, json } = await post(e.to, e.body));
    }
  }
  if (status === 200 && json.key === key) {
    outbox.taken(e, json.n);
    wait = 150;
    outbox.seen(json.book);
    outbox.tell(e.body, json);
  } else if (status === 409 && json.book) {
    outbox.seen(json.book);
  } else if (status === 401) {
    trouble = WORDS[401];
    later();
    return false;
  } else if (unheard(status)) {
    if (!json.sentence) throw status;
    trouble = json.sentence.replace(/\.$/, "");
    later();
    return false;
  } else if (outbox.pending().some((o) => o.body.what === "take-back" && o.body.target === key)) {
    // Never in the book and not wanted there: neither it nor its taking back is sent.
    outbox.leaveOut(e);
  } else {
    outbox.setAside(e, json.sentence ?? WORDS[status] ?? "The book did not take it.");
  }
};

const show = () => outbox.show(trouble ? ": " + trouble + "." : busy ? ", sending …" : "");

const pump = async () => {
  if (busy) return;
  busy = true;
  try {
    for (let e = outbox.pending()[0]; e; e = outbox.pending()[0]) {
      if (!mine()) return soon(2000);
      trouble = "";
      show();
      if ((await step(e)) === false) return;
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

for (const event of ["online", "pageshow"]) addEventListener(event, () => soon(0));
document.addEventListener("visibilitychange", () => document.hidden || soon(0));
