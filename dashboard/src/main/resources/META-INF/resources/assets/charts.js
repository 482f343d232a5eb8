// The course of one patient: the score and each vital sign on a row of its own, one time axis.
const place = document.getElementById('charts');

/** light-dark() and var() resolved to a colour that a canvas understands. */
function ink(name) {
  const probe = document.createElement('span');
  probe.className = `ink ink-${name}`;
  place.append(probe);
  const colour = getComputedStyle(probe).color;
  probe.remove();
  return colour;
}

const clean = (number) => String(Math.round(number * 10) / 10);

let plots = [];

function colours() {
  return {
    ink: ink('ink'),
    soft: ink('soft'),
    line: ink('line'),
    plot: ink('plot'),
    band1: ink('band-1'),
    band2: ink('band-2'),
    band3: ink('band-3'),
  };
}

function row(name, value, unit, at) {
  const line = document.createElement('div');
  line.className = 'chart';
  const label = document.createElement('p');
  label.className = 'chart-name';
  label.append(name);
  const newest = document.createElement('b');
  newest.textContent = value;
  label.append(newest);
  const small = document.createElement('span');
  small.className = 'soft';
  small.textContent = unit ? `${unit}, ${at}` : at;
  label.append(small);
  const plot = document.createElement('div');
  plot.setAttribute('role', 'img');
  plot.setAttribute('aria-label', `${name}, newest ${value} ${unit} at ${at}. The values stand in the record below.`);
  line.append(label, plot);
  place.append(line);
  return plot;
}

/** Hours and minutes of the hospital: shifted by the zone's offset, read as UTC. */
const clockWords = (ts, offset) => new Date((ts + offset) * 1000).toISOString().slice(11, 16);

function options(data, plot, c, height, last, extra) {
  const time = (ts) => clockWords(ts, data.offset);
  return {
    width: plot.clientWidth || 600,
    height,
    padding: [10, 22, 4, 0],
    cursor: {sync: {key: 'course'}, drag: {x: false, y: false}, points: {show: false}},
    legend: {show: false},
    scales: {x: {min: data.from, max: data.to}, ...extra.scales},
    axes: [
      {
        show: true,
        stroke: c.soft,
        grid: {stroke: c.line, width: 1},
        ticks: {show: false},
        size: last ? 26 : 4,
        font: '13px system-ui',
        values: (u, splits) => splits.map((ts) => (last ? time(ts) : '')),
        space: 70,
      },
      {
        stroke: c.soft,
        grid: {stroke: c.line, width: 1},
        ticks: {show: false},
        size: 44,
        font: '13px system-ui',
        space: 26,
        values: (u, splits) => splits.map(clean),
      },
    ],
    series: [{}, ...extra.series],
    hooks: extra.hooks,
  };
}

function marks(c, points) {
  return (u) => {
    const {ctx} = u;
    ctx.save();
    ctx.textAlign = 'center';
    ctx.font = `700 ${12 * devicePixelRatio}px system-ui`;
    points.forEach((point) => {
      const x = u.valToPos(point.t, 'x', true);
      const y = u.valToPos(point.value, 'y', true);
      if (x < u.bbox.left || x > u.bbox.left + u.bbox.width) {
        return;
      }
      const r = (point.points ? 4.5 : 2.5) * devicePixelRatio;
      ctx.beginPath();
      ctx.arc(x, y, r, 0, 2 * Math.PI);
      ctx.fillStyle = point.points ? c.ink : c.plot;
      ctx.fill();
      if (point.points) {
        const above = y - r - 4 * devicePixelRatio > u.bbox.top + 10 * devicePixelRatio;
        ctx.fillText(String(point.points), x, above ? y - r - 3 * devicePixelRatio : y + r + 12 * devicePixelRatio);
      }
    });
    ctx.restore();
  };
}

const known = (number) => number !== null && number !== undefined;

/** The cells of the published table behind the values, each with its points at the right edge. */
function bands(c, vital) {
  return (u) => {
    const {ctx, bbox} = u;
    const {min, max} = u.scales.y;
    ctx.save();
    ctx.font = `700 ${12 * devicePixelRatio}px system-ui`;
    ctx.textAlign = 'right';
    ctx.textBaseline = 'middle';
    vital.bands.forEach((band) => {
      const from = Math.max(min, known(band.from) ? band.from : min);
      const upto = Math.min(max, known(band.upto) ? band.upto : max);
      if (band.points === 0 || upto <= from) {
        return;
      }
      const top = u.valToPos(upto, 'y', true);
      const bottom = u.valToPos(from, 'y', true);
      ctx.fillStyle = c[`band${Math.min(3, band.points)}`];
      ctx.fillRect(bbox.left, top, bbox.width, bottom - top);
      if (bottom - top > 11 * devicePixelRatio) {
        ctx.fillStyle = c.soft;
        ctx.fillText(String(band.points), bbox.left + bbox.width + 14 * devicePixelRatio, (top + bottom) / 2);
      }
    });
    ctx.restore();
  };
}

