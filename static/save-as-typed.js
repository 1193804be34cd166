// Keeps each reading as it is typed, without leaving the page. The forms work without this. What
// cannot be sent goes into the phone's outbox under the form's own key.
import * as outbox from "./outbox.js";

const main = document.getElementById("main");

const say = (form, words) => {
  let line = form.querySelector(".sending");
  if (!line) {
    line = document.createElement("p");
    line.className = "sending";
    line.setAttribute("role", "status");
    form.append(line);
  }
  line.textContent = words;
};

const others = (form) =>
  [...main.querySelectorAll("form.reading-form")]
    .filter((f) => f !== form)
    .map((f) => [f.id, f.querySelector("input[type=text]")?.value])
    .filter(([, typed]) => typed);

let sending = false;
setTimeout(outbox.load, 0);

const send = async (form, submitter) => {
  if (sending) return;
  sending = true;
  const body = new URLSearchParams(new FormData(form));
  if (submitter?.name) body.append(submitter.name, submitter.value);
  say(form, "sending …");
  try {
    const answer = await fetch(form.action, { method: "POST", body });
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const fresh = page.getElementById("main");
    if (!fresh?.querySelector("form.reading-form")) throw new Error("no page");
    const typed = others(form);
    main.replaceChildren(...fresh.childNodes);
    for (const [id, text] of typed) {
      const box = document.getElementById(id)?.querySelector("input[type=text]");
      if (box && !box.value) box.value = text;
    }
    if (answer.redirected) history.replaceState(null, "", answer.url);
    main.querySelector("[autofocus]")?.focus({ preventScroll: false });
  } catch {
    const f = Object.fromEntries(body);
    outbox.add(form.dataset.sent, {
      what: "reading",
      key: f.key,
      after: f.after,
      claimed: new Date().toISOString(),
      height: form.action.split("/").at(-2),
      steering: f.steering,
      row: f.row,
      value: f["v-" + f.row],
    }, [document.querySelector("h1").innerText, form.querySelector("label").innerText].join(" · ").replace(/\s+/g, " "));
    form.elements.key.value = outbox.newKey();
    say(form, "No connection: on this phone, not in the book yet. It is sent as soon as it can be.");
  } finally {
    sending = false;
  }
};

main.addEventListener("submit", (event) => {
  if (!event.target.matches("form.reading-form")) return;
  event.preventDefault();
  const hidden = event.submitter?.matches(".vh, .reading-save");
  send(event.target, hidden ? null : event.submitter);
});

main.addEventListener("change", (event) => {
  const form = event.target.closest("form.reading-form");
  if (form && event.target.matches("input[type=text]") && event.target.value.trim()) send(form);
});
