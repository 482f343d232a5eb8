// The ward's clock in the browser. The server says what time it is on the ward and how fast that
// time runs; between its words we count on by ourselves.
globalThis.wardClock = (() => {
  const root = document.documentElement;
  const rate = Number(root.dataset.rate || 1);
  let wardThen = Date.parse(root.dataset.now);
  let hereThen = performance.now();

  /** Ward time now, in milliseconds since 1970. */
  function wardNow() {
    return wardThen + (performance.now() - hereThen) * rate;
  }

  /** Takes the server's word for what time it is. */
  function setWardTime(millis) {
    wardThen = millis;
    hereThen = performance.now();
  }

  /** The same words as Wording.span on the server. */
  function span(millis) {
    const minutes = Math.floor(Math.abs(millis) / 60000);
    if (minutes < 1) {
      return 'under 1 min';
    }
    if (minutes < 60) {
      return `${minutes} min`;
    }
    const hours = Math.floor(minutes / 60);
    if (hours < 24) {
      const rest = minutes % 60;
      return rest === 0 ? `${hours} h` : `${hours} h ${String(rest).padStart(2, '0')} min`;
    }
    const days = Math.floor(hours / 24);
    return hours % 24 === 0 ? `${days} d` : `${days} d ${hours % 24} h`;
  }

  const write = (element, words) => {
    if (element.textContent !== words) {
      element.textContent = words;
    }
  };

  function tick() {
    // What a stale page shows is old; counting on would make it look alive.
    if (root.dataset.stale === undefined) {
      show(wardNow());
    }
  }

  /** Writes every clock on the page as of a ward time. */
  function show(now) {
    for (const element of document.querySelectorAll('time.count')) {
      const at = Date.parse(element.dateTime);
      const past = now > at;
      const words = past ? element.dataset.after : element.dataset.before;
      write(element, `${words} ${span(now - at)}`.trim());
      element.classList.toggle('late', past && element.dataset.deadline !== undefined);
    }
    // The hospital's hours and minutes: ward time shifted by the zone's offset, read as UTC.
    const local = new Date(now + Number(root.dataset.offset || 0) * 1000);
    for (const element of document.querySelectorAll('[data-clock]')) {
      write(element, local.toISOString().slice(11, 16));
    }
  }

  tick();
  setInterval(tick, 1000);
  return {now: wardNow, set: setWardTime, show};
})();
