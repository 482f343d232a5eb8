// What the entry page keeps on this device, and for how long (docs/entry.md).
//
// A draft lives under account and stay until it is saved, at most 12 hours. What was saved and has
// not reached the server yet lives under the account until it has, at most 7 days. Neither holds a
// name; both hold the number of the stay and of the patient, the values and their time.
const DRAFT = 'driftward.draft.';
const UNSENT = 'driftward.unsent.';
const DRAFT_LIFE = 12 * 3600 * 1000;
const UNSENT_LIFE = 7 * 24 * 3600 * 1000;
const PATIENCE = 20000;

const path = (...parts) => parts.map(encodeURIComponent).join('/');

export const draftKey = (account, encounter, correct) => DRAFT + path(account, encounter, correct);

const unsentKey = (item) =>
  UNSENT + path(item.account, item.assessment.id, String(item.assessment.revision));

/** Whether it could be kept: a full or locked store keeps nothing. */
function write(key, thing) {
  try {
    localStorage.setItem(key, JSON.stringify({...thing, keptAt: Date.now()}));
    return true;
  } catch {
    return false;
  }
}

export function read(key) {
  try {
    return JSON.parse(localStorage.getItem(key));
  } catch {
    return null;
  }
}

const drop = (key) => localStorage.removeItem(key);
const keys = (prefix) => Object.keys(localStorage).filter((key) => key.startsWith(prefix));

export const saveDraft = write;
export const dropDraft = drop;
export const keepUnsent = (item) => write(unsentKey(item), item);
export const dropUnsent = (item) => drop(unsentKey(item));

/** Of one account, oldest first. */
export const unsent = (account) =>
  keys(UNSENT + path(account) + '/')
    .map(read)
    .filter((item) => item !== null)
    .sort((one, other) => one.keptAt - other.keptAt);

/** How many of other accounts wait on this device. */
export const unsentOfOthers = (account) => keys(UNSENT).length - unsent(account).length;

/** Takes away what has outlived its time. */
export function sweep() {
  for (const [prefix, life] of [[DRAFT, DRAFT_LIFE], [UNSENT, UNSENT_LIFE]]) {
    for (const key of keys(prefix)) {
      if (!(Date.now() - (read(key)?.keptAt ?? 0) < life)) {
        drop(key);
      }
    }
  }
}

/** When somebody leaves, what others began here before goes with them. */
export function wipeDraftsOfOthers(account) {
  for (const key of keys(DRAFT)) {
    if (!key.startsWith(DRAFT + path(account) + '/')) {
      drop(key);
    }
  }
}

/**
 * Sends one assessment: kept, refused, or waiting with the reason why. Sending again is always
 * safe, since intake knows an assessment by its id and revision.
 */
export async function send(item) {
  let answer;
  try {
    answer = await fetch('/api/assessments', {
      method: 'POST',
      redirect: 'manual',
      headers: {'Content-Type': 'application/json', 'X-Driftward-Client': 'entry'},
      body: JSON.stringify(item.assessment),
      signal: AbortSignal.timeout(PATIENCE),
    });
  } catch {
    return {state: 'waiting', why: 'There is no connection.'};
  }
  if (answer.status === 202) {
    return {state: 'kept'};
  }
  if (answer.type === 'opaqueredirect' || answer.status === 401) {
    return {state: 'waiting', why: 'Nobody is signed in any more.', signIn: true};
  }
  if (answer.status === 403) {
    return {state: 'refused', faults: [{pointer: '', detail: 'Your account may not record here.'}]};
  }
  if ([400, 409, 413, 422].includes(answer.status)) {
    const problem = await answer.json().catch(() => ({}));
    return {
      state: 'refused',
      faults: problem.faults?.length > 0
        ? problem.faults
        : [{pointer: '', detail: problem.title ?? 'It was refused.'}],
    };
  }
  return {state: 'waiting', why: 'The server cannot take it at the moment.'};
}
