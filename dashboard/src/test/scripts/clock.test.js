// The ward's clock in the browser. The words of a span follow those that the server's Wording.span
// documents: whole minutes, never rounded up.
import assert from 'node:assert/strict';
import {afterEach, test} from 'node:test';
import {open, script} from './page.js';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const NOW = Date.parse('2026-01-05T12:00:00Z');

let page;
afterEach(() => page.close());

async function at(body, attributes = '') {
  page = open(`<!doctype html><html data-now="2026-01-05T12:00:00Z" ${attributes}><body>${body}`);
  await script(page, 'clock.js');
  return page.document;
}

const due = (millis, more = '') =>
  `<time class="count" data-before="due in" data-after="late by" ${more}
     datetime="${new Date(NOW + millis).toISOString()}"></time>`;

test('should say a span in words', async () => {
  const spans = [
    [59_999, 'under 1 min'],
    [MINUTE, '1 min'],
    [HOUR - 1, '59 min'],
    [HOUR, '1 h'],
    [HOUR + 5 * MINUTE, '1 h 05 min'],
    [24 * HOUR - 1, '23 h 59 min'],
    [24 * HOUR, '1 d'],
    [51 * HOUR, '2 d 3 h'],
  ];
  const document = await at('<div></div>');
  for (const [millis, words] of spans) {
    document.body.replaceChildren(document.createRange().createContextualFragment(due(millis)));
    page.wardClock.show(NOW);
    assert.equal(document.querySelector('time').textContent, `due in ${words}`);
  }
});

test('should be late only past the moment, and only where there is a deadline', async () => {
  const document = await at(due(0, 'data-deadline') + due(0));
  const [deadline, other] = document.querySelectorAll('time');

  page.wardClock.show(NOW);
  assert.ok(!deadline.classList.contains('late'), 'at the moment itself');

  page.wardClock.show(NOW + 1);
  assert.equal(deadline.textContent, 'late by under 1 min');
  assert.ok(deadline.classList.contains('late'));
  assert.ok(!other.classList.contains('late'));
});

test('should show the hours of the hospital, not of the machine', async () => {
  const document = await at('<b data-clock></b>', `data-offset="${2 * 3600}"`);
  page.wardClock.show(NOW);
  assert.equal(document.querySelector('b').textContent, '14:00');
});

test("should take the server's word for what time it is", async () => {
  await at('');
  page.wardClock.set(NOW + HOUR);
  const ahead = page.wardClock.now() - NOW - HOUR;
  assert.ok(ahead >= 0 && ahead < MINUTE, `${ahead} ms`);
});

test('should stand still on a page that is stale', async () => {
  const document = await at(due(MINUTE), 'data-stale=""');
  assert.equal(document.querySelector('time').textContent, '');
});
