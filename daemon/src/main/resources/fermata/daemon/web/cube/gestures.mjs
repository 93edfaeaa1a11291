// Turns as gestures of the hand. A cube reports quarters of outer layers: a half turn is heard as two of them in one go,
// a slice as the two layers beside it, at once. A gesture is what the hand made, over all the turns heard for it.

import { moveOf, quarters } from "./cube.mjs";

// Two quarters are one half turn within this multiple of the solve's usual step.
const IN_ONE_GO = 1.3;

/**
 * The gestures of turns [{index, at, core, word, hold, p, repaired, stage}], in order: [{first, last, from, until, word,
 * line: the layer's letter, kind, half, way: "up" clockwise, "down" counter-clockwise, null where nobody can tell, p,
 * repaired, turns}].
 */
export function gesturesOf(turns, rotations, usualStep) {
  const rotated = new Set(rotations.map((one) => one.before));
  const gestures = [];
  for (let at = 0; at < turns.length;) {
    const size = moveOf(turns[at].word).kind === "slice" ? sliceSize(turns, at) : 1;
    const gesture = gestureOf(turns.slice(at, at + size));
    const before = gestures.at(-1);
    if (before && !rotated.has(at) && makesHalf(before, gesture, usualStep)) gestures[gestures.length - 1] = halfOf(before, gesture);
    else gestures.push(gesture);
    at += size;
  }
  return gestures;
}

/** So many turns from here are one slice: until the two outer layers have turned as far as each other. */
function sliceSize(turns, from) {
  const turned = new Map();
  for (let at = from; at < Math.min(turns.length, from + 4); at++) {
    const { core, word } = turns[at];
    if (word[0] !== turns[from].word[0]) break;
    turned.set(core[0], (turned.get(core[0]) ?? 0) + (core[1] === "2" ? 2 : 1));
    const amounts = [...turned.values()];
    if (amounts.length === 2 && amounts[0] === amounts[1]) return at + 1 - from;
  }
  return 1;
}

function gestureOf(turns) {
  const first = turns[0];
  const { letter, kind } = moveOf(first.word);
  const felt = turns.reduce((sum, turn) => sum + (turn.core[1] === "2" ? 2 : 1), 0) / (kind === "slice" && turns.length > 1 ? 2 : 1);
  const half = felt === 2 || quarters(first.word) === 2;
  const told = quarters(first.word) === 2 ? null : first.word[1] === "'" ? "down" : "up";
  return {
    first: first.index, last: turns.at(-1).index, from: first.at, until: turns.at(-1).at, word: half ? `${letter}2` : first.word,
    line: kind === "wide" ? letter.toUpperCase() : letter, kind, half, way: told,
    p: turns.every((turn) => turn.p === null) ? null : Math.min(...turns.map((turn) => turn.p ?? 1)),
    repaired: turns.some((turn) => turn.repaired), turns,
  };
}

function makesHalf(before, next, usualStep) {
  return !before.half && !next.half && before.word === next.word && next.from - before.until <= usualStep * IN_ONE_GO
    && before.turns[0].stage === next.turns[0].stage;
}

function halfOf(before, next) {
  const turns = [...before.turns, ...next.turns];
  return {
    ...before, last: next.last, until: next.until, word: `${before.word[0]}2`, half: true, turns,
    p: before.p === null ? null : Math.min(before.p, next.p), repaired: before.repaired || next.repaired,
  };
}

/** Turns in the half-turn metric: a half turn is one, a slice two, a rotation none. */
export const turnsInHtm = (gestures) => gestures.reduce((sum, gesture) => sum + (gesture.kind === "slice" ? 2 : 1), 0);
