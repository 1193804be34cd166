// The keys a value is tapped with: six rows that stand still whatever is asked. What they do comes with them.
export const make = (tag, cls, text) => {
  const e = document.createElement(tag);
  if (cls) e.className = cls;
  if (text) e.textContent = text;
  return e;
};

export const key = (face, does, cls, label) => {
  const b = make("button", "key " + (cls ?? ""), face);
  b.type = "button";
  b.dataset.key = label ?? face;
  if (label) b.setAttribute("aria-label", label);
  b.addEventListener("click", does);
  return b;
};
const lowest = (n, d) => (n % 2 ? n + "/" + d : lowest(n / 2, d / 2));
// A quarter of an inch is a row; tick and size follow the graduation.
const sixteenth = (i, { whole, fine, keep }) => {
  const f = fine ? 2 * i + 1 + "/32" : i ? lowest(i, 16) : "";
  const size = fine ? "" : i % 4 ? (i % 2 ? "" : " eighth") : " quarter";
  return key(f || "0", () => keep((whole() + " " + f).trim() || "0"), "cell" + size + (i % 4 > 2 ? " end" : ""), f || "even");
};
const digits = (which, { type }) => [...which].map((d) => key(d, () => type(d)));
const back = (on) => key("⌫", on.back, "", "take the last back");
const typing = (on) => {
  const b = key("Type", on.typing, "small" + (on.typed ? " key-on" : ""));
  b.setAttribute("aria-pressed", !!on.typed);
  return b;
};
// Two rows of digits; or one of them, what fifth is, and a row of words.
const head = (on, fifth, row) => [
  ...digits("1234", on),
  fifth ?? digits("5", on)[0],
  back(on),
  ...(row ?? digits("67890", on)),
  typing(on),
];
export const inches = (on, fifth, row) => [
  ...head(on, fifth, row),
  ...Array.from({ length: 16 }, (_, i) => sixteenth(i, on)),
];
export const decimals = (on, row, drill) => [
  ...head(on),
  key(".", () => on.type("."), "half"),
  ...(row.length ? [] : [key("−", on.sign, "half", "minus")]),
  ...row,
  ...drill,
  key("Keep", () => on.keep(on.text()), "key-main full last"),
];
