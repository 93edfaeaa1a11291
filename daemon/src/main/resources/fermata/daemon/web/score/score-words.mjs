// What stands at a place of the score, in words: for the line under the cursor, the slider's value, and signs pointed at.

import { holdAt } from "../cube/solve.mjs";
import { count, duration, nearest, percent, seconds, turnInWords } from "../page/words.mjs";

const SLICES = { M: ["left", "L"], E: ["down", "D"], S: ["front", "F"] };

const CAUSES = {
  "look-ahead": "what came next was not found", recognition: "the case was looked for", rotation: "the cube was tilted",
  regrip: "fingers changed", slip: "a turn was taken back", memory: "the sequence did not come", unexplained: "nothing tells why",
};

/** "wide right, quarter, clockwise" for r; "slice, half" for M2. */
export function moveInWords(word) {
  const slice = SLICES[word[0]];
  if (slice) return word[1] === "2" ? "slice, half" : `slice, quarter, with ${slice[0]} ${word[1] === "'" ? "counter-clockwise" : "clockwise"}`;
  const upper = word[0].toUpperCase() + word.slice(1);
  return word === upper ? turnInWords(word) : `wide ${turnInWords(upper)}`;
}

/** "83 % likely", or nothing for what was heard or said. */
export const likely = (p) => (typeof p === "number" && p < 1 ? `${percent(p)} likely` : null);

/** A rest with why it was: "a fermata of 0.84 s: ...". */
export function restInWords(score, rest) {
  const kind = rest.fermata === true ? "fermata" : "rest";
  const causes = (rest.causes ?? []).map((one) => `${CAUSES[one.cause] ?? one.cause} ${seconds(nearest(one.share_us))} s (${percent(one.p)})`);
  // A sentence of its own ends among others here.
  const sentence = lookedFor(score, rest)?.sentence?.replace(/\.$/, "");
  const why = [...causes, sentence].filter(Boolean);
  const doubt = rest.called === false ? `, ${likely(rest.p)}` : "";
  return `${kind} of ${duration(rest.length_us)}${doubt}${why.length > 0 ? `: ${why.join("; ")}` : ""}`;
}

function lookedFor(score, rest) {
  const next = score.turns[rest.after_turn + 1]?.stage;
  return next && next.from === rest.after_turn + 1 ? score.looking.find((one) => one.stage === next.name) : undefined;
}

/** Turns that were lost, in words. */
export const gapInWords = (gap) => (typeof gap.lost === "number" ? `${count(gap.lost, "turn")} lost` : "turns lost");

/** Turns that were taken back, in words. */
export const slipInWords = (slip) => `a slip: ${count(slip.to - slip.from, "turn")}, taken back`;

/** A change of fingers and a rotation, in words. */
export const regripInWords = (one) => ["the fingers change", likely(one.p)].filter(Boolean).join(", ");

export function rotationInWords(score, one) {
  return [`the cube is tilted ${one.word}`, likely(one.p), `then ${holdInWords(score, one.before)}`].filter(Boolean).join(", ");
}

/** "yellow up, green in front". */
export function holdInWords(score, position) {
  const [up, front] = holdAt(score, position).letters;
  return `${score.colours[up]} up, ${score.colours[front]} in front`;
}

/** A gesture in words, with its word, its doubt and its repair. */
export function gestureInWords(gesture) {
  return [
    gesture.word, moveInWords(gesture.word), likely(gesture.p),
    gesture.repaired ? "lost on the air, repaired" : null,
  ].filter(Boolean).join(", ");
}

/** The place in words: {title: "Turn 14 of 61", detail}. */
export function momentInWords(score, position) {
  const total = score.turns.length;
  if (position === 0) return { title: `Before the first of ${count(total, "turn")}`, detail: `held ${holdInWords(score, 0)}` };
  const turn = score.turns[position - 1];
  const next = { rest: score.restAfter.get(turn.index), gap: score.gaps.find((one) => one.after_turn === turn.index),
    regrip: score.regrips.find((one) => one.before_turn === position), rotation: score.rotations.find((one) => one.before === position) };
  const details = [
    turn.word, moveInWords(turn.word), likely(turn.p),
    score.timed ? `${seconds(turn.at)} s` : null,
    turn.stage?.label,
    score.slips.some((slip) => slip.from <= turn.index && turn.index < slip.to) ? "taken back" : null,
    turn.repaired ? "repaired from what the cube repeated" : null,
    score.otherwise.has(turn.index) ? "read otherwise by the other reading" : null,
    next.rest ? `then a ${restInWords(score, next.rest)}` : null,
    next.gap ? `then ${gapInWords(next.gap)}` : null,
    next.regrip ? `then ${regripInWords(next.regrip)}` : null,
    next.rotation ? `then ${rotationInWords(score, next.rotation)}` : null,
  ];
  return { title: `Turn ${position} of ${total}`, detail: details.filter(Boolean).join(", ") };
}

/** The slider's value in words. */
export function spoken(score, position) {
  const { title, detail } = momentInWords(score, position);
  return detail ? `${title}, ${detail}` : title;
}
