// The fields of the entry page: what each holds, whether it may, and what one touch records. Knows
// no finding; everything stands in the attributes that the server derived from the catalogue.
const number = (words) => (words === '' ? null : Number(words));

/** A field and its place in the examination. */
class Cell {
  constructor(element) {
    const data = element.dataset;
    this.element = element;
    this.name = data.field;
    this.kind = data.kind;
    this.unit = data.unit;
    this.usual = data.usual ?? '';
    [this.code, this.site, this.side] = data.field.split('/');
    this.inputs = [...element.querySelectorAll('input, textarea')];
    this.choice = this.inputs[0].type === 'radio';
    this.low = number(data.low ?? '');
    this.high = number(data.high ?? '');
    this.from = number(data.from ?? '');
    this.to = number(data.to ?? '');
    this.note = element.querySelector('[data-note]');
    this.hint = this.note?.textContent ?? '';
    const label = element.querySelector('legend, label').textContent;
    this.label = label.replace(/, (Left|Right)$/, (_, side) => `, ${side.toLowerCase()}`);
  }

  get value() {
    return this.choice
      ? (this.inputs.find((input) => input.checked)?.value ?? '')
      : this.inputs[0].value.trim();
  }

  set value(value) {
    if (this.choice) {
      this.inputs.forEach((input) => (input.checked = input.value === value));
    } else {
      this.inputs[0].value = value;
    }
  }

  /** As people read it. */
  get words() {
    if (this.choice) {
      const chosen = this.inputs.find((input) => input.checked);
      return chosen ? chosen.nextElementSibling.textContent : '';
    }
    return `${this.value} ${this.element.querySelector('.unit')?.textContent ?? ''}`.trim();
  }

  get measured() {
    return Number(this.value.replace(',', '.'));
  }

  /** Why the value cannot be recorded; empty if it can or there is none. */
  get fault() {
    if (this.choice || this.kind === 'text' || this.value === '') {
      return '';
    }
    if (!/^-?\d+([.,]\d+)?$/.test(this.value)) {
      return 'Not a number';
    }
    const outside =
      (this.low !== null && this.measured < this.low) ||
      (this.high !== null && this.measured > this.high);
    if (outside) {
      return `Not accepted: ${this.low} to ${this.high} only`;
    }
    return this.kind === 'grade' && !Number.isInteger(this.measured) ? 'A whole number only' : '';
  }

  get outsideExpected() {
    return this.from !== null && (this.measured < this.from || this.measured > this.to);
  }

  get finding() {
    const finding = {code: this.code};
    if (this.site) {
      finding.site = this.site;
    }
    if (this.side) {
      finding.side = this.side;
    }
    if (this.kind === 'value') {
      return {...finding, value: this.measured, unit: this.unit};
    }
    return {...finding, [this.kind]: this.kind === 'grade' ? this.measured : this.value};
  }

  /** Says beside the number what is to be said of it, at once. */
  judge() {
    const fault = this.fault;
    const odd = fault === '' && this.value !== '' && !this.choice && this.outsideExpected;
    this.element.classList.toggle('faulty', fault !== '');
    this.element.classList.toggle('odd', odd);
    if (this.note) {
      this.inputs[0].setAttribute('aria-invalid', String(fault !== ''));
      this.note.textContent = fault || (odd ? `outside the ${this.hint}` : this.hint);
    }
  }
}

/** A region, its one touch, and what it says of itself. */
class Region {
  constructor(section, cells) {
    this.section = section;
    this.id = section.dataset.region;
    this.cells = cells.filter((cell) => section.contains(cell.element));
    this.touch = section.querySelector('.touch input');
    this.title = section.querySelector('h2').textContent;
    this.tally = section.querySelector('[data-tally]');
    this.others = section.querySelector('[data-others]');
    this.heading = section.querySelector('[data-records]');
    this.offer = this.heading?.textContent;
    this.phrases = [...section.querySelectorAll('[data-fills]')].map((item) => ({
      item,
      fields: item.dataset.fills.split(' '),
    }));
  }

  get recorded() {
    return this.cells.filter((cell) => cell.value !== '');
  }

