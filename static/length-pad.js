// The guide's keys for any box that takes a length or an angle: they stand at the foot of the screen while it is filled.
import { decimals, inches, key, make } from "./guide-pad.js";

const unit = (b) => b.nextElementSibling?.textContent;
const padded = (b) => b?.matches?.(".entry > input") && ["in", "cm", "mm", "°"].includes(unit(b));
const boxes = () => [...document.querySelectorAll(".entry > input")].filter((b) => padded(b) && b.getClientRects().length);
const under = make("div", "under");
const pad = make("div", "pad");
const foot = make("div", "g-foot");
under.hidden = true;
under.setAttribute("role", "group");
under.setAttribute("aria-label", "Keys");
under.append(pad, foot);
document.body.append(under);

let box = null;
let fine = false;
let kept = 0;
let leaving = null;
// What stands there already goes with the first key; its sign may be turned before.
let old = 0;
const minus = () => /^[-−]/.test(box.value);
const set = (text, was) => {
  box.value = text;
  old = was ?? 0;
  box.dispatchEvent(new Event("input", { bubbles: true }));
};
const shut = () => {
  under.hidden = true;
  document.documentElement.classList.remove("padded");
  box = null;
};
const go = (by) => {
  const all = boxes();
  const from = box;
  const to = all[all.indexOf(from) + by];
  from.dispatchEvent(new Event("change", { bubbles: true }));
  if (to) to.focus();
  else done();
};
// A blink later: tapped twice, it is not what comes to stand there that is tapped.
const done = () => {
  const left = (leaving = box);
  setTimeout(() => {
    leaving = null;
    if (box !== left) return;
    shut();
    document.querySelector(".actions .key-main")?.focus();
  }, 350);
};
const whole = () => (!old ? box.value : old > 1 && minus() ? "-" : "");
const on = {
  whole,
  text: () => box.value,
  type: (t) => set(whole() + t),
  sign: () => set((minus() ? "" : "-") + box.value.replace(/^[-−]/, ""), old && 2),
  back: () => set(old === 1 ? "" : box.value.slice(0, -1)),
  // Tapped twice, it ends one number and does not begin the next.
  keep: (value) => {
    if ((old === 1 || !box.value || leaving === box) && performance.now() - kept < 350) return;
    kept = performance.now();
    set(value);
    go(1);
  },
  // The phone's own keys, in this box.
  typing: () => {
    const b = box;
    b.blur();
    b.inputMode = b.dataset.mode;
    shut();
    b.focus();
  },
};
const press = (face, does, label) => key(face, () => (does(), box && draw()), "", label);
const [first, sign, sharp, next] = [
  press("‹ Back", () => (boxes()[0] === box ? done() : go(-1))),
  press("−", () => on.sign(), "turn its sign"),
  press("32nds", () => (fine = !fine)),
  press("Next ›", () => go(1)),
];
next.dataset.key = "next";
foot.append(first, sign, sharp, next);
const draw = () => {
  const inch = unit(box) === "in";
  const as = inch + " " + fine;
  if (pad.dataset.as !== as) pad.replaceChildren(...(inch ? inches({ ...on, fine }) : decimals(on, [], [])));
  pad.dataset.as = as;
  const all = boxes();
  sharp.setAttribute("aria-pressed", fine);
  sharp.classList.toggle("key-on", fine);
  sharp.disabled = sign.disabled = !inch;
  first.textContent = box === all[0] ? "Done" : "‹ Back";
  next.textContent = box === all.at(-1) ? "Done" : "Next ›";
};

document.addEventListener("focusin", ({ target }) => {
  if (!padded(target)) return under.contains(target) || !box || shut();
  // A low screen, and large text, has no room for both: its own keys.
  if (!matchMedia("(min-height: 38em)").matches) return;
  // The phone's own keys stay for the box they were asked for.
  if (target.dataset.mode && target.inputMode !== "none") return (target.onblur = () => (target.inputMode = "none"));
  target.dataset.mode ??= target.inputMode || "text";
  target.inputMode = "none";
  box = target;
  old = target.value ? 1 : 0;
  // After the tap that brought it here, which would set the caret.
  setTimeout(() => box === target && old && target.select(), 0);
  under.hidden = false;
  document.documentElement.classList.add("padded");
  draw();
  target.closest(".field")?.scrollIntoView({ block: "nearest" });
});
document.addEventListener("focusout", ({ target }) => setTimeout(() => box === target && document.activeElement !== target && !under.contains(document.activeElement) && shut(), 0));
// A finger on a key leaves the box as it is.
under.addEventListener("pointerdown", (e) => e.preventDefault());
under.addEventListener("mousedown", (e) => e.preventDefault());
// By keyboard what comes after the last box is there to be reached; a caret set by hand keeps what stands there.
document.addEventListener("keydown", (e) => e.target === box && (e.key === "Tab" ? shut() : e.key.startsWith("Arrow") && (old = 0)));
document.addEventListener("input", (e) => e.isTrusted && e.target === box && (old = 0));
