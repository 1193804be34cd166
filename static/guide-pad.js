// The keys a value is tapped with. What they do comes with them: type adds to what is typed, back
// takes the last of it, keep keeps a value.
export const make = (tag, cls, text) => {
  const e = document.createElement(tag);
  if (cls) e.className = cls;
  if (text) e.textContent = text;
  return e;
};

export const key = (face, does, cls, label) => {
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
const lowest = (n, d) => (n % 2 ? n + "/" + d : lowest(n / 2, d / 2));
const sixteenth = (i, { text, fine, keep }) => {
  const f = fine ? 2 * i + 1 + "/32" : i ? lowest(i, 16) : "";
  return key(f || "0", () => keep((text() + " " + f).trim() || "0"), "cell", f || "even");
};
// A gap is small: its keys leave room for the drill that tells whether the rule is kept.
export const inches = (small, on) => {
  const { type, back, fine, finer } = on;
  const pad = [];
  for (const d of small ? "1234" : "12345") pad.push(key(d, () => type(d), "whole"));
  pad.push(key("⌫", back, "whole", "take the last back"));
  if (!small) for (const d of "67890") pad.push(key(d, () => type(d), "whole"));
  const th = key("32nds", finer, "whole " + (fine ? "key-on" : ""));
  th.setAttribute("aria-pressed", fine);
  pad.push(th);
  for (let i = 0; i < 16; i++) pad.push(sixteenth(i, on));
  return pad;
};
export const decimals = ({ type, back, text, keep }) => {
  const pad = [];
  for (const d of ["1", "2", "3", "⌫", "4", "5", "6", "−", "7", "8", "9", ".", "0"])
    pad.push(
      key(d, d === "⌫" ? back : () => type(d === "−" ? "-" : d), "cell", { "⌫": "take the last back", "−": "minus" }[d]),
    );
  pad.push(key("Keep", () => keep(text()), "key-main wide"));
  return pad;
};
