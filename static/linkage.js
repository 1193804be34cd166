// The corner as it moves: height follows the thumb up and down, the lock across.
const figure = document.querySelector("[data-poses]");
const svg = figure.querySelector("svg");
const lines = [...svg.querySelectorAll(".moves")];
const dots = svg.querySelector(".joints");
const pointer = svg.querySelector(".pointer");
const says = [...figure.querySelectorAll(".moving-says")];
const lock = figure.querySelector(".moving-lock");
const { height: tall, racks } = await (await fetch(figure.dataset.poses)).json();

let rack = Math.max(0, racks.findIndex((r) => r.word === "straight"));
let at = Math.floor(racks[rack].poses.length / 2);
let waits = false;

const nearest = (y) => {
  const { poses } = racks[rack];
  let best = 0;
  for (let i = 1; i < poses.length; i++) if (Math.abs(poses[i].y - y) < Math.abs(poses[best].y - y)) best = i;
  return best;
};
const paint = () => {
  waits = false;
  const pose = racks[rack].poses[at];
  pose.lines.forEach((line, i) => lines[i].setAttribute("points", line.points));
  dots.setAttribute("d", pose.dots);
  pointer.setAttribute("transform", `translate(0 ${pose.y})`);
  pose.says.forEach((line, i) => (says[i].textContent = line));
  lock.textContent = racks[rack].word;
  svg.setAttribute("aria-valuenow", at);
  svg.setAttribute("aria-valuetext", pose.says.join(". ") + ". " + racks[rack].word);
};
const soon = () => {
  if (!waits) requestAnimationFrame(paint);
  waits = true;
};
const step = (up, across) => {
  rack = Math.min(racks.length - 1, Math.max(0, rack + across));
  at = Math.min(racks[rack].poses.length - 1, Math.max(0, at + up));
  soon();
};
const follow = (event) => {
  const box = svg.getBoundingClientRect();
  const x = (event.clientX - box.left) / box.width;
  rack = Math.min(racks.length - 1, Math.max(0, Math.floor(x * racks.length)));
  at = nearest(((event.clientY - box.top) / box.height) * tall);
  soon();
};

svg.setAttribute("role", "slider");
svg.setAttribute("tabindex", "0");
svg.setAttribute("aria-valuemin", "0");
svg.setAttribute("aria-valuemax", racks[rack].poses.length - 1);
svg.setAttribute("aria-orientation", "vertical");
at = nearest(Number(pointer.getAttribute("transform").match(/ ([\d.]+)\)/)[1]));
paint();
svg.addEventListener("pointerdown", (event) => {
  svg.setPointerCapture(event.pointerId);
  follow(event);
});
svg.addEventListener("pointermove", (event) => event.buttons && follow(event));
svg.addEventListener("keydown", (event) => {
  const to = { ArrowUp: [1, 0], ArrowDown: [-1, 0], ArrowLeft: [0, -1], ArrowRight: [0, 1] }[event.key];
  if (!to) return;
  event.preventDefault();
  step(...to);
});
figure.dataset.ready = "";
