// Where the reader is in a score, and how that moves: step by turn, stage or rest, to a time, or by playing; and which
// span of it is selected.
//
// A position is the number of turns done, 0 to all. Between positions playing also has a time. Listeners are told
// {position, micros, playing, stepped, span}: stepped is true if a person moved it; span is null or {from, to}, positions.

import { positionAt, timeOf } from "../cube/solve.mjs";

export function transportOf(score) {
  const last = score.turns.length;
  const listeners = [];
  let position = 0;
  let micros = 0;
  let speed = 1;
  let playing = null;
  let anchor = null;
  let span = null;

  const within = (target) => Math.max(0, Math.min(last, target));
  const now = () => ({ position, micros, playing: playing !== null, span });

  function tell(stepped) {
    for (const listener of listeners) listener({ ...now(), stepped });
  }

  function moveTo(target) {
    pause();
    position = within(target);
    micros = timeOf(score, position);
    tell(true);
  }

  function goTo(target) {
    anchor = null;
    span = null;
    moveTo(target);
  }

  /** Moves and takes the span along: from where the extending began to here. */
  function extendTo(target) {
    anchor ??= position;
    const to = within(target);
    span = anchor === to ? null : { from: Math.min(anchor, to), to: Math.max(anchor, to) };
    moveTo(to);
  }

  function play() {
    if (playing !== null || last === 0) return;
    const from = span?.from ?? 0;
    const until = span?.to ?? last;
    if (position >= until || position < from) {
      position = from;
      micros = timeOf(score, from);
    }
    const end = timeOf(score, until);
    let before = null;
    const frame = (time) => {
      micros += before === null ? 0 : (time - before) * 1000 * speed;
      before = time;
      position = Math.min(until, Math.max(position, positionAt(score, micros)));
      if (micros >= end) {
        micros = end;
        position = until;
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
  function next(places, forward) {
    const ahead = places.filter((place) => (forward ? place > position : place < position));
    if (ahead.length > 0) return forward ? Math.min(...ahead) : Math.max(...ahead);
    return forward ? last : 0;
  }

  const stageStarts = [...new Set(score.stages.map((stage) => stage.from))];
  const restPlaces = score.rests.map((rest) => rest.after_turn + 1);
  // Stepping and extending go to the same places; `go` is one or the other.
  const moves = (go) => ({
    turn: (by) => go(position + by),
    stage: (forward) => go(next(stageStarts, forward)),
    rest: (forward) => go(next(restPlaces, forward)),
    toStart: () => go(0),
    toEnd: () => go(last),
  });
  return {
    listen: (listener) => listeners.push(listener),
    goTo, extendTo,
    goToTime: (time) => goTo(positionAt(score, time)),
    select: (from, to) => { goTo(from); extendTo(to); },
    clear: () => goTo(position),
    step: moves(goTo),
    extend: moves(extendTo),
    toggle: () => (playing === null ? play() : pause()),
    pause,
    setSpeed: (share) => { speed = share; },
    last, now,
  };
}

/** What a key does to a transport, or nothing. With Shift it selects. No letter is a key: letters are turns here. */
export function keyAction(transport, event) {
  if (event.altKey || event.ctrlKey || event.metaKey) return null;
  const go = event.shiftKey ? transport.extend : transport.step;
  const moving = {
    ArrowLeft: () => go.turn(-1),
    ArrowRight: () => go.turn(1),
    ArrowUp: () => go.rest(false),
    ArrowDown: () => go.rest(true),
    PageUp: () => go.stage(false),
    PageDown: () => go.stage(true),
    Home: () => go.toStart(),
    End: () => go.toEnd(),
  }[event.key];
  const other = event.shiftKey ? undefined : { " ": () => transport.toggle(), Escape: () => transport.clear() }[event.key];
  return moving ?? other ?? null;
}
