// What a case looks like, engraved: ink where the last layer's colour is, arrows where pieces go, and for a pair its two
// pieces seen from their own corner of the cube. Shapes tell everything; no colour does.

import { FACES, STICKERS, after, dot, plus, times } from "../cube/cube.mjs";
import { px, svg } from "../page/dom.mjs";

const FLAT = 24;
const MARGIN = 14;
const PLAN = 3 * FLAT + 2 * MARGIN;
const STRIP = 5;

// The sides of the top as seen from above: letters of their top rows, and where on the plan each letter's strip lies.
const SIDES = [
  { face: "B", places: [2, 1, 0], at: (spot) => [spot * FLAT, -STRIP - 3, FLAT, STRIP] },
  { face: "F", places: [0, 1, 2], at: (spot) => [spot * FLAT, 3 * FLAT + 3, FLAT, STRIP] },
  { face: "L", places: [0, 1, 2], at: (spot) => [-STRIP - 3, spot * FLAT, STRIP, FLAT] },
  { face: "R", places: [2, 1, 0], at: (spot) => [3 * FLAT + 3, spot * FLAT, STRIP, FLAT] },
];

/** The picture of a case; `letters` as in the JSON's `picture`, `title` says the same in words. */
export function casePicture(stage, letters, title) {
  const drawn = stage === "orient" ? orientation(letters) : stage === "permute" ? permutation(letters) : pair(letters);
  drawn.prepend(svg("title", {}, title));
  return drawn;
}

const plan = () => svg("svg", { class: "case-picture", viewBox: `${-MARGIN} ${-MARGIN} ${PLAN} ${PLAN}`, role: "img" });
const onFace = (letters, face, place) => letters[9 * FACES.indexOf(face) + place];

function grid(side) {
  const end = 3 * side;
  return [svg("rect", { class: "frame", x: 0, y: 0, width: end, height: end }),
    svg("path", { class: "hair", d: `M${side} 0V${end}M${2 * side} 0V${end}M0 ${side}H${end}M0 ${2 * side}H${end}` })];
}

function orientation(letters) {
  const drawn = plan();
  for (let place = 0; place < 9; place++) {
    if (onFace(letters, "U", place) === "U") drawn.append(svg("rect", { class: "ink", x: (place % 3) * FLAT, y: Math.floor(place / 3) * FLAT, width: FLAT, height: FLAT }));
  }
  for (const { face, places, at } of SIDES) {
    places.forEach((place, spot) => {
      if (onFace(letters, face, place) !== "U") return;
      const [x, y, width, height] = at(spot);
      drawn.append(svg("rect", { class: "ink", x: x + (width > height ? 2 : 0), y: y + (height > width ? 2 : 0), width: width > height ? width - 4 : width, height: height > width ? height - 4 : height }));
    });
  }
  drawn.append(...grid(FLAT));
  return drawn;
}

// The pieces of the top: the square each is on, and where its side stickers are.
const TOP = [
  { square: 8, sides: ["F2", "R0"] }, { square: 6, sides: ["F0", "L2"] }, { square: 0, sides: ["L0", "B2"] }, { square: 2, sides: ["B0", "R2"] },
  { square: 7, sides: ["F1"] }, { square: 3, sides: ["L1"] }, { square: 1, sides: ["B1"] }, { square: 5, sides: ["R1"] },
];

/** Where each piece of the top goes: pairs of squares [from, to], those that stay left out. */
export function arrowsOf(letters) {
  const colours = (piece) => piece.sides.map((side) => onFace(letters, side[0], Number(side[1])));
  return TOP.map((piece) => {
    const wanted = colours(piece).sort().join("");
    const home = TOP.find((place) => place.sides.map((side) => side[0]).sort().join("") === wanted);
    return [piece.square, home.square];
  }).filter(([from, to]) => from !== to);
}

function permutation(letters) {
  const drawn = plan();
  drawn.append(...grid(FLAT));
  const arrows = arrowsOf(letters);
  const middle = (square) => [(square % 3 + 0.5) * FLAT, (Math.floor(square / 3) + 0.5) * FLAT];
  for (const [from, to] of arrows) {
    const swaps = arrows.some(([a, b]) => a === to && b === from);
    if (swaps && from > to) continue;
    drawn.append(...arrow(middle(from), middle(to), swaps));
  }
  return drawn;
}

function arrow([x1, y1], [x2, y2], bothWays) {
  const length = Math.hypot(x2 - x1, y2 - y1);
  const [ux, uy] = [(x2 - x1) / length, (y2 - y1) / length];
  const end = [x2 - ux * 2.5, y2 - uy * 2.5];
  const begin = [x1 + ux * 2.5, y1 + uy * 2.5];
  const parts = [svg("path", { class: "way", d: `M${begin.map(px).join(" ")}L${end.map(px).join(" ")}` }), tip(end, ux, uy)];
  return bothWays ? [...parts, tip(begin, -ux, -uy)] : parts;
}

