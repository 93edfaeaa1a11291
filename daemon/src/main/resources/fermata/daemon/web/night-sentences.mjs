// What a night says in sentences, each with the count it rests on; under the needed count it says so instead.

import { html } from "./dom.mjs";
import { count, duration, seconds, stageWord } from "./words.mjs";

/** One sentence a change of stages, dearest first, those with too few occurrences last and together. */
export function hotspotSentences(hotspots) {
  const told = hotspots.filter((spot) => typeof spot.rest_us === "number").sort((a, b) => b.rest_us - a.rest_us);
  const few = hotspots.filter((spot) => typeof spot.rest_us !== "number");
  if (hotspots.length === 0) return html("p", { class: "quiet" }, "No change of stages could be timed on this night.");
  return html("div", {},
    told.length === 0 ? null : html("ol", { class: "sentences" }, told.map((spot, index) => html("li", {}, ...restSentence(spot, index === 0)))),
    few.length === 0 ? null : html("p", { class: "quiet" }, `Too few to say: ${few.map((spot) => `before ${stageWord(spot.after)} (${spot.count})`).join(", ")}.`),
  );
}

function restSentence(spot, isFirst) {
  const place = `before ${stageWord(spot.after)}, after ${stageWord(spot.before)}`;
  const basis = html("span", { class: "quiet" }, ` Median of ${count(spot.count, "solve")}.`);
  if (spot.rest_us === 0) return [`The rhythm mostly runs on ${place}.`, basis];
  const length = html("strong", {}, duration(spot.rest_us));
  return isFirst ? ["The longest rest is ", place, ": ", length, ".", basis] : [`${place[0].toUpperCase()}${place.slice(1)}: `, length, ".", basis];
}

/** The figures of a night, best to trimmed 12, each as [name, value, remark]. */
export function figures(night) {
  const few = (needed) => `too few to say (${night.solves})${needed ? `, needs ${needed}` : ""}`;
  const average = (run, needed) => {
    if (run?.latest === null || run?.latest === undefined) return ["\u2013", few(needed)];
    return [duration(run.latest), run.best === null || run.best === undefined ? "latest" : `latest; best ${run.best === "DNF" ? "DNF" : seconds(run.best)}`];
  };
  return [
    ["best", duration(night.best_us), night.solves === 0 ? few() : ""],
    ["mean", duration(night.mean_us), typeof night.spread_us === "number" ? `spread ${seconds(night.spread_us)}` : night.solves < 2 ? few() : ""],
    ["average of 5", ...average(night.average5_us, 5)],
    ["trimmed 12", ...average(night.trimmed12_us, 12)],
  ];
}

/** What to do when nothing was ever recorded. */
export function nothingYet() {
  return html("div", { class: "message" },
    html("p", {}, "No solve has been recorded yet. On the board's command line:"),
    html("dl", { class: "commands" },
      html("dt", {}, html("code", {}, "fermata listen")), html("dd", {}, "hears a cube that reports its turns"),
      html("dt", {}, html("code", {}, "fermata import FILE")), html("dd", {}, "reads a turn stream from a file"),
      html("dt", {}, html("code", {}, "fermata demo")), html("dd", {}, "plays a whole evening without a cube")),
    html("p", {}, "Then open this page again."));
}

/** What to do on a day without practice. */
export function noneOnThisDay(day, latest) {
  return html("div", { class: "message" },
    html("p", {}, "No solve was recorded on this day. A practice day ends at 04:00, so what came after midnight belongs to the day before."),
    latest ? html("p", {}, html("a", { href: `/nights/${latest}` }, "To the latest night")) : null);
}
