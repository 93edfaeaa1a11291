// Where the reader is in a score, and how that moves: step by turn, stage or rest, to a time, or by playing.
//
// A position is the number of turns done, 0 to all. Between positions playing also has a time. Listeners are told
// {position, micros, playing, stepped}: stepped is true if a person moved it, false if it moved by playing.

import { positionAt, timeOf } from "./solve.mjs";

export function transportOf(score) {
  const last = score.turns.length;
  const listeners = [];
  let position = 0;
  let micros = 0;
  let speed = 1;
  let playing = null;

  function tell(stepped) {
    for (const listener of listeners) listener({ position, micros, playing: playing !== null, stepped });
  }

  function goTo(target) {
    pause();
    position = Math.max(0, Math.min(last, target));
    micros = timeOf(score, position);
    tell(true);
  }

  function play() {
    if (playing !== null || last === 0) return;
    if (position === last) {
      position = 0;
      micros = 0;
    }
    let before = null;
    const frame = (now) => {
      micros += before === null ? 0 : (now - before) * 1000 * speed;
      before = now;
      position = Math.max(position, positionAt(score, micros));
      if (micros >= score.end) {
        micros = score.end;
        position = last;
        playing = null;
      } else {
        playing = requestAnimationFrame(frame);
      }
      tell(false);
    };
    playing = requestAnimationFrame(frame);
    tell(false);
  }

  function pause() {
    if (playing === null) return;
    cancelAnimationFrame(playing);
    playing = null;
    micros = timeOf(score, position);
    tell(false);
  }

  /** The nearest of some positions before or after this one; the end of the score if there is none. */
  function toNext(places, forward) {
    const ahead = places.filter((place) => (forward ? place > position : place < position));
    if (ahead.length > 0) goTo(forward ? Math.min(...ahead) : Math.max(...ahead));
    else goTo(forward ? last : 0);
  }

  const stageStarts = [...new Set(score.stages.map((stage) => stage.from))];
  const restPlaces = score.rests.map((rest) => rest.after_turn + 1);
  return {
    listen: (listener) => listeners.push(listener),
    goTo,
    goToTime: (time) => goTo(positionAt(score, time)),
    stepTurn: (by) => goTo(position + by),
    stepStage: (forward) => toNext(stageStarts, forward),
    stepRest: (forward) => toNext(restPlaces, forward),
    toStart: () => goTo(0),
    toEnd: () => goTo(last),
    toggle: () => (playing === null ? play() : pause()),
    pause,
    setSpeed: (share) => { speed = share; },
    last,
    now: () => ({ position, micros, playing: playing !== null }),
  };
}

/** What a key does to a transport, or nothing. No letter is a key: letters are turns here. */
export function keyAction(transport, event) {
  if (event.altKey || event.ctrlKey || event.metaKey) return null;
  if (event.shiftKey && event.key !== "ArrowLeft" && event.key !== "ArrowRight") return null;
  return {
    ArrowLeft: () => (event.shiftKey ? transport.stepStage(false) : transport.stepTurn(-1)),
    ArrowRight: () => (event.shiftKey ? transport.stepStage(true) : transport.stepTurn(1)),
    ArrowUp: () => transport.stepRest(false),
    ArrowDown: () => transport.stepRest(true),
    Home: () => transport.toStart(),
    End: () => transport.toEnd(),
    " ": () => transport.toggle(),
  }[event.key] ?? null;
}
