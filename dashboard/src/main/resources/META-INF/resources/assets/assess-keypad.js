// A keypad of our own for a finger or a glove: large keys at the thumb, on the side of the hand
// that is free. Only where the pointer is coarse; elsewhere a keyboard does better.
const KEYS = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0', '⌫'];
const SPOKEN = {'.': 'Point', '⌫': 'Delete'};

const isEmpty = (step) => {
  const input = step.querySelector('input');
  return input.type === 'radio' ? !step.querySelector('input:checked') : input.value === '';
};

export class Keypad {
  constructor(form) {
    this.form = form;
    this.element = document.getElementById('keypad');
    this.hand = document.getElementById('hand');
    this.fields = [...form.querySelectorAll('.number input')];
    this.steps = [...form.querySelectorAll('[data-next]')];
    this.coarse = matchMedia('(pointer: coarse)');
    this.current = null;
    this.element.append(...KEYS.map((key) => this.key(key, SPOKEN[key] ?? key, () => this.type(key))));
    this.element.append(
      this.key('Next', 'Next number', () => this.next(), 'next'),
      this.key('Done', 'Close the keypad', () => this.current?.blur(), 'close'),
    );
    form.addEventListener('focusin', ({target}) => this.follow(target));
    form.addEventListener('focusout', () => setTimeout(() => this.follow(document.activeElement)));
    form.addEventListener('keydown', (event) => {
      if (event.key === 'Enter' && event.target.matches('.number input') && !event.ctrlKey) {
        event.preventDefault();
        this.current = event.target;
        this.next();
      } else if (event.key === 'Enter' && event.target.type === 'radio' && !event.ctrlKey) {
        // A form would be sent by it.
        event.preventDefault();
        this.chosen(event.target);
      }
    });
    const bar = document.getElementById('bar');
    new ResizeObserver(() =>
      document.documentElement.style.setProperty('--bar-height', `${bar.offsetHeight}px`),
    ).observe(bar);
    this.hand.hidden = !this.coarse.matches;
    this.hand.addEventListener('click', () => this.turn(!this.left));
    this.turn(localStorage.getItem('driftward.hand') === 'left');
    if (this.coarse.matches) {
      // The machine's own keyboard would cover half of the page.
      this.fields.forEach((field) => (field.inputMode = 'none'));
    }
  }

  key(words, spoken, act, kind = 'digit') {
    const button = document.createElement('button');
    button.type = 'button';
    button.tabIndex = -1;
    button.className = kind;
    button.textContent = words;
    button.setAttribute('aria-label', spoken);
    // The field keeps the focus.
    button.addEventListener('pointerdown', (event) => event.preventDefault());
    button.addEventListener('click', act);
    return button;
  }

  turn(left) {
    this.left = left;
    this.element.classList.toggle('left', left);
    this.form.classList.toggle('left-handed', left);
    this.hand.textContent = left ? 'Keypad right' : 'Keypad left';
    localStorage.setItem('driftward.hand', left ? 'left' : 'right');
  }

  follow(target) {
    const field = target?.matches?.('.number input') ? target : null;
    this.current = field;
    this.element.hidden = field === null || !this.coarse.matches;
    document.body.classList.toggle('keyed', !this.element.hidden);
    if (!this.element.hidden) {
      field.scrollIntoView({block: 'center'});
    }
  }

  type(key) {
    const field = this.current;
    if (!field) {
      return;
    }
    const [from, to] = [field.selectionStart, field.selectionEnd];
    if (key === '⌫') {
      field.setRangeText('', from === to ? Math.max(0, from - 1) : from, to, 'end');
    } else if (field.value.length - (to - from) < field.maxLength) {
      field.setRangeText(key, from, to, 'end');
    }
    field.dispatchEvent(new Event('input', {bubbles: true}));
  }

  /** To the next step of an expected set that is still empty; past the last one, away. */
  next() {
    if (!this.onward(this.current)) {
      this.current.blur();
    }
  }

  /** A word that was chosen as a step leads on like a number; nothing of a set is passed over. */
  chosen(input) {
    if (input.closest('[data-next]')) {
      this.onward(input);
    }
  }

  onward(from) {
    const region = from.closest('[data-region]');
    const next = this.steps.find(
      (step) =>
        step.closest('[data-region]') === region &&
        from.compareDocumentPosition(step) & Node.DOCUMENT_POSITION_FOLLOWING &&
        !step.contains(from) &&
        isEmpty(step),
    );
    if (next) {
      next.querySelector('input').focus({preventScroll: true});
      next.scrollIntoView({block: 'center'});
    }
    return next !== undefined;
  }
}
