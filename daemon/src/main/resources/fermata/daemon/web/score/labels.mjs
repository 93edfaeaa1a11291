// The names of the stages over the staff, each hung on a flag at its bar.

import { px, svg } from "../page/dom.mjs";
import { seconds, stageWord } from "../page/words.mjs";
import { setInRows, within } from "./layout.mjs";

export const LABEL_ROW = 17;

// Labels are set in the size and face that score.css gives them, so they are measured in the same.
const ruler = document.createElement("canvas").getContext("2d");
ruler.font = `italic 13.5px ${getComputedStyle(document.documentElement).getPropertyValue("--book")}`;
const widthOf = (text) => ruler.measureText(text).width;

/** The labels of a system, set in rows: {labels, rows}. */
export function stageLabels(score, layout, system) {
  const labels = [];
  score.stages.forEach((stage, index) => {
    if (stage.to === stage.from && index > 0) return;
    const from = stage.from === 0 ? 0 : layout.barAfter(stage.from - 1);
    const part = within(system, from, layout.barAfter(stage.to - 1));
    if (part === null) return;
    labels.push(labelOf(score, system, stage, index, part));
  });
  return { labels, rows: setInRows(labels, layout.width) };
}

function labelOf(score, system, stage, index, part) {
  const together = [stage.label, ...freeStagesAfter(score.stages, index)].join(" + ");
  const text = part.begins ? together : `(${stageWord(stage.name)})`;
  const length = part.begins && score.timed ? `${seconds(stage.end_us - stage.start_us)}` : "";
  const x = part.start === system.from ? system.left + 5 : system.x(part.start) + 5;
  const withLength = length && widthOf(text) + widthOf(length) + 10 < system.x(part.end) - x;
  const width = widthOf(text) + (withLength ? widthOf(length) + 6 : 0);
  return { x, at: x - 5, width, text, length: withLength ? length : "", begins: part.begins };
}

/** Stages of no length join the one they came with. */
function freeStagesAfter(stages, index) {
  const free = [];
  for (let next = index + 1; next < stages.length && stages[next].to === stages[next].from; next++) {
    // A last turn that was not needed is no stage that came with another.
    if (stages[next].name !== "auf") free.push(stages[next].label);
  }
  return free;
}

/** Draws labels whose lowest row stands at a height over the staff's top line. */
export function drawLabels(labels, top, above) {
  return labels.flatMap((label) => {
    const y = top - above - label.row * LABEL_ROW;
    const text = svg("text", { class: label.begins ? "stage" : "stage quiet", x: px(label.x), y: px(y) }, label.text);
    if (label.length) text.append(svg("tspan", { class: "took", dx: 6 }, label.length));
    // A label that had to move left stands over its own flag, which then ends under it.
    const tip = label.x < label.at ? y + 5 : y - 9;
    const flag = label.begins ? [svg("path", { class: "flag", d: `M${px(label.at)} ${px(top - 7)}V${px(tip)}` })] : [];
    return [...flag, text];
  });
}
