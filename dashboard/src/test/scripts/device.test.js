// What a device keeps of an assessment until the server has it, against a real server on loopback.
import assert from 'node:assert/strict';
import {createServer} from 'node:http';
import {after, before, beforeEach, mock, test} from 'node:test';
import {module, open} from './page.js';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const NOW = Date.parse('2026-01-05T12:00:00Z');
const ITEM = {
  account: 'n.fairweather',
  assessment: {id: 'A-1', revision: 1, encounter: 'V-1'},
};

const send = globalThis.fetch;
let server;
let answer;
let heard;
let device;

before(async () => {
  server = createServer((request, response) => {
    const parts = [];
    request.on('data', (part) => parts.push(part));
    request.on('end', () => {
      heard = {request, body: Buffer.concat(parts).toString()};
      response.writeHead(answer.status, {'Content-Type': 'application/json', Connection: 'close'});
      response.end(answer.body ?? '');
    });
  });
  await new Promise((listening) => server.listen(0, '127.0.0.1', listening));
  const address = `http://127.0.0.1:${server.address().port}`;
  // A page's addresses are relative to it; Node has no page.
  globalThis.fetch = (path, options) => send(new URL(path, address), options);
});

after(() => {
  globalThis.fetch = send;
  server.close();
});

beforeEach(async () => {
  mock.timers.reset();
  heard = null;
  open('<!doctype html><body>');
  device = await module('device.js');
});

const clockAt = (now) => mock.timers.enable({apis: ['Date'], now});

test('should keep a draft for twelve hours and not a millisecond more', () => {
  clockAt(NOW);
  const key = device.draftKey('n.fairweather', 'V-1', '');
  device.saveDraft(key, {values: {'heart-rate': '88'}});

  mock.timers.setTime(NOW + 12 * HOUR - 1);
  device.sweep();
  assert.equal(device.read(key).values['heart-rate'], '88');

  mock.timers.setTime(NOW + 12 * HOUR);
  device.sweep();
  assert.equal(device.read(key), null);
});

test('should keep what is not sent for seven days', () => {
  clockAt(NOW);
  device.keepUnsent(ITEM);

  mock.timers.setTime(NOW + 7 * DAY - 1);
  device.sweep();
  assert.equal(device.unsent('n.fairweather').length, 1);

  mock.timers.setTime(NOW + 7 * DAY);
  device.sweep();
  assert.equal(device.unsent('n.fairweather').length, 0);
});

test('should keep one of an assessment however often it is saved, and send the oldest first', () => {
  clockAt(NOW);
  device.keepUnsent({...ITEM, assessment: {...ITEM.assessment, id: 'A-2'}});
  mock.timers.setTime(NOW + 1);
  device.keepUnsent(ITEM);
  device.keepUnsent(ITEM);

  assert.deepEqual(
    device.unsent('n.fairweather').map((item) => item.assessment.id),
    ['A-2', 'A-1'],
  );
});

test("should not show one account's assessments to another, whatever they are called", () => {
  device.keepUnsent(ITEM);
  device.keepUnsent({...ITEM, account: 'n.fairweather/x'});
  device.keepUnsent({...ITEM, account: 'n'});

  assert.equal(device.unsent('n.fairweather').length, 1);
  assert.equal(device.unsentOfOthers('n.fairweather'), 2);
});

test('should take away only the drafts of others', () => {
  const [own, other] = ['n.fairweather', 'n.fair'].map((name) => device.draftKey(name, 'V-1', ''));
  device.saveDraft(own, {});
  device.saveDraft(other, {});
  device.keepUnsent({...ITEM, account: 'n.fair'});

  device.wipeDraftsOfOthers('n.fairweather');

  assert.notEqual(device.read(own), null);
  assert.equal(device.read(other), null);
  assert.equal(device.unsent('n.fair').length, 1, 'what is saved waits for whoever saved it');
});

test('should say that it is kept only when the server took it', async () => {
  answer = {status: 202};
  assert.deepEqual(await device.send(ITEM), {state: 'kept'});
  assert.equal(heard.request.url, '/api/assessments');
  assert.deepEqual(JSON.parse(heard.body), ITEM.assessment);
});

test('should give back what was refused, with the reasons', async () => {
  const faults = [{pointer: '/findings/0', detail: 'out of range'}];
  for (const status of [400, 409, 413, 422]) {
    answer = {status, body: JSON.stringify({title: 'Not accepted', faults})};
    assert.deepEqual(await device.send(ITEM), {state: 'refused', faults}, String(status));
  }
  answer = {status: 409, body: JSON.stringify({title: 'There is a later revision'})};
  assert.equal((await device.send(ITEM)).faults[0].detail, 'There is a later revision');
  answer = {status: 400, body: 'no JSON'};
  assert.equal((await device.send(ITEM)).faults[0].detail, 'It was refused.');
  answer = {status: 403};
  assert.equal((await device.send(ITEM)).state, 'refused');
});

test('should wait where nobody is signed in, the server ails or there is no line', async () => {
  answer = {status: 401};
  assert.equal((await device.send(ITEM)).signIn, true);
  for (const status of [429, 500, 503]) {
    answer = {status};
    assert.equal((await device.send(ITEM)).state, 'waiting', String(status));
  }
  const line = globalThis.fetch;
  globalThis.fetch = (path, options) => send(new URL(path, 'http://127.0.0.1:1'), options);
  assert.equal((await device.send(ITEM)).why, 'There is no connection.');
  globalThis.fetch = line;
});
