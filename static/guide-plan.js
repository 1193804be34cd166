// A round's plan with what this phone has sent since. Of an axle a height is both ends'.
// The box of a height that is asked for next; an end without a spindle needs no mark.
export const toAsk = (plan, typed) =>
  Object.keys(plan.boxes).find((b) => !(b in typed) && !(b === "otherMark" && typed.otherSpindle === ""));

const fits = (p, b) =>
  !p.height && p.name === b.name && (p.pairing ?? "") === (b.pairing ?? "") && (!b.label || b.label === p.label);
// at gives where a height's wheel is, jack what a whole round asks, mended what was gone back to.
export const walk = (plan, sent, at, jack, mended) => {
  const places = plan.places.map((p) => ({ ...p }));
  jack?.besides(places);
  const done = { ...plan.done };
  for (const { body: b } of sent) {
    if (mended?.(b, places, done, plan)) continue;
    if (b.what === "height" && !b.corrects && !places.some((p) => p.height === b.key)) {
      const p = places.find((p) => !p.height && p.id === b.place) ?? places.find((p) => fits(p, b));
      if (p) Object.assign(p, { height: b.key, say: "spindle " + b.spindle, at: at(plan, b) });
    } else if (b.what === "reading") {
      done[b.height + "/" + b.steering + "/" + b.row] = { say: b.value, key: b.key };
    } else if (b.what === "take-back") {
      for (const k in done) if (done[k].key === b.target) delete done[k];
      for (const p of places) if (p.height === b.target) p.height = p.at = null;
    }
  }
  const steps = [];
  const add = (p, steering, row, is) =>
    steps.push({ id: p.id + "/" + steering + "/" + row, p, steering, row, done: done[p.height + "/" + steering + "/" + row], ...is });
  for (const p of places) {
    add(p, "straight", "height", { done: p.height && { say: p.say } });
    if (jack) jack(plan, p, places, done, add);
    else for (const s in p.asked ?? plan.asked) for (const row of (p.asked ?? plan.asked)[s]) add(p, s, row);
  }
  return { places, steps };
};
// The next not done; what was skipped is not asked again.
export const next = (steps, from, skipped = []) => {
  const i = steps.findIndex((s) => s.id === from);
  const open = (s) => !s.done && !skipped.includes(s.id);
  return [...steps.slice(i + 1), ...steps.slice(0, i + 1)].find(open)?.id ?? "end";
};
