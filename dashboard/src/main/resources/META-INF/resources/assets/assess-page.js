// What stands round the fields: one region or the whole examination, and what became of saving.
const by = (id) => document.getElementById(id);

export class Modes {
  constructor(form) {
    this.form = form;
    this.links = [...document.querySelectorAll('.modes a')];
    for (const link of this.links) {
      link.addEventListener('click', (event) => {
        event.preventDefault();
        history.replaceState(null, '', link.href);
        this.show(link.dataset.only);
      });
    }
  }

  /** What holds something is never hidden: nobody should save what they do not see. */
  show(only) {
    for (const region of this.form.regions) {
      const hidden = only !== '' && region.id !== only && region.recorded.length === 0;
      region.section.hidden = hidden;
      this.form.rail.get(region.id).parentElement.hidden = hidden;
    }
    for (const link of this.links) {
      if (link.dataset.only === only) {
        link.setAttribute('aria-current', 'true');
      } else {
        link.removeAttribute('aria-current');
      }
    }
  }
}

export class Done {
  constructor(taken) {
    this.taken = taken;
    this.panel = by('done');
    this.entry = [by('assess'), ...document.querySelectorAll('.entry-head, .retract')];
  }

  /** Takes the place of the form. */
  show(title, {takenAt, recordedAt, findings}, state = 'sending') {
    const count = findings.length === 1 ? '1 finding' : `${findings.length} findings`;
    const words = (time) => this.taken.words(Date.parse(time));
    this.panel.dataset.state = state;
    by('done-title').textContent = title;
    by('done-words').textContent =
      `${count}, taken ${words(takenAt)}, recorded ${words(recordedAt)}.`;
    if (this.panel.hidden) {
      this.swap(true);
      document.body.classList.remove('keyed');
      scrollTo({top: 0, behavior: 'instant'});
      this.panel.focus();
    }
  }

  /** What scoring said when it was saved: score, age of each value, next set, what policy asks. */
  foresaw(preview) {
    const full = preview.querySelector('.full');
    const brief = preview.querySelector('.brief').cloneNode(true);
    by('done-foreseen').replaceChildren(brief, ...(full ? [...full.cloneNode(true).children] : []));
  }

  hide() {
    this.swap(false);
  }

  swap(done) {
    this.panel.hidden = !done;
    this.entry.forEach((part) => (part.hidden = done));
  }
}
