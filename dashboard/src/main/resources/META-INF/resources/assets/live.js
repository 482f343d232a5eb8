// Keeps a page honest about its line to the server: whether what it shows is live, and if not, as
// of when. Also holds back a new order of the board while somebody is about to press a button.
(() => {
  const root = document.documentElement;
  const SILENCE = 15000; // the server beats every 5 s
  const GRACE = 3000; // an error that mends itself within this time is not worth a word
  const HOLD = 3000; // longest time a finger may hold the board back

  let heard = performance.now();
  let heardWard = wardClock.now();
  let failing = null;

  const clockWords = (millis) =>
    new Date(millis + Number(root.dataset.offset || 0) * 1000).toISOString().slice(11, 16);

  function alive() {
    heard = performance.now();
    heardWard = wardClock.now();
    failing = null;
    if (root.dataset.stale !== undefined) {
      delete root.dataset.stale;
      document.getElementById('lost').hidden = true;
    }
  }

  function lost() {
    if (root.dataset.stale !== undefined) {
      return;
    }
    root.dataset.stale = '';
    wardClock.show(heardWard);
    const banner = document.getElementById('lost');
    const what = document.createElement('p');
    what.textContent = `Connection lost. This page shows the ward as at ${clockWords(heardWard)}.`;
    const then = document.createElement('p');
    then.textContent =
      'Changes since then are missing here. Look after the patients as if this page were switched off; it goes on trying to reconnect.';
    banner.replaceChildren(what, then);
    banner.hidden = false;
    askWhetherSignedOut(then);
  }

  /** A line that is dead because the session ended is mended by signing in. */
  async function askWhetherSignedOut(place) {
    try {
      const answer = await fetch('/wards', {redirect: 'manual', cache: 'no-store'});
      if (answer.type === 'opaqueredirect' || answer.status === 401) {
        const way = document.createElement('a');
        way.href = '/sign-in';
        way.textContent = 'Sign in again';
        place.replaceChildren('Nobody is signed in on this screen any more. ', way);
      }
    } catch {
      // no line at all; the banner says so
    }
  }

  function listen(source) {
    source.addEventListener('beat', (event) => {
      wardClock.set(Number(event.data));
      alive();
    });
  }

  const body = document.body;
  const live = document.querySelector('[sse-connect]');

  if (live) {
    body.addEventListener('htmx:sseOpen', (event) => {
      listen(event.detail.source);
      alive();
    });
    body.addEventListener('htmx:sseMessage', alive);
    body.addEventListener('htmx:sseError', () => {
      failing ??= performance.now();
    });
    addEventListener('offline', lost);
    setInterval(() => {
      const now = performance.now();
      if (now - heard > SILENCE || (failing !== null && now - failing > GRACE)) {
        lost();
      }
    }, 1000);
  }

  // A line must not slip away under a finger, nor a half-written note vanish.
  let touched = -HOLD;
  let waiting = null;

  const recently = () => performance.now() - touched < HOLD;

  function busy(target) {
    return (
      (recently() && target.querySelector('form button:hover, form button:active')) ||
      target.querySelector('details.do[open], textarea:focus, input:focus, select:focus')
    );
  }

  for (const kind of ['pointermove', 'pointerdown']) {
    addEventListener(kind, () => (touched = performance.now()), {passive: true});
  }

  body.addEventListener('htmx:sseBeforeMessage', (event) => {
    const target = event.target;
    if (busy(target)) {
      event.preventDefault();
      alive();
      waiting = {target, html: event.detail.data};
    } else if (waiting && waiting.target === target) {
      waiting = null;
    }
  });

  setInterval(() => {
    if (waiting && !busy(waiting.target)) {
      const {target, html} = waiting;
      waiting = null;
      htmx.swap(target, html, {swapStyle: 'innerHTML'});
    }
  }, 250);

  // Once a form has done its work it folds, and the page may be renewed under it.
  body.addEventListener('htmx:afterRequest', (event) => {
    if (event.detail.successful) {
      event.detail.elt.closest('details.do')?.removeAttribute('open');
    }
  });

  // An action that did not arrive must never look as if it had.
  function refuse(words) {
    const said = document.createElement('p');
    said.className = 'said refused';
    said.textContent = words;
    document.getElementById('outcome')?.replaceChildren(said);
  }

  body.addEventListener('htmx:responseError', (event) =>
    refuse(
      event.detail.xhr.status === 403
        ? 'Your account may not do this. Nothing was changed.'
        : 'That was not accepted and nothing was changed. Load the page again and repeat it; if it fails again, call by telephone.',
    ),
  );
  body.addEventListener('htmx:sendError', () =>
    refuse('No connection: nothing was sent and nothing was changed. Call by telephone.'),
  );
})();
