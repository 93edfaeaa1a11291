// A solve as the score needs it: every turn placed in time, seen in the hold of the page, with the stage it belongs to.

import { statesFrom } from "./cube.mjs";
import { faceOfColour, holdWithDown } from "./frame.mjs";
import { stageInFull, stageWord } from "./words.mjs";

// A cube of the usual colours, for streams whose profile names none.
const USUAL_COLOURS = { U: "white", R: "red", F: "green", D: "yellow", L: "orange", B: "blue" };

// Without a clock turns are set evenly, this far apart, only so that they can be read and played.
const EVEN_MICROS = 300_000;

/** Reads what the server sent into what is drawn. Times are microseconds from the first turn. */
export function readScore(shown) {
  const colours = shown.face_colours ?? USUAL_COLOURS;
  const timed = shown.clock !== "none" && shown.turns.every((turn) => typeof turn.at_us === "number");
  const hold = holdWithDown(faceOfColour(shown.cross_colour, colours));
  const stages = shown.stages.map((stage) => ({ ...stage, label: labelOf(stage, colours) }));
  const turns = shown.turns.map((turn, index) => ({
    index,
    at: timed ? turn.at_us : index * EVEN_MICROS,
    core: turn.core,
    seen: hold.seenTurn(turn.core),
    repaired: turn.source === "repaired",
    stage: stages.find((stage) => stage.from <= index && index < stage.to) ?? null,
  }));
  const rests = timed ? shown.rests : [];
  const states = statesFrom(shown.start_facelets, shown.turns.map((turn) => turn.core));
  return {
    shown, timed, colours, hold, stages, turns, rests, states,
    gaps: (shown.gaps ?? []).map((gap) => gapInTime(gap, turns, timed)),
    restAfter: new Map(rests.map((rest) => [rest.after_turn, rest])),
    end: turns.length === 0 ? 0 : turns.at(-1).at,
  };
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
