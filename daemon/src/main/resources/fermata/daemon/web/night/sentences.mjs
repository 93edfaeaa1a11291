// What a night says in sentences. The sentences about where seconds go, about trends and about the hand come from the
// board as they are; here they get their intervals drawn.

import { html, px, svg } from "../page/dom.mjs";
import { momentLinks } from "../page/moments.mjs";
import { count, duration, handWord, nearest, seconds } from "../page/words.mjs";

// How the places of a night are gathered: what is set and not summed over. The finer ones wait until they are asked for.
const GATHERED = [
  { name: null, most: 6, isOf: (spot) => !spot.cause && !spot.case && !spot.hold },
  { name: "By cause", most: 4, isOf: (spot) => spot.cause && !spot.after && !spot.case && !spot.hold },
];

/** Where the seconds went, dearest first, each with its interval and its clearest examples. */
export function hotspotSentences(night) {
  const { hotspots, too_few: few } = night;
  if (hotspots.length + few.length === 0) return html("p", { class: "quiet" }, "No clear rest.");
  const widest = Math.max(1, ...hotspots.map((spot) => spot.high_us));
  const list = (spots) => html("ol", { class: "sentences" }, spots.map((spot) => lossItem(spot, widest)));
  const gathered = GATHERED.map(({ name, most, isOf }) => ({ name, spots: hotspots.filter(isOf).slice(0, most) })).filter(({ spots }) => spots.length > 0);
  const finer = hotspots.filter((spot) => !gathered.some(({ spots }) => spots.includes(spot)));
  return html("div", {},
    hotspots.length === 0 ? html("p", { class: "quiet" }, "Nothing was clear five times yet, so nothing is ranked.") : null,
    ...gathered.map(({ name, spots }) => [name ? html("h3", {}, name) : null, list(spots)]),
    finer.length === 0 ? null : html("details", {}, html("summary", {}, `Further places (${finer.length})`), list(finer)),
    few.length === 0 ? null : html("details", {}, html("summary", {}, `Too few to say (${few.length})`), html("ul", { class: "plain quiet small" }, few.map((spot) => html("li", {}, spot.sentence)))));
}

function lossItem(spot, widest) {
  return html("li", {},
    html("p", {}, spot.sentence),
    whisker({ low: spot.low_us, middle: spot.per_solve_us, high: spot.high_us, from: 0, to: widest }, `${figure(spot.per_solve_us)} s a solve, between ${figure(spot.low_us)} and ${figure(spot.high_us)}`),
    momentLinks(spot.examples));
}

const figure = (micros) => seconds(nearest(micros));

/** An interval as a line with its ends, and a dot where the best guess is, if there is one; `words` say the same. */
function whisker({ low, middle, high, from, to }, words) {
  const x = (value) => px(4 + (312 * (value - from)) / (to - from));
  return svg("svg", { class: "whisker", viewBox: "0 0 320 16", role: "img" },
    svg("title", {}, words),
    svg("path", { class: "ground", d: `M4 8H316M${x(0)} 3V13` }),
    svg("path", { class: "reach", d: `M${x(low)} 8H${x(high)}M${x(low)} 5V11M${x(high)} 5V11` }),
    middle === null ? null : svg("ellipse", { cx: x(middle), cy: 8, rx: 4.4, ry: 3.4, transform: `rotate(-20 ${x(middle)} 8)` }));
}

/** What moves over the nights, and what cannot be seen to move yet. */
export function trendSentences(trends) {
  if (trends.length === 0) return html("p", { class: "quiet" }, "There is nothing to compare yet.");
  const told = trends.filter((trend) => trend.says !== "too_few");
  const reach = Math.max(1, ...told.flatMap((trend) => [Math.abs(trend.low_us), Math.abs(trend.high_us)]));
  const few = trends.filter((trend) => trend.says === "too_few").map((trend) => html("li", {}, trend.sentence));
  if (told.length === 0) return html("ul", { class: "plain quiet" }, few[0]);
  return html("div", {}, html("ul", { class: "sentences" }, told.map((trend) => trendItem(trend, reach))),
    few.length === 0 ? null : html("details", {}, html("summary", {}, `Too few nights to say (${few.length})`), html("ul", { class: "plain quiet small" }, few)));
}

function trendItem(trend, reach) {
  const between = `between ${signed(trend.low_us)} and ${signed(trend.high_us)} a day`;
  const words = trend.per_day_us === null ? `no change can be seen yet; ${between}` : `${signed(trend.per_day_us)} a day, ${between}`;
  return html("li", { class: trend.says === "moves" ? null : "quiet" },
    html("p", {}, trend.sentence),
    whisker({ low: trend.low_us, middle: trend.per_day_us, high: trend.high_us, from: -reach, to: reach }, words));
}

const signed = (micros) => `${micros < 0 ? "\u2212" : "+"}${(Math.abs(micros) / 1e6).toFixed(3)} s`;

/** What the hand did, and what may do it good. */
export function loadSentences(load) {
  return html("div", {},
    html("p", {}, `${count(load.turns, "turn")}, about ${count(Math.round(load.regrips), "regrip")} that cost time, ${count(Math.round(load.minutes), "minute")} of turning; the longest stretch was ${count(Math.round(load.longest_stretch_minutes), "minute")}.`),
    ...load.advice.map((sentence) => html("p", { class: "quiet" }, sentence)));
}

/** Solves that are series of their own and count in nothing above. */
export function otherSeries(series) {
  return html("ul", { class: "plain" }, series.map((one) => html("li", {},
    `${count(one.solves, "solve")}, ${[handWord(one.hand) ?? "hand not stated", one.method, one.other_solver ? "another solver" : null, one.other_cube ? "another cube" : null, one.set_aside ? "set aside" : null].filter(Boolean).join(", ")}`,
    `: mean ${duration(nearest(one.mean_us))}.`)));
}

/** The figures of a night, best to trimmed 12, each as [name, value, remark]. */
export function figures(night) {
  const few = (needed) => `too few to say (${night.solves}${needed ? ` of ${needed}` : ""})`;
  const average = (run, needed) => {
    if (run.latest === null) return ["\u2013", few(needed)];
    return [duration(run.latest), `latest; best ${run.best === "DNF" ? "DNF" : seconds(run.best)}`];
  };
  return [
    ["best", duration(night.best_us), night.solves === 0 ? few() : ""],
    ["mean", duration(nearest(night.mean_us)), typeof night.spread_us === "number" ? `spread ${figure(night.spread_us)}` : night.solves < 2 ? few() : ""],
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
