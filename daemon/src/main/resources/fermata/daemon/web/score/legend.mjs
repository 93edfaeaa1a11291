// How to read the score: each sign beside its meaning; only those that this score may show.

import { moveOf } from "../cube/cube.mjs";
import { lettersChoice } from "../cube/letters.mjs";
import { html, svg } from "../page/dom.mjs";
import { breath, fermata, gap, keyChange, rest, slur, specimen, takenBack } from "../staff/marks.mjs";
import { gestureNote } from "./notes.mjs";

const note = (word, more = {}) => {
  const { kind } = moveOf(word);
  const turns = more.half ? [{ index: "", at: 20 }, { index: "", at: 33 }] : [{ index: "", at: more.at ?? 26 }];
  const way = word[1] === "'" ? "down" : "up";
  return gestureNote({ word, kind, half: false, way, p: null, repaired: false, turns, ...more }, (turn) => turn.at, 20);
};

export function legend(score) {
  const sign = (marks, words) => html("li", {}, specimen(...marks), html("span", {}, words));
  const byHand = score.reading.name !== "core";
  const has = (kind) => score.gestures.some((one) => one.kind === kind);
  return html("div", { class: "legend" },
    html("p", {}, score.timed ? "Time runs to the right; equal lengths are equal times." : "This solve has no clock, so turns stand evenly.",
      byHand ? " Each line is a layer as the hand sees it; the two stickers before a line are the key: the colour that is up, and the one in front." : " Each line is a layer as its centre felt it."),
    html("ul", {},
      sign([note("R")], "stem up: a quarter turn, clockwise"),
      sign([note("R'")], "stem down: counter-clockwise"),
      sign([note("R", { half: true })], "hollow: a half turn, as long as it took"),
      has("wide") ? sign([note("r")], "square: a wide turn") : null,
      has("slice") ? sign([note("M")], "lozenge: a slice") : null,
      byHand ? sign([keyChange(26, 10, 36, "")], "double rule: the cube is tilted; its word stands above") : null,
      score.regrips.length > 0 ? sign([breath(26, 24)], "a breath: the fingers change") : null,
      sign([rest({ left: 6, right: 46, top: 6, bottom: 34 }, "0.84")], "a rest as long as it was, in seconds; dashed: likely one"),
      score.rests.some((one) => one.fermata === true) ? sign([fermata(26, 26)], "a fermata: what came next could have been found before the rest") : null,
      byHand && score.turns.some((turn) => turn.p < 0.9) ? sign([note("R", { p: 0.7 })], "lighter: less sure; point at it") : null,
      score.turns.some((turn) => turn.repaired) ? sign([note("R", { repaired: true })], "in brackets: lost on the air, repaired from what the cube repeated") : null,
      score.gaps.length > 0 ? sign([gap(10, 42, 4, 36, "")], "turns were lost here, and nothing tells which") : null,
      sign([slur(6, 46, 18)], "turned without a rest"),
      score.slips.length > 0 ? sign([note("R", { at: 14 }), note("R'", { at: 38 }), takenBack(14, 38, 12)], "a hook back: turned, and taken back") : null,
      score.usual ? sign([usualSpecimen()], `pale band: your usual, the middle half of ${score.usual.solves} solves; the line is what this stage took`) : null,
    ),
    score.looking.length > 0 && score.shown.looking_model ? html("p", { class: "quiet" }, score.shown.looking_model) : null,
    lettersChoice(),
  );
}

const usualSpecimen = () => svg("g", { class: "usual" }, svg("rect", { class: "band", x: 22, y: 16, width: 22, height: 8 }), svg("path", { class: "took-line", d: "M6 20H34m0 -5v10M6 18v4" }));
