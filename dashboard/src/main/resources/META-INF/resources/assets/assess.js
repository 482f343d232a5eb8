// The bedside entry page at work: keeps the draft, asks for the preview, saves. Without this script
// the page is a plain form and works as well.
const version = new URL(import.meta.url).search;
const [device, {Form}, {Taken}, {Preview}, {Keypad}, {Done, Modes}] = await Promise.all(
  ['device', 'assess-form', 'assess-time', 'assess-preview', 'assess-keypad', 'assess-page'].map(
    (name) => import(`./${name}.js${version}`),
  ),
);

/** A draft older than this was true then, not now. */
const STALE = 15 * 60000;

const by = (id) => document.getElementById(id);
const page = by('page');
const element = by('assess');
const data = element.dataset;
const account = document.documentElement.dataset.account;
const correcting = data.corrected !== undefined;
const reason = by('reason');
const save = by('save');
const form = new Form(element);
const preview = new Preview(data.encounter);
const original = JSON.stringify(form.values);
const draftKey = device.draftKey(
  account,
  data.encounter,
  correcting ? element.elements.assessment.value : '',
);

let id = element.elements.assessment.value;
let touchedAt = null;
let saving = null;

page.dataset.scripted = '';
const taken = new Taken(edited);
if (correcting) {
  taken.set(Date.parse(data.corrected));
}
const keypad = new Keypad(element);
const modes = new Modes(form);
const done = new Done(taken);

/** The assessment as the topic contract writes it. */
function assessment(why) {
  return {
    id,
    revision: Number(element.elements.revision.value),
    status: correcting ? 'amended' : 'final',
    encounter: data.encounter,
    patient: data.patient,
    takenAt: new Date(taken.millis).toISOString(),
    recordedAt: new Date(wardClock.now()).toISOString(),
    source: 'bedside',
    by: account,
    ...(correcting && {reason: why}),
    findings: form.recorded.map((cell) => cell.finding),
  };
}

function draft() {
  return {...form.snapshot(), id, at: taken.at, touchedAt, reason: reason?.value ?? ''};
}

/** Something changed: keep it, count it, ask what it would mean. */
function edited() {
  const recorded = form.recorded.length;
  const unchanged = correcting && JSON.stringify(form.values) === original;
  touchedAt = wardClock.now();
  if ((recorded === 0 && !correcting) || (unchanged && reason.value === '')) {
    device.dropDraft(draftKey);
  } else if (!device.saveDraft(draftKey, draft())) {
    tell(['This device cannot keep a draft. Save before you leave the page.']);
  }
  describe();
}

function describe() {
  const recorded = form.recorded.length;
  save.textContent =
    recorded === 0 ? 'Save' : recorded === 1 ? 'Save 1 finding' : `Save ${recorded} findings`;
  if (recorded === 0) {
    preview.nothing('Nothing recorded yet.');
  } else {
    preview.ask(() => assessment(reason?.value || 'not yet given'));
  }
}

function tell(lines) {
  const place = by('faults');
  place.textContent = lines.join(' ');
  place.hidden = lines.length === 0;
}

/** Leads to what is in the way. */
function lead(cell) {
  cell.element.closest('details')?.setAttribute('open', '');
  cell.element.closest('[data-region]').hidden = false;
  cell.inputs[0].focus();
}

// --- Fields

element.addEventListener('input', ({target}) => {
  const cell = form.cellOf(target);
  if (cell) {
    tell([]);
    form.changed(cell);
  }
  if (cell || target === reason) {
    edited();
  }
});

/** A chosen value that is touched again is taken back. */
element.addEventListener('click', ({target}) => {
  const cell = target.type === 'radio' ? form.cellOf(target) : undefined;
  if (cell && form.values[cell.name] === target.value) {
    cell.value = '';
    form.changed(cell);
    edited();
  }
});

element.addEventListener('change', ({target}) => {
  if (target.type === 'radio' && byFinger) {
    keypad.chosen(target);
  }
  const region = form.regions.find((one) => one.touch === target);
  if (region) {
    form.touch(region);
    edited();
    if (region.touch.checked && byFinger) {
      onward(region);
    }
  }
});

let byFinger = false;
addEventListener('pointerdown', () => (byFinger = true), true);
addEventListener('keydown', () => (byFinger = false), true);

/** Brings the next region to where the finger is. */
function onward(region) {
  const shown = form.regions.filter((one) => !one.section.hidden);
  const next = shown[shown.indexOf(region) + 1];
  const distance =
    next && next.section.getBoundingClientRect().top - region.section.getBoundingClientRect().top;
  if (distance) {
    scrollBy({top: distance, behavior: 'instant'});
  }
}

