// The stages of a night: median seconds as a length, and the share of the whole time.

import { html, px, svg } from "./dom.mjs";
import { count, percent, seconds, stageWord } from "./words.mjs";

const STAGE_ORDER = ["eo", "line", "cross", "pair1", "pair2", "pair3", "pair4", "block1", "block2", "orient", "permute", "corners", "last_edges", "last_layer", "auf"];

/** A table of the stages that the board summed up; where it did not, one per method of these solves. */
export function stageShares(night, solves) {
  if (night.stages?.length > 0) return [table(night.series.method, night.stages)];
  const groups = new Map();
  for (const solve of solves) {
    if (!solve.solved || solve.set_aside || Object.keys(solve.stages_us ?? {}).length === 0) continue;
    groups.set(solve.method, [...(groups.get(solve.method) ?? []), solve]);
  }
  if (groups.size === 0) return [html("p", { class: "quiet" }, "No solve has stages with times.")];
  return [...groups].sort((a, b) => b[1].length - a[1].length).map(([method, members]) => table(`${method}, ${count(members.length, "solve")}`, stagesOf(members)));
}

function stagesOf(solves) {
  const names = STAGE_ORDER.filter((name) => solves.some((solve) => name in solve.stages_us));
  for (const solve of solves) for (const name of Object.keys(solve.stages_us)) if (!names.includes(name)) names.push(name);
  const whole = solves.reduce((sum, solve) => sum + Object.values(solve.stages_us).reduce((a, b) => a + b, 0), 0);
  return names.map((name) => {
    const times = solves.filter((solve) => name in solve.stages_us).map((solve) => solve.stages_us[name]);
    return { name, median_us: median(times), share: times.reduce((a, b) => a + b, 0) / whole };
  });
}

function table(words, stages) {
  const longest = Math.max(1, ...stages.map((stage) => stage.median_us));
  return html("table", { class: "shares" },
    html("caption", {}, words),
    html("thead", {}, html("tr", {}, html("th", { scope: "col" }, "stage"), html("th", { scope: "col", class: "number" }, "median"), html("th", { scope: "col", class: "number" }, "share"), html("td", {}))),
    html("tbody", {}, stages.map((stage) => html("tr", {},
      html("th", { scope: "row" }, stageWord(stage.name)),
      html("td", { class: "number" }, seconds(stage.median_us)),
      html("td", { class: "number" }, percent(stage.share)),
      html("td", { class: "bar-cell" }, lengthBar(stage.median_us / longest))))));
}

function lengthBar(share) {
  return svg("svg", { class: "length-bar", viewBox: "0 0 100 10", preserveAspectRatio: "none", "aria-hidden": "true" },
    svg("rect", { x: 0, y: 2.5, width: px(100 * share), height: 5 }));
}

function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}
