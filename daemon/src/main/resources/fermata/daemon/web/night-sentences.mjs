// What a night says in sentences, each with the count it rests on; under the needed count it says so instead.

import { html } from "./dom.mjs";
import { count, duration, seconds, stageWord } from "./words.mjs";

/** One sentence a place, dearest first; places with too few clear rests last and together. */
export function hotspotSentences(hotspots, tooFew) {
  if (hotspots.length + tooFew.length === 0) return html("p", { class: "quiet" }, "No clear rest on this night.");
  return html("div", {},
    hotspots.length === 0 ? null : html("ol", { class: "sentences" }, hotspots.map((spot) => html("li", {}, ...lossSentence(spot)))),
    tooFew.length === 0 ? null : html("p", { class: "quiet" }, `Too few to say: ${tooFew.map((spot) => `${place(spot)} (${spot.occurrences})`).join(", ")}.`),
  );
}

function place(spot) {
  if (spot.after === null) return "where no stages are known";
  return spot.before === spot.after ? `within ${stageWord(spot.after)}` : `before ${stageWord(spot.after)}`;
}

function lossSentence(spot) {
  const where = place(spot);
  const basis = html("span", { class: "quiet" }, ` ${seconds(spot.low_us)} to ${seconds(spot.high_us)} s; ${count(spot.occurrences, "clear rest")}.`);
  return [`${where[0].toUpperCase()}${where.slice(1)}: `, html("strong", {}, duration(spot.per_solve_us)), " a solve.", basis];
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
