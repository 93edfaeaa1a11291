// What the hand did, by each reading there is: as inferred or as the solver said, as it had been inferred before that,
// and by the centres, where nothing is inferred at all.

import { count } from "../page/words.mjs";
import { faceOfColour, holdAfter, holdWithDown } from "./frame.mjs";

/**
 * The readings of a solve, the best first: [{name, title, says, turns: [{word, hold, p}], rotations: [{before, word, p}]}].
 * A hold stands for the moment before its turn; p is null where nothing is inferred.
 */
export function readingsOf(shown, colours) {
  const { holds } = shown;
  const core = byTheCentres(shown, colours);
  if (!shown.turns.every((turn) => turn.hand && turn.hold)) return [core];
  const own = {
    name: "hand", title: holds?.known === "stated" ? "as you said" : "by the hand", says: sureness(holds),
    turns: shown.turns.map(made), rotations: (shown.rotations ?? []).map(rotation),
  };
  const before = holds?.inferred
    ? [{ name: "before", title: "as inferred before", says: "What had been inferred before you said it. Ringed: read otherwise.",
        turns: holds.inferred.turns.map(made), rotations: holds.inferred.rotations.map(rotation) }]
    : [];
  return [own, ...before, core];
}

const made = (turn) => ({ word: turn.hand, hold: turn.hold, p: turn.p });
const rotation = (one) => ({ before: one.before_turn, word: one.rotation, p: one.p });

function sureness(holds) {
  if (holds?.known === "stated") return "The hand as you said it.";
  const taught = holds?.corrections ? `, taught by ${count(holds.corrections, "correction")} of yours` : "";
  return `The hand as inferred from the turns${taught}. Lighter signs are less sure.`;
}

function byTheCentres(shown, colours) {
  const hold = holdWithDown(faceOfColour(shown.cross_colour, colours));
  const held = shown.cross_colour ? `the ${shown.cross_colour} cross is held down` : "the cube is held as it was scrambled";
  return {
    name: "core", title: "by the centres",
    says: `Layers as the centres felt them, no tilt and no wide turn in them; ${held}.`,
    turns: shown.turns.map((turn) => ({ word: hold.seenTurn(turn.core), hold: hold.letters, p: null })), rotations: [],
  };
}

/** The hold after the last turn of a reading. */
export function lastHold(reading) {
  const last = reading.turns.at(-1);
  return last.p === null ? last.hold : holdAfter(last.hold, last.word);
}
