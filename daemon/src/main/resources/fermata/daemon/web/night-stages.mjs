// The stages of a night: median seconds as a length, and the share of the whole time.

import { html, px, svg } from "./dom.mjs";
import { nearest, percent, seconds, stageWord } from "./words.mjs";

/** A table of the stages of a night's series. */
export function stageShares(night) {
  if (night.stages.length === 0) return html("p", { class: "quiet" }, "No solve has stages with times.");
  return table(night.series.method, night.stages);
}

function table(words, stages) {
  const longest = Math.max(1, ...stages.map((stage) => stage.median_us));
  return html("table", { class: "shares" },
    html("caption", {}, words),
    html("thead", {}, html("tr", {}, html("th", { scope: "col" }, "stage"), html("th", { scope: "col", class: "number" }, "median"), html("th", { scope: "col", class: "number" }, "share"), html("td", {}))),
    html("tbody", {}, stages.map((stage) => html("tr", {},
      html("th", { scope: "row" }, stageWord(stage.name)),
      html("td", { class: "number" }, seconds(nearest(stage.median_us))),
      html("td", { class: "number" }, percent(stage.share)),
      html("td", { class: "bar-cell" }, lengthBar(stage.median_us / longest))))));
}

function lengthBar(share) {
  return svg("svg", { class: "length-bar", viewBox: "0 0 100 10", preserveAspectRatio: "none", "aria-hidden": "true" },
    svg("rect", { x: 0, y: 2.5, width: px(100 * share), height: 5 }));
}
