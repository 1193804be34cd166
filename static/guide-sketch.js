// What is measured, in a small picture; and what a gap comes to against its rule, for a second.
import { mm } from "./guide-order.js";

const sheet = document.createElement("link");
sheet.rel = "stylesheet";
sheet.href = new URL("./guide-late.css", import.meta.url);
document.head.append(sheet);

const WHEEL = '<circle cx="92" cy="28" r="20"/><circle cx="92" cy="28" r="6"/><path class="chain" d="M24 28h98M92 0v58"/>';
const RAIL = '<path d="M24 8h98v24H24z"/><path class="full" d="m30 32 6 10H24z"/><path class="chain" d="M24 32h60"/>';
const ARROW = '<path d="M30 32v70"/><path class="full" d="m30 30 3 10h-6zM30 104l3-10h-6z"/>';
const FLOOR = '<path class="floor" d="M0 105h124"/><path class="thin" d="M2 115l9-9M18 115l9-9M34 115l9-9M50 115l9-9M66 115l9-9M82 115l9-9M98 115l9-9M114 115l9-9"/>';

export const sketch = ({ make, row, which }) => {
  const side = make("div");
  if (row?.kind === "gap") {
    const parts = row.words.toLowerCase().split(" to ").map((w) => w.replace(/^(its|the) /, ""));
    if (parts.length < 2) parts[1] = "";
    const part = (w) => {
      const d = make("p", "part");
      if (w) d.append(make("b", "t1", w));
      return d;
    };
    side.append(part(parts[0]), make("p", "keep", row.drill ? "keep " + row.drill : ""), part(parts[1]));
  } else if (!row)
    side.innerHTML = `<svg viewBox="0 0 124 116" aria-hidden="true">${/mark/i.test(which) ? RAIL + ARROW : WHEEL + ARROW}${FLOOR}</svg>`;
  return [...side.children];
};

const SHAPES = {
  clear: '<circle cx="10" cy="10" r="8.5"/>',
  short: '<path d="M10 1 19.5 18.5H.5z"/>',
  "cant-tell": '<path class="line" d="M10 2 18 10 10 18 2 10z"/>',
};
// A guard band of the doubt of a reading as large as the rule; the book judges with the reading's own.
const doubt = (plan, row, value) => (mm(plan, value) >= plan.tape?.from ? plan.tape.pm : row.pm);
export const judge = (plan, row, value) => {
  const [least, u] = [mm(plan, row.drill), mm(plan, doubt(plan, row, value))];
  if (isNaN(least)) return null;
  if (value === "well clear") return "clear";
  if (value === "touches" || value === "binds") return "short";
  const read = mm(plan, value);
  if (isNaN(read)) return null;
  return read >= least + u ? "clear" : read < least - u ? "short" : "cant-tell";
};

// The next question is there already, and its keys count: what is shown only says what was.
export const judged = ({ s, value, plan, state, me, on, head, make, key, go, draw }) => {
  const row = plan.rows[s.row];
  const came = judge(plan, row, value);
  if (!came) return;
  const v = make("section", "g-verdict");
  v.setAttribute("role", "status");
  const figure = make("p", "g-fig t5");
  figure.append(make("b", "", value));
  if (/\d/.test(value)) figure.append(make("span", "t1", "± " + doubt(plan, row, value)));
  const said = make("p", "g-state t3 is-" + came);
  said.innerHTML = `<svg class="shape" viewBox="0 0 20 20" aria-hidden="true">${SHAPES[came]}</svg>`;
  const words = { clear: "clear", short: "too close: keep " + row.drill, "cant-tell": "can’t tell: keep " + row.drill };
  said.append(make("span", "", words[came]));
  const then = state.steps.find((o) => o.id === me.at);
  const next = then && "next: " + (then.row === "others" ? "all others" : (plan.rows[then.row]?.words ?? then.p.words).toLowerCase()) + (then.steering === "straight" ? "" : ", " + then.steering.replace("-", " "));
  const end = () => {
    if (on.verdict?.v !== v) return;
    on.verdict = null;
    v.remove();
    draw();
  };
  on.verdict?.v.remove();
  on.verdict = { v };
  v.append(make("h2", "", row.words), figure, said, key("Read again", () => (end(), go(s.id, { repeat: true }))), make("p", "t1", next ?? ""), make("i", "g-time"));
  head.append(v);
  for (const e of ["pointerdown", "keydown"]) addEventListener(e, (to) => v.contains(to.target) || end(), { once: true });
  setTimeout(end, 1000);
  draw();
};
