// A solve as the score needs it: every turn placed in time, seen by one reading of the hand, with the stage it belongs to.

import { stageInFull, stageWord } from "../page/words.mjs";
import { statesFrom } from "./cube.mjs";
import { holdOf } from "./frame.mjs";
import { gesturesOf } from "./gestures.mjs";
import { lastHold, readingsOf } from "./reading.mjs";

// A cube of the usual colours, for streams whose profile names none.
const USUAL_COLOURS = { U: "white", R: "red", F: "green", D: "yellow", L: "orange", B: "blue" };

// Without a clock turns are set evenly, this far apart, only so that they can be read and played.
const EVEN_MICROS = 300_000;

// Less likely ones would put a breath before half of the notes.
const LIKELIER_THAN_NOT = 0.5;

/**
 * Reads what the server sent into what is drawn. Times are microseconds from the first turn.
 *
 * @param name the reading that is wanted; the best there is if it is not one of the solve's
 */
export function readScore(shown, name = "hand") {
  const colours = shown.face_colours ?? USUAL_COLOURS;
  const readings = readingsOf(shown, colours);
  const reading = readings.find((one) => one.name === name) ?? readings[0];
  const timed = shown.clock !== "none" && shown.turns.every((turn) => typeof turn.at_us === "number");
  const stages = shown.stages.map((stage) => ({ ...stage, label: labelOf(stage, colours) }));
  const turns = shown.turns.map((turn, index) => ({
    index,
    at: timed ? turn.at_us : index * EVEN_MICROS,
    core: turn.core,
    ...reading.turns[index],
    repaired: turn.source === "repaired",
    stage: stages.find((stage) => stage.from <= index && index < stage.to) ?? null,
  }));
  const rests = timed ? shown.rests : [];
  const step = usualStep(turns);
  const byHand = reading.name !== "core";
  return {
    shown, timed, colours, stages, turns, rests, step, readings, reading,
    states: statesFrom(shown.start_facelets, shown.turns.map((turn) => turn.core)),
    gestures: gesturesOf(turns, reading.rotations, step),
    rotations: reading.rotations,
    regrips: byHand ? (shown.regrips ?? []).filter((one) => one.p >= LIKELIER_THAN_NOT) : [],
    slips: shown.slips ?? [],
    looking: shown.looking ?? [],
    usual: timed ? (shown.usual ?? null) : null,
    otherwise: otherwise(readings, reading),
    gaps: (shown.gaps ?? []).map((gap) => gapInTime(gap, turns, timed)),
    restAfter: new Map(rests.map((rest) => [rest.after_turn, rest])),
    end: turns.length === 0 ? 0 : turns.at(-1).at,
  };
}

/** The hold that is seen after so many turns: the one in which the next is made. */
export function holdAt(score, position) {
  return holdOf(score.turns[position]?.hold ?? lastHold(score.reading));
}

/** The letters of the cube as it is seen after so many turns. */
export const seenAt = (score, position) => holdAt(score, position).look(score.states[position]);

function usualStep(turns) {
  const steps = turns.slice(1).map((turn, index) => turn.at - turns[index].at).sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? 0;
}

/** The turns that what the solver said and what was inferred before read in different ways. */
function otherwise(readings, reading) {
  const other = readings.find((one) => one !== reading && one.name !== "core");
  if (!other || reading.name === "core") return new Set();
  return new Set(reading.turns.flatMap((turn, index) => (turn.word === other.turns[index].word ? [] : [index])));
}

function labelOf(stage, colours) {
  const faces = stage.faces ?? [];
  if (!stage.name.startsWith("pair")) return stageInFull(stage);
  // A pair is known by its colours; where its pieces lay is for the table.
  const slot = faces.length === 2 ? `, ${faces.map((face) => colours[face]).join("-")}` : "";
  return `${stageWord(stage.name)}${slot}${stage.case === "skip" ? " (skip)" : ""}`;
}

function gapInTime(gap, turns, timed) {
  const before = turns[gap.after_turn]?.at ?? 0;
  const after = turns[gap.after_turn + 1]?.at ?? before + EVEN_MICROS;
  return timed
    ? { ...gap, start: gap.start_us ?? before, end: gap.end_us ?? after }
    : { ...gap, start: before, end: after };
}

/** How many turns are done at a time. */
export function positionAt(score, micros) {
  let position = 0;
  while (position < score.turns.length && score.turns[position].at <= micros + 1) position++;
  return position;
}

/** The time at which a position is reached. */
export function timeOf(score, position) {
  return position === 0 ? 0 : score.turns[position - 1].at;
}
