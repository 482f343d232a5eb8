// The fields of the entry page: what is accepted, and what one touch records and takes back.
import assert from 'node:assert/strict';
import {beforeEach, test} from 'node:test';
import {module, open} from './page.js';

const PAGE = `<!doctype html><body><form>
  <a data-rail="chest" href="#"><i data-state></i></a>
  <section data-region="chest">
    <h2>Chest</h2><span data-tally></span><p data-records>Records as expected:</p>
    <label class="touch"><input type="checkbox"></label>
    <ul><li data-fills="wheeze/back/left">Wheeze absent, left</li>
      <li data-fills="wheeze/back/left wheeze/back/right">Wheeze absent</li></ul>
    <ul data-others></ul>
    <div data-field="temperature" data-kind="value" data-unit="Cel" data-low="20" data-high="46"
         data-from="36.1" data-to="38"><label>Temperature</label><input>
      <span class="unit">°C</span><span data-note>expected 36.1 to 38</span></div>
    <div data-field="pulse/wrist/left" data-kind="grade" data-low="0" data-high="4">
      <label>Pulse, wrist, Left</label><input><span data-note></span></div>
    ${['left', 'right']
      .map(
        (side) => `<fieldset data-field="wheeze/back/${side}" data-kind="coded" data-usual="absent">
      <legend>Wheeze, ${side}</legend>
      <input type="radio" name="${side}" value="absent"><label>absent</label>
      <input type="radio" name="${side}" value="present"><label>present</label></fieldset>`,
      )
      .join('')}
  </section></form>`;

let form;
let document;

beforeEach(async () => {
  document = open(PAGE).document;
  form = new (await module('assess-form.js')).Form(document.querySelector('form'));
});

const cell = (name) => form.byName.get(name);

function enter(name, value) {
  cell(name).value = value;
  form.changed(cell(name));
  return cell(name);
}

function touch(checked) {
  const [region] = form.regions;
  region.touch.checked = checked;
  form.touch(region);
}

test('should accept a number up to each bound of what is possible, and not past it', () => {
  for (const value of ['20', '46', '36,6', '37.25']) {
    assert.equal(enter('temperature', value).fault, '', value);
  }
  for (const value of ['19.9', '46.1', '-37']) {
    assert.equal(enter('temperature', value).fault, 'Not accepted: 20 to 46 only', value);
  }
  for (const value of ['38c', '1e2', '0x20', '3 8', '.', '١']) {
    assert.equal(enter('temperature', value).fault, 'Not a number', value);
  }
});

test('should mark what is outside the expected, from either side of each bound', () => {
  const odd = (value) => enter('temperature', value).element.classList.contains('odd');
  assert.deepEqual(['36.0', '36.1', '38', '38.1'].map(odd), [true, false, false, true]);
  assert.equal(cell('temperature').note.textContent, 'outside the expected 36.1 to 38');
});

test('should take a grade as a whole number only', () => {
  assert.equal(enter('pulse/wrist/left', '1.5').fault, 'A whole number only');
  assert.equal(enter('pulse/wrist/left', '2').fault, '');
});

test('should send value with unit, grade and code each as the contract names it', () => {
  enter('temperature', '38,4');
  enter('pulse/wrist/left', '1');
  enter('wheeze/back/right', 'present');
  assert.deepEqual(
    form.recorded.map((one) => one.finding),
    [
      {code: 'temperature', value: 38.4, unit: 'Cel'},
      {code: 'pulse', site: 'wrist', side: 'left', grade: 1},
      {code: 'wheeze', site: 'back', side: 'right', coded: 'present'},
    ],
  );
});

test('should leave out what is faulty, and name it', () => {
  enter('temperature', '73');
  assert.deepEqual(form.recorded, []);
  assert.deepEqual(form.faulty, [cell('temperature')]);
});

test('should record by one touch only what is expected and not said otherwise', () => {
  enter('wheeze/back/right', 'present');
  touch(true);
  assert.equal(cell('wheeze/back/left').value, 'absent');
  assert.equal(cell('wheeze/back/right').value, 'present');
  assert.equal(cell('temperature').value, '', 'a number is never made up');
  const phrases = [...document.querySelectorAll('[data-fills]')];
  assert.deepEqual(
    phrases.map((phrase) => phrase.hidden),
    [false, true],
    'no phrase speaks for what a hand entered',
  );
  assert.equal(document.querySelector('[data-records]').textContent, 'Recorded as seen and felt, 1:');

  touch(false);
  assert.equal(cell('wheeze/back/left').value, '');
  assert.equal(cell('wheeze/back/right').value, 'present', 'what a hand entered stays');
});

test('should not take back by a touch what was entered after it', () => {
  touch(true);
  enter('wheeze/back/left', 'present');
  touch(false);
  assert.equal(cell('wheeze/back/left').value, 'present');
  assert.equal(cell('wheeze/back/right').value, '');
});

test('should come back from a draft as it was, without what the catalogue no longer has', () => {
  enter('temperature', '38.4');
  touch(true);
  const draft = JSON.parse(JSON.stringify(form.snapshot()));
  touch(false);
  enter('temperature', '');

  form.restore({values: {...draft.values, gone: '1'}, byTouch: [...draft.byTouch, 'gone']});

  assert.deepEqual(form.snapshot(), draft);
  assert.equal(form.regions[0].touch.checked, true);
});
