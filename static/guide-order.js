// Whether a height can lie where it was typed. It is asked while the wheel still stands there, with
// or without a network; so a tape's text is read here too, roughly: the book reads it itself.
const UNIT = { '"': 25.4, in: 25.4, mm: 1, cm: 10 };
export const mm = (plan, text) => {
  const m = /^(?:(\d+(?:[.,]\d+)?)(?![\d/])[ -]*)?(?:(\d+)\/(\d+))?\s*(in|"|mm|cm)?$/.exec((text ?? "").trim());
  if (!m || (!m[1] && !m[2])) return NaN;
  return (Number((m[1] ?? "0").replace(",", ".")) + (m[2] ? m[2] / m[3] : 0)) * (UNIT[m[4]] ?? (plan.mm ? 1 : 25.4));
};
export const at = (plan, b) => {
  const mark = b.mark ?? plan.marks.find((m) => m.key === b.markAsAt)?.typed ?? b.markTyped;
  return mm(plan, b.spindle) - mm(plan, mark?.split(" and ")[0]);
};
// A place that this one came out on the wrong side of.
export const wrong = (places, place, here) =>
  place.rank >= 0
    ? places.find(
        (p) =>
          p.height &&
          p.rank >= 0 &&
          p.rank !== place.rank &&
          p.pairing === place.pairing &&
          (p.rank < place.rank ? here < p.at : here > p.at),
      )
    : undefined;
// What is asked of a height on the wrong side of another before it is kept; nothing where it is not.
export const off = ({ plan, state, s, body, typed, keep, go }) => {
  const other = wrong(state.places, s.p, at(plan, body));
  if (!other) return null;
  const { spindle, mark, markAsAt, markTyped, ...rest } = typed;
  const again = (typed) => () => go(s.id, { id: s.id, typed: JSON.parse(JSON.stringify({ ...rest, ...typed })) });
  return [
    "'" + s.p.words + "' came out " + (other.rank < s.p.rank ? "below" : "above") + " '" + other.words + "'.",
    [
      ["Read spindle again", again({ mark, markAsAt, markTyped })],
      ["Read frame mark again", again({ spindle })],
      ["It is right, count it", () => keep(true)],
    ],
    { at: s, body },
  ];
};
