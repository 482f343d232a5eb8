// Sends a file of any size in parts, and goes on where it was broken off: after a lost line, a
// server that asks to wait, or a page that was loaded again and given the same file.
(() => {
  const form = document.getElementById('upload');
  if (!form) {
    return;
  }
  const PART = 1 << 20;
  const file = document.getElementById('file');
  const mapping = document.getElementById('mapping');
  const sending = document.getElementById('sending');
  const bar = document.getElementById('sent');
  const words = document.getElementById('sent-words');
  const button = form.querySelector('button');
  const pause = (seconds) => new Promise((done) => setTimeout(done, seconds * 1000));

  form.hidden = false;
  fetch('/api/imports/mappings', {headers: {Accept: 'application/json'}})
    .then((answer) => (answer.ok ? answer.json() : []))
    .then((names) => {
      for (const name of names) {
        mapping.append(new Option(name, name));
      }
    })
    .catch(() => {
      // Without a mapping, our own header can still be sent.
    });

  const isCsv = (chosen) => !/\.(ndjson|jsonl)$/i.test(chosen.name);

  /** Asks until there is an answer that waiting cannot better. */
  async function insist(path, options) {
    for (let seconds = 1; ; seconds = Math.min(2 * seconds, 30)) {
      let wait = seconds;
      try {
        const answer = await fetch(path, {...options, headers: {...options.headers, 'X-Driftward-Client': 'page'}});
        if (answer.status !== 503) {
          return answer;
        }
        wait = Number(answer.headers.get('Retry-After')) || seconds;
        words.textContent = 'The server asks to wait. It goes on by itself.';
      } catch {
        words.textContent = 'No connection. It goes on by itself.';
      }
      await pause(wait);
    }
  }

  async function refusal(answer) {
    const problem = await answer.json().catch(() => ({}));
    const faults = (problem.faults || []).map((fault) => fault.detail);
    return [problem.title || `The server answers ${answer.status}`, ...faults].join('. ');
  }

  async function send(chosen) {
    const query = new URLSearchParams({
      name: chosen.name,
      key: `${chosen.name}/${chosen.size}/${chosen.lastModified}`,
    });
    if (mapping.value) {
      query.set('mapping', mapping.value);
    }
    let answer = await insist(`/api/imports?${query}`, {
      method: 'POST',
      headers: {
        'Content-Type': isCsv(chosen) ? 'text/csv' : 'application/x-ndjson',
        'Upload-Complete': chosen.size <= PART ? '?1' : '?0',
        'Upload-Length': String(chosen.size),
      },
      body: chosen.slice(0, PART),
    });
    if (!answer.ok) {
      throw new Error(await refusal(answer));
    }
    const progress = await answer.json();
    const id = progress.id;
    let state = progress.state;
    let offset = Number(answer.headers.get('Upload-Offset'));
    // A file that is over needs no more of its bytes: all of it is known, or none is understood.
    while (state === 'running' && offset < chosen.size) {
      bar.value = (100 * offset) / chosen.size;
      words.textContent = `${Math.floor(bar.value)} % sent`;
      answer = await insist(`/api/imports/${id}`, {
        method: 'PATCH',
        headers: {
          'Content-Type': 'application/partial-upload',
          'Upload-Offset': String(offset),
          'Upload-Complete': offset + PART >= chosen.size ? '?1' : '?0',
        },
        body: chosen.slice(offset, offset + PART),
      });
      if (!answer.ok && answer.status !== 409) {
        throw new Error(await refusal(answer));
      }
      if (answer.ok) {
        ({state} = await answer.json());
      }
      offset = Number(answer.headers.get('Upload-Offset'));
    }
  }

  form.addEventListener('submit', async (event) => {
    event.preventDefault();
    sending.hidden = false;
    button.disabled = true;
    bar.value = 0;
    words.textContent = 'Sending';
    try {
      await send(file.files[0]);
      bar.value = 100;
      words.textContent = 'All of it has arrived. Below it says what becomes of its rows.';
      form.reset();
    } catch (failure) {
      words.textContent = failure.message;
    } finally {
      button.disabled = false;
    }
  });
})();