function tip([x, y], ux, uy) {
  const back = (along, across) => `${px(x - ux * along - uy * across)} ${px(y - uy * along + ux * across)}`;
  return svg("path", { class: "tip", d: `M${px(x + ux * 1.5)} ${px(y + uy * 1.5)}L${back(7, 3.6)}L${back(5, 0)}L${back(7, -3.6)}Z` });
}

// A pair: the cube stands on its lower tip with the pair's own edge towards the eye.
const RIGHT = [0.7071, 0, -0.7071];
const UP = [-0.3536, 0.866, -0.3536];
const UNIT = 14;
const SEEN = ["U", "F", "R"];

function pair(letters) {
  const seen = [letters, ...["y", "y2", "y'"].map((turn) => after(letters, turn))].find(ownPlace);
  // After a turn of the cube the letter of a centre says which face that is; the pair's colours are those two.
  const front = onFace(seen, "F", 4);
  const right = onFace(seen, "R", 4);
  // A sticker beneath reaches 51 from the middle.
  const drawn = svg("svg", { class: "case-picture", viewBox: "-52 -50 104 104", role: "img" });
  const hidden = STICKERS.map((sticker, number) => ({ sticker, number })).filter(({ sticker, number }) => !SEEN.includes(sticker.face) && isOfPair(seen, number));
  for (const { sticker, number } of hidden) drawn.append(...mirrored(sticker, markOf(seen[number], front, right)));
  STICKERS.forEach((sticker, number) => {
    if (!SEEN.includes(sticker.face)) return;
    const isCentre = number % 9 === 4 && sticker.face !== "U";
    const isMarked = isCentre || isOfPair(seen, number);
    drawn.append(...cell(sticker, 0, isMarked ? markOf(seen[number], front, right) : "blank"));
  });
  drawn.append(outline());
  for (const [face, name, x] of [["F", front, -36], ["R", right, 36]]) drawn.append(svg("text", { class: "side", x, y: 41, "text-anchor": "middle", "data-face": face }, name));
  return drawn;
}

/** Whether the pair belongs between F and R: the two side colours that show on pieces other than the cross. */
function ownPlace(letters) {
  const wanted = new Set([...letters].filter((letter, number) => isOfPair(letters, number) && letter !== "D"));
  return wanted.has(onFace(letters, "F", 4)) && wanted.has(onFace(letters, "R", 4));
}

/** Whether the sticker is one of the pair's: a pair is never in the places of the cross. */
function isOfPair(letters, number) {
  const face = FACES[Math.floor(number / 9)];
  const place = number % 9;
  const isCross = face === "D" ? place % 2 === 1 : face !== "U" && place === 7;
  return letters[number] !== "." && place !== 4 && !isCross;
}

const markOf = (letter, front, right) => (letter === "D" ? "cross" : letter === front ? "front" : letter === right ? "right" : "blank");

const project = (v) => [UNIT * dot(v, RIGHT), -UNIT * dot(v, UP)];

function cell(sticker, away, mark) {
  const middle = plus(sticker.at, times(sticker.normal, 0.5 + away));
  const at = (right, down) => project(plus(middle, plus(times(sticker.right, right), times(sticker.down, down))));
  const point = (right, down) => at(right, down).map(px).join(" ");
  const quad = (half) => `M${point(-half, -half)}L${point(half, -half)}L${point(half, half)}L${point(-half, half)}Z`;
  const parts = [svg("path", { class: mark === "cross" ? "ink cellular" : "cellular", d: quad(0.5) })];
  if (mark === "front") parts.push(svg("path", { class: "hatch", d: [-0.36, -0.18, 0, 0.18, 0.36].map((down) => `M${point(-0.5, down)}L${point(0.5, down)}`).join("") }));
  if (mark === "right") {
    const round = Array.from({ length: 24 }, (_, step) => point(0.24 * Math.cos((step * Math.PI) / 12), 0.24 * Math.sin((step * Math.PI) / 12)));
    parts.push(svg("path", { class: "ring", d: `M${round.join("L")}Z` }));
  }
  return parts;
}

/** A sticker that looks away, as a mirror behind or beneath the cube would show it. */
function mirrored(sticker, mark) {
  const [x, y] = project(sticker.at);
  const isDeep = Math.hypot(x, y) < UNIT * 1.3;
  return cell(sticker, isDeep ? 3.1 : 1.45, mark);
}

function outline() {
  const corner = (...at) => project(at).map(px).join(" ");
  const half = 1.5;
  return svg("g", {},
    svg("path", { class: "frame", d: `M${corner(-half, half, -half)}L${corner(half, half, -half)}L${corner(half, -half, -half)}L${corner(half, -half, half)}L${corner(-half, -half, half)}L${corner(-half, half, half)}Z` }),
    svg("path", { class: "frame", d: `M${corner(-half, half, half)}L${corner(half, half, half)}L${corner(half, half, -half)}M${corner(half, half, half)}L${corner(half, -half, half)}` }),
    // The place that is to be filled.
    svg("path", { class: "home", d: `M${corner(0.5, 0.5, half)}L${corner(half, 0.5, half)}L${corner(half, 0.5, 0.5)}L${corner(half, -half, 0.5)}L${corner(half, -half, half)}L${corner(0.5, -half, half)}Z` }));
}
