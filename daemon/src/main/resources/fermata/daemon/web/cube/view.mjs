// A cube drawn from its letters: three faces as one sees them, the three hidden ones unfolded beside.

import { px, svg } from "../page/dom.mjs";
import { FACES, NORMALS, STICKERS, cross, dot, moveOf, movesWith, plus, times, turnedAbout } from "./cube.mjs";

// Seen from the right, above and in front; along this line nothing is drawn shorter than it is on another face.
const UP = [-0.35, 0.82, -0.453];
const RIGHT = [0.792, 0, -0.611];
const EYE = cross(RIGHT, UP);

const UNIT = 30;
const CENTRE = { x: 66, y: 75 };
const FLAT = 17;
const BESIDE = [
  { face: "L", name: "left", x: 152, y: 32 },
  { face: "B", name: "back", x: 212, y: 32 },
  { face: "D", name: "below", x: 272, y: 32 },
];
const MIDDLE = 4;

/**
 * Makes an empty picture; draw(letters, colours, turning) fills it. Letters name core faces, colours map them to names;
 * turning is null or a move that is under way: {word, share: of its way, 0 to 1}.
 */
export function cubeView() {
  const picture = svg("svg", { class: "cube", viewBox: "0 0 326 150", "aria-hidden": "true" });
  const solid = svg("g");
  const flat = svg("g");
  picture.append(solid, flat);
  return {
    picture,
    draw(letters, colours, turning = null) {
      solid.replaceChildren(...drawSolid(letters, colours, turning));
      flat.replaceChildren(...drawFlat(letters, colours));
    },
  };
}

const project = (v) => [CENTRE.x + UNIT * dot(v, RIGHT), CENTRE.y - UNIT * dot(v, UP)];

function drawSolid(letters, colours, turning) {
  if (turning === null) return slab(letters, colours, [1, 0, -1], "U", (v) => v);
  const { face, layers, quarters } = moveOf(turning.word);
  const angle = turning.share * (quarters === 3 ? -1 : quarters) * (Math.PI / 2);
  const moved = (v) => turnedAbout(v, NORMALS[face], angle);
  const slabs = slabsOf(layers).map((one) => ({ one, picture: slab(letters, colours, one, face, one.every((layer) => layers.includes(layer)) ? moved : (v) => v) }));
  // The parts are boxes side by side along one axis, so drawing those towards the eye last is always right.
  const near = dot(NORMALS[face], EYE) > 0 ? 1 : -1;
  return slabs.sort((a, b) => (a.one[0] - b.one[0]) * near).flatMap(({ picture }) => picture);
}

/** The three layers of an axis as boxes that move as one: [[1], [0, -1]] when only the outer one turns. */
function slabsOf(turning) {
  const slabs = [];
  for (const layer of [1, 0, -1]) {
    const last = slabs.at(-1);
    if (last && turning.includes(last[0]) === turning.includes(layer)) last.push(layer);
    else slabs.push([layer]);
  }
  return slabs;
}

/** The stickers of one box that look towards the eye, on black; with the black inside where the cube is opened. */
function slab(letters, colours, layers, face, moved) {
  const parts = [];
  if (layers[0] < 1) parts.push(inside(face, moved, layers[0] + 0.5, 1));
  if (layers.at(-1) > -1) parts.push(inside(face, moved, layers.at(-1) - 0.5, -1));
  STICKERS.forEach((sticker, number) => {
    if (!movesWith(sticker, face, layers) || dot(moved(sticker.normal), EYE) <= 0.001) return;
    const middle = plus(sticker.at, times(sticker.normal, 0.5));
    const corner = (right, down, size) => project(moved(plus(middle, plus(times(sticker.right, right * size), times(sticker.down, down * size)))));
    const quad = (size) => [[-1, -1], [1, -1], [1, 1], [-1, 1]].map(([right, down]) => corner(right, down, size).map(px).join(" ")).join("L");
    const colour = colours[letters[number]];
    parts.push(svg("path", { class: "body", d: `M${quad(0.52)}Z` }), svg("path", { class: `sticker ${colour}`, d: `M${quad(0.43)}Z` }));
    parts.push(letterOn(colour, corner(0, 0, 0), corner(1, 0, 0.5), corner(0, 1, 0.5)));
  });
  return parts;
}

function inside(face, moved, height, side) {
  const normal = NORMALS[face];
  const across = STICKERS[9 * FACES.indexOf(face)].right;
  const along = STICKERS[9 * FACES.indexOf(face)].down;
  if (dot(moved(normal), EYE) * side <= 0) return svg("g");
  const at = (right, down) => project(moved(plus(times(normal, height), plus(times(across, right * 1.5), times(along, down * 1.5))))).map(px).join(" ");
  return svg("path", { class: "body", d: `M${at(-1, -1)}L${at(1, -1)}L${at(1, 1)}L${at(-1, 1)}Z` });
}

function letterOn(colour, [x, y], [rightX, rightY], [downX, downY]) {
  const scale = 1 / (UNIT / 2);
  const matrix = [(rightX - x) * scale, (rightY - y) * scale, (downX - x) * scale, (downY - y) * scale, x, y].map((number) => number.toFixed(3)).join(" ");
  return svg("text", { class: `letter ${colour}`, transform: `matrix(${matrix})`, y: 6, "text-anchor": "middle" }, colour[0].toUpperCase());
}

function drawFlat(letters, colours) {
  return BESIDE.map(({ face, name, x, y }) => {
    const group = svg("g", { transform: `translate(${x} ${y})` }, svg("rect", { class: "body", x: -1.5, y: -1.5, width: 3 * FLAT + 3, height: 3 * FLAT + 3, rx: 2 }));
    const first = 9 * FACES.indexOf(face);
    for (let spot = 0; spot < 9; spot++) {
      const colour = colours[letters[first + spot]];
      const at = { x: (spot % 3) * FLAT, y: Math.floor(spot / 3) * FLAT };
      group.append(
        svg("rect", { class: `sticker ${colour}`, x: at.x + 0.9, y: at.y + 0.9, width: FLAT - 1.8, height: FLAT - 1.8, rx: 1 }),
        svg("text", { class: `letter small ${colour}`, x: at.x + FLAT / 2, y: at.y + FLAT / 2 + 4.1, "text-anchor": "middle" }, colour[0].toUpperCase()),
      );
    }
    group.append(svg("text", { class: "caption", x: 1.5 * FLAT, y: 3 * FLAT + 18, "text-anchor": "middle" }, name));
    return group;
  });
}

/** The colours of the six middles in words, for those who do not see the picture: "white up, green front". */
export function centresInWords(letters, colours) {
  const middle = (face) => colours[letters[9 * FACES.indexOf(face) + MIDDLE]];
  return `${middle("U")} up, ${middle("F")} front, ${middle("R")} right`;
}
