import js from '@eslint/js';
import globals from 'globals';

const PAGE = {...globals.browser, wardClock: 'readonly', htmx: 'readonly', uPlot: 'readonly'};

export default [
  js.configs.recommended,
  {
    rules: {
      eqeqeq: 'error',
      'no-eval': 'error',
      'no-implied-eval': 'error',
      'no-new-func': 'error',
      'no-var': 'error',
      'prefer-const': 'error',
      // Text goes into a page as text; the one exception is the server's own page part.
      'no-restricted-properties': [
        'error',
        {property: 'innerHTML', message: 'Use textContent or replaceChildren.'},
        {property: 'outerHTML', message: 'Use textContent or replaceChildren.'},
        {property: 'insertAdjacentHTML', message: 'Use append.'},
        {object: 'document', property: 'write', message: 'Use append.'},
      ],
    },
  },
  {
    files: ['**/assets/*.js'],
    languageOptions: {globals: PAGE},
  },
  {
    files: ['**/test/scripts/*.js'],
    languageOptions: {globals: globals.node},
  },
];
