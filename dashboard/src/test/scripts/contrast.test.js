// Colours of both dresses by the formula of WCAG 2.2 (relative luminance, contrast ratio). Text
// reaches 4.5:1 on its ground (success criterion 1.4.3), lines that carry meaning 3:1 (1.4.11).
import assert from 'node:assert/strict';
import {test} from 'node:test';
import {asset} from './page.js';

const TEXT = 4.5;
const LINE = 3;
const PAIRS = [
  ...['paper', 'sheet', 'sunk', 'act-soft', 'high-ground', 'medium-ground', 'low-ground'].map(
    (ground) => ['ink', ground, TEXT],
  ),
  ...['paper', 'sheet', 'sunk'].map((ground) => ['ink-soft', ground, TEXT]),
  ...['band-1', 'band-2', 'band-3'].map((ground) => ['ink', ground, TEXT]),
  ...['paper', 'sheet'].map((ground) => ['act', ground, TEXT]),
  ...['paper', 'sheet'].map((ground) => ['line-strong', ground, LINE]),
  ['act-ink', 'act', TEXT],
  ['bar-ink', 'bar', TEXT],
  ['high-ink', 'high', TEXT],
  ['medium-ink', 'medium', TEXT],
  ['low-ink', 'low', TEXT],
];

const css = await asset('tokens.css');
const root = css.slice(css.indexOf(':root'), css.indexOf('}'));
const HEX = '#[0-9a-f]{3,6}';
const colours = (dress) =>
  new Map(
    [...root.matchAll(new RegExp(`--([\\w-]+): (?:light-dark\\((${HEX}), (${HEX})\\)|(${HEX}));`, 'g'))].map(
      ([, name, day, night, always]) => [name, always ?? (dress === 'day' ? day : night)],
    ),
  );

function luminance(hex) {
  const digits = hex.length === 4 ? hex.replace(/[0-9a-f]/g, '$&$&') : hex;
  const [r, g, b] = [1, 3, 5]
    .map((at) => parseInt(digits.slice(at, at + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(one, other) {
  const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

test('should know the contrast that WCAG states: black on white is 21:1', () => {
  assert.equal(contrast('#000', '#ffffff'), 21);
  // A well-known grey at the edge of 4.5:1 on white.
  assert.ok(contrast('#767676', '#fff') > 4.5 && contrast('#777777', '#fff') < 4.5);
});

for (const dress of ['day', 'night']) {
  for (const [words, ground, least] of PAIRS) {
    test(`should keep ${words} on ${ground} readable by ${dress}`, () => {
      const colour = colours(dress);
      const ratio = contrast(colour.get(words), colour.get(ground));
      assert.ok(ratio >= least, `${colour.get(words)} on ${colour.get(ground)}: ${ratio.toFixed(2)}`);
    });
  }
}
