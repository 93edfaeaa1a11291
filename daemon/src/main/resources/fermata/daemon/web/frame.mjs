// How the cube is held on the page. A stream names turns by the centres; until the hand's hold is known, the page holds
// the cube with the colour of the cross down, and says so.

import { FACES, SOLVED, rotate } from "./cube.mjs";

// The least rotation that brings a face down, as [face about which the whole cube turns, clockwise quarters].
const TO_BRING_DOWN = { D: ["U", 0], U: ["F", 2], F: ["R", 3], B: ["R", 1], R: ["F", 1], L: ["F", 3] };

/** A hold: {seenFace(core) -> face as seen, look(letters) -> letters as seen, down: the core face held down}. */
export function holdWithDown(coreFace) {
  const [about, quarterCount] = TO_BRING_DOWN[coreFace];
  const look = (letters) => rotate(letters, about, quarterCount);
  // After the rotation a centre's letter names the core face that is now at that place.
  const seen = look(SOLVED);
  const placeOf = Object.fromEntries(FACES.map((face, place) => [seen[9 * place + 4], face]));
  return { down: coreFace, look, seenFace: (core) => placeOf[core], seenTurn: (turn) => placeOf[turn[0]] + turn.slice(1) };
}

/** The core face that carries a colour; D if no face does. */
export function faceOfColour(colour, faceColours) {
  return FACES.find((face) => faceColours[face] === colour) ?? "D";
}