  show(byTouch) {
    const recorded = this.recorded;
    const touched = this.touch?.checked ?? false;
    const others = recorded.filter((cell) => !byTouch.has(cell.name));
    this.tally.textContent = recorded.length === 0 ? '' : `${recorded.length} recorded`;
    this.others.replaceChildren(
      ...others.map((cell) => {
        const item = document.createElement('li');
        item.textContent = `${cell.label}: ${cell.words}`;
        item.classList.toggle('odd', cell.usual !== '' ? cell.value !== cell.usual : cell.outsideExpected);
        return item;
      }),
    );
    this.others.hidden = others.length === 0;
    this.section.classList.toggle('touched', touched);
    for (const {item, fields} of this.phrases) {
      // What was entered by hand is said below, by itself.
      item.hidden = touched && !fields.every((name) => byTouch.has(name));
    }
    if (this.heading) {
      const held = this.cells.filter((cell) => byTouch.has(cell.name)).length;
      this.heading.textContent = touched ? `Recorded as seen and felt, ${held}:` : this.offer;
    }
    const odd = others.some((cell) => cell.usual !== '' ? cell.value !== cell.usual : cell.outsideExpected);
    return recorded.length === 0 ? '' : odd ? 'with something unexpected' : touched ? 'as expected' : 'begun';
  }
}

export class Form {
  constructor(form) {
    this.cells = [...form.querySelectorAll('[data-field]')].map((element) => new Cell(element));
    this.byName = new Map(this.cells.map((cell) => [cell.name, cell]));
    this.regions = [...form.querySelectorAll('[data-region]')].map(
      (section) => new Region(section, this.cells),
    );
    this.byTouch = new Set();
    this.values = {};
    this.rail = new Map(
      [...form.querySelectorAll('[data-rail]')].map((link) => [link.dataset.rail, link]),
    );
    this.regions.forEach((region) => this.show(region));
    this.cells.forEach((cell) => this.note(cell));
  }

  note(cell) {
    if (cell.value === '') {
      delete this.values[cell.name];
    } else {
      this.values[cell.name] = cell.value;
    }
    cell.judge();
  }

  cellOf(target) {
    const element = target.closest('[data-field]');
    return element ? this.byName.get(element.dataset.field) : undefined;
  }

  regionOf(target) {
    return this.regions.find((region) => region.section.contains(target));
  }

  /** Takes in what a person just did to a field. */
  changed(cell) {
    this.byTouch.delete(cell.name);
    this.note(cell);
    this.show(this.regionOf(cell.element));
  }

  /** Records what is expected where nothing else is, or takes just that back. */
  touch(region) {
    for (const cell of region.cells) {
      if (region.touch.checked && cell.usual !== '' && cell.value === '') {
        cell.value = cell.usual;
        this.byTouch.add(cell.name);
        this.note(cell);
      } else if (!region.touch.checked && this.byTouch.delete(cell.name)) {
        cell.value = '';
        this.note(cell);
      }
    }
    this.show(region);
  }

  show(region) {
    const state = region.show(this.byTouch);
    const link = this.rail.get(region.id);
    link.dataset.progress = state;
    link.querySelector('[data-state]').textContent = state === '' ? '' : `, ${state}`;
  }

  get faulty() {
    return this.cells.filter((cell) => cell.fault !== '');
  }

  /** What would be sent, in the order of the examination; faulty fields are left out. */
  get recorded() {
    return this.cells.filter((cell) => cell.value !== '' && cell.fault === '');
  }

  snapshot() {
    return {values: {...this.values}, byTouch: [...this.byTouch]};
  }

  /** Puts back what a draft holds; fields that the catalogue no longer has are passed over. */
  restore({values, byTouch}) {
    for (const cell of this.cells) {
      cell.value = values[cell.name] ?? '';
      this.note(cell);
    }
    this.byTouch = new Set(byTouch.filter((name) => this.byName.has(name)));
    for (const region of this.regions) {
      if (region.touch) {
        region.touch.checked = region.cells.some((cell) => this.byTouch.has(cell.name));
      }
      this.show(region);
    }
  }
}
