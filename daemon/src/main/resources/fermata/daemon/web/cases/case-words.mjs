// Cases in words: what a picture shows, for those who do not see it, and the names that people use.

import { count, stageWord } from "../page/words.mjs";
import { arrowsOf } from "./pictures.mjs";

const EDGE_PLACES = { UF: "in front on top", UR: "at the right on top", UB: "at the back on top", UL: "at the left on top", FR: "in its own place", FL: "in the front left place", BL: "in the back left place", BR: "in the back right place" };
const CORNER_PLACES = { DFR: "in its own place", DLF: "in the front left place", DBL: "in the back left place", DRB: "in the back right place" };
const FACES = { U: "up", R: "to the right", F: "to the front", D: "down", L: "to the left", B: "to the back" };

/** The name of a case as people say it: "OLL 27", "PLL Jb"; a pair's is its own, other stages' cases carry theirs. */
export function caseName(stage, name) {
  if (stage === "pair") return name;
  return `${{ orient: "OLL", permute: "PLL" }[stage] ?? stageWord(stage)} ${name}`;
}

/** What a case's picture shows; nothing for a case without one. */
export function caseInWords(stage, name, letters) {
  if (letters === null) return "";
  if (stage === "orient") return orientationInWords(letters);
  return stage === "permute" ? permutationInWords(letters) : pairInWords(name);
}

function orientationInWords(letters) {
  const oriented = (places) => places.filter((place) => letters[place] === "U").length;
  return `${count(oriented([1, 3, 5, 7]), "edge")} and ${count(oriented([0, 2, 6, 8]), "corner")} of the top already up`;
}

function permutationInWords(letters) {
  const arrows = arrowsOf(letters);
  const moving = (isCorner) => arrows.filter(([from]) => (from % 2 === 0) === isCorner);
  const said = (ways, thing) => {
    if (ways.length === 0) return null;
    const swaps = ways.filter(([from, to]) => ways.some(([a, b]) => a === to && b === from)).length / 2;
    if (2 * swaps === ways.length) return swaps === 1 ? `two ${thing}s change places` : `${thing}s change places in two pairs`;
    return `${ways.length === 3 ? "three" : "four"} ${thing}s go round`;
  };
  return [said(moving(true), "corner"), said(moving(false), "edge")].filter(Boolean).join(", ");
}

/** "corner above its place, cross colour to the right; edge at the back on top, front colour up". */
function pairInWords(name) {
  const [corner, edge] = name.split("-");
  const sorted = (letters) => [...letters].sort().join("");
  const at = (places, letters) => places[Object.keys(places).find((place) => sorted(place) === sorted(letters))];
  const cornerAt = corner.includes("U") ? "above its place" : at(CORNER_PLACES, corner);
  const edgeAt = at(EDGE_PLACES, edge);
  return `corner ${cornerAt}, cross colour ${FACES[corner[0]]}; edge ${edgeAt}, front colour ${FACES[edge[0]]}`;
}
