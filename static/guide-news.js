// What others did since: while the page is looked at the plan is asked for again, as it is now.
import { next } from "./guide-plan.js";
import * as outbox from "./outbox.js";

export const listen = (plan, take) => {
  const ask = async () => {
    if (!document.hidden) {
      const { round, part, n, book } = plan();
      try {
        const r = await fetch("/rounds/" + round + "/news?n=" + (part ? -1 : n) + "&book=" + book);
        outbox.heard();
        if (r.status === 409) {
          plan().book = (await r.json()).book;
          outbox.seen(plan().book);
        } else if (r.status === 200) take(await r.json());
      } catch {}
    }
    setTimeout(ask, 1500);
  };
  setTimeout(ask, plan().part ? 300 : 1500);
};

// What is read elsewhere is not asked here; what it made needless, or needed, comes and goes.
export const took = ({ plan, s, was, me, on, root, begin, begun, state, onward, draw }) => {
  outbox.remember(plan.round, plan.start);
  outbox.seen(plan.book);
  if (on.jack && !root.dataset.step) return begin(true);
  if (s?.done && was && !was.done && !me.text && !begun().length && !on.menu) onward(s.id);
  else if (!s && next(state.steps, "", me.skipped) !== "end") onward("");
  else draw();
};
