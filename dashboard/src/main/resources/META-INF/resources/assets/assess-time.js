// When the findings were true: now by the ward's clock, or a time that was set back.
const MINUTE = 60000;
const LATE = 15 * MINUTE;

export class Taken {
  constructor(changed) {
    this.output = document.getElementById('taken');
    this.field = document.getElementById('at');
    this.late = document.getElementById('late');
    this.buttons = [...document.querySelectorAll('#back button')];
    this.offset = Number(document.documentElement.dataset.offset || 0) * 1000;
    this.at = null;
    document.getElementById('back').hidden = false;
    for (const button of this.buttons) {
      button.addEventListener('click', () => {
        const back = Number(button.dataset.back);
        this.set(back === 0 ? null : wardClock.now() - back * MINUTE);
        changed();
      });
    }
    this.field.addEventListener('change', () => {
      this.set(this.field.value === '' ? null : Date.parse(this.field.value + 'Z') - this.offset);
      changed();
    });
    setInterval(() => this.show(), 1000);
    this.set(null);
  }

  /** Milliseconds since 1970, or null for now. */
  set(at) {
    this.at = at === null || Number.isNaN(at) ? null : at;
    this.field.value = this.at === null ? '' : this.local(this.at).slice(0, 16);
    this.show();
  }

  get millis() {
    return this.at ?? wardClock.now();
  }

  local(millis) {
    return new Date(millis + this.offset).toISOString();
  }

  /** Hours and minutes, with the day where it is not today's. */
  words(millis) {
    const [there, now] = [this.local(millis), this.local(wardClock.now())];
    const time = there.slice(11, 16);
    return there.slice(0, 10) === now.slice(0, 10) ? time : `${there.slice(0, 10)} ${time}`;
  }

  show() {
    const write = (element, words) => {
      if (element.textContent !== words) {
        element.textContent = words;
      }
    };
    const now = wardClock.now();
    write(this.output, this.at === null ? `now, ${this.words(now)}` : this.words(this.at));
    const late = this.at !== null && now - this.at > LATE;
    const ahead = this.at !== null && this.at - now > MINUTE;
    write(
      this.late,
      ahead
        ? 'This time has not come yet.'
        : late
          ? `Late entry: taken ${this.words(this.at)}, recorded ${this.words(now)}. Both times are kept.`
          : '',
    );
    this.buttons[0].setAttribute('aria-pressed', String(this.at === null));
  }
}
