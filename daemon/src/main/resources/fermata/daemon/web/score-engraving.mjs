// Draws a laid-out score: one picture a system, so that systems stand under each other like lines of a page.

import { px, svg } from "./dom.mjs";
import { MARGIN, setInRows, within } from "./score-layout.mjs";
import { fermata, gap, hatching, note, rest, slur, tie } from "./score-marks.mjs";
import { count, seconds, stageWord } from "./words.mjs";

/** The layers from top to bottom, as seen in the hold of the page. */
const LAYERS = ["U", "R", "F", "D", "L", "B"];

const SPACE = 16;
const STAFF = SPACE * (LAYERS.length - 1);
const ABOVE = 26;
const LABEL_ROW = 17;
const BELOW = 58;

// Labels are set in the size and face that score.css gives them, so they are measured in the same.
const ruler = document.createElement("canvas").getContext("2d");
ruler.font = `italic 13.5px ${getComputedStyle(document.documentElement).getPropertyValue("--book")}`;
const widthOf = (text) => ruler.measureText(text).width;

// Two quarter turns of a face count as one gesture within this multiple of the solve's usual step.
const TIE_STEPS = 1.3;

/** The systems as pictures: [{picture, cursor: an empty group under the notes, top, bottom}]. */
export function engrave(score, layout) {
  const step = usualStep(score);
  return layout.systems.map((system, index) => engraveSystem(score, layout, system, index, step));
}

function usualStep(score) {
  const steps = score.turns.slice(1).map((turn, index) => turn.at - score.turns[index].at).sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? 0;
}

function engraveSystem(score, layout, system, index, step) {
  const labels = stageLabels(score, layout, system);
  const rows = setInRows(labels, layout.width);
  const top = ABOVE + rows * LABEL_ROW;
  const height = top + STAFF + BELOW;
  const y = (layer) => top + SPACE * LAYERS.indexOf(layer);
  const frame = { score, layout, system, top, bottom: top + STAFF, y, step };
  const cursor = svg("g", { class: "cursor" });
  const picture = svg("svg", {
    class: "system", width: px(layout.width), height: px(height), viewBox: `0 0 ${px(layout.width)} ${px(height)}`, "aria-hidden": "true",
  });
  picture.append(
    ...(index === 0 ? [hatching()] : []),
    ...drawRests(frame), ...drawGaps(frame), cursor, ...drawStaff(frame), ...drawBars(frame), ...drawLabels(frame, labels),
    ...drawSlurs(frame), ...drawTies(frame), ...drawNotes(frame), drawAxis(frame),
  );
  return { picture, cursor, top: frame.top, bottom: frame.bottom };
}

function turnsOf({ score, system }) {
  return score.turns.slice(system.first, system.last);
}

function drawStaff(frame) {
  const { system, y } = frame;
  const used = new Set(turnsOf(frame).map((turn) => turn.seen[0]));
  return LAYERS.flatMap((layer) => [
    svg("path", { class: used.has(layer) ? "staff" : "staff idle", d: `M${MARGIN.names} ${px(y(layer))}H${px(system.right)}` }),
    svg("text", { class: used.has(layer) ? "layer" : "layer quiet", x: MARGIN.names - 7, y: px(y(layer) + 4.5), "text-anchor": "end" }, layer),
  ]);
}

function drawBars({ score, layout, system, top, bottom }) {
  const bar = (x, kind = "bar") => svg("path", { class: kind, d: `M${px(x)} ${px(top - 7)}V${px(bottom + 7)}` });
  const bars = [bar(system.left)];
  for (const stage of score.stages) {
    const end = layout.barAfter(stage.to - 1);
    const isLast = stage.to === score.turns.length;
    if (stage.to > stage.from && !isLast && end > system.from && end <= system.to) bars.push(bar(system.x(end)));
  }
  if (system.isLast) bars.push(bar(system.right - 5), bar(system.right, "bar final"));
  return bars;
}

/** One label for each stage that begins or goes on in a system; stages of no length join the one they came with. */
function stageLabels(score, layout, system) {
  const labels = [];
  score.stages.forEach((stage, index) => {
    if (stage.to === stage.from && index > 0) return;
    const from = stage.from === 0 ? 0 : layout.barAfter(stage.from - 1);
    const part = within(system, from, layout.barAfter(stage.to - 1));
    if (part === null) return;
    const together = [stage.label, ...freeStagesAfter(score.stages, index)].join(" + ");
    const text = part.begins ? together : `(${stageWord(stage.name)})`;
    const length = part.begins && score.timed ? `${seconds(stage.end_us - stage.start_us)}` : "";
    const x = part.start === system.from ? system.left + 5 : system.x(part.start) + 5;
    const room = system.x(part.end) - x;
    const withLength = length && widthOf(text) + widthOf(length) + 10 < room;
    const width = widthOf(text) + (withLength ? widthOf(length) + 6 : 0);
    labels.push({ x, at: x - 5, width, text, length: withLength ? length : "", begins: part.begins });
  });
  return labels;
}

