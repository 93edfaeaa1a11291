// The stages of a night: median seconds as a length, and the share of the whole time.

import { html, px, svg } from "../page/dom.mjs";
import { spanAddress } from "../page/moments.mjs";
import { isKept } from "../page/reader.mjs";
import { nearest, percent, seconds, stageWord } from "../page/words.mjs";

/** A table of the stages of a night's series; a median opens the stage that took just about as long. */
export function stageShares(night, solves) {
  if (night.stages.length === 0) return html("p", { class: "quiet" }, "No solve has stages with times.");
  const longest = Math.max(1, ...night.stages.map((stage) => stage.median_us));
  const counted = solves.filter((solve) => solve.solved && !solve.set_aside && solve.hand === night.series.hand && solve.method === night.series.method);
  return html("table", { class: "shares" },
    html("caption", {}, night.series.method),
    html("thead", {}, html("tr", {}, html("th", { scope: "col" }, "stage"), html("th", { scope: "col", class: "number" }, "median"), html("th", { scope: "col", class: "number" }, "share"), html("td", {}))),
    html("tbody", {}, night.stages.map((stage) => html("tr", {},
      html("th", { scope: "row" }, stageWord(stage.name)),
      html("td", { class: "number" }, medianLink(stage, nearestSpan(counted, stage))),
      html("td", { class: "number" }, percent(stage.share)),
      html("td", { class: "bar-cell" }, lengthBar(stage.median_us / longest))))));
}

/** Where a stage took what is nearest to its median: {id, from_us, to_us}; stages follow each other without a gap. */
function nearestSpan(solves, stage) {
  let best = null;
  for (const { id, stages_us: stages } of solves) {
    let from = 0;
    for (const [name, length] of Object.entries(stages ?? {})) {
      const away = Math.abs(length - stage.median_us);
      if (name === stage.name && length > 0 && (best === null || away < best.away)) best = { id, from_us: from, to_us: from + length, away };
      from += length;
    }
  }
  return best;
}

function medianLink(stage, span) {
  const words = seconds(nearest(stage.median_us));
  if (span === null || isKept) return words;
  return html("a", { href: spanAddress(span), "aria-label": `${words} s: a ${stageWord(stage.name)} that took just about as long` }, words);
}

function lengthBar(share) {
  return svg("svg", { class: "length-bar", viewBox: "0 0 100 10", preserveAspectRatio: "none", "aria-hidden": "true" },
    svg("rect", { x: 0, y: 2.5, width: px(100 * share), height: 5 }));
}
