// The signs between and around the notes: rests, fermatas, gaps, slurs, key changes, breath marks, and the usual band.

import { holdAt } from "../cube/solve.mjs";
import { px, svg } from "../page/dom.mjs";
import { nearest, seconds, stageWord } from "../page/words.mjs";
import { breath, fermata, gap, keyChange, rest, slur, takenBack } from "../staff/marks.mjs";
import { MARGIN, within } from "./layout.mjs";
import { surety } from "./notes.mjs";
import { gapInWords, holdInWords, regripInWords, restInWords, rotationInWords, slipInWords } from "./score-words.mjs";

export function drawRests({ score, system, top, bottom }) {
  return score.rests.flatMap((one) => {
    const part = within(system, one.start_us, one.start_us + one.length_us);
    if (part === null) return [];
    const left = system.x(part.start) + (part.begins ? MARGIN.note : -MARGIN.note);
    const right = system.x(part.end) - (part.ends ? MARGIN.note : 0);
    const judged = one.fermata === true;
    // A rest that goes on in the next line has its sign where its middle is.
    const middle = one.start_us + one.length_us / 2;
    const sign = judged && middle >= system.from && middle < system.to ? [fermata(Math.max((left + right) / 2, system.left + 14), top - 9)] : [];
    if (right - left < 5) return sign;
    const tilted = score.rotations.some((rotation) => rotation.before === one.after_turn + 1);
    const mark = rest({ left, right, top, bottom, clear: tilted && part.ends ? 16 : 0 }, seconds(one.length_us));
    mark.classList.toggle("judged", judged);
    mark.classList.toggle("maybe", one.called === false);
    mark.setAttribute("data-says", restInWords(score, one));
    mark.append(...sign);
    return [mark];
  });
}

const LEAST_GAP = 8;

export function drawGaps({ score, system, top, bottom }) {
  return score.gaps.flatMap((one) => {
    const part = within(system, one.start, Math.max(one.end, one.start + 1));
    if (part === null) return [];
    const left = part.begins ? system.x(part.start) + MARGIN.note : system.left;
    const right = part.ends ? system.x(part.end) - MARGIN.note : system.right;
    // What a line's end leaves of a gap, or its beginning, is drawn only where it can be seen.
    if (right - left < LEAST_GAP && !(part.begins && part.ends)) return [];
    const middle = (one.start + one.end) / 2;
    const isNamedHere = (part.begins && part.ends) || (middle >= system.from && middle < system.to);
    const mark = gap(left, right, top - 4, bottom + 4, isNamedHere ? gapInWords(one) : "");
    mark.setAttribute("data-says", gapInWords(one));
    return [mark];
  });
}

/** One slur over what was turned without a rest. */
export function drawSlurs({ score, system, bottom }) {
  const broken = new Set([...score.restAfter.keys(), ...score.gaps.map((one) => one.after_turn)]);
  const slurs = [];
  let run = [];
  for (const turn of score.turns.slice(system.first, system.last)) {
    run.push(turn);
    if (broken.has(turn.index) || turn.index === system.last - 1) {
      if (run.length > 2) slurs.push(slur(system.x(run[0].at) - 3, system.x(run.at(-1).at) + 3, bottom + 20));
      run = [];
    }
  }
  return slurs;
}

/** Over the notes that were taken back, above their stems. */
export function drawSlips({ score, system, top }) {
  return score.slips.flatMap((one) => {
    const turns = score.turns.slice(Math.max(one.from, system.first), Math.min(one.to, system.last));
    if (turns.length === 0) return [];
    // A lone turn, as of a slip that a line's end divides, still shows its way back.
    const [from, to] = [system.x(turns[0].at), system.x(turns.at(-1).at)];
    const mark = takenBack(from, Math.max(to, from + 14), top - 24);
    mark.setAttribute("data-says", slipInWords(one));
    return [mark];
  });
}

/** Where the sign before a turn stands: close before its note, or in the midst where there is no room. */
function before({ score, system }, turn, distance) {
  const here = system.x(score.turns[turn].at);
  const last = turn === 0 || turn <= system.first ? system.left - 4 : system.x(score.turns[turn - 1].at);
  return here - Math.min(distance, (here - last) / 2);
}

const isHere = (system, turn) => turn >= Math.max(system.first, 1) && turn < system.last;

export function drawRotations(frame) {
  const { score, system, top, bottom } = frame;
  return score.rotations.filter((one) => isHere(system, one.before)).map((one) => {
    const mark = keyChange(before(frame, one.before, 17), top, bottom, one.word);
    mark.setAttribute("class", `key-change${surety(one.p)}`);
    mark.setAttribute("data-says", rotationInWords(score, one));
    return mark;
  });
}

export function drawRegrips(frame) {
  const { score, system, top } = frame;
  const rotated = new Set(score.rotations.map((one) => one.before));
  return score.regrips.filter((one) => isHere(system, one.before_turn)).map((one) => {
    // Where the cube is tilted as well, the breath stands before the key change.
    const mark = breath(before(frame, one.before_turn, rotated.has(one.before_turn) ? 30 : 15), top - 8);
    mark.setAttribute("class", `breath${surety(one.p)}`);
    mark.setAttribute("data-says", regripInWords(one));
    return mark;
  });
}

/** At the left of a system, over the names of the lines, the hold as a key: what is up, over what is in front. */
export function drawKey({ score, system, top }) {
  const [up, front] = holdAt(score, system.first).letters.split("").map((face) => score.colours[face]);
  const sticker = (colour, y) => [
    svg("rect", { class: "body", x: 2.5, y: px(y), width: 15, height: 15 }), svg("rect", { class: `sticker ${colour}`, x: 3.5, y: px(y + 1), width: 13, height: 13 }),
    svg("text", { class: `letter small ${colour}`, x: 10, y: px(y + 11.4), "text-anchor": "middle" }, colour[0].toUpperCase()),
  ];
  return svg("g", { class: "cube key", "data-says": `held ${holdInWords(score, system.first)}` }, sticker(up, top - 44), sticker(front, top - 30));
}

/**
 * Under each stage what it took, as a line from its start to its end, and under the line what it usually takes, as a
 * pale band: the middle half of this solver's earlier solves.
 */
export function drawUsual({ score, system, bottom }) {
  if (score.usual === null) return [];
  const y = bottom + 36;
  const parts = score.stages.flatMap((stage) => {
    const usual = score.usual.stages.find((one) => one.name === stage.name);
    if (!usual || stage.to === stage.from) return [];
    const band = within(system, stage.start_us + usual.low_us, stage.start_us + usual.high_us);
    const took = within(system, stage.start_us, stage.end_us);
    const says = `${stageWord(stage.name)}: ${seconds(stage.end_us - stage.start_us)} s, usually ${seconds(nearest(usual.low_us))} to ${seconds(nearest(usual.high_us))} s`;
    return [svg("g", { class: "usual", "data-says": says },
      band ? svg("rect", { class: "band", x: px(system.x(band.start)), y: px(y - 4), width: px(system.x(band.end) - system.x(band.start)), height: 8 }) : null,
      took ? svg("path", { class: "took-line", d: `M${px(system.x(took.start))} ${px(y)}H${px(system.x(took.end))}${took.ends ? `m0 -5v10` : ""}${took.begins ? `M${px(system.x(took.start))} ${px(y - 2)}v4` : ""}` }) : null)];
  });
  return parts;
}
