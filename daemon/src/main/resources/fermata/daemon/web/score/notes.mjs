// The notes: one for each gesture, on the line of its layer, as long as it took.
//
// A layer is a round head, a wide turn a square one, a slice a lozenge. A quarter turn is filled, a half turn hollow and,
// where it was heard as two quarters, drawn from the one to the other. A stem up is clockwise, down counter-clockwise.

import { px, svg } from "../page/dom.mjs";
import { gestureInWords } from "./score-words.mjs";

const STEM = 19;

/** Half the width of a head, by its kind. */
const REACH = { layer: 6, wide: 5, slice: 7 };

/** How sure a sign is, as a class: nothing from 0.9 on. */
export function surety(p) {
  if (typeof p !== "number" || p >= 0.9) return "";
  return p >= 0.6 ? " likely" : " doubtful";
}

/** A gesture's note, from x of its first turn to x of its last; `x(turn)` gives them. */
export function gestureNote(gesture, x, y, ringed = false) {
  const from = x(gesture.turns[0]);
  const until = x(gesture.turns.at(-1));
  // What turns together at once is one sign in the midst.
  const isLong = gesture.half && until - from > 2;
  const [left, right] = isLong ? [from, until] : [(from + until) / 2, (from + until) / 2];
  const mark = svg("g", {
    class: `note ${gesture.kind}${surety(gesture.p)}${gesture.repaired ? " repaired" : ""}`, "data-says": gestureInWords(gesture),
  });
  const reach = REACH[gesture.kind];
  if (gesture.way !== null) {
    const up = gesture.way === "up";
    const foot = gesture.kind === "slice" ? 0 : 0.7;
    const side = up ? right + reach - foot : left - reach + foot;
    mark.append(svg("path", { class: "stem", d: `M${px(side)} ${px(y + (up ? -1 : 1))}V${px(y + (up ? -STEM : STEM))}` }));
  }
  mark.append(head(gesture, left, right, y));
  if (gesture.repaired) mark.append(svg("path", { class: "bracket", d: `M${px(left - 8)} ${px(y - 6.5)}q-3.5 6.5 0 13M${px(right + 8)} ${px(y - 6.5)}q3.5 6.5 0 13` }));
  if (ringed) mark.append(svg("ellipse", { class: "ring", cx: px((left + right) / 2), cy: px(y), rx: px((right - left) / 2 + 11), ry: 10 }));
  for (const turn of gesture.turns) {
    const at = isLong ? x(turn) : left;
    mark.append(svg("circle", { class: "event", "data-turn": turn.index, cx: px(at), cy: px(y), r: 8 }));
  }
  return mark;
}

function head({ kind, half }, left, right, y) {
  const shape = half ? "head hollow" : "head";
  if (kind === "wide") return svg("path", { class: shape, d: `M${px(left - 4.6)} ${px(y - 4.6)}H${px(right + 4.6)}V${px(y + 4.6)}H${px(left - 4.6)}Z` });
  if (kind === "slice") {
    return svg("path", { class: shape, d: `M${px(left - 7)} ${px(y)}L${px(left)} ${px(y - 6)}H${px(right)}L${px(right + 7)} ${px(y)}L${px(right)} ${px(y + 6)}H${px(left)}Z` });
  }
  if (!half) return svg("ellipse", { class: shape, cx: px(left), cy: px(y), rx: 6, ry: 4.4, transform: `rotate(-20 ${px(left)} ${px(y)})` });
  return svg("path", { class: shape, d: `M${px(left - 1.6)} ${px(y - 4.3)}H${px(right + 1.6)}a4.3 4.3 0 0 1 0 8.6H${px(left - 1.6)}a4.3 4.3 0 0 1 0 -8.6Z` });
}
