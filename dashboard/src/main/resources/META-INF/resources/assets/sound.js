// Sounds the alarms that nobody has answered. Bursts follow the general description of IEC 60601-1-8
// (pulses, spacing and repetition for high, medium and low priority), with values within its ranges
// from memory; loudness depends on the machine and is nobody's promise. A person switches it on:
// browsers let no page sound by itself.
(() => {
  const box = document.getElementById('sound');
  const tones = document.getElementById('tones');
  if (!box || !tones || !globalThis.AudioContext) {
    return;
  }
  const button = document.getElementById('sound-switch');
  const pause = document.getElementById('sound-pause');
  const state = document.getElementById('sound-state');
  const said = document.getElementById('sound-said');

  const PAUSE = 120_000;
  const URGENCY = ['low', 'medium', 'high'];
  // In seconds: length of a pulse, starts of the pulses, silence until the burst comes again.
  const BURSTS = {
    high: {pulse: 0.15, starts: [0, 0.25, 0.5, 1, 1.25, 2, 2.25, 2.5, 3, 3.25], rest: 5},
    medium: {pulse: 0.2, starts: [0, 0.4, 0.8], rest: 12},
    low: {pulse: 0.2, starts: [0, 0.4], rest: 30},
  };
  // A fundamental between 150 and 1000 Hz with four harmonics.
  const FUNDAMENTAL = 523.25;
  const HARMONICS = [0, 1, 0.7, 0.6, 0.5, 0.4];

  let audio = null;
  let voice = null;
  let master = null;
  let pausedUntil = 0;
  let nextBurst = 0;
  let sounding = null;
  const known = new Set([...tones.children].map((tone) => tone.dataset.notice));
  const told = new Set();

  const on = () => audio !== null && audio.state === 'running';
  const paused = () => performance.now() < pausedUntil;
  const write = (element, words) => {
    if (element.textContent !== words) {
      element.textContent = words;
    }
  };

  function show() {
    box.dataset.sound = !on() ? 'off' : paused() ? 'paused' : 'on';
    button.setAttribute('aria-pressed', String(on()));
    pause.hidden = !on();
    const seconds = Math.ceil((pausedUntil - performance.now()) / 1000);
    write(pause, paused() ? `Sound again (${seconds} s)` : 'Pause 2 min');
    const wanted = localStorage.getItem('sound') === 'on';
    write(
      state,
      on()
        ? paused() ? 'Sound paused' : 'Sound on'
        : wanted ? 'Sound off: press to start' : 'Sound off',
    );
  }

  function gravest() {
    const levels = [...tones.children].map((tone) => tone.dataset.level);
    return [...URGENCY].reverse().find((level) => levels.includes(level)) ?? null;
  }

  function sound(level) {
    const burst = BURSTS[level];
    const from = audio.currentTime + 0.05;
    for (const start of burst.starts) {
      const tone = audio.createOscillator();
      const loudness = audio.createGain();
      const begin = from + start;
      const end = begin + burst.pulse;
      tone.setPeriodicWave(voice);
      tone.frequency.value = FUNDAMENTAL;
      loudness.gain.setValueAtTime(0, begin);
      loudness.gain.linearRampToValueAtTime(0.5, begin + burst.pulse * 0.2);
      loudness.gain.setValueAtTime(0.5, end - burst.pulse * 0.2);
      loudness.gain.linearRampToValueAtTime(0, end);
      tone.connect(loudness).connect(master);
      tone.start(begin);
      tone.stop(end);
    }
    const length = burst.starts.at(-1) + burst.pulse;
    nextBurst = performance.now() + (length + burst.rest) * 1000;
    sounding = level;
    for (const tone of tones.children) {
      tell(tone.dataset.notice);
    }
  }

  /** The record keeps that a page has sounded; whether anybody heard it nobody can know. */
  async function tell(notice) {
    if (told.has(notice)) {
      return;
    }
    told.add(notice);
    try {
      const answer = await fetch(`/sounds/${notice}`, {method: 'POST'});
      if (!answer.ok) {
        told.delete(notice);
      }
    } catch {
      told.delete(notice);
    }
  }

  /** Words for those who do not hear: new alarms only, whether or not the sound is on. */
  function say() {
    const news = [...tones.children].filter((tone) => !known.has(tone.dataset.notice));
    if (news.length > 0) {
      news.forEach((tone) => known.add(tone.dataset.notice));
      const level = [...URGENCY].reverse().find((one) =>
        news.some((tone) => tone.dataset.level === one),
      );
      said.textContent = `New alarm, ${level} priority. Nobody has answered it.`;
    }
  }

  function look() {
    say();
    const level = gravest();
    if (level === null) {
      nextBurst = 0;
      sounding = null;
      // Somebody has answered: the burst under way falls silent as well.
      if (on()) {
        master.gain.value = 0;
      }
    } else if (on() && !paused()) {
      master.gain.value = 1;
      const worse = URGENCY.indexOf(level) > URGENCY.indexOf(sounding);
      if (worse || performance.now() >= nextBurst) {
        sound(level);
      }
    }
    show();
  }

  button.addEventListener('click', async () => {
    if (on()) {
      localStorage.removeItem('sound');
      await audio.close();
      audio = null;
      pausedUntil = 0;
    } else {
      audio = new AudioContext();
      voice = audio.createPeriodicWave(new Float32Array(HARMONICS.length), new Float32Array(HARMONICS));
      master = audio.createGain();
      master.connect(audio.destination);
      await audio.resume();
      localStorage.setItem('sound', 'on');
      nextBurst = 0;
      sounding = null;
    }
    look();
  });

  pause.addEventListener('click', () => {
    pausedUntil = paused() ? 0 : performance.now() + PAUSE;
    nextBurst = 0;
    // The burst under way falls silent as well.
    master.gain.value = paused() ? 0 : 1;
    show();
  });

  button.hidden = false;
  show();
  setInterval(look, 250);
})();
