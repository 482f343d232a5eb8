export default {
  extends: ['stylelint-config-recommended'],
  rules: {
    'color-named': 'never',
    'declaration-no-important': true,
    // A colour stands in tokens.css, in both dresses, or it is missing from one of them.
    'color-no-hex': true,
    'no-descending-specificity': null,
  },
  overrides: [
    // Paper is black on white, whatever dress the screen wears.
    {files: ['**/{tokens,paper,people}.css'], rules: {'color-no-hex': null}},
    // What is hidden, or not for paper, stays so whatever a later rule displays.
    {files: ['**/base.css'], rules: {'declaration-no-important': null}},
  ],
};
