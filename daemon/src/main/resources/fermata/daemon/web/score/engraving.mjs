// Draws a laid-out score: one picture a system, so that systems stand under each other like lines of a page.

import { px, svg } from "../page/dom.mjs";
import { bar, hatching, secondAt, staffLine } from "../staff/marks.mjs";
import { LABEL_ROW, drawLabels, stageLabels } from "./labels.mjs";
import { MARGIN } from "./layout.mjs";
import { gestureNote } from "./notes.mjs";
import { drawGaps, drawKey, drawRegrips, drawRests, drawRotations, drawSlips, drawSlurs, drawUsual } from "./signs.mjs";

/** The layers from top to bottom, each slice under the outer layer beside it. */
const LAYERS = ["U", "E", "R", "M", "F", "S", "D", "L", "B"];

/** What a hand that holds the cube can always reach has a line in every score. */
const ALWAYS = ["U", "R", "F", "D"];

const SPACE = 16;
const LABELS_ABOVE = 40;
const AXIS_BELOW = 40;
const USUAL = 14;

/** The lines of a score, from top to bottom: the usual four, and what else was turned. */
function linesOf(score) {
  const used = new Set(score.gestures.map((gesture) => gesture.line));
  return LAYERS.filter((layer) => ALWAYS.includes(layer) || used.has(layer));
}

/** The systems as pictures: [{picture, cursor, span: empty groups under the notes, top, bottom}]. */
export function engrave(score, layout) {
  const lines = linesOf(score);
  return layout.systems.map((system, index) => engraveSystem(score, layout, system, index, lines));
}

function engraveSystem(score, layout, system, index, lines) {
  const { labels, rows } = stageLabels(score, layout, system);
  const top = LABELS_ABOVE + 12 + (rows - 1) * LABEL_ROW;
  const bottom = top + SPACE * (lines.length - 1);
  const axis = bottom + AXIS_BELOW + (score.usual === null ? 0 : USUAL);
  const height = axis + (score.timed ? 20 : -8);
  const frame = { score, layout, system, top, bottom, lines, axis, y: (line) => top + SPACE * lines.indexOf(line) };
  const cursor = svg("g", { class: "cursor" });
  const span = svg("g", { class: "span" });
  const picture = svg("svg", {
    class: "system", width: px(layout.width), height: px(height), viewBox: `0 0 ${px(layout.width)} ${px(height)}`, "aria-hidden": "true",
  });
  picture.append(
    ...(index === 0 ? [hatching()] : []),
    // A chosen span lies under all: what it was chosen for, a rest or a gap, must still be seen.
    span, ...drawRests(frame), ...drawGaps(frame), cursor, ...drawStaff(frame), ...drawBars(frame), ...drawLabels(labels, top, LABELS_ABOVE),
    ...(score.reading.name === "core" ? [] : [drawKey(frame)]),
    ...drawSlurs(frame), ...drawSlips(frame), ...drawRotations(frame), ...drawRegrips(frame), ...drawNotes(frame), ...drawUsual(frame), drawAxis(frame),
  );
  return { picture, cursor, span, top, bottom };
}

const gesturesIn = ({ score, system }) => score.gestures.filter((one) => one.first >= system.first && one.first < system.last);

function drawStaff(frame) {
  const { system, lines, y } = frame;
  const used = new Set(gesturesIn(frame).map((gesture) => gesture.line));
  return lines.flatMap((line) => staffLine(line, used.has(line), MARGIN.names, system.right, y(line)));
}

function drawBars({ score, layout, system, top, bottom }) {
  const barAt = (x, kind) => bar(x, top, bottom, kind);
  const bars = [barAt(system.left)];
  for (const stage of score.stages) {
    const end = layout.barAfter(stage.to - 1);
    const isLast = stage.to === score.turns.length;
    if (stage.to > stage.from && !isLast && end > system.from && end <= system.to) bars.push(barAt(system.x(end)));
  }
  if (system.isLast) bars.push(barAt(system.right - 5), barAt(system.right, "bar final"));
  return bars;
}

function drawNotes(frame) {
  const { score, system, y } = frame;
  return gesturesIn(frame).map((gesture) => gestureNote(gesture, (turn) => system.x(turn.at), y(gesture.line),
    gesture.turns.some((turn) => score.otherwise.has(turn.index))));
}

function drawAxis({ score, system, axis: y }) {
  if (!score.timed) return svg("g", { class: "axis" });
  const axis = svg("g", { class: "axis" }, svg("path", { d: `M${px(system.left)} ${px(y)}H${px(system.right)}` }));
  for (let second = Math.ceil(system.from / 1e6); second * 1e6 <= system.to; second++) {
    const x = system.x(second * 1e6);
    axis.append(svg("path", { d: `M${px(x)} ${px(y)}v5` }), secondAt(second, x, y + 17));
  }
  return axis;
}