/** Where this patient usually is: between two dotted lines. */
function usual(c, vital) {
  return (u) => {
    if (!known(vital.usual)) {
      return;
    }
    const {ctx, bbox} = u;
    ctx.save();
    ctx.strokeStyle = c.plot;
    ctx.lineWidth = devicePixelRatio;
    ctx.setLineDash([2 * devicePixelRatio, 3 * devicePixelRatio]);
    [-2, 2].forEach((spreads) => {
      const y = u.valToPos(vital.usual + spreads * vital.spread, 'y', true);
      if (y >= bbox.top && y <= bbox.top + bbox.height) {
        ctx.beginPath();
        ctx.moveTo(bbox.left, y);
        ctx.lineTo(bbox.left + bbox.width, y);
        ctx.stroke();
      }
    });
    ctx.restore();
  };
}

/** A range that shows the values and the usual band, and never blows up noise. */
function range(vital) {
  const values = vital.points.map((point) => point.value);
  if (known(vital.usual)) {
    values.push(vital.usual - 2 * vital.spread, vital.usual + 2 * vital.spread);
  }
  const low = Math.min(...values);
  const high = Math.max(...values);
  const room = Math.max((high - low) * 0.18, 0.5);
  return [low - room, high + room];
}

function drawVital(data, vital, c, last) {
  const newest = vital.points[vital.points.length - 1];
  const plot = row(vital.name, clean(newest.value), vital.unit, clockWords(newest.t, data.offset));
  const [min, max] = range(vital);
  plots.push(
    new uPlot(
      options(data, plot, c, last ? 116 : 94, last, {
        scales: {y: {range: [min, max]}},
        series: [{stroke: c.plot, width: 2, points: {show: false}}],
        hooks: {drawClear: [bands(c, vital), usual(c, vital)], draw: [marks(c, vital.points)]},
      }),
      [vital.points.map((point) => point.t), vital.points.map((point) => point.value)],
      plot,
    ),
  );
}

function bounds(c, points) {
  return (u) => {
    const {ctx} = u;
    ctx.save();
    points.forEach((point) => {
      const x = u.valToPos(point.t, 'x', true);
      const low = u.valToPos(point.low, 'y', true);
      const high = u.valToPos(point.high, 'y', true);
      ctx.strokeStyle = c.ink;
      ctx.fillStyle = c.ink;
      ctx.lineWidth = 2 * devicePixelRatio;
      if (point.low !== point.high) {
        ctx.setLineDash([4, 3]);
        ctx.beginPath();
        ctx.moveTo(x, low);
        ctx.lineTo(x, high);
        ctx.stroke();
        ctx.setLineDash([]);
      }
      ctx.beginPath();
      ctx.arc(x, low, 3.5 * devicePixelRatio, 0, 2 * Math.PI);
      ctx.fill();
    });
    ctx.restore();
  };
}

function drawScore(data, score, c) {
  const newest = score.points[score.points.length - 1];
  const total = newest.low === newest.high ? clean(newest.low) : `${clean(newest.low)}–${clean(newest.high)}`;
  const plot = row(score.title, total, '', clockWords(newest.t, data.offset));
  const top = Math.max(8, ...score.points.map((point) => point.high)) + 1;
  plots.push(
    new uPlot(
      options(data, plot, c, 110, false, {
        scales: {y: {range: [0, top]}},
        series: [{stroke: c.ink, width: 2, points: {show: false}}],
        hooks: {draw: [bounds(c, score.points)]},
      }),
      [score.points.map((point) => point.t), score.points.map((point) => point.low)],
      plot,
    ),
  );
}

let shown = null;

function draw() {
  plots.forEach((plot) => plot.destroy());
  plots = [];
  place.replaceChildren();
  if (!shown || (!shown.score && shown.rows.length === 0)) {
    place.textContent = 'Nothing was recorded in this time.';
    return;
  }
  const c = colours();
  if (shown.score) {
    drawScore(shown, shown.score, c);
  }
  shown.rows.forEach((vital, i) => drawVital(shown, vital, c, i === shown.rows.length - 1));
}

async function load() {
  try {
    const answer = await fetch(place.dataset.source, {headers: {Accept: 'application/json'}});
    if (answer.ok) {
      shown = await answer.json();
      draw();
    }
  } catch {
    // the page says by itself that the line is dead; the course stays as it was
  }
}

load();
document.body.addEventListener('htmx:sseMessage', load);
addEventListener('driftward:dress', draw);
matchMedia('(prefers-color-scheme: dark)').addEventListener('change', draw);

let resizing = 0;
addEventListener('resize', () => {
  clearTimeout(resizing);
  resizing = setTimeout(draw, 150);
});
