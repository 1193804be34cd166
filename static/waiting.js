// What waits on this phone, in words: what the book said of it, and what can be done about it.
import * as outbox from "./outbox.js";

const make = (tag, text, cls) => {
  const e = document.createElement(tag);
  if (cls) e.className = cls;
  if (text) e.textContent = text;
  return e;
};
const key = (face, does, cls) => {
  const b = make("button", face, "key " + (cls ?? ""));
  b.type = "button";
  b.addEventListener("click", () => does(b));
  return b;
};

const words = (e) => {
  const b = e.body;
  const first = e.words ?? [b.name ?? b.row, b.label].filter(Boolean).join(", ");
  if (b.what === "height") {
    const mark = b.mark ?? b.markTyped;
    const here = "spindle " + (b.spindle || "not read") + (mark ? ", mark " + mark : b.markAsAt ? ", mark as before" : ", no mark");
    const far = "other end spindle " + (b.otherSpindle || "not read") + (b.otherMark ? ", mark " + b.otherMark : "");
    return [first, here, b.pairing && far].filter(Boolean).join(" · ");
  }
  if (b.what === "reading") return first + " · " + b.value + (b.note ? ": " + b.note : "");
  const of = [...outbox.waiting(), ...outbox.sent()].find((o) => o.body.key === b.target);
  return ({ so: "It is so", not: "It does not count" }[b.what] ?? "Take back") + ": " + (of ? words(of) : b.target);
};
const when = ({ body: { claimed } }) => (claimed ? new Date(claimed).toLocaleString([], { dateStyle: "medium", timeStyle: "short" }) : "");
const hanging = (e) =>
  outbox
    .waiting()
    .filter((o) => [o.body.height, o.body.target].includes(e.body.key))
    .flatMap((o) => [o, ...hanging(o)]);

export const text = () =>
  outbox
    .waiting()
    .map((e) => [when(e), words(e), e.sentence && "The book: " + e.sentence].filter(Boolean).join("\n  "))
    .join("\n");

const FIELDS = {
  height: {
    spindle: "Spindle above the floor",
    otherSpindle: "Other end, spindle above the floor",
    mark: "Frame mark above the floor",
    otherMark: "Other end, frame mark above the floor",
    label: "In your words",
  },
  reading: { value: "It reads" },
};
const mend = (e, card) => {
  const form = make("form", "", "stack");
  const boxes = {};
  for (const [name, label] of Object.entries(FIELDS[e.body.what])) {
    if (name.startsWith("other") && !e.body.pairing) continue;
    const field = make("label", label, "field g-note");
    boxes[name] = make("input");
    Object.assign(boxes[name], { type: "text", name, value: e.body[name] ?? "", autocomplete: "off", maxLength: 200 });
    field.append(boxes[name]);
    form.append(field);
  }
  const send = make("button", "Save", "key key-main");
  form.append(send);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const typed = Object.fromEntries(Object.entries(boxes).map(([n, box]) => [n, box.value.trim() || undefined]));
    // A mark that is still to be taken from another height is the other end's.
    if (typed.mark && (typed.otherMark || !e.body.pairing)) typed.markAsAt = undefined;
    outbox.again(e, { ...e.body, ...typed });
  });
  card.replaceChildren(form);
  form.querySelector("input").focus();
};

const refused = (e) => {
  const item = make("li", "", "stack reading");
  const keys = make("p", "", "picks");
  const more = hanging(e).length;
  item.append(make("p", words(e)), make("p", e.sentence, "problem"));
  if (more) item.append(make("p", more + " more " + (more === 1 ? "hangs" : "hang") + " on it.", "hint"));
  const out = (b) => {
    if (b.classList.contains("key-ink")) return outbox.leaveOut(e);
    b.textContent = more ? "Leave out all " + (more + 1) + " for good" : "Leave out for good";
    b.classList.add("key-ink");
  };
  if (FIELDS[e.body.what]) keys.append(key("Mend", () => mend(e, item), "key-main"));
  keys.append(key("Send again", () => outbox.again(e)), key("Leave out", out));
  item.append(keys);
  return item;
};

const copy = (b, all) => {
  const box = all.querySelector("textarea") ?? make("textarea");
  Object.assign(box, { readOnly: true, rows: 12, value: text() });
  box.setAttribute("aria-label", "All of it as text");
  all.append(box);
  box.select();
  // Plain http has no other clipboard; the text stands selected where this one is gone too.
  if (document.execCommand("copy")) b.textContent = "Copied";
};

// Only what changed is built again: somebody may be typing.
const fill = (where, as, build) => {
  if (where.dataset.as === as) return;
  where.dataset.as = as;
  where.replaceChildren(...build());
};
const show = (root) => {
  const [not, yet, keys] = ["section", "section", "p"].map((tag) => make(tag, "", tag === "p" ? "picks" : "stack"));
  root.replaceChildren(not, yet, keys);
  const draw = () => {
    if (!root.isConnected) return;
    const aside = outbox.aside();
    const own = aside.filter((e) => e.sentence);
    const rest = [...outbox.pending(), ...aside.filter((e) => !e.sentence)];
    const as = (list) => JSON.stringify(list.map((e) => [e.id, e.sentence, e.body]));
    const part = (heading, items) => {
      const list = make("ul", "", "stack plain-list");
      list.append(...items);
      return [make("h2", heading), list];
    };
    fill(not, as(aside), () => (own.length ? part("The book did not take", own.map(refused)) : []));
    fill(yet, as(rest), () => (rest.length ? part("To be sent", rest.map((e) => make("li", words(e)))) : []));
    fill(keys, [own.length, !rest.length].join(), () => [
      ...(own.length > 1 ? [key("Send all again", () => own.forEach((e) => outbox.again(e)))] : []),
      ...(own.length || rest.length ? [key("Copy as text", (b) => copy(b, root))] : [make("span", "Nothing waits on this phone.")]),
    ]);
  };
  outbox.listen(draw);
  draw();
};

// In the place of the page that is open, which may not be had again without a network.
export const open = (event) => {
  const main = document.getElementById("main");
  if (document.getElementById("waiting")) return;
  event.preventDefault();
  const was = [...main.childNodes];
  const root = make("div");
  root.id = "waiting";
  const page = make("section", "", "stack waiting");
  page.append(make("h2", "Waiting on this phone"), root, key("Back", () => main.replaceChildren(...was)));
  main.replaceChildren(page);
  show(root);
  scrollTo(0, 0);
};

const root = document.getElementById("waiting");
if (root) show(root);
outbox.load();
