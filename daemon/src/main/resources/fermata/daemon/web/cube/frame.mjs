// The ways in which a cube can be held: 24 holds, each named by the core faces that are up and in front.

import { FACES, SOLVED, after } from "./cube.mjs";

const MIDDLE = 4;
const centre = (letters, face) => letters[9 * FACES.indexOf(face) + MIDDLE];

/** The letters of a hold, "UF" for the hold of the centres, from a whole cube that was rotated. */
const holdLetters = (rotated) => centre(rotated, "U") + centre(rotated, "F");

// Every hold as the rotations that lead to it from the hold of the centres: bring a face up, then another in front.
const WAYS = new Map(["", "x", "x2", "x'", "z", "z'"].flatMap((up) => ["", "y", "y2", "y'"].map((front) => {
  const way = [up, front].filter(Boolean);
  return [holdLetters(way.reduce(after, SOLVED)), way];
})));

const made = new Map();

/** A hold by its letters: {letters, look(letters of the centres' frame) -> letters as seen, seenTurn(core turn) -> as seen}. */
export function holdOf(letters) {
  if (!made.has(letters)) made.set(letters, makeHold(letters, WAYS.get(letters)));
  return made.get(letters);
}

function makeHold(letters, way) {
  const look = (of) => way.reduce(after, of);
  const seen = look(SOLVED);
  // After the rotations a centre's letter names the core face that is now at that place.
  const placeOf = Object.fromEntries(FACES.map((face) => [centre(seen, face), face]));
  return { letters, look, seenTurn: (turn) => placeOf[turn[0]] + turn.slice(1) };
}

/** The hold after a move or rotation that was begun in a hold: only wides, slices and rotations change it. */
export const holdAfter = (letters, word) => holdLetters(after(holdOf(letters).look(SOLVED), word));

// The least rotation that brings a core face down.
const HOLD_WITH_DOWN = { D: "UF", U: "DF", F: "BU", B: "FD", R: "LF", L: "RF" };

/** The hold with a core face down, for as long as nothing is known of the hand. */
export const holdWithDown = (coreFace) => holdOf(HOLD_WITH_DOWN[coreFace]);

/** The core face that carries a colour; D if no face does. */
export function faceOfColour(colour, faceColours) {
  return FACES.find((face) => faceColours[face] === colour) ?? "D";
}
