// On every page: sends what was saved on this device and has not reached the server, and says so
// until it has. One assessment never becomes two by it.
const device = await import('./device.js' + new URL(import.meta.url).search);

const account = document.documentElement.dataset.account;
const place = document.getElementById('unsent');
const EVERY = 5000;
let sending = false;

const count = (n) => (n === 1 ? '1 assessment' : `${n} assessments`);

function paragraph(...parts) {
  const words = document.createElement('p');
  words.append(...parts);
  return words;
}

function link(words, href) {
  const way = document.createElement('a');
  way.textContent = words;
  way.href = href;
  return way;
}

function tryNow() {
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = 'Try now';
  button.addEventListener('click', pump);
  return button;
}

/** Says what waits, and why. */
function show(last) {
  const own = device.unsent(account).length;
  const others = device.unsentOfOthers(account);
  const lines = [];
  if (own > 0) {
    const next = last?.signIn
      ? link('Sign in again', '/sign-in')
      : tryNow();
    lines.push(
      paragraph(
        `Not yet sent: ${count(own)}. ${last?.why ?? ''} Kept on this device; it goes by itself as soon as it can. `,
        next,
      ),
    );
  }
  if (others > 0) {
    lines.push(
      paragraph(`${count(others)} of somebody else wait on this device until they sign in here.`),
    );
  }
  place.replaceChildren(...lines);
  place.hidden = lines.length === 0;
}

/** What was refused goes back to where it can be mended. */
function giveBack(item, faults) {
  device.saveDraft(item.draftKey, {...item.draft, faults});
  if (!document.getElementById('assess')) {
    const where = `/encounters/${encodeURIComponent(item.assessment.encounter)}/assess`;
    place.replaceChildren(
      paragraph('An assessment was refused and is not recorded. ', link('Look at it', where)),
    );
    place.hidden = false;
    return false;
  }
  return true;
}

async function pump() {
  if (sending) {
    return;
  }
  sending = true;
  let last = null;
  let quiet = true;
  for (const item of device.unsent(account)) {
    last = await device.send(item);
    if (last.state === 'waiting') {
      dispatchEvent(new CustomEvent('driftward:sent', {detail: {item, result: last}}));
      break;
    }
    if (last.state === 'refused') {
      quiet = giveBack(item, last.faults);
    }
    device.dropUnsent(item);
    dispatchEvent(new CustomEvent('driftward:sent', {detail: {item, result: last}}));
  }
  sending = false;
  if (quiet) {
    show(last);
  }
}

device.sweep();
addEventListener('driftward:unsent', pump);
addEventListener('online', pump);
addEventListener('pageshow', (event) => event.persisted && pump());
setInterval(() => device.unsent(account).length > 0 && pump(), EVERY);
document.querySelector('form[action="/sign-out"]')?.addEventListener('submit', (event) => {
  const waiting = device.unsent(account).length;
  if (
    waiting > 0 &&
    !confirm(`${count(waiting)} not yet sent. They wait on this device until you sign in here again. Sign out?`)
  ) {
    event.preventDefault();
    return;
  }
  device.wipeDraftsOfOthers(account);
});
pump();
