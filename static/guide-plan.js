// A round's plan with what this phone has sent since it was made: where the wheel was, what is read
// and what comes. Of an axle a height is both ends'.
// The box of a height that is asked for next; an end without a spindle needs no mark.
export const toAsk = (plan, typed) =>
  Object.keys(plan.boxes).find((b) => !(b in typed) && !(b === "otherMark" && typed.otherSpindle === ""));

const fits = (p, b) => !p.height && p.name === b.name && (p.pairing ?? "") === (b.pairing ?? "");
// The later of what is sent counts; at gives where a height's wheel is.
export const walk = (plan, sent, at) => {
  const places = plan.places.map((p) => ({ ...p }));
  const done = { ...plan.done };
  for (const { body: b } of sent) {
    if (b.what === "height" && !places.some((p) => p.height === b.key)) {
      const p = places.find((p) => fits(p, b) && p.id === b.place) ?? places.find((p) => fits(p, b));
      if (p) Object.assign(p, { height: b.key, say: "spindle " + b.spindle, at: at(plan, b) });
    } else if (b.what === "reading") {
      done[b.height + "/" + b.steering + "/" + b.row] = { say: b.value, key: b.key };
    } else if (b.what === "take-back") {
      for (const k in done) if (done[k].key === b.target) delete done[k];
      for (const p of places) if (p.height === b.target) p.height = p.at = null;
    }
  }
  const steps = [];
  for (const p of places) {
    steps.push({ id: p.id + "/straight/height", p, steering: "straight", row: "height" });
    const asked = p.asked ?? plan.asked;
    for (const s in asked)
      for (const row of asked[s]) steps.push({ id: p.id + "/" + s + "/" + row, p, steering: s, row });
  }
  for (const s of steps)
    s.done = s.row === "height" ? s.p.height && { say: s.p.say } : done[s.p.height + "/" + s.steering + "/" + s.row];
  return { places, steps };
};
// What comes after a step: the next not done, and what was skipped last of all.
export const next = (steps, from) => {
  const i = steps.findIndex((s) => s.id === from);
  return [...steps.slice(i + 1), ...steps.slice(0, i + 1)].find((s) => !s.done)?.id ?? "end";
};