element.addEventListener('keydown', (event) => {
  if (event.key === 'Enter' && event.ctrlKey) {
    event.preventDefault();
    element.requestSubmit();
  } else if (event.key === 'Enter' && event.target === reason) {
    event.preventDefault();
  }
});

// --- Around the fields

for (const [region, link] of form.rail) {
  link.addEventListener('click', () => {
    by(`region-${region}`).querySelector('details').open = true;
  });
}

by('more').hidden = false;
by('more').addEventListener('click', ({target}) => {
  const open = by('bar').classList.toggle('open');
  target.setAttribute('aria-expanded', String(open));
  target.textContent = open ? 'Less' : 'Details';
});

// --- Saving

element.addEventListener('submit', (event) => {
  event.preventDefault();
  if (saving) {
    return;
  }
  const faulty = form.faulty[0];
  const obstacle =
    faulty ? `${faulty.label}: ${faulty.fault}.`
    : form.recorded.length === 0 ? 'Nothing is recorded yet.'
    : correcting && reason.value.trim() === '' ? 'Say why it is corrected.'
    : '';
  if (obstacle) {
    tell([obstacle]);
    if (faulty) {
      lead(faulty);
    } else if (reason && reason.value.trim() === '') {
      reason.focus();
    }
    return;
  }
  const item = {account, assessment: assessment(reason?.value.trim()), draftKey, draft: draft()};
  if (!device.keepUnsent(item)) {
    tell(['This device has no room to keep it. Write it on paper.']);
    return;
  }
  saving = item;
  preview.forget();
  device.dropDraft(draftKey);
  tell([]);
  done.show('Sending…', item.assessment);
  done.foresaw(by('foreseen'));
  dispatchEvent(new Event('driftward:unsent'));
});

addEventListener('driftward:sent', ({detail: {item, result}}) => {
  if (saving?.assessment.id !== item.assessment.id) {
    return;
  }
  if (result.state === 'kept') {
    done.show(correcting ? 'Corrected' : 'Recorded', item.assessment, result.state);
  } else if (result.state === 'waiting') {
    done.show('Not yet sent', item.assessment, result.state);
  } else {
    saving = null;
    done.hide();
    refused(result.faults, item.assessment.findings);
  }
});

/** Shows what intake refused beside the field it refused. */
function refused(faults, findings) {
  tell(['Not recorded.', ...faults.map((fault) => `${fault.detail}.`)]);
  const place = faults.map((fault) => /^\/findings\/(\d+)/.exec(fault.pointer)?.[1]).find(Boolean);
  const finding = place && findings?.[Number(place)];
  const cell = finding && form.cells.find(
    (one) =>
      one.code === finding.code &&
      (one.site || undefined) === finding.site &&
      (one.side || undefined) === finding.side,
  );
  if (cell) {
    lead(cell);
  }
}

// --- What was begun before

function restore() {
  const before = device.read(draftKey);
  if (!before) {
    return;
  }
  id = before.id;
  form.restore(before);
  touchedAt = before.touchedAt;
  if (reason) {
    reason.value = before.reason;
  }
  taken.set(before.at);
  const stale = before.at === null && wardClock.now() - before.touchedAt > STALE;
  if (stale) {
    taken.set(before.touchedAt);
  }
  const words = by('restored');
  words.textContent =
    `Your draft of ${taken.words(before.touchedAt)} is back. ` +
    (stale ? 'The time it was taken at is set to that; change it if that is wrong. ' : '');
  const away = document.createElement('button');
  away.type = 'button';
  away.textContent = 'Throw it away';
  away.addEventListener('click', () => {
    device.dropDraft(draftKey);
    location.reload();
  });
  words.append(away);
  words.hidden = false;
  describe();
  if (before.faults) {
    refused(before.faults, form.recorded.map((cell) => cell.finding));
  }
}

device.sweep();
restore();
modes.show(data.only);
document.documentElement.dataset.ready = 'assess';
if (correcting) {
  // What is to be mended should be in sight.
  form.regions
    .filter((region) => region.recorded.length > 0)
    .forEach((region) => (region.section.querySelector('details').open = true));
}
if (!correcting && !location.hash && form.recorded.length === 0) {
  const first = element.querySelector('[data-region]:not([hidden]) [data-next] input');
  if (data.only !== '' && first) {
    first.focus({preventScroll: true});
  }
}