function freeStagesAfter(stages, index) {
  const free = [];
  for (let next = index + 1; next < stages.length && stages[next].to === stages[next].from; next++) {
    // A last turn that was not needed is no stage that came with another.
    if (stages[next].name !== "auf") free.push(stages[next].label);
  }
  return free;
}

function drawLabels({ top }, labels) {
  return labels.flatMap((label) => {
    const y = top - ABOVE + 4 - label.row * LABEL_ROW;
    const text = svg("text", { class: label.begins ? "stage" : "stage quiet", x: px(label.x), y: px(y) }, label.text);
    if (label.length) text.append(svg("tspan", { class: "took", dx: 6 }, label.length));
    // A label that had to move left stands over its own flag, which then ends under it.
    const tip = label.x < label.at ? y + 5 : y - 9;
    const flag = label.begins ? [svg("path", { class: "flag", d: `M${px(label.at)} ${px(top - 7)}V${px(tip)}` })] : [];
    return [...flag, text];
  });
}

function drawRests({ score, system, top, bottom, y }) {
  return score.rests.flatMap((one) => {
    const end = one.start_us + one.length_us;
    const part = within(system, one.start_us, end);
    if (part === null) return [];
    const left = system.x(part.start) + (part.begins ? MARGIN.note : -MARGIN.note);
    const right = system.x(part.end) - (part.ends ? MARGIN.note : 0);
    const place = { left, right, top: top - 4, bottom: bottom + 4, measureY: (y("F") + y("D")) / 2, labelY: y("F") - 4 };
    const sign = one.fermata === true && part.begins ? [fermata((left + right) / 2, top - 12)] : [];
    return right - left < 5 ? sign : [rest(place, seconds(one.length_us)), ...sign];
  });
}

function drawGaps({ score, system, top, bottom }) {
  return score.gaps.flatMap((one) => {
    const part = within(system, one.start, Math.max(one.end, one.start + 1));
    if (part === null) return [];
    const label = one.lost === null || one.lost === undefined ? "turns lost" : `${count(one.lost, "turn")} lost`;
    return [gap(system.x(part.start) + MARGIN.note, system.x(part.end) - MARGIN.note, top - 4, bottom + 4, part.begins ? label : "")];
  });
}

function drawSlurs(frame) {
  const { score, system, bottom } = frame;
  const broken = new Set([...score.restAfter.keys(), ...score.gaps.map((one) => one.after_turn)]);
  const slurs = [];
  let run = [];
  for (const turn of turnsOf(frame)) {
    run.push(turn);
    if (broken.has(turn.index) || turn.index === system.last - 1) {
      if (run.length > 2) slurs.push(slur(system.x(run[0].at) - 4, system.x(run.at(-1).at) + 4, bottom + 18));
      run = [];
    }
  }
  return slurs;
}

function drawTies(frame) {
  const { score, system, y, step } = frame;
  return turnsOf(frame).flatMap((turn) => {
    const next = score.turns[turn.index + 1];
    const tied = next && next.index < system.last && next.core === turn.core && turn.core[1] !== "2" && next.at - turn.at <= step * TIE_STEPS;
    return tied ? [tie(system.x(turn.at), system.x(next.at), y(turn.seen[0]))] : [];
  });
}

function drawNotes(frame) {
  return turnsOf(frame).map((turn) => note(turn, frame.system.x(turn.at), frame.y(turn.seen[0])));
}

function drawAxis({ score, system, bottom }) {
  const y = bottom + 38;
  if (!score.timed) return svg("g", { class: "axis" });
  const axis = svg("g", { class: "axis" }, svg("path", { d: `M${px(system.left)} ${px(y)}H${px(system.right)}` }));
  for (let second = Math.ceil(system.from / 1e6); second * 1e6 <= system.to; second++) {
    const x = system.x(second * 1e6);
    axis.append(svg("path", { d: `M${px(x)} ${px(y)}v5` }), svg("text", { x: px(x), y: px(y + 17), "text-anchor": "middle" }, String(second)));
  }
  return axis;
}
