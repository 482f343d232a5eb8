// What would be said of the draft, asked of the server a moment after each change. Without an
// answer it says so, and entry goes on.
const PAUSE = 250;
const PATIENCE = 8000;

export class Preview {
  constructor(encounter) {
    this.address = `/encounters/${encodeURIComponent(encounter)}/assess/preview`;
    this.place = document.getElementById('foreseen');
    this.said = document.getElementById('said');
    this.timer = 0;
    this.asked = 0;
  }

  /** Whatever is under way answers no longer. */
  forget() {
    clearTimeout(this.timer);
    this.asked++;
  }

  nothing(words) {
    this.forget();
    this.say(words);
  }

  ask(assessment) {
    this.forget();
    this.timer = setTimeout(() => this.fetch(assessment(), this.asked), PAUSE);
  }

  async fetch(assessment, question) {
    this.place.setAttribute('aria-busy', 'true');
    let html = null;
    try {
      const answer = await fetch(this.address, {
        method: 'POST',
        redirect: 'manual',
        headers: {'Content-Type': 'application/json', 'X-Driftward-Client': 'entry'},
        body: JSON.stringify(assessment),
        signal: AbortSignal.timeout(PATIENCE),
      });
      html = answer.ok ? await answer.text() : null;
    } catch {
      // no line; said below
    }
    if (question !== this.asked) {
      return;
    }
    this.place.removeAttribute('aria-busy');
    if (html === null) {
      this.say('No preview: no connection to the server. Go on recording; it is kept on this device.');
      return;
    }
    // Our own server's page part; every value in it is escaped there.
    this.place.replaceChildren(document.createRange().createContextualFragment(html));
    this.said.textContent = this.place.querySelector('.brief')?.textContent ?? '';
    wardClock.show(wardClock.now());
  }

  say(words) {
    const brief = document.createElement('p');
    brief.className = 'brief soft';
    brief.textContent = words;
    this.place.replaceChildren(brief);
    this.said.textContent = words;
  }
}
