// Hearing the board: the whole state first, then what changes; comes back by itself.

const PATIENCE_MS = 1500;
const AGAIN_MS = 3000;

/**
 * Begins to hear. `changed(state, event)` is called with the same object each time: {link, colours, cube, evening,
 * turns, offsetMs}; event is "state", "link", "turn", "evening", or "lost" when the board has been silent for a while.
 */
export function hear(changed) {
  const state = { link: null, colours: null, cube: null, evening: null, turns: [], offsetMs: 0 };
  let source = null;
  let lost = null;

  const take = (kind, apply) => source.addEventListener(kind, (message) => {
    clearTimeout(lost);
    lost = null;
    const told = JSON.parse(message.data);
    // The board's clock in this page's milliseconds: board + offset = performance.now().
    if (told.now_us) state.offsetMs = performance.now() - told.now_us / 1000;
    apply(told);
    changed(state, kind);
  });

  function open() {
    source = new EventSource("/api/live");
    take("state", (told) => {
      Object.assign(state, { link: told.link, colours: told.colours, cube: told.cube, evening: told.evening, turns: told.turns ?? [] });
    });
    take("link", (told) => { state.link = told; });
    take("evening", (told) => { Object.assign(state, { cube: told.cube, evening: told.evening }); });
    take("turn", (told) => {
      const count = told.evening.solve?.turns ?? 0;
      if (count === 1) state.turns = [];
      if (count > 0) state.turns.push({ turn: told.turn, at_us: told.at_us });
      Object.assign(state, { cube: told.cube, evening: told.evening });
    });
    source.onerror = () => {
      lost ??= setTimeout(() => changed(state, "lost"), PATIENCE_MS);
      // A refused stream is not tried again by the browser.
      if (source.readyState === EventSource.CLOSED) setTimeout(open, AGAIN_MS);
    };
  }
  open();
}
