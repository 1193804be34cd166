// A curve under the finger: what every line reads at that height, with its ±. And another curve's page at once.
const near = (reads, y) => reads.reduce((a, b) => (Math.abs(b[0] - y) < Math.abs(a[0] - y) ? b : a));

function finger() {
  const chart = document.querySelector('.chart');
  const says = document.querySelector('.chart-read');
  if (!chart) return;
  const lines = [...chart.querySelectorAll('[data-reads]')]
    .map((g) => ({ name: g.dataset.name, reads: g.dataset.reads.split(';').map((r) => r.split('|')) }));
  const show = (event) => {
    const box = chart.getBoundingClientRect();
    const y = ((event.clientY - box.top) * chart.viewBox.baseVal.height) / box.height;
    const over = lines.filter((l) => y > l.reads.at(-1)[0] - 6 && y < +l.reads[0][0] + 6);
    if (!over.length) return;
    const at = near(over[0].reads, y);
    says.textContent = `${at[1]}: ` + over.map((l) => `${l.name} ${near(l.reads, at[0])[2]}`.trim()).join(' · ');
    const line = chart.querySelector('.chart-finger');
    line.setAttribute('y1', at[0]);
    line.setAttribute('y2', at[0]);
  };
  if (lines.length) for (const kind of ['pointerdown', 'pointermove']) chart.addEventListener(kind, show);
}

document.addEventListener('click', async (event) => {
  const chip = event.target.closest('.chips a');
  if (!chip || event.metaKey || event.ctrlKey || event.shiftKey) return;
  event.preventDefault();
  try {
    const answer = await fetch(chip.href);
    if (!answer.ok) throw answer;
    const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
    const scrolled = document.querySelector('.chips').scrollLeft;
    for (const part of ['.top', 'main']) document.querySelector(part).replaceWith(page.querySelector(part));
    document.title = page.title;
    history.replaceState(null, '', chip.href);
    document.querySelector('.chips').scrollLeft = scrolled;
    document.querySelector('.chips [aria-current]').focus({ preventScroll: true });
    finger();
  } catch {
    location.href = chip.href;
  }
});
finger();
