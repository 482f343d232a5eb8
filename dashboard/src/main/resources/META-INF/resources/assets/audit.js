// Six months of the key figures as small charts. They draw what the table below them says.
const place = document.getElementById('charts');
const table = document.getElementById('months-table');

/** light-dark() and var() resolved to a colour that a canvas understands. */
function ink(name) {
  const probe = document.createElement('span');
  probe.className = `ink ink-${name}`;
  place.append(probe);
  const colour = getComputedStyle(probe).color;
  probe.remove();
  return colour;
}

function columns() {
  const heads = [...table.querySelectorAll('thead th')].slice(1).map((cell) => cell.textContent);
  const rows = [...table.querySelectorAll('tbody tr')];
  const months = rows.map((row) => row.querySelector('th').textContent);
  const values = heads.map((_, i) =>
    rows.map((row) => {
      const text = row.querySelectorAll('td')[i].dataset.value;
      return text === '' ? null : Number(text);
    }),
  );
  return {heads, months, values};
}

let plots = [];

function draw() {
  plots.forEach((plot) => plot.destroy());
  plots = [];
  place.replaceChildren();
  const c = {soft: ink('soft'), line: ink('line'), plot: ink('plot')};
  const {heads, months, values} = columns();
  heads.forEach((head, i) => {
    const box = document.createElement('div');
    const name = document.createElement('p');
    name.textContent = head;
    const plot = document.createElement('div');
    plot.setAttribute('role', 'img');
    plot.setAttribute('aria-label', `${head}, month by month. The values stand in the table below.`);
    box.append(name, plot);
    place.append(box);
    const top = Math.max(head.endsWith('%') ? 100 : 1, ...values[i].filter((value) => value !== null));
    const axis = {stroke: c.soft, grid: {stroke: c.line, width: 1}, ticks: {show: false}, font: '12px system-ui'};
    plots.push(
      new uPlot(
        {
          width: plot.clientWidth || 240,
          height: 130,
          legend: {show: false},
          cursor: {show: false},
          scales: {x: {time: false, range: [-0.4, months.length - 0.6]}, y: {range: [0, top * 1.08]}},
          axes: [
            {...axis, size: 24, splits: () => months.map((_, at) => at), values: () => months.map((month) => month.slice(0, 3))},
            {...axis, size: 40},
          ],
          series: [{}, {stroke: c.plot, width: 2, spanGaps: false, points: {show: true, size: 8, fill: c.plot}}],
        },
        [months.map((_, at) => at), values[i]],
        plot,
      ),
    );
  });
}

draw();
addEventListener('driftward:dress', draw);
matchMedia('(prefers-color-scheme: dark)').addEventListener('change', draw);

let resizing = 0;
addEventListener('resize', () => {
  clearTimeout(resizing);
  resizing = setTimeout(draw, 150);
});
