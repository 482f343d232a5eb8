// Day or night dress: the machine's preference until the person chooses. Runs before the first
// paint, so that a dark ward is never lit up by a white page.
(() => {
  const root = document.documentElement;
  const machine = matchMedia('(prefers-color-scheme: dark)');
  const chosen = localStorage.getItem('dress');
  if (chosen) {
    root.dataset.dress = chosen;
  }

  const isNight = () =>
    root.dataset.dress ? root.dataset.dress === 'night' : machine.matches;

  addEventListener('DOMContentLoaded', () => {
    const button = document.getElementById('dress');
    const label = () => {
      button.textContent = isNight() ? 'Day view' : 'Night view';
    };
    button.addEventListener('click', () => {
      root.dataset.dress = isNight() ? 'day' : 'night';
      localStorage.setItem('dress', root.dataset.dress);
      label();
      dispatchEvent(new Event('driftward:dress'));
    });
    machine.addEventListener('change', () => {
      label();
      dispatchEvent(new Event('driftward:dress'));
    });
    label();
    button.hidden = false;
  });
})();
