// What others did since: while the page is looked at the plan is asked for again, as it is now.
import { next } from "./guide-plan.js";
import * as outbox from "./outbox.js";

export const listen = (here, adopt, root, begin) => {
  const ask = async () => {
    if (!document.hidden) {
      const { round, part, n, book } = here().plan;
      try {
        const r = await fetch("/rounds/" + round + "/news?n=" + (part ? -1 : n) + "&book=" + book);
        outbox.heard();
        if (r.status === 409) {
          here().plan.book = (await r.json()).book;
          outbox.seen(here().plan.book);
        } else if (r.status === 200) took(await r.json(), here, adopt, root, begin);
      } catch {}
    }
    setTimeout(ask, 1500);
  };
  setTimeout(ask, here().plan.part ? 300 : 1500);
};

// What is read elsewhere is not asked here; what it made needless, or needed, comes and goes. Not
// while it is answered: the plan is asked for again, and what is typed is never another's answer.
const took = (fresh, here, adopt, root, begin) => {
  const { plan: old, s: was } = here();
  adopt(fresh);
  const { plan, s, me, on, begun, state, onward, draw } = here();
  if (was && !s && ((me.text && !on.old) || begun().length || on.menu || on.ask)) return adopt(old);
  outbox.remember(plan.round, plan.start);
  outbox.seen(plan.book);
  if (on.jack && !root.dataset.step) return begin(true);
  if (s?.done && was && !was.done && !me.text && !begun().length && !on.menu) onward(s.id);
  else if (!s && next(state.steps, "", me.skipped) !== "end") onward("");
  else draw();
};
