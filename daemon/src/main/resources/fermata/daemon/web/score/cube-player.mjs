// The cube at the cursor, as the solver holds it: it turns with each step, tilts where the hand tilted it, and stands in
// the midst of a slice while only one of the two layers beside it was heard.

import { after } from "../cube/cube.mjs";
import { seenAt } from "../cube/solve.mjs";
import { reducedMotion } from "../page/dom.mjs";

/** Shows each position asked for; one step on or back is turned in sight unless less motion is asked for. */
export function cubePlayer(score, view) {
  const turnMillis = Number(getComputedStyle(document.documentElement).getPropertyValue("--turn-ms"));
  let shown = null;
  let running = null;
  return (position) => {
    if (position === shown) return;
    const step = shown === null ? 0 : position - shown;
    shown = position;
    cancelAnimationFrame(running);
    const still = stillAt(score, position);
    if (Math.abs(step) !== 1 || reducedMotion.matches) {
      view.draw(still.letters, score.colours, still.turning);
      return;
    }
    const phases = phasesOf(score, step > 0 ? position - 1 : position);
    const start = performance.now();
    const frame = (now) => {
      const done = Math.max(0, now - start) / turnMillis;
      if (done >= phases.length) {
        view.draw(still.letters, score.colours, still.turning);
        return;
      }
      const at = step > 0 ? done : phases.length - done;
      const { letters, word, from, to } = phases[Math.min(phases.length - 1, Math.floor(at))];
      view.draw(letters, score.colours, { word, share: from + (to - from) * (at - Math.min(phases.length - 1, Math.floor(at))) });
      running = requestAnimationFrame(frame);
    };
    running = requestAnimationFrame(frame);
  };
}

const gestureAt = (score, turn) => score.gestures.find((one) => one.first <= turn && turn <= one.last);

/** The slice that a turn is a part of, or null. */
function sliceAt(score, turn) {
  const gesture = gestureAt(score, turn);
  return gesture?.kind === "slice" && gesture.last > gesture.first ? gesture : null;
}

/** What stands still at a position: {letters, turning}; turning only in the midst of a slice. */
function stillAt(score, position) {
  const slice = sliceAt(score, position);
  if (slice === null || position === slice.first) return { letters: seenAt(score, position), turning: null };
  return { letters: seenAt(score, slice.first), turning: { word: slice.word, share: (position - slice.first) / (slice.last + 1 - slice.first) } };
}

/** What is seen from a position to the next: the turn, then the rotations of the whole cube before the turn after it. */
function phasesOf(score, position) {
  const slice = sliceAt(score, position);
  const phases = [];
  let letters = seenAt(score, slice?.first ?? position);
  if (slice) {
    const share = (at) => (at - slice.first) / (slice.last + 1 - slice.first);
    phases.push({ letters, word: slice.word, from: share(position), to: share(position + 1) });
    if (position < slice.last) return phases;
    letters = after(letters, slice.word);
  } else {
    const { word } = score.turns[position];
    phases.push({ letters, word, from: 0, to: 1 });
    letters = after(letters, word);
  }
  for (const word of rotationBefore(score, position + 1)) {
    phases.push({ letters, word, from: 0, to: 1 });
    letters = after(letters, word);
  }
  return phases;
}

const rotationBefore = (score, turn) => score.rotations.find((one) => one.before === turn)?.word.split(" ") ?? [];
