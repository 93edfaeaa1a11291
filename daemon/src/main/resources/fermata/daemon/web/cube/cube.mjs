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

/** Which whole layers beside each other turn about a face's axis: 1 is the face's own, 0 the middle, -1 the one beyond. */
const LAYERS_OF_KIND = { layer: [1], wide: [1, 0], slice: [0], rotation: [1, 0, -1] };

// A slice turns with one face, a rotation with another (WCA Regulations, Article 12).
const FOLLOWS = { M: "L", E: "D", S: "F", x: "R", y: "U", z: "F" };

/** A written move: {letter, kind: layer, wide, slice or rotation, face about which it turns, layers, quarters: 1 to 3}. */
export function moveOf(word) {
  const letter = word[0];
  const kind = "MES".includes(letter) ? "slice" : "xyz".includes(letter) ? "rotation" : letter === letter.toLowerCase() ? "wide" : "layer";
  return { letter, kind, face: FOLLOWS[letter] ?? letter.toUpperCase(), layers: LAYERS_OF_KIND[kind], quarters: quarters(word) };
}

/** Whether a sticker moves when these layers about a face turn. */
export const movesWith = (sticker, face, layers) => layers.includes(Math.round(dot(sticker.at, NORMALS[face])));

/** For each place, the place whose sticker comes to it when layers turn a quarter clockwise about a face. */
function sources(face, layers) {
  const from = STICKERS.map((_, number) => number);
  STICKERS.forEach((sticker, number) => {
    if (!movesWith(sticker, face, layers)) return;
    const turn = (v) => turnedAbout(v, NORMALS[face], Math.PI / 2);
    from[NUMBER_AT.get(key(turn(sticker.at), turn(sticker.normal)))] = number;
  });
  return from;
}

const known = new Map();

/** The same, worked out once: few of a cube's layers turn on any page, and a page must open at once. */
function quarterOf(face, layers) {
  const name = face + layers;
  if (!known.has(name)) known.set(name, sources(face, layers));
  return known.get(name);
}

const permute = (from, letters) => from.map((place) => letters[place]).join("");

/** Clockwise quarters of a move in WCA notation: 1, 2 or 3. */
export const quarters = (word) => (word[1] === "2" ? 2 : word[1] === "'" ? 3 : 1);

/** The letters after one more move, such as R, r', M2 or z. After a rotation centres have moved; letters still name colours. */
export function after(letters, word) {
  const { face, layers, quarters: count } = moveOf(word);
  let turned = letters;
  for (let quarter = 0; quarter < count; quarter++) turned = permute(quarterOf(face, layers), turned);
  return turned;
}

/** All states of a solve: the one before the first turn, then the one after each turn. */
export function statesFrom(start, turns) {
  const states = [start];
  for (const turn of turns) states.push(after(states.at(-1), turn));
  return states;
}
