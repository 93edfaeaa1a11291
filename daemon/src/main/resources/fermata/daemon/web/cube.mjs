// The 54 stickers of a cube and what turns do to them, derived from where each sticker sits.
//
// Sticker 9 * face + 3 * row + column, faces U R F D L B, rows as seen from outside: U with B at its top, D with F at its
// top, the others with U at theirs. Axes: x right, y up, z towards the solver.

export const FACES = ["U", "R", "F", "D", "L", "B"];
export const SOLVED = FACES.map((face) => face.repeat(9)).join("");

export const NORMALS = { U: [0, 1, 0], R: [1, 0, 0], F: [0, 0, 1], D: [0, -1, 0], L: [-1, 0, 0], B: [0, 0, -1] };

// From a face's middle, which way its columns and its rows run.
const RIGHTWARDS = { U: [1, 0, 0], R: [0, 0, -1], F: [1, 0, 0], D: [1, 0, 0], L: [0, 0, 1], B: [-1, 0, 0] };
const DOWNWARDS = { U: [0, 0, 1], R: [0, -1, 0], F: [0, -1, 0], D: [0, 0, -1], L: [0, -1, 0], B: [0, -1, 0] };

export const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const plus = (a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const times = (a, k) => [a[0] * k, a[1] * k, a[2] * k];

/** v turned clockwise, as seen at the tip of the unit vector axis, by this angle in radians. */
export function turnedAbout(v, axis, angle) {
  const along = times(axis, dot(v, axis));
  const across = plus(v, times(along, -1));
  return plus(along, plus(times(across, Math.cos(angle)), times(cross(v, axis), Math.sin(angle))));
}

/** The stickers: {face, at: the cubie's place, normal, right, down}. */
export const STICKERS = FACES.flatMap((face) =>
  Array.from({ length: 9 }, (_, spot) => ({
    face,
    normal: NORMALS[face],
    right: RIGHTWARDS[face],
    down: DOWNWARDS[face],
    at: plus(NORMALS[face], plus(times(RIGHTWARDS[face], (spot % 3) - 1), times(DOWNWARDS[face], Math.floor(spot / 3) - 1))),
  })),
);

const key = (at, normal) => `${at.map(Math.round)}|${normal.map(Math.round)}`;
const NUMBER_AT = new Map(STICKERS.map((sticker, number) => [key(sticker.at, sticker.normal), number]));

/** Whether a sticker moves when this face turns. */
export const movesWith = (sticker, face) => dot(sticker.at, NORMALS[face]) === 1;

/** For each place, the place whose sticker comes to it when the stickers chosen turn a quarter clockwise about a face. */
function sources(face, chosen) {
  const from = STICKERS.map((_, number) => number);
  STICKERS.forEach((sticker, number) => {
    if (!chosen(sticker)) return;
    const turn = (v) => turnedAbout(v, NORMALS[face], Math.PI / 2);
    from[NUMBER_AT.get(key(turn(sticker.at), turn(sticker.normal)))] = number;
  });
  return from;
}

const QUARTER = Object.fromEntries(FACES.map((face) => [face, sources(face, (sticker) => movesWith(sticker, face))]));
const WHOLE = Object.fromEntries(FACES.map((face) => [face, sources(face, () => true)]));

const permute = (from, letters) => from.map((place) => letters[place]).join("");

/** Clockwise quarters of a turn in WCA notation: 1, 2 or 3. */
export const quarters = (turn) => (turn[1] === "2" ? 2 : turn[1] === "'" ? 3 : 1);

/** The letters after one more turn, such as R, R' or R2. */
function apply(letters, turn) {
  let after = letters;
  for (let quarter = 0; quarter < quarters(turn); quarter++) after = permute(QUARTER[turn[0]], after);
  return after;
}

/** All states of a solve: the one before the first turn, then the one after each turn. */
export function statesFrom(start, turns) {
  const states = [start];
  for (const turn of turns) states.push(apply(states.at(-1), turn));
  return states;
}

/** The letters when the whole cube is rotated clockwise about a face; centres move, letters keep naming colours. */
export function rotate(letters, face, quarterCount) {
  let after = letters;
  for (let quarter = 0; quarter < quarterCount; quarter++) after = permute(WHOLE[face], after);
  return after;
}
